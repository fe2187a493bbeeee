// The sizes of the score.

import assert from "node:assert/strict";
import test from "node:test";
import * as zoom from "../web/zoom.js";

test("steps go up and down and stop at the ends", () => {
  assert.equal(zoom.next(1, 1), 1.25);
  assert.equal(zoom.next(1, -1), 0.85);
  assert.equal(zoom.next(0.9, 1), 1);
  assert.equal(zoom.next(0.9, -1), 0.85);
  assert.equal(zoom.next(4, 1), 4);
  assert.equal(zoom.next(0.35, -1), 0.35);
  assert.deepEqual(zoom.steps, zoom.steps.toSorted((a, b) => a - b));
});

test("a page fits its column, or can be read", () => {
  assert.equal(zoom.baseWidth(1100), 1100);
  assert.equal(zoom.fit(1100), 1);
  assert.equal(zoom.baseWidth(360), zoom.readable);
  assert.ok(Math.abs(zoom.baseWidth(360) * zoom.fit(360) - 360) < 1e-9);
});

test("the wheel there and back is the same size, within the sizes", () => {
  assert.ok(Math.abs(zoom.wheeled(zoom.wheeled(1, -120), 120) - 1) < 1e-12);
  assert.ok(zoom.wheeled(1, -120) > 1);
  assert.equal(zoom.wheeled(1, -1e9), 4);
  assert.equal(zoom.wheeled(1, 1e9), 0.35);
});

test("what the pointer is on stays under it", () => {
  for (const [scroll, offset, before, after] of [[0, 100, 1, 2], [350, 20, 2, 0.5], [10, 0, 1, 4]]) {
    const content = (scroll + offset) / before; // at size 1
    assert.ok(Math.abs(content * after - (zoom.anchored(scroll, offset, before, after) + offset)) < 1e-9);
  }
});

test("a page that nearly fits its column does", () => {
  for (const column of [689, 704, 736, 759]) {
    assert.equal(zoom.baseWidth(column), column);
    assert.equal(zoom.fit(column), 1);
  }
  assert.equal(zoom.baseWidth(600), zoom.readable);
});
