// New elements of the page.

import { plain } from "./text.js";

// make returns a new element with a class and a text; it is text whatever it
// holds, never markup, and never turns the order of what is beside it.
export function make(name, cls, text) {
  const el = document.createElement(name);
  if (cls) el.className = cls;
  if (text !== undefined) el.textContent = plain(text);
  return el;
}
