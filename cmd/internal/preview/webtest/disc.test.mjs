// Spreading over discs, against geometry: areas, means and a slow sum.

import assert from "node:assert/strict";
import test from "node:test";
import { blurImage, chords, spread } from "../web/disc.js";

test("the rows of a disc have its area", () => {
  for (const r of [0.3, 0.5, 0.8, 1, 2.4, 7, 31.3]) {
    const area = 2 * chords(r).reduce((sum, h, k) => sum + (k ? 2 * h : h), 0);
    assert.ok(Math.abs(area - Math.PI * r * r) < 1e-9 * area, `${r}: ${area}`);
  }
});

// point returns a picture with one point of full light in its middle.
function point(size) {
  const data = new Float32Array(size * size * 4);
  data.fill(1, (size * (size >> 1) + (size >> 1)) * 4, (size * (size >> 1) + (size >> 1)) * 4 + 4);
  return data;
}

test("a point becomes an even disc of that radius, and no light is lost", () => {
  const size = 41, mid = 20;
  for (const r of [1.5, 4, 9.3]) {
    const out = spread(point(size), size, size, r);
    let sum = 0, inertia = 0;
    for (let y = 0; y < size; y++) {
      for (let x = 0; x < size; x++) {
        const v = out[(y * size + x) * 4 + 3];
        const far = Math.hypot(x - mid, y - mid);
        sum += v;
        inertia += v * far * far;
        if (far > r + 1.5) assert.ok(Math.abs(v) < 1e-6, `light at ${far} of a disc of ${r}`);
        if (far < r - 1.5) assert.ok(Math.abs(v * Math.PI * r * r - 1) < 1e-3, `${v} inside`);
      }
    }
    assert.ok(Math.abs(sum - 1) < 1e-5);
    // The mean square distance from the middle is r^2/2 in an even disc, and
    // the two points, source and sample, add 1/12 a side each.
    assert.ok(Math.abs(inertia - r * r / 2) < 0.36, `${inertia} for ${r}`);
  }
});

test("a wide even field stays as it is within, and the order of rows and columns is no matter", () => {
  const size = 30, r = 5;
  const out = spread(new Float32Array(size * size * 4).fill(0.5), size, size, r);
  for (let y = 7; y < size - 7; y++) for (let x = 7; x < size - 7; x++) assert.ok(Math.abs(out[(y * size + x) * 4] - 0.5) < 1e-5);
  const edge = out[(15 * size) * 4]; // half of the disc is outside
  assert.ok(edge > 0.25 && edge < 0.33);
  assert.ok(Math.abs(out[15 * 4] - edge) < 0.01);
});

test("colours do not bleed from what is clear", () => {
  const size = 21;
  const data = new Uint8ClampedArray(size * size * 4);
  for (let y = 0; y < size; y++) for (let x = 0; x < 10; x++) data.set([200, 40, 10, 255], (y * size + x) * 4);
  blurImage({ data, width: size, height: size }, 4);
  for (let x = 0; x < 13; x++) {
    const [r, g, , a] = data.slice((10 * size + x) * 4, (10 * size + x) * 4 + 4);
    if (a > 20) assert.ok(Math.abs(r - 200) <= 6 && Math.abs(g - 40) <= 6, `${r} ${g} at ${x}`);
  }
  const opacity = Array.from({ length: 15 }, (_, x) => data[(10 * size + x) * 4 + 3]).slice(4);
  for (let i = 1; i < opacity.length; i++) assert.ok(opacity[i] <= opacity[i - 1]);
});
