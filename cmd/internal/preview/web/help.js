// The help: what every key does.

import { make } from "./shared.js";
import { bound, wordOf } from "./keys.js";

export function showHelp(dialog) {
  const head = make("h2", "", "Keys");
  head.id = "help-title";
  const list = make("dl", "keys");
  for (const { keys, text } of bound()) list.append(row(keys.map(wordOf), text));
  list.append(row(["Ctrl wheel"], "size of the score"));
  const close = make("button", "", "Close");
  close.type = "button";
  close.autofocus = true;
  close.addEventListener("click", () => dialog.close());
  dialog.replaceChildren(head, list, close);
  dialog.showModal();
}

function row(names, text) {
  const el = make("div");
  const term = make("dt");
  for (const name of names) term.append(make("kbd", "", name));
  el.append(term, make("dd", "", text));
  return el;
}
