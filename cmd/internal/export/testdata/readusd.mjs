// Reads files of USD ascii with the npm package tinyusdz and prints an array of
// the layers that it found as JSON, null for a file that it refused. Arguments:
// the folder of the package, the files.
import { readFileSync } from "node:fs";

// The package is built for browsers' workers, which is what this pretends to be.
process.type = "renderer";
globalThis.WorkerGlobalScope = class {};
globalThis.self = globalThis;

const [, , folder, ...files] = process.argv;
const { default: init } = await import(`${folder}/tinyusdz.js`);
const usd = await init({
	instantiateWasm(imports, done) {
		WebAssembly.instantiate(readFileSync(`${folder}/tinyusdz.wasm`), imports).then((r) => done(r.instance, r.module));
		return {};
	},
});
const layers = files.map((file) => {
	const loader = new usd.TinyUSDZLoaderNative();
	const read = loader.loadAsLayerFromBinary(new Uint8Array(readFileSync(file)), "camera.usda");
	return read ? loader.layerToString() : null;
});
console.log(JSON.stringify(layers));
