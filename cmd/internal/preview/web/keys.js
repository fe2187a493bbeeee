// Keys: what each does, in one table that the help is made from.

const table = [];

// bind has a key do something: key as KeyboardEvent names it, "Shift+" before
// it where that is held; text says what it does. Where when is given and returns
// false, the key does nothing here and is the browser's.
export function bind(keys, text, run, when = () => true) {
  table.push({ keys: [].concat(keys), text, run, when });
}

// bound returns the table, for the help.
export function bound() { return table; }

// nameOf returns how the table writes the key of an event. Shift is told only
// with keys that it does not turn into another. Caps Lock is no Shift.
export function nameOf(event) {
  const { key, shiftKey } = event;
  if (key.length > 1) return shiftKey ? `Shift+${key}` : key;
  return key.toLowerCase() === key.toUpperCase() ? key : shiftKey ? key.toUpperCase() : key.toLowerCase();
}

// wordOf returns how people call a key.
export function wordOf(key) {
  const words = { " ": "Space", ArrowLeft: "←", ArrowRight: "→", ArrowUp: "↑", ArrowDown: "↓", "-": "−" };
  return key.split("+").map((k, i, all) => (k === "" ? (i === all.length - 1 ? "+" : "") : words[k] ?? k)).filter(Boolean).join(" ");
}

// tabbed tells whether the focus has come to where it is by Tab. It is not asked
// from :focus-visible, which is true of what was clicked on as soon as any key
// goes down.
let tabbed = false;

// byKeys reports whether the focus has come to where it is by the keyboard.
export function byKeys() { return tabbed; }

// followFocus keeps track of how the focus comes to where it is. Focus that a
// script moves, as when a list is drawn anew, has come as it had before.
function followFocus(doc) {
  let tab = false;
  doc.addEventListener("keydown", (event) => { tab = event.key === "Tab"; }, true);
  doc.addEventListener("pointerdown", () => { tab = tabbed = false; }, true);
  doc.addEventListener("focusin", () => { tabbed ||= tab; }, true);
}

// takes reports whether an element needs the key itself. What one types into
// takes all keys. What is pressed or slid takes its keys only from someone who
// has come to it by the keyboard: whoever has clicked on it goes on with the
// keys of the page.
export function takes(target, key, keyboard = tabbed) {
  if (!target?.closest) return false;
  if (target.closest("input:not([type=range]):not([type=checkbox]):not([type=radio]), textarea, select, [contenteditable]")) return true;
  if (!keyboard) return false;
  if (key === " " || key === "Enter") return target.closest("button, a, summary, input, [role=button]") !== null;
  if (/^(Shift\+)?(Arrow|Home|End)/.test(key)) return target.closest("input, [role=tablist], [role=radiogroup]") !== null;
  return false;
}

// listen has the keys of the table work in the document.
export function listen(doc) {
  followFocus(doc);
  let held = ""; // the key that the page has taken: a button would act as it comes up
  doc.addEventListener("keydown", (event) => {
    held = "";
    if (event.ctrlKey || event.metaKey || event.altKey || event.defaultPrevented) return;
    if (doc.querySelector("dialog[open]")) return;
    const name = nameOf(event);
    if (takes(event.target, name)) return;
    const entry = table.find((e) => e.keys.includes(name) && e.when());
    if (!entry) return;
    event.preventDefault();
    held = event.key;
    entry.run();
  });
  doc.addEventListener("keypress", (event) => { if (held) event.preventDefault(); });
  doc.addEventListener("keyup", (event) => {
    if (held && event.key === held) event.preventDefault();
    held = "";
  });
}
