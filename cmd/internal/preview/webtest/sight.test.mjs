// What a camera that turns sees of the floor and of what is far away.

import assert from "node:assert/strict";
import test from "node:test";
import { boxOf, feetOf } from "../web/figures.js";
import { place } from "../web/labels.js";
import { Shot } from "../web/shot.js";
import { farAway, floorLines, horizon, shades, turner } from "../web/sight.js";

const close = (a, b, by = 1e-9) => assert.ok(Math.abs(a - b) <= by * Math.max(1, Math.abs(b)), `${a} is not ${b}`);
const level = { x: 0, y: 0, z: 0, pan: 0, tilt: 0, pupil: 0 };

test("a direction turns the other way than the camera", () => {
  // Reference: (0, 3, 0) with a pan of 20 degrees is 3 cos 20 along and 3 sin 20 to the left.
  const right = turner({ pan: 20, tilt: 0 })(0, 3, 0);
  close(right.along, 2.8190778623577253);
  close(right.across, -1.0260604299770062);
  const up = turner({ pan: 0, tilt: 30 })(0, 1, 0);
  close(up.along, Math.sqrt(3) / 2);
  close(up.above, -0.5);
});

test("a level camera has everything where one that never turns has it", () => {
  assert.equal(horizon(level, 2) + 0, 0);
  const p = farAway(-0.3, 0.012, 0, level, 1.5);
  close(p.x, -0.45);
  close(p.y, 0.018);
});

test("the horizon rises as the camera tilts down, and what is far away goes left as it pans right", () => {
  close(horizon({ ...level, tilt: -45 }, 2), 2);
  close(farAway(0, 0, 0, { ...level, pan: 45 }, 2).x, -2);
  close(farAway(0, 0, 90, { ...level, pan: 90 }, 2).x, 0);
  assert.equal(farAway(0, 0, 0, { ...level, pan: 180 }, 2), null);
});

test("lines of the floor stand under the people on them", () => {
  // Somebody at 2 m right and 5 m upstage has their feet on a crossing of lines.
  const camera = { x: 0.3, y: -0.2, z: 0.4, pan: 15, tilt: -8, pupil: 0.05 };
  const lines = floorLines(camera, 1.59, 1.4);
  const v = turner(camera)(2 - 0.3, 5.2, -1.99);
  const feet = { x: (v.across / (v.along - 0.05)) * 1.4, y: (v.above / (v.along - 0.05)) * 1.4 };
  const off = (l) => Math.abs((l.x2 - l.x1) * (feet.y - l.y1) - (l.y2 - l.y1) * (feet.x - l.x1)) / Math.hypot(l.x2 - l.x1, l.y2 - l.y1);
  const within = (l) => (feet.x - l.x1) * (feet.x - l.x2) + (feet.y - l.y1) * (feet.y - l.y2) <= 1e-9;
  const under = lines.filter((l) => off(l) < 1e-9 && within(l));
  assert.ok(under.length >= 2, `${under.length} lines`);
  assert.ok(under.some((a) => under.some((b) => Math.abs((a.x2 - a.x1) * (b.y2 - b.y1) - (a.y2 - a.y1) * (b.x2 - b.x1)) > 1e-6)), "they do not cross");
});

test("nothing of the floor is drawn behind the camera or without end", () => {
  for (const pan of [0, 37, 90, 179, -540]) {
    for (const tilt of [-89, -30, 0, 30, 89]) {
      for (const l of floorLines({ ...level, pan, tilt, pupil: 0.05 }, 1.59, 1.4)) {
        assert.ok([l.x1, l.y1, l.x2, l.y2].every((n) => Number.isFinite(n) && Math.abs(n) < 1000), JSON.stringify(l));
        assert.ok(Number.isInteger(l.shade) && l.shade >= 0 && l.shade < shades);
        if (tilt === 0) assert.ok(l.y1 < 0 && l.y2 < 0, "the floor is above the horizon");
      }
    }
  }
});

test("people stand above or below the axis", () => {
  const shot = new Shot({
    rate: [24, 1], every: 1, samples: 2, arcmin_per_width: 1800, sensor_width_mm: 24, sensor_height_mm: 18,
    focal_m: [0.05], f_number: [2], pupil_behind_m: [0], focus_m: [2], scale_m: [0.0512820513],
    camera: { right_m: [0], upstage_m: [0], high_m: [0, 0.5], pan_deg: [0], tilt_deg: [0], pupil_ahead_m: [0.05] },
    subjects: [{ name: "NEAR", person: true, deep_m: 0, lens_distance_m: [2], side_m: [0], above_m: [0, -0.5], blur_arcmin: [0] }],
  });
  assert.equal(shot.picture(0).subjects[0].y, 0);
  const { subjects, camera } = shot.picture(1 / 24);
  close(subjects[0].y, -0.5 * subjects[0].metre);
  assert.deepEqual(camera, { x: 0, y: 0, z: 0.5, pan: 0, tilt: 0, pupil: 0.05 });
});

test("a name says where its figure is, also above and below the frame", () => {
  const frame = { width: 600, height: 400, midX: 300, midY: 200 };
  const put = (y) => place([{ name: "KETTLE", x: 0, y, metre: 0.1, person: true, index: 0, deep: 0 }], frame, 12, (text) => [...text].length * 7)[0];
  assert.equal(put(0).text, "KETTLE");
  assert.equal(put(0.6).text, "▴ KETTLE");
  assert.equal(put(-0.6).text, "▾ KETTLE");
  for (const y of [-5, -0.6, 0.1, 0.6, 5]) assert.ok(put(y).y > 0 && put(y).y < 400, `${put(y).y}`);
});

test("a camera in a scene has the floor, and people the eyes, that the plan gives", () => {
  const told = {
    rate: [24, 1], every: 1, samples: 2, arcmin_per_width: 1800, sensor_width_mm: 24, sensor_height_mm: 18,
    focal_m: [0.05], f_number: [2], pupil_behind_m: [0], focus_m: [2], scale_m: [0.05], lines: [], cues: [], actions: [], pulls: [],
    camera: { right_m: [-0.6], upstage_m: [-1.6], high_m: [1.4], pan_deg: [20], tilt_deg: [0], pupil_ahead_m: [0.05], floor_m: 0 },
    subjects: [
      { name: "SITS", person: true, deep_m: 0, lens_distance_m: [2], side_m: [0], above_m: [0.2], eyes_m: [1.6, 1.2], blur_arcmin: [0] },
      { name: "USUAL", person: true, deep_m: 0, lens_distance_m: [3], side_m: [0], above_m: [0], blur_arcmin: [0] },
    ],
  };
  const of = (t) => new Shot(told).picture(t);
  assert.equal(of(0).camera.floor, 0);
  const [usual, sits] = of(1 / 24).subjects;
  assert.equal(feetOf(sits), 1.2);
  assert.equal(boxOf(sits)[3], 1.2);
  assert.equal(feetOf(of(0).subjects[1]), 1.6);
  assert.equal(feetOf(usual), 1.59);
  assert.ok(feetOf({ eyes: 0 }) > 0.4);
  // The feet of somebody on the floor of the scene stand where a line of it does: eyes 1.6 m
  // over the floor at 1 m right and 2 m upstage, seen from 1.4 m above it.
  const camera = of(0).camera;
  const turn = turner(camera);
  const eyes = turn(1.6, 3.6, 0.2), feet = turn(1.6, 3.6, -1.4);
  close(eyes.above - 1.6, feet.above);
  const y = (feet.above / (feet.along - 0.05)) * 1.4;
  assert.ok(floorLines(camera, 0, 1.4).some((l) => Math.abs(l.y1 - y) < 1e-9 || Math.abs(l.y2 - y) < 1e-9 || (l.y1 - y) * (l.y2 - y) < 0));
});
