// The extension: it starts `pullscore lsp` and adds two commands. All that it shows
// comes from that program.

import { execFile } from "node:child_process";
import * as vscode from "vscode";
import { LanguageClient } from "vscode-languageclient/node";

let client;

// setting returns what a person has set for Pullscore.
function setting(name) { return vscode.workspace.getConfiguration("pullscore").get(name); }

// program returns how to call pullscore: as set, or from the PATH.
function program() { return setting("path") || "pullscore"; }

// choices returns the settings that the program reads.
function choices() { return { hints: setting("hints"), units: setting("units") }; }

// missing says that the program is not there, and how to get it.
async function missing() {
  const open = "Open settings";
  const text = `Pullscore: the program \`${program()}\` did not start. In a copy of its repository, run: go install ./cmd/pullscore. Or set pullscore.path.`;
  if (await vscode.window.showErrorMessage(text, open) === open) {
    await vscode.commands.executeCommand("workbench.action.openSettings", "pullscore.path");
  }
}

// found reports whether the program is there. The client library would show a message
// of its own for a program that is not.
function found() {
  return new Promise((resolve) => { execFile(program(), ["version"], (error) => resolve(error === null)); });
}

// start starts the server.
async function start() {
  if (!await found()) return missing();
  client = new LanguageClient("pullscore", "Pullscore", { command: program(), args: ["lsp"] }, {
    documentSelector: [{ scheme: "file", language: "pull" }],
    initializationOptions: choices(),
  });
  client.registerFeature(lensCommands);
  return client.start();
}

// lensCommands tells the server that a lens may have it open the score: the client
// library registers the commands that a server offers.
const lensCommands = {
  fillClientCapabilities(capabilities) {
    capabilities.experimental = { ...capabilities.experimental, commands: { commands: ["pullscore.page"] } };
  },
  initialize() {},
  getState: () => ({ kind: "static" }),
  clear() {},
};

async function stop() {
  const running = client;
  client = undefined;
  await running?.stop().catch(() => {}); // it may have ended by itself
}

// openScore opens the live page: by the server if it can, which draws unsaved text,
// else from a terminal.
async function openScore() {
  const document = vscode.window.activeTextEditor?.document;
  if (!document) return;
  const page = "pullscore.page";
  if (client?.initializeResult?.capabilities.executeCommandProvider?.commands.includes(page)) {
    await client.sendRequest("workspace/executeCommand", { command: page, arguments: [document.uri.toString()] });
    return;
  }
  const terminal = vscode.window.createTerminal({ name: "Pullscore", shellPath: program(), shellArgs: ["watch", "--open", document.uri.fsPath] });
  terminal.show(true);
}

// checkAll checks the plans of every folder of the workspace, as tasks whose findings
// go to the list of problems.
async function checkAll() {
  for (const folder of vscode.workspace.workspaceFolders ?? []) {
    const run = new vscode.ProcessExecution(program(), ["check", folder.uri.fsPath], { cwd: folder.uri.fsPath });
    const task = new vscode.Task({ type: "pullscore" }, folder, "Check all plans", "Pullscore", run, "$pullscore");
    await vscode.tasks.executeTask(task);
  }
}

// pointed tells the server where the cursor is, so that the score lights the pull there.
function pointed({ textEditor: { document }, selections: [{ active }] }) {
  if (document.languageId !== "pull" || !client?.isRunning()) return;
  const textDocument = { uri: document.uri.toString() };
  client.sendNotification("pullscore/cursor", { textDocument, position: { line: active.line, character: active.character } })
    .catch(() => {}); // the server has ended
}

// changed starts another program if another is set, and tells the running one of
// the other settings.
async function changed(event) {
  if (event.affectsConfiguration("pullscore.path")) {
    await stop();
    await start();
  } else if (event.affectsConfiguration("pullscore")) {
    await client?.sendNotification("workspace/didChangeConfiguration", { settings: choices() });
  }
}

export async function activate(context) {
  context.subscriptions.push(
    vscode.commands.registerCommand("pullscore.openScore", openScore),
    vscode.commands.registerCommand("pullscore.checkAll", checkAll),
    vscode.workspace.onDidChangeConfiguration(changed),
    vscode.window.onDidChangeTextEditorSelection(pointed),
  );
  await start();
}

export function deactivate() { return stop(); }
