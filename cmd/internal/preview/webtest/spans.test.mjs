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

test("over what is narrowed time runs faster, and there and back is the same", () => {
  const [top_mm, bottom_mm] = [26, 180];
  const broken = { width_mm: 297, height_mm: 210, spans: [
    { from_s: 0, to_s: 2, left_mm: 45, right_mm: 125, top_mm, bottom_mm },
    { from_s: 2, to_s: 5, left_mm: 125, right_mm: 137, top_mm, bottom_mm, narrow: true },
    { from_s: 5, to_s: 6, left_mm: 137, right_mm: 177, top_mm, bottom_mm },
  ] };
  for (const [t, x] of [[0, 45], [1, 85], [2, 125], [3.5, 131], [5, 137], [5.5, 157], [6, 177]]) {
    const place = placeOf([broken], t);
    assert.ok(Math.abs(place.x - x / 297) < 1e-12, `${t} s is at ${place.x * 297} mm`);
    for (const loose of [false, true]) assert.ok(Math.abs(timeAt(broken, x / 297, 0.5, loose) - t) < 1e-9, `at ${x} mm`);
  }
  assert.equal(timeAt(broken, 179 / 297, 0.5), 6);
  assert.equal(timeAt(broken, 185 / 297, 0.5), null);
  assert.equal(timeAt(broken, 131 / 297, 7, true), 3.5);
});

test("dragged over two systems, the time is of the nearer", () => {
  const two = { width_mm: 297, height_mm: 210, spans: [
    { from_s: 0, to_s: 10, left_mm: 45, right_mm: 245, top_mm: 26, bottom_mm: 90 },
    { from_s: 10, to_s: 20, left_mm: 45, right_mm: 245, top_mm: 95, bottom_mm: 160 },
  ] };
  assert.equal(timeAt(two, 145 / 297, 80 / 210, true), 5);
  assert.equal(timeAt(two, 145 / 297, 120 / 210, true), 15);
  assert.equal(timeAt(two, 145 / 297, 1, true), 15);
});
