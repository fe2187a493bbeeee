// Spreading over discs, against geometry: areas, means and a slow sum.

import assert from "node:assert/strict";
import test from "node:test";
import { blurBy, blurImage, chords, spread, varianceOf } from "../web/disc.js";

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

// inertia returns the sum of a picture's opacity, and its variance along x.
function inertia(data, size) {
  let sum = 0, first = 0, second = 0;
  for (let i = 0; i < size * size; i++) {
    const v = data[i * 4 + 3], x = i % size;
    sum += v;
    first += v * x;
    second += v * x * x;
  }
  return { sum, variance: second / sum - (first / sum) ** 2 };
}

test("less than a pixel is spread exactly, and no light is lost", () => {
  const size = 15;
  for (const r of [0.15, 0.4, 0.7, 1, 1.3, 1.49]) {
    const image = { data: new Uint8ClampedArray(size * size * 4), width: size, height: size };
    for (let y = 5; y < 10; y++) for (let x = 5; x < 10; x++) image.data.set([90, 60, 30, 255], (y * size + x) * 4);
    const before = inertia(image.data, size);
    blurBy(image, varianceOf(r));
    const after = inertia(image.data, size);
    assert.ok(Math.abs(after.sum / before.sum - 1) < 0.005, `${r}: ${after.sum} of ${before.sum}`);
    const spread = 2 * Math.sqrt(Math.max(0, after.variance - before.variance));
    assert.ok(Math.abs(spread - r) < 0.06, `${spread} for ${r}`); // opacity is in whole steps of 255
    for (let i = 0; i < image.data.length; i += 4) {
      if (image.data[i + 3] > 0) assert.deepEqual([...image.data.slice(i, i + 3)], [90, 60, 30]);
    }
  }
});
