// The table of keys.

import assert from "node:assert/strict";
import test from "node:test";
import { bind, bound, listen, nameOf, takes, wordOf } from "../web/keys.js";

// an element that is, or lies in, what the selector names
const within = (...names) => ({ closest: (selector) => (names.some((n) => selector.split(", ").includes(n)) ? {} : null) });

test("shift is told only where it turns the key into no other", () => {
  assert.equal(nameOf({ key: "N", shiftKey: true }), "N");
  assert.equal(nameOf({ key: "?", shiftKey: true }), "?");
  assert.equal(nameOf({ key: "ArrowLeft", shiftKey: true }), "Shift+ArrowLeft");
  assert.equal(nameOf({ key: "ArrowLeft", shiftKey: false }), "ArrowLeft");
});

test("keys have names that people know", () => {
  assert.equal(wordOf(" "), "Space");
  assert.equal(wordOf("Shift+ArrowLeft"), "Shift ←");
  assert.equal(wordOf("+"), "+");
  assert.equal(wordOf("-"), "−");
  assert.equal(wordOf("p"), "p");
});

test("an element keeps the keys that it needs", () => {
  assert.ok(takes(within("textarea"), "n"));
  assert.ok(takes(within("button"), " "));
  assert.ok(!takes(within("button"), "n"));
  assert.ok(!takes(within(), " "));
  assert.ok(takes(within("input"), "ArrowLeft"));
  assert.ok(takes(within("input"), "Shift+ArrowLeft"));
  assert.ok(!takes(within("button"), "ArrowLeft"));
  assert.ok(!takes(null, "n"));
});

test("a key does what the table says, and nothing beside a dialog or with Ctrl", () => {
  let hear, open = false, done = 0, stopped = 0;
  listen({ addEventListener: (_, f) => { hear = f; }, querySelector: () => (open ? {} : null) });
  bind(["x", "y"], "tests", () => done++);
  const press = (event) => hear({ target: within(), preventDefault: () => stopped++, ...event });
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
