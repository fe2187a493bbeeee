// The help lists all keys.

import assert from "node:assert/strict";
import test from "node:test";
import { inHelp } from "../web/help.js";

test("Space comes first, and what turns the wheel is there", () => {
  const list = inHelp([{ keys: ["r"], text: "rehearse" }, { keys: [" "], text: "play" }, { keys: ["n"], text: "next" }]);
  assert.deepEqual(list.slice(0, 3).map((e) => e.text), ["play", "rehearse", "next"]);
  const keys = list.flatMap((e) => e.keys);
  for (const key of ["ArrowUp", "ArrowDown", "Shift+ArrowUp", "PageUp", "PageDown", "Wheel", "Ctrl+Wheel"]) assert.ok(keys.includes(key), key);
});
