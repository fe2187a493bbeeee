// A stand-in for the host of extensions, with as much of its API as the extension and
// its client library touch. It opens one plan, and prints as JSON what the extension
// showed: findings, edits of the layout, messages, and what was started.
//
//   node host.cjs EXTENSION.js PROGRAM PLAN

const Module = require("node:module");
const { readFileSync } = require("node:fs");
const { pathToFileURL, fileURLToPath } = require("node:url");

const [extension, program, plan] = process.argv.slice(2);
const shown = { findings: [], edits: [], messages: [], terminals: [], pages: [], tasks: [] };
const nothing = { dispose() {} };

class Emitter {
  listeners = [];
  event = (listener) => { this.listeners.push(listener); return nothing; };
  fire(value) { for (const listener of this.listeners) listener(value); }
  dispose() {}
}
class Uri {
  constructor(text) { this.text = text; this.scheme = new URL(text).protocol.slice(0, -1); }
  static parse(text) { return new Uri(text); }
  static file(path) { return new Uri(pathToFileURL(path).href); }
  get fsPath() { return fileURLToPath(this.text); }
  get path() { return this.fsPath; }
  toString() { return this.text; }
}
class Position { constructor(line, character) { Object.assign(this, { line, character }); } }
class Range { constructor(a, b, c, d) { Object.assign(this, typeof a === "number" ? { start: new Position(a, b), end: new Position(c, d) } : { start: a, end: b }); } }
class Diagnostic { constructor(range, message, severity) { Object.assign(this, { range, message, severity }); } }
class TextEdit { constructor(range, newText) { Object.assign(this, { range, newText }); } static replace(range, text) { return new TextEdit(range, text); } }
class CodeActionKind {
  static Empty = new CodeActionKind("");
  static QuickFix = new CodeActionKind("quickfix");
  static Refactor = new CodeActionKind("refactor");
  static RefactorRewrite = new CodeActionKind("refactor.rewrite");
  static RefactorExtract = new CodeActionKind("refactor.extract");
  static RefactorInline = new CodeActionKind("refactor.inline");
  static Source = new CodeActionKind("source");
  static SourceOrganizeImports = new CodeActionKind("source.organizeImports");
  constructor(value) { this.value = value; }
  append(parts) { return new CodeActionKind(this.value ? `${this.value}.${parts}` : parts); }
}
class CancellationTokenSource { token = { isCancellationRequested: false, onCancellationRequested: new Emitter().event }; cancel() {} dispose() {} }

const text = readFileSync(plan, "utf8");
const document = { uri: Uri.file(plan), languageId: "pull", version: 1, getText: () => text, isDirty: false, isClosed: false, lineCount: text.split("\n").length };
const settings = { path: program, hints: "all", units: "plan" };
const commands = {};
let format;

const known = {
  Uri, Position, Range, Diagnostic, TextEdit, CodeActionKind, CancellationTokenSource, EventEmitter: Emitter,
  Disposable: class { constructor(f) { this.dispose = f; } static from() { return nothing; } },
  DiagnosticSeverity: { Error: 0, Warning: 1, Information: 2, Hint: 3 },
  LogLevel: { Off: 0, Trace: 1, Debug: 2, Info: 3, Warning: 4, Error: 5 },
  ProcessExecution: class { constructor(process, args) { Object.assign(this, { process, args }); } },
  Task: class { constructor(definition, folder, name, source, execution, matcher) { Object.assign(this, { definition, folder, name, source, execution, matcher }); } },
  version: "1.91.0",
  env: { language: "en", appName: "stand-in", openExternal: async (address) => { shown.pages.push(new URL(address.toString()).hostname); return true; } },
  commands: { registerCommand(name, run) { commands[name] = run; return nothing; }, executeCommand: async () => {} },
  tasks: { executeTask: async ({ name, execution, matcher }) => { shown.tasks.push([name, execution.args[0], matcher]); } },
  window: {
    activeTextEditor: { document }, visibleTextEditors: [{ document }],
    tabGroups: { all: [], onDidChangeTabs: new Emitter().event, onDidChangeTabGroups: new Emitter().event },
    createOutputChannel: () => ({ append() {}, appendLine() {}, show() {}, dispose() {}, trace() {}, debug() {}, info() {}, warn() {}, error() {}, logLevel: 3, onDidChangeLogLevel: new Emitter().event }),
    createTerminal(options) { shown.terminals.push(options.shellArgs.slice(0, -1)); return { show() {} }; },
    showErrorMessage: async (message) => { shown.messages.push(message); },
    showWarningMessage: async (message) => { shown.messages.push(message); },
    showInformationMessage: async (message) => { shown.messages.push(message); },
    onDidChangeActiveTextEditor: new Emitter().event, onDidChangeTextEditorSelection: new Emitter().event, onDidChangeVisibleTextEditors: new Emitter().event,
  },
  workspace: {
    textDocuments: [document], notebookDocuments: [], workspaceFolders: [{ uri: Uri.file(process.cwd()), name: "plans", index: 0 }],
    getConfiguration: () => ({ get: (name) => settings[name], inspect: () => undefined }),
    createFileSystemWatcher: () => ({ onDidCreate: new Emitter().event, onDidChange: new Emitter().event, onDidDelete: new Emitter().event, dispose() {} }),
    getWorkspaceFolder: () => undefined, applyEdit: async () => true,
  },
  languages: {
    match: () => 10,
    createDiagnosticCollection: () => ({
      set(_, list) { shown.findings = (list ?? []).map((d) => [d.range.start.line + 1, d.severity, String(d.code?.value ?? d.code), d.message.split("\n")[0]]); },
      get: () => undefined, has: () => false, delete() {}, clear() {}, forEach() {}, dispose() {},
    }),
    registerDocumentFormattingEditProvider(_, provider) { format = provider; return nothing; },
  },
};

// others answers for all of the API that stands in no list above: events that never
// come, registrations that do nothing, and values that are only compared.
function others(name, own = {}) {
  const made = new Map();
  return new Proxy(own, {
    get(target, key) {
      if (key in target || typeof key === "symbol" || key === "then") return target[key];
      if (!made.has(key)) {
        if (key.startsWith("on")) made.set(key, new Emitter().event);
        else if (/^(register|create)/.test(key)) made.set(key, () => nothing);
        else if (/^[A-Z]/.test(key)) made.set(key, others(key, class {}));
        else made.set(key, undefined);
      }
      return made.get(key);
    },
  });
}
// The client library looks only at names that are there.
const classes = "CallHierarchyItem CancellationError CodeAction CodeActionTriggerKind CodeLens CompletionItem CompletionItemKind " +
  "CompletionItemTag CompletionList CompletionTriggerKind DiagnosticRelatedInformation DiagnosticTag DocumentHighlight DocumentHighlightKind " +
  "DocumentLink DocumentSymbol FileType FoldingRange FoldingRangeKind Hover InlayHint InlayHintKind InlayHintLabelPart InlineCompletionItem " +
  "InlineCompletionList InlineCompletionTriggerKind InlineValueEvaluatableExpression InlineValueText InlineValueVariableLookup LinkedEditingRanges " +
  "Location LocationLink MarkdownString NotebookCellKind ParameterInformation ProgressLocation RelativePattern SelectionRange SemanticTokens " +
  "SemanticTokensEdit SemanticTokensEdits SemanticTokensLegend SignatureHelp SignatureHelpTriggerKind SignatureInformation SnippetString " +
  "SnippetTextEdit SymbolInformation SymbolKind SymbolTag TabInputCustom TabInputNotebook TabInputText TabInputTextDiff " +
  "TextDocumentSaveReason TypeHierarchyItem WorkspaceEdit";
for (const name of classes.split(" ")) known[name] = others(name, class {});
for (const part of ["window", "workspace", "languages"]) known[part] = others(part, known[part]);

const load = Module._load;
const vscode = others("vscode", known);
Module._load = (name, ...rest) => (name === "vscode" ? vscode : load(name, ...rest));

// until waits for something to be there, ten seconds at most.
async function until(there) {
  for (let i = 0; i < 1000 && !there(); i++) await new Promise((next) => { setTimeout(next, 10); });
}

async function main() {
  const { activate, deactivate } = require(extension);
  await activate({ subscriptions: [] });
  await until(() => shown.findings.length > 0 || shown.messages.length > 0);
  if (format) {
    const edits = await format.provideDocumentFormattingEdits(document, { tabSize: 2, insertSpaces: true }, new CancellationTokenSource().token);
    shown.edits = (edits ?? []).map((e) => [e.range.start.line + 1, e.newText]);
  }
  await commands["pullscore.openScore"]();
  await until(() => shown.pages.length > 0 || shown.terminals.length > 0);
  await commands["pullscore.checkAll"]();
  await deactivate();
  console.log(JSON.stringify(shown));
}

main().then(() => process.exit(0), (error) => { console.error(error); process.exit(1); });
