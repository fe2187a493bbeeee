// Reads files of USD ascii with the npm package tinyusdz and prints an array of where
// their prims are, as JSON: the sixteen figures of a matrix by the name of the prim,
// behind that of the prim it is in where that is not the first.
// Arguments: the folder of the package, the files.
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
const places = files.map((file) => {
	const loader = new usd.TinyUSDZLoaderNative();
	if (!loader.loadFromBinary(new Uint8Array(readFileSync(file)), "camera.usda")) throw new Error(loader.error());
	const found = {};
	const walk = (node, above) => {
		found[above + node.primName] = node.globalMatrix;
		node.children.forEach((child) => walk(child, above + node.primName + "/"));
	};
	const root = loader.getDefaultRootNode();
	found[root.primName] = root.globalMatrix;
	root.children.forEach((child) => walk(child, ""));
	loader.delete();
	return found;
});
console.log(JSON.stringify(places));
