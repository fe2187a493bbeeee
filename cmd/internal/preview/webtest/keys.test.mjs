// The table of keys.

import assert from "node:assert/strict";
import test from "node:test";
import { bind, bound, listen, nameOf, takes as takesKey, wordOf } from "../web/keys.js";

// an element that is, or lies in, what the selector names
const within = (...names) => ({ closest: (selector) => (names.some((n) => selector.split(", ").includes(n)) ? {} : null) });

// a document that hears; hear sends it an event
function fakeDocument(open = () => null) {
  const heard = [];
  return {
    addEventListener: (kind, f) => heard.push([kind, f]),
    querySelector: open,
    hear: (kind, event) => heard.forEach(([k, f]) => k === kind && f(event)),
  };
}

test("shift is told only where it turns the key into no other", () => {
  assert.equal(nameOf({ key: "N", shiftKey: true }), "N");
  assert.equal(nameOf({ key: "?", shiftKey: true }), "?");
  assert.equal(nameOf({ key: "ArrowLeft", shiftKey: true }), "Shift+ArrowLeft");
  assert.equal(nameOf({ key: "ArrowLeft", shiftKey: false }), "ArrowLeft");
});

test("Caps Lock is no Shift", () => {
  assert.equal(nameOf({ key: "N", shiftKey: false }), "n");
  assert.equal(nameOf({ key: "n", shiftKey: true }), "N");
  assert.equal(nameOf({ key: "+", shiftKey: true }), "+");
  assert.equal(nameOf({ key: " ", shiftKey: true }), " ");
});

test("keys have names that people know", () => {
  assert.equal(wordOf(" "), "Space");
  assert.equal(wordOf("Shift+ArrowLeft"), "Shift ←");
  assert.equal(wordOf("+"), "+");
  assert.equal(wordOf("-"), "−");
  assert.equal(wordOf("p"), "p");
});

test("an element keeps the keys that it needs", () => {
  const takes = (target, key) => takesKey(target, key, true);
  assert.ok(takes(within("textarea"), "n"));
  assert.ok(takes(within("button"), " "));
  assert.ok(!takes(within("button"), "n"));
  assert.ok(!takes(within(), " "));
  assert.ok(takes(within("input"), "ArrowLeft"));
  assert.ok(takes(within("input"), "Shift+ArrowLeft"));
  assert.ok(!takes(within("button"), "ArrowLeft"));
  assert.ok(!takes(null, "n"));
});

test("what was clicked on leaves the page its keys, but for what one types into", () => {
  for (const [name, key] of [["button", " "], ["summary", " "], ["input", "ArrowLeft"], ["input", "Home"], ["button", "Enter"]]) {
    assert.ok(!takesKey(within(name), key, false), `${name} takes ${key}`);
  }
  assert.ok(takesKey(within("textarea"), " ", false));
  assert.ok(takesKey(within("select"), "n", false));
});

test("a key does what the table says, and nothing beside a dialog or with Ctrl", () => {
  let open = false, done = 0, stopped = 0;
  const doc = fakeDocument(() => (open ? {} : null));
  listen(doc);
  bind(["x", "y"], "tests", () => done++);
  const press = (event) => doc.hear("keydown", { target: within(), preventDefault: () => stopped++, ...event });
  press({ key: "x" });
  press({ key: "y" });
  assert.equal(done, 2);
  press({ key: "x", ctrlKey: true });
  press({ key: "x", metaKey: true });
  press({ key: "z" });
  press({ key: "x", target: within("textarea") });
  press({ key: "x", defaultPrevented: true });
  open = true;
  press({ key: "x" });
  assert.equal(done, 2);
  assert.equal(stopped, 2);
  assert.ok(bound().some((e) => e.text === "tests"));
});

test("a key that the page has taken presses nothing as it comes up", () => {
  const doc = fakeDocument();
  listen(doc);
  let may = true, stopped = 0, done = 0;
  bind(["v"], "sometimes", () => done++, () => may);
  const send = (kind, key) => doc.hear(kind, { key, target: within(), preventDefault: () => stopped++ });
  send("keydown", "v");
  send("keyup", "v");
  assert.deepEqual([stopped, done], [2, 1]);
  may = false;
  send("keydown", "v");
  send("keyup", "v");
  assert.deepEqual([stopped, done], [2, 1]);
});

test("a button takes Space from who has come to it by Tab, until something is clicked on", () => {
  const doc = fakeDocument();
  listen(doc);
  let done = 0;
  bind(["w"], "counts", () => done++);
  bind([" "], "counts too", () => done++);
  const key = (k) => doc.hear("keydown", { key: k, target: within("button"), preventDefault: () => {} });
  doc.hear("pointerdown", {});
  doc.hear("focusin", {});
  key(" ");
  assert.equal(done, 1);
  key("w"); // which has a script move the focus
  doc.hear("focusin", {});
  key(" ");
  assert.equal(done, 3);
  key("Tab");
  doc.hear("focusin", {});
  key(" ");
  assert.equal(done, 3);
  key("w");
  doc.hear("focusin", {}); // drawn anew: still come by Tab
  key(" ");
  assert.equal(done, 4);
  doc.hear("pointerdown", {});
  key(" ");
  assert.equal(done, 5);
});
