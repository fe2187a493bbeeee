// Names beside the figures of the stage.

import assert from "node:assert/strict";
import test from "node:test";
import { place } from "../web/labels.js";

const frame = { width: 600, height: 400, midX: 300, midY: 200 };
const measure = (text) => [...text].length * 7;
const figure = (name, x = 0) => ({ name, x, metre: 0.1, person: true, index: 0, deep: 0 });

test("a name of 300 letters is shortened, inside the frame and beside it", () => {
  for (const x of [0, -3, 3]) {
    const [put] = place([figure("Ж".repeat(300), x)], frame, 12, measure);
    assert.ok(put.text.includes("…") && put.text.includes("ЖЖЖ"), put.text);
    assert.ok(put.x - put.w / 2 >= 0 && put.x + put.w / 2 <= 600, `${put.x} ${put.w}`);
  }
  assert.equal(place([figure("KETTLE")], frame, 12, measure)[0].text, "KETTLE");
});

test("a name turns the order of nothing beside it", () => {
  const [put] = place([figure("\u202eevil\u202c")], frame, 12, measure);
  assert.equal(put.text, "\ufffdevil\ufffd");
});
