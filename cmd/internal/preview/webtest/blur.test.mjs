// The page's lens against vectors that the program's own formulas gave.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import test from "node:test";
import { blurDisc, diffractionDisc, fromSensor, Law, limitsOf, scaleOf, wordFor } from "../web/blur.js";

const vectors = JSON.parse(readFileSync(new URL("./vectors.json", import.meta.url)));
const far = (v) => (v === null ? Infinity : v);
const near = (a, b, by = 1e-9) => a === b || Math.abs(a - b) <= by * Math.max(Math.abs(a), Math.abs(b)) || Math.max(Math.abs(a), Math.abs(b)) < 1e-15;

test("blur is the program's, with pupils and infinity", () => {
  assert.ok(vectors.length > 200);
  for (const v of vectors) {
    const got = blurDisc({ focal: v.focal, number: v.number, behind: v.behind }, far(v.d), far(v.x));
    assert.ok(near(got, far(v.blur)), `${JSON.stringify(v)} gives ${got}`);
  }
});

test("a distance from the sensor gives back the one from the lens", () => {
  for (const v of vectors) {
    if (far(v.x) < 2 * v.focal) continue; // the other side of 1:1
    assert.ok(near(fromSensor(far(v.from_sensor), v.focal), far(v.x), 1e-7), JSON.stringify(v));
  }
  assert.ok(Number.isNaN(fromSensor(0.1, 0.05)));
});

test("the law is straight in 1/distance, and held at its stops", () => {
  const law = new Law(100, [0.5, 1, 2, Infinity]);
  assert.ok(near(law.distance(0), 0.5));
  assert.ok(near(law.distance(100 / 6), 1 / 1.5)); // half-way in 1/distance
  assert.ok(near(law.distance(200 / 3), 2));
  assert.ok(near(law.distance(500 / 6), 4));
  assert.equal(law.distance(100), Infinity);
  assert.equal(law.distance(1e9), Infinity);
  assert.equal(law.distance(-1), 0.5);
});

test("a lens whose breathing is known is scaled by its ring", () => {
  assert.ok(near(scaleOf({ focal: 0.05, breathes: 3 }, 1, 0), 0.0515));
  assert.ok(near(scaleOf({ focal: 0.05, breathes: 3 }, 1, 1), 0.05));
  assert.equal(scaleOf({ focal: 0.05 }, Infinity, 1), 0.05);
  assert.ok(near(scaleOf({ focal: 0.05 }, 0.1, 0), 0.1)); // life size at 2f
});

// Rows DIF-A, DIF-C and DIF-S of testdata/model-moments.tsv, 24.89 mm wide at f/16.
test("a small stop leaves less for defocus, and hides more of it", () => {
  const disc = diffractionDisc({ focal: 0.05, number: 16 }, Infinity);
  assert.ok(near(disc * 1e6, 15.356));
  const perDisc = (60 * 180) / Math.PI * 12 / (0.02489 * 18);
  const { sharp, seen } = limitsOf(2, 4.6, disc * perDisc);
  assert.ok(Math.abs((sharp / perDisc) * 1e6 - 15.361602) < 0.1, sharp);
  assert.ok(Math.abs(seen - 5.6334841) < 0.01, seen);
  assert.deepEqual(limitsOf(2, 4.6, 0), { sharp: 2, seen: 4.6 });
  assert.ok(near(diffractionDisc({ focal: 0.05, number: 2 }, 0.1), 2 * 1.745 * 550e-9 * 2)); // life size at 2f
});

test("words go by what is seen", () => {
  assert.equal(wordFor(2, 2, 4.6), "sharp");
  assert.equal(wordFor(2.01, 2, 4.6), "faint");
  assert.equal(wordFor(4.7, 2, 4.6), "soft");
  assert.equal(wordFor(5, 6, 4.6), "sharp");
  assert.equal(wordFor(6.1, 6, 4.6), "soft");
});
