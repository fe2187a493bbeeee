// Time on the pages of a score.

import assert from "node:assert/strict";
import test from "node:test";
import { placeOf, timeAt } from "../web/spans.js";

const page = (from_s, to_s) => ({
  width_mm: 297, height_mm: 210,
  spans: [{ from_s, to_s, left_mm: 45, right_mm: 275, top_mm: 26, bottom_mm: 180 }],
});
const pages = [page(0, 8), page(8, 15.5), { width_mm: 297, height_mm: 210, spans: [] }];

test("there and back is the same time", () => {
  for (let t = 0; t <= 15.5; t += 0.125) {
    const place = placeOf(pages, t);
    const back = timeAt(pages[place.page], place.x, (place.top + place.bottom) / 2);
    assert.ok(Math.abs(back - t) < 1e-9, `${t} came back as ${back}`);
  }
});

test("what is not seen of a drawing does not count", () => {
  const cut = { ...page(0, 8), width_mm: 279, origin_mm: 9 };
  assert.equal(placeOf([cut], 0).x, (45 - 9) / 279);
  assert.ok(Math.abs(timeAt(cut, (275 - 9) / 279, 0.5) - 8) < 1e-9);
});

test("a time is on one page, where two meet on the later", () => {
  assert.equal(placeOf(pages, 0).page, 0);
  assert.equal(placeOf(pages, 7.999).page, 0);
  assert.equal(placeOf(pages, 8).page, 1);
  assert.equal(placeOf(pages, 99).page, 1);
  assert.equal(placeOf(pages, 99).x, 275 / 297);
  assert.equal(placeOf(pages, -1).x, 45 / 297);
  assert.equal(placeOf([], 1), null);
  assert.equal(placeOf([pages[2]], 1), null);
});

test("beside the time axis there is no time, unless it is dragged there", () => {
  const [p] = pages;
  assert.equal(timeAt(p, 0.05, 0.5), null);
  assert.equal(timeAt(p, 0.5, 0.99), null);
  assert.equal(timeAt(p, 0.5, 0.05), null);
  assert.equal(timeAt(p, 0.05, 0.5, true), 0);
  assert.equal(timeAt(p, 1.5, 7, true), 8);
  assert.equal(timeAt(p, 276 / 297, 0.5), 8);
  assert.equal(timeAt(pages[2], 0.5, 0.5, true), null);
});
