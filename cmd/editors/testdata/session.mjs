// Sessions of a client in Node with the server. It prints a line for every row that
// holds; the first one that does not ends it.
//
//   node session.mjs FOLDER-OF-PACKAGES PROGRAM PLAN LAID-OUT

import assert from "node:assert/strict";
import { spawn } from "node:child_process";
import { once } from "node:events";
import { readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { pathToFileURL } from "node:url";

const [packages, program, plan, laidOut] = process.argv.slice(2);
const require = createRequire(join(packages, "node_modules", "none.js"));
const { createProtocolConnection, StreamMessageReader, StreamMessageWriter } = require("vscode-languageserver-protocol/node");

const uri = pathToFileURL(plan).href;
const folder = dirname(plan);
const kit = join(folder, "kit.pull");
const kitURI = pathToFileURL(kit).href;
const emoji = "🎬";

const everything = {
  workspace: { didChangeWatchedFiles: { dynamicRegistration: true }, workspaceEdit: { documentChanges: true }, configuration: false, symbol: {} },
  window: { showDocument: { support: true } },
  textDocument: {
    publishDiagnostics: { relatedInformation: true, versionSupport: true, dataSupport: true },
    hover: { contentFormat: ["markdown"] }, inlayHint: {}, signatureHelp: { signatureInformation: { parameterInformation: { labelOffsetSupport: true } } },
    completion: { completionItem: { snippetSupport: true } },
    codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: ["quickfix", "refactor", "source"] } }, dataSupport: true, resolveSupport: { properties: ["edit"] } },
    documentSymbol: { hierarchicalDocumentSymbolSupport: true }, rename: { prepareSupport: true },
    semanticTokens: { requests: { range: true, full: true }, tokenTypes: ["keyword", "variable", "string", "number", "comment"], tokenModifiers: ["declaration"], formats: ["relative"] },
    codeLens: {}, documentLink: {}, foldingRange: {}, selectionRange: {},
  },
};

// start starts a server and says hello to it.
async function start(capabilities) {
  const server = spawn(program, ["lsp"], { stdio: ["pipe", "pipe", "inherit"] });
  const ended = once(server, "exit");
  const connection = createProtocolConnection(new StreamMessageReader(server.stdout), new StreamMessageWriter(server.stdin));
  const told = new Map(); // lists of findings by URI, the last of each
  const asked = [];
  let came = () => {};
  connection.onNotification("textDocument/publishDiagnostics", (list) => { told.set(list.uri, list); came(); });
  connection.onRequest((method, params) => { asked.push([method, params]); came(); return null; });
  connection.listen();
  const { capabilities: offers } = await connection.sendRequest("initialize", {
    processId: process.pid, rootUri: null, capabilities, workspaceFolders: [{ uri: pathToFileURL(folder).href, name: "plans" }],
  });
  await connection.sendNotification("initialized", {});
  // until waits for what makes a condition true; the test has a limit of its own.
  const until = async (there) => { while (!there()) await new Promise((next) => { came = next; }); };
  return {
    offers, told, asked, until, connection,
    ask: (method, params) => connection.sendRequest(method, params),
    tell: (method, params) => connection.sendNotification(method, params),
    at: (version) => until(() => told.get(uri)?.version === version).then(() => told.get(uri).diagnostics),
    end: async () => (await ended)[0],
  };
}

// A text that is written in an editor: it keeps the server up to date.
class Text {
  constructor(session, textURI, text) { Object.assign(this, { session, uri: textURI, text, version: 1 }); }
  open() { return this.session.tell("textDocument/didOpen", { textDocument: { uri: this.uri, languageId: "pull", version: 1, text: this.text } }); }
  close() { return this.session.tell("textDocument/didClose", { textDocument: { uri: this.uri } }); }
  offset({ line, character }) { return this.text.split("\n").slice(0, line).reduce((sum, l) => sum + l.length + 1, 0) + character; }
  place(offset) {
    const lines = this.text.slice(0, offset).split("\n");
    return { line: lines.length - 1, character: lines.at(-1).length };
  }
  // of returns the place in the n-th mention of a word.
  of(word, n = 1, into = 1) {
    let offset = -1;
    for (let i = 0; i < n; i++) offset = this.text.indexOf(word, offset + 1);
    assert(offset >= 0, `${word} is not in the text`);
    return this.place(offset + into);
  }
  about(word, n, into) { return { textDocument: { uri: this.uri }, position: this.of(word, n, into) }; }
  // read returns what stands in a range.
  read(range) { return this.text.slice(this.offset(range.start), this.offset(range.end)); }
  // apply makes edits of one moment, the last first.
  async apply(edits) {
    const sorted = [...edits].sort((a, b) => this.offset(b.range.start) - this.offset(a.range.start));
    for (const { range, newText } of sorted) {
      this.text = this.text.slice(0, this.offset(range.start)) + newText + this.text.slice(this.offset(range.end));
    }
    this.version++;
    await this.session.tell("textDocument/didChange", {
      textDocument: { uri: this.uri, version: this.version }, contentChanges: sorted.map(({ range, newText }) => ({ range, text: newText })),
    });
  }
  replace(was, is, n) {
    const start = this.of(was, n, 0);
    return this.apply([{ range: { start, end: this.place(this.offset(start) + was.length) }, newText: is }]);
  }
}

const codes = (list) => list.map((d) => d.code).sort().join(" ");

function editsOf(edit, of) {
  if (edit.changes) return edit.changes[of] ?? [];
  return edit.documentChanges.filter((change) => change.textDocument.uri === of).flatMap((change) => change.edits);
}

// rows are what the server may offer, each with a request for it. What it offers and
// has no row is a fault.
const rows = {
  async documentFormattingProvider({ ask }, text) {
    const edits = await ask("textDocument/formatting", { textDocument: { uri }, options: { tabSize: 2, insertSpaces: true } });
    await text.apply(edits);
    assert.equal(text.text, readFileSync(laidOut, "utf8"));
    assert.equal(edits.length, 1, "the least edits");
    assert.deepEqual(await ask("textDocument/formatting", { textDocument: { uri }, options: { tabSize: 2, insertSpaces: true } }), []);
  },
  async definitionProvider({ ask }, text) {
    const to = [await ask("textDocument/definition", text.about("KETTLE", 2))].flat();
    assert.equal(text.read(to[0].range), "KETTLE");
    assert.equal(to[0].range.start.line, text.of("KETTLE").line);
    const lens = [await ask("textDocument/definition", text.about('"75"', 1, 2))].flat();
    assert.equal(lens[0].uri, kitURI);
  },
  async referencesProvider({ ask }, text) {
    const list = await ask("textDocument/references", { ...text.about("HALDIS"), context: { includeDeclaration: true } });
    assert.deepEqual(list.map((l) => [l.uri, text.read(l.range)]), Array(text.text.split("HALDIS").length - 1).fill([uri, "HALDIS"]));
  },
  async documentHighlightProvider({ ask }, text) {
    const list = await ask("textDocument/documentHighlight", text.about("KETTLE"));
    assert.deepEqual(list.map((l) => text.read(l.range)), ["KETTLE", "KETTLE"]);
  },
  async documentSymbolProvider({ ask }, text) {
    const list = await ask("textDocument/documentSymbol", { textDocument: { uri } });
    const shot = list.find((symbol) => symbol.name.includes("9A"));
    assert(shot.children.length >= 4, "lines and racks under the shot");
    assert(text.read(shot.range).startsWith("shot 9A"));
  },
  async workspaceSymbolProvider({ ask }) {
    const list = await ask("workspace/symbol", { query: "KETLE" });
    assert(list.some((symbol) => symbol.name.includes("KETTLE") && symbol.location.uri === uri), "a near miss");
  },
  async renameProvider({ ask }, text) {
    const range = await ask("textDocument/prepareRename", text.about("KETTLE", 2));
    assert.equal(text.read(range.range ?? range), "KETTLE");
    const edit = await ask("textDocument/rename", { ...text.about("KETTLE", 2), newName: "tea pot" });
    await text.apply(editsOf(edit, uri));
    assert(text.text.includes('subject "tea pot" at') && text.text.includes('rack to "tea pot", landing on "kettle"'), text.text);
    await assert.rejects(ask("textDocument/rename", { ...text.about("HALDIS"), newName: "PEVIN" }), "a name that is taken");
    const back = await ask("textDocument/rename", { ...text.about("tea pot"), newName: "KETTLE" });
    await text.apply(editsOf(back, uri));
    assert(text.text.includes("rack to KETTLE, landing on"), text.text);
  },
  async foldingRangeProvider({ ask }, text) {
    const list = await ask("textDocument/foldingRange", { textDocument: { uri } });
    assert(list.some((fold) => fold.startLine === text.of("shot 9A").line), "the shot folds");
  },
  async selectionRangeProvider({ ask }, text) {
    const [range] = await ask("textDocument/selectionRange", { textDocument: { uri }, positions: [text.of("KETTLE", 2)] });
    const grows = [];
    for (let r = range; r; r = r.parent) grows.push(text.read(r.range));
    assert.equal(grows[0], "KETTLE");
    assert(grows.some((s) => s.trim().startsWith("rack to KETTLE")) && grows.at(-1) === text.text, grows.join("\n--\n"));
  },
  async documentLinkProvider({ ask }, text) {
    const list = await ask("textDocument/documentLink", { textDocument: { uri } });
    assert.deepEqual(list.map((link) => [link.target, text.read(link.range).replaceAll('"', "")]), [[kitURI, "kit.pull"]]);
  },
  async hoverProvider({ ask }, text) {
    const hover = await ask("textDocument/hover", text.about("KETTLE", 2));
    assert(hover.contents.value.includes("KETTLE: 1.1 m; sharp"), hover.contents.value);
    const rack = await ask("textDocument/hover", text.about("rack to KETTLE"));
    assert(rack.contents.value.split("\n").length <= 12 && rack.contents.value.includes("84 %"), rack.contents.value);
  },
  async inlayHintProvider({ ask }, text) {
    const hints = await ask("textDocument/inlayHint", { textDocument: { uri }, range: { start: { line: 0, character: 0 }, end: text.place(text.text.length) } });
    const labels = hints.map((hint) => (typeof hint.label === "string" ? hint.label : hint.label.map((part) => part.value).join("")));
    const rack = hints.findIndex((hint) => hint.position.line === text.of("rack to KETTLE").line);
    assert.match(labels[rack] ?? "", /\d s, 84 %/, labels.join(" | "));
    const spoken = hints.findIndex((hint) => hint.position.line === text.of("HALDIS:").line);
    assert.match(labels[spoken] ?? "", / s est\.$/, labels.join(" | "));
  },
  async completionProvider({ ask }, text) {
    const list = await ask("textDocument/completion", text.about("rack to KETTLE", 1, "rack to ".length));
    const items = Array.isArray(list) ? list : list.items;
    assert(items.some((item) => item.label === "KETTLE"), items.map((item) => item.label).join(", "));
  },
  async signatureHelpProvider({ ask }, text) {
    const help = await ask("textDocument/signatureHelp", text.about("landing on", 1, 3));
    assert(help.signatures[0].label.startsWith("rack to"), help.signatures[0].label);
  },
  async codeActionProvider({ ask, at, told }, text) {
    // act applies the first action whose title has some words in it, on a range.
    const act = async (words, range, context = {}) => {
      const actions = await ask("textDocument/codeAction", { textDocument: { uri }, range, context: { diagnostics: [], ...context } });
      let action = actions.find(({ title }) => title.includes(words));
      assert(action, `no ${words} in ${actions.map(({ title }) => title).join(", ")}`);
      if (!action.edit) action = await ask("codeAction/resolve", action);
      await text.apply(editsOf(action.edit, uri));
      return action;
    };
    const before = text.text;
    // back writes the text as it was before.
    const back = async () => {
      await text.apply([{ range: { start: { line: 0, character: 0 }, end: text.place(text.text.length) }, newText: before }]);
      assert.equal(codes(await at(text.version)), "hard-to-land");
    };
    const finding = told.get(uri).diagnostics.find((d) => d.code === "hard-to-land");
    assert.equal((await act("over 1 s", finding.range, { diagnostics: [finding] })).kind, "quickfix");
    assert.deepEqual(await at(text.version), [], "a cure cures");
    await back();
    await text.replace("f/2.8", "f2.8");
    assert.match(codes(await at(text.version)), /bad-number/);
    await act("", { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } }, { only: ["source.fixAll.pullscore"] });
    assert.equal(text.text, before, "what is nearly right is mended");
    const line = { start: text.of("HALDIS:", 1, 0), end: text.of("HALDIS:") };
    await act("estimated", line, { only: ["refactor.rewrite"] });
    assert.match(text.text, /HALDIS: ".*", lasting [\d.]+ s\n/);
    await back();
    const rest = { start: text.of("rack to KETTLE", 1, 0), end: text.of("over 1.2 s", 1, 5) };
    await act("", rest, { only: ["refactor.extract"] });
    assert.match(text.text, /^move .*\(.*\)\n/m);
    assert.equal(codes(await at(text.version)), "hard-to-land", "a move comes to the same");
    await back();
  },
  async semanticTokensProvider({ ask, offers }, text) {
    const { data } = await ask("textDocument/semanticTokens/full", { textDocument: { uri } });
    const types = offers.semanticTokensProvider.legend.tokenTypes;
    const kinds = [];
    for (let i = 0, line = 0, character = 0; i < data.length; i += 5) {
      character = data[i] > 0 ? data[i + 1] : character + data[i + 1];
      line += data[i];
      const start = { line, character };
      kinds.push(`${types[data[i + 3]]} ${text.read({ start, end: { line, character: character + data[i + 2] } })}`);
    }
    assert(kinds.includes("keyword rack") && kinds.some((kind) => kind.endsWith(" KETTLE")), kinds.join(", "));
  },
  async codeLensProvider({ ask }, text) {
    const list = await ask("textDocument/codeLens", { textDocument: { uri } });
    const above = list.filter((lens) => lens.range.start.line === text.of("shot 9A").line).map((lens) => lens.command.title);
    assert.match(above.join(" | "), /^[\d.]+ s, 2 pulls, 1 warning/);
  },
  async executeCommandProvider({ ask, asked, until, offers }) {
    assert.deepEqual(offers.executeCommandProvider.commands, ["pullscore.page"]);
    const address = await ask("workspace/executeCommand", { command: "pullscore.page", arguments: [uri] });
    const opened = () => asked.find(([method]) => method === "window/showDocument");
    await until(opened);
    assert.deepEqual(opened()[1], { uri: address, external: true });
    const { plans } = await (await fetch(new URL("/api/state", address))).json();
    assert(plans[0].shots.some((shot) => shot.id === "9A"));
  },
  async diagnosticProvider() { assert.fail("it is offered only to clients that ask for findings"); },
};

// staged is a plan with a scene, for what the rows ask of one.
const staged = `use "kit.pull"
scene "The quay"
  mark BOLLARD at 1 m right, 2 m upstage
  subject OSKEL at BOLLARD, eyes 1.6 m
  OSKEL: "The boat is late.", lasting 1.5 s
  pause 1 s
shot 1A
  covers all
  with camera A, lens "75", stop f/4
  camera at 1 m right, 1 m downstage, 1.6 m high, aims at OSKEL
  start on OSKEL
shot 1B
  runs with 1A
  camera as in 1A
  with camera A, lens "75", stop f/4
  start on OSKEL
`;

// stagedRows asks for what scenes have of features that have rows.
async function stagedRows(session) {
  const { ask } = session;
  const text = new Text(session, pathToFileURL(join(folder, "staged.pull")).href, staged);
  await text.open();
  const hover = async (...place) => (await ask("textDocument/hover", text.about(...place))).contents.value;
  assert.match(await hover("BOLLARD", 2), /mark BOLLARD: 1 m right, 2 m upstage\n= /);
  assert.match(await hover("OSKEL:", 1, 0), /OSKEL speaks from 0 s to 1.5 s of the scene[^]*1A holds all of it/);
  assert.match(await hover("camera at", 1, 0), /pan 0°, tilt 0°/);
  const list = await ask("textDocument/completion", text.about("runs with 1A", 1, "runs with ".length));
  const labels = (Array.isArray(list) ? list : list.items).map((item) => item.label);
  assert(labels.includes("1A") && !labels.includes("1B"), labels.join(", "));
  const hints = await ask("textDocument/inlayHint", { textDocument: { uri: text.uri }, range: { start: { line: 0, character: 0 }, end: text.place(text.text.length) } });
  assert(hints.some((hint) => hint.label === "pan 0°, tilt 0°"), JSON.stringify(hints));
  const symbols = await ask("textDocument/documentSymbol", { textDocument: { uri: text.uri } });
  assert.deepEqual(symbols.map(({ name }) => name), ["The quay", "1A", "1B"]);
  const edit = await ask("textDocument/rename", { ...text.about("BOLLARD"), newName: "POST" });
  assert.equal(editsOf(edit, text.uri).length, 2);
  await assert.rejects(ask("textDocument/rename", { ...text.about("shot 1A", 1, 5), newName: "9Z" }), "shots keep their IDs");
  const at = await ask("textDocument/definition", text.about("as in 1A", 1, 6));
  assert.equal([at].flat()[0].range.start.line, text.of("shot 1A").line);
  await text.close();
  console.log("a staged plan");
}

// noRow are members of the offers that are no feature with a request.
const noRow = ["positionEncoding", "textDocumentSync", "workspace"];

async function wholeSession() {
  const session = await start({ ...everything, general: { positionEncodings: ["utf-16"] } });
  const { offers, ask, tell, at, until, asked, told } = session;
  assert.equal(offers.positionEncoding, "utf-16");

  const text = new Text(session, uri, readFileSync(plan, "utf8"));
  await text.open();
  let list = await at(1);
  assert.equal(codes(list), "bad-number hard-to-land");
  const warning = list.find((d) => d.code === "hard-to-land");
  assert.deepEqual([warning.source, warning.severity, text.read(warning.range)], ["pullscore", 2, 'rack to KETTLE, landing on "kettle", over 0.9 s']);
  assert.match(warning.message, /^HALDIS to KETTLE lands 84 %.*\nWindow [^]*\ncure: over 1 s, or stop/);
  assert.deepEqual([warning.data.shot, warning.data.pull], ["9A", 1]);
  assert.equal(text.read(list.find((d) => d.code === "bad-number").range), "1,2");
  console.log("findings");

  await text.replace("1,2 s", `1,2 s # ${emoji}`);
  await text.replace('"he asks"', `"he ${emoji} asks"`);
  list = await at(3);
  assert.equal(text.read(list.find((d) => d.code === "bad-number").range), "1,2", "behind a wide character");
  await text.replace(` # ${emoji}`, "");
  await text.replace(`"he ${emoji} asks"`, '"he asks"');
  await text.replace("1,2 s", "1.2 s");
  assert.equal(codes(await at(6)), "hard-to-land");
  console.log("places");

  const offered = Object.keys(offers).filter((name) => offers[name] && !noRow.includes(name));
  for (const name of Object.keys(rows).filter((row) => offered.includes(row))) {
    await rows[name](session, text);
    console.log(name);
  }
  assert.deepEqual(offered.filter((name) => !rows[name]), [], "offered, and no row asks for it");

  await stagedRows(session);

  // A burst: the last version is the last that is told.
  for (let i = 0; i < 200; i++) await text.replace(i % 2 ? "over 1 s" : "over 0.9 s", i % 2 ? "over 0.9 s" : "over 1 s");
  assert.equal(codes(await at(text.version)), "hard-to-land");
  await text.replace("over 0.9 s", "over 1 s");
  assert.deepEqual(await at(text.version), []);
  console.log("a burst");

  // A kit that is not saved, and then is given up.
  const kitText = new Text(session, kitURI, readFileSync(kit, "utf8"));
  await kitText.open();
  await kitText.replace('lens "75"', 'lens "76"');
  await until(() => told.get(uri).diagnostics.length > 0);
  assert.match(codes(told.get(uri).diagnostics), /unknown/);
  await kitText.close();
  await until(() => told.get(uri).diagnostics.length === 0);
  console.log("unsaved kit");

  // A kit that another program writes.
  await until(() => asked.some(([method]) => method === "client/registerCapability"));
  const saved = readFileSync(kit);
  writeFileSync(kit, saved.toString().replace('lens "75"', 'lens "76"'));
  await tell("workspace/didChangeWatchedFiles", { changes: [{ uri: kitURI, type: 2 }] });
  await until(() => told.get(uri).diagnostics.length > 0);
  writeFileSync(kit, saved);
  await tell("workspace/didChangeWatchedFiles", { changes: [{ uri: kitURI, type: 2 }] });
  await until(() => told.get(uri).diagnostics.length === 0);
  console.log("watched kit");

  await assert.rejects(ask("textDocument/noSuchRequest", {}), { code: -32601 });
  await ask("shutdown");
  await tell("exit");
  assert.equal(await session.end(), 0);
  console.log("the end");
}

// askedSession is that of a client that asks for findings, and counts in bytes.
async function askedSession() {
  const session = await start({ general: { positionEncodings: ["utf-8"] }, textDocument: { diagnostic: {} } });
  assert.equal(session.offers.positionEncoding, "utf-8");
  const text = readFileSync(plan, "utf8").replace('"he asks"', `"he ${emoji} asks"`);
  await new Text(session, uri, text).open();
  const first = await session.ask("textDocument/diagnostic", { textDocument: { uri } });
  const { range } = first.items.find((d) => d.code === "bad-number");
  const line = Buffer.from(text.split("\n")[range.start.line]);
  assert.equal(line.subarray(range.start.character, range.end.character).toString(), "1,2");
  const second = await session.ask("textDocument/diagnostic", { textDocument: { uri }, previousResultId: first.resultId });
  assert.equal(second.kind, "unchanged");
  await session.tell("exit");
  assert.equal(await session.end(), 1, "exit alone");
  console.log("asked findings");
}

await wholeSession();
await askedSession();
process.exit(0);
