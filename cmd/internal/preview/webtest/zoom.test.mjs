// The sizes of the score.

import assert from "node:assert/strict";
import test from "node:test";
import * as zoom from "../web/zoom.js";

const seven = (7 * 25.4) / 72; // points in millimetres

test("rungs go up and down and stop at the ends", () => {
  assert.equal(zoom.next(20, 1), 25);
  assert.equal(zoom.next(60, -1), 40);
  assert.equal(zoom.next(33, 1), 40);
  assert.equal(zoom.next(33, -1), 30);
  assert.equal(zoom.next(160, 1), zoom.largest);
  assert.equal(zoom.next(20, -1), 20);
  assert.deepEqual(zoom.ladder, zoom.ladder.toSorted((a, b) => a - b));
});

test("between two rungs the score is laid out at the lower and drawn larger", () => {
  assert.equal(zoom.rung(20), 20);
  assert.equal(zoom.rung(79.9), 60);
  assert.equal(zoom.rung(500), 160);
  assert.equal(zoom.rung(1), 20);
});

test("the smallest type is never under 11 pixels", () => {
  for (let column = 320; column <= 2500; column += 7) {
    const width = zoom.layoutWidth(column);
    assert.ok((seven * column) / width >= 11 - 1e-9, `${column} pixels for ${width} mm`);
    assert.ok(width === 297 || (seven * column) / (width + 1) < 11, `${column} pixels could show more than ${width} mm`);
  }
});

test("the wheel there and back is the same size, within the sizes", () => {
  assert.ok(Math.abs(zoom.wheeled(zoom.wheeled(60, -120), 120) - 60) < 1e-9);
  assert.ok(zoom.wheeled(60, -120) > 60);
  assert.equal(zoom.wheeled(60, -1e9), zoom.largest);
  assert.equal(zoom.wheeled(60, 1e9), 20);
});

test("what the pointer is on stays under it", () => {
  for (const [scroll, offset, before, after] of [[0, 100, 1, 2], [350, 20, 2, 0.5], [10, 0, 1, 4]]) {
    const content = (scroll + offset) / before; // at size 1
    assert.ok(Math.abs(content * after - (zoom.anchored(scroll, offset, before, after) + offset)) < 1e-9);
  }
});
