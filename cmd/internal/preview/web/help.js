// The help: what every key does.

import { make } from "./make.js";
import { bound, wordOf } from "./keys.js";

export function showHelp(dialog) {
  const head = make("h2", "", "Keys");
  head.id = "help-title";
  const list = make("dl", "keys");
  for (const { keys, text } of inHelp(bound())) list.append(row(keys.map(wordOf), text));
  const close = make("button", "", "Close");
  close.type = "button";
  close.autofocus = true;
  close.addEventListener("click", () => dialog.close());
  dialog.replaceChildren(head, list, close);
  dialog.showModal();
}

// wheel are the keys and turns that are not bound in the table.
const wheel = [
  { keys: ["ArrowUp", "ArrowDown"], text: "a try: the hand by 1°, as with ← →" },
  { keys: ["Shift+ArrowUp", "Shift+ArrowDown"], text: "a try: the hand by 5°" },
  { keys: ["PageUp", "PageDown"], text: "a try: the hand by 10°" },
  { keys: ["Wheel"], text: "a try: the hand by a notch" },
  { keys: ["Ctrl+Wheel"], text: "size of the score" },
];

// inHelp returns the keys in the order of the help: Space first.
export function inHelp(table) {
  const space = table.filter((e) => e.keys.includes(" "));
  return [...space, ...table.filter((e) => !space.includes(e)), ...wheel];
}

function row(names, text) {
  const el = make("div");
  const term = make("dt");
  for (const name of names) term.append(make("kbd", "", name));
  el.append(term, make("dd", "", text));
  return el;
}
