// Keys: what each does, in one table that the help is made from.

const table = [];

// bind has a key do something: key as KeyboardEvent names it, "Shift+" before
// it where that is held; text says what it does.
export function bind(keys, text, run) {
  table.push({ keys: [].concat(keys), text, run });
}

// bound returns the table, for the help.
export function bound() { return table; }

// nameOf returns how the table writes the key of an event. Shift is told only
// with keys that it does not turn into another.
export function nameOf(event) {
  const { key, shiftKey } = event;
  return shiftKey && key.length > 1 ? `Shift+${key}` : key;
}

// wordOf returns how people call a key.
export function wordOf(key) {
  const words = { " ": "Space", ArrowLeft: "←", ArrowRight: "→", ArrowUp: "↑", ArrowDown: "↓", "-": "−" };
  return key.split("+").map((k, i, all) => (k === "" ? (i === all.length - 1 ? "+" : "") : words[k] ?? k)).filter(Boolean).join(" ");
}

// takes reports whether an element needs the key itself: what one types into
// takes all; a button takes what presses it; a slider, the arrows.
export function takes(target, key) {
  if (!target?.closest) return false;
  if (target.closest("input:not([type=range]):not([type=checkbox]):not([type=radio]), textarea, select, [contenteditable]")) return true;
  if (key === " " || key === "Enter") return target.closest("button, a, summary, input, [role=button]") !== null;
  if (/^(Shift\+)?(Arrow|Home|End)/.test(key)) return target.closest("input, [role=tablist], [role=radiogroup]") !== null;
  return false;
}

// listen has the keys of the table work in the document.
export function listen(doc) {
  doc.addEventListener("keydown", (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey || event.defaultPrevented) return;
    if (doc.querySelector("dialog[open]")) return;
    const name = nameOf(event);
    if (takes(event.target, name)) return;
    const entry = table.find((e) => e.keys.includes(name));
    if (!entry) return;
    event.preventDefault();
    entry.run();
  });
}
