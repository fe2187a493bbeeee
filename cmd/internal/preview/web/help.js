// The help: what every key does.

import { make } from "./shared.js";
import { bound, wordOf } from "./keys.js";

export function showHelp(dialog) {
  const head = make("h2", "", "Keys");
  head.id = "help-title";
  const list = make("dl", "keys");
  for (const { keys, text } of bound()) {
    const names = make("dt");
    for (const key of keys) names.append(make("kbd", "", wordOf(key)));
    list.append(names, make("dd", "", text));
  }
  list.append(make("dt", "", "Ctrl wheel"), make("dd", "", "size of the score"));
  const close = make("button", "", "Close");
  close.type = "button";
  close.autofocus = true;
  close.addEventListener("click", () => dialog.close());
  dialog.replaceChildren(head, list, close);
  dialog.showModal();
}
