// What the stage makes of an answer of the program.

import assert from "node:assert/strict";
import test from "node:test";
import { blurDisc, diffractionDisc } from "../web/blur.js";
import { place } from "../web/labels.js";
import { beatsOf, readBeat } from "../web/metronome.js";
import { Shot } from "../web/shot.js";

const told = {
  rate: [24000, 1001], every: 1, samples: 3, arcmin_per_width: 1800, sensor_width_mm: 24, sensor_height_mm: 18,
  focal_m: [0.05], f_number: [2], pupil_behind_m: [0], focus_m: [2, 4, null], scale_m: [0.0512820513, 0.0506329114, 0.05],
  subjects: [
    { name: "NEAR", person: true, deep_m: 0, lens_distance_m: [2], side_m: [-0.3], blur_arcmin: [0, 10, 20] },
    { name: "FAR", person: false, deep_m: 0, lens_distance_m: [6], side_m: [0.5], blur_arcmin: [15, 5, 7] },
  ],
  lines: [{ who: "NEAR", start_s: 1, end_s: 2, words: [{ text: "One", start_s: 1, end_s: 1.4 }, { text: "two", start_s: 1.5, end_s: 2 }] }],
  cues: [{ name: "bell", t_s: 3 }], actions: [{ text: "sits", start_s: 3, end_s: 4 }], pulls: [],
  ring: { throw_deg: 100, from_sensor_m: [1, 2, null], hand_deg: [0, 50, 100] },
};

const close = (a, b, by = 1e-9) => assert.ok(Math.abs(a - b) <= by * Math.max(1, Math.abs(b)), `${a} is not ${b}`);

test("a frame lasts until the next, also at 24000/1001", () => {
  const shot = new Shot(told);
  assert.equal(shot.sampleAt(0), 0);
  assert.equal(shot.sampleAt(1001 / 24000), 1);
  assert.equal(shot.sampleAt(1001 / 24000 - 1e-5), 0);
  assert.equal(shot.sampleAt(99), 2);
  const sparse = new Shot({ ...told, every: 2 });
  assert.equal(sparse.sampleAt((3 * 1001) / 24000), 1);
});

test("figures stand where the field of view has them, the farthest first", () => {
  const { subjects, aspect } = new Shot(told).picture(0);
  assert.deepEqual(subjects.map((u) => u.name), ["FAR", "NEAR"]);
  close(aspect, 4 / 3);
  // A metre in focus at 2 m is imaged at f/(x-f) of its size.
  close(subjects[1].metre, 0.05 / 1.95 / 0.024, 1e-8);
  close(subjects[1].x, -0.3 * (0.05 / 1.95 / 0.024), 1e-8);
  const diffraction = diffractionDisc({ focal: 0.05, number: 2 }, 2) * (1800 / 0.024);
  close(subjects[0].disc, Math.hypot(15, diffraction) / 1800, 1e-6);
});

test("with a hand on the ring the blur is worked out here", () => {
  const shot = new Shot(told);
  const { subjects, focus } = shot.picture(0, 50);
  close(focus, (2 / 2) * (1 + Math.sqrt(1 - (4 * 0.05) / 2)));
  const near = subjects.find((u) => u.name === "NEAR");
  close(near.blur, blurDisc({ focal: 0.05, number: 2 }, 2, focus) * (1800 / 0.024));
  assert.equal(shot.picture(0, 100).focus, Infinity);
});

test("what has no place is left out", () => {
  const shot = new Shot({ ...told, subjects: [{ ...told.subjects[0], lens_distance_m: [0] }, { ...told.subjects[1], lens_distance_m: [null] }] });
  assert.deepEqual(shot.picture(0).subjects, []);
});

test("words fall when they sound", () => {
  const shot = new Shot(told);
  assert.deepEqual(shot.words(0.9), []);
  assert.deepEqual(shot.words(1.2)[0].words.map((w) => w.fallen), [true, false]);
  assert.deepEqual(shot.words(2.5)[0].words.map((w) => w.fallen), [true, true]);
  assert.deepEqual(shot.words(2.9), []);
  assert.deepEqual(shot.signs(3.1).map((s) => s.text), ["bell", "sits"]);
});

test("names lie over no other and within the frame", () => {
  const frame = { width: 400, height: 300, midX: 200, midY: 150 };
  const subjects = Array.from({ length: 8 }, (_, i) => ({ name: `PERSON ${i}`, person: true, index: i, deep: 0, metre: 0.4, x: -1 + i * 0.25 }));
  const names = place(subjects, frame, 12, (text) => text.length * 7);
  for (const [i, a] of names.entries()) {
    assert.ok(a.x - a.w / 2 >= 0 && a.x + a.w / 2 <= 400 && a.y > 12 && a.y < 300, JSON.stringify(a));
    for (const b of names.slice(i + 1)) assert.ok(Math.abs(a.x - b.x) >= (a.w + b.w) / 2 || Math.abs(a.y - b.y) >= 17, `${a.text} and ${b.text}`);
  }
  assert.deepEqual(names.filter((n) => n.out < 0).map((n) => n.text), ["◂ PERSON 0", "◂ PERSON 1"]);
});

test("a count-in is over a beat after its last click", () => {
  assert.deepEqual(beatsOf(4, 0.5), { beats: [0, 0.5, 1, 1.5], end: 2 });
  assert.equal(readBeat("0.75"), 0.75);
  assert.equal(readBeat(""), 0.5);
  assert.equal(readBeat("0.01"), 0.1);
  assert.equal(readBeat("99"), 4);
});
