// Colours files by the TextMate grammar. For each file named on the command line it
// prints a line of JSON: pieces as [start, end, kind], in bytes.
//
//   node colours.mjs FOLDER-OF-PACKAGES GRAMMAR FILE...

import { createRequire } from "node:module";
import { readFileSync } from "node:fs";
import { join } from "node:path";

const [packages, grammarFile, ...files] = process.argv.slice(2);
const require = createRequire(join(packages, "node_modules", "none.js"));
const oniguruma = require("vscode-oniguruma");
const { INITIAL, Registry, parseRawGrammar } = require("vscode-textmate");

await oniguruma.loadWASM(readFileSync(require.resolve("vscode-oniguruma/release/onig.wasm")));
const registry = new Registry({
  onigLib: Promise.resolve({
    createOnigScanner: (patterns) => new oniguruma.OnigScanner(patterns),
    createOnigString: (text) => new oniguruma.OnigString(text),
  }),
  loadGrammar: async () => parseRawGrammar(readFileSync(grammarFile, "utf8"), grammarFile),
});
const grammar = await registry.loadGrammar("source.pull");

// kindOf returns the kind of token that the scopes of a piece stand for.
function kindOf(scopes) {
  const has = (prefix) => scopes.some((scope) => scope.startsWith(prefix));
  if (has("comment.")) return "comment";
  if (has("string.")) return "text";
  if (has("constant.numeric.")) return "number";
  if (has("keyword.")) return "keyword";
  return "";
}

// colour returns the coloured pieces of a text.
function colour(text) {
  const pieces = [];
  let state = INITIAL;
  let offset = 0;
  for (const [, line, end] of text.matchAll(/([^\r\n]*)(\r\n|\n|\r|$)/g)) {
    const { tokens, ruleStack } = grammar.tokenizeLine(line, state);
    const at = (i) => offset + Buffer.byteLength(line.slice(0, i));
    for (const { startIndex, endIndex, scopes } of tokens) {
      const kind = kindOf(scopes);
      if (kind) pieces.push([at(startIndex), at(Math.min(endIndex, line.length)), kind]);
    }
    state = ruleStack;
    offset += Buffer.byteLength(line + end);
  }
  return pieces;
}

for (const file of files) console.log(JSON.stringify(colour(readFileSync(file, "utf8"))));
