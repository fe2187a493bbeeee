// What a rehearsal says besides whether a try was a hit.

import assert from "node:assert/strict";
import test from "node:test";
import { Law } from "../web/blur.js";
import { coming } from "../web/coming.js";
import { length, miss, pathAt, place, says } from "../web/miss.js";
import { Practice, Tally, dots, mostTries } from "../web/practice.js";

const close = (a, b, by = 1e-9) => assert.ok(Math.abs(a - b) < by, `${a} is not ${b}`);

// A ring of 200 degrees from 1 m to infinity, even in 1/distance: at x degrees 1 / (1 - x/200).
const law = new Law(200, Array.from({ length: 201 }, (_, i) => (i === 200 ? Infinity : 1 / (1 - i / 200))));
const pull = { to_deg: 20, window_deg: [18, 22] };

test("a miss is the distance from the mark to where the ring was left", () => {
  for (let deg = 0; deg < 199; deg += 0.37) {
    const m = miss(law, pull, deg);
    close(m.at, 1 / (1 - deg / 200), 1e-3 * m.at);
    close(m.off, m.at - 1 / 0.9, 1e-3 * m.at);
    assert.equal(m.off > 0, deg > 20);
  }
  const m = miss(law, pull, 25);
  assert.equal(says(m, "KETTLE"), "landed 3.2 cm behind KETTLE (1.14 m), sharp 1.10 m to 1.12 m");
  assert.equal(says(miss(law, pull, 20), "KETTLE"), "landed on KETTLE (1.11 m), sharp 1.10 m to 1.12 m");
  assert.match(says(miss(law, { ...pull, open_near: true }, 10), "KETTLE"), /in front of KETTLE .*sharp up to 1.12 m$/);
  assert.equal(says(miss(law, pull, 200), "KETTLE"), "landed at infinity, KETTLE is at 1.11 m; sharp 1.10 m to 1.12 m");
});

test("lengths are in the units of the plan", () => {
  assert.equal(length(0.004), "4 mm");
  assert.equal(length(0.25), "25 cm");
  assert.equal(length(0.0254, true), "1.0 in");
  assert.equal(place(1.7018, true), "5 ft 7 in");
  assert.equal(place(0.3047, true), "1 ft 0 in");
});

test("a hand that is played again is where it was", () => {
  const path = [{ t: 1, deg: 10 }, { t: 2, deg: 30 }, { t: 2, deg: 31 }, { t: 3, deg: 31 }];
  assert.equal(pathAt(path, 0.5, 7), 10);
  assert.equal(pathAt(path, 1.5), 20);
  assert.equal(pathAt(path, 2.5), 31);
  assert.equal(pathAt(path, 9), 31);
  assert.equal(pathAt([], 1, 7), 7);
});

test("practice counts, and says a side only once it is sure of one", () => {
  const p = new Practice();
  assert.equal(p.says(), "");
  p.add({ error: 1, hit: true });
  p.add({ error: 3, hit: false });
  assert.equal(p.bias(), null);
  p.add({ error: 2, hit: true });
  close(p.bias().mean, 2);
  close(p.bias().range, 2.92 / Math.sqrt(3), 1e-9); // one degree of spread, two degrees of freedom
  assert.match(p.says(), /^2 of 3 in the window; you land 2.0° past the mark/);
  p.add({ error: -6, hit: false });
  assert.match(p.says(), /no side is sure: 0.0°/);
  for (let n = 4; n < mostTries; n++) p.add({ error: 0, hit: true });
  assert.equal(p.over, true);
  assert.equal(p.last().length, 10);
});

test("the side is that of the landings that are shown", () => {
  const p = new Practice();
  for (let n = 0; n < 5; n++) p.add({ error: -40, hit: false });
  for (let n = 0; n < dots; n++) p.add({ error: n % 2 ? 3 : 1, hit: true });
  close(p.bias().mean, 2);
  assert.match(p.says(), /^10 of 15 in the window; you land 2.0° past/);
});

test("next comes the pull that misses most and was landed least", () => {
  const pulls = [
    { number: 1, sign: "a", target: "OTTO", probability: 0.95, wanted: 0.9 },
    { number: 2, sign: "b", target: "BELL", probability: 0.6, wanted: 0.9 },
    { number: 3, sign: "c", target: "ROPE", probability: 0.7, wanted: 0.9 },
  ];
  const t = new Tally();
  assert.equal(t.next(pulls).number, 2);
  assert.equal(t.says(pulls, pulls[0]), "Next: pull 2 to BELL: by the plan it lands 60 %, and you have not tried it.");
  for (let n = 0; n < 4; n++) t.add(pulls[1], n > 0);
  assert.equal(t.next(pulls).number, 3); // 0.3 x 0.9 is more than 0.4 x 0.15
  t.add(pulls[2], false);
  assert.equal(t.says(pulls, pulls[2]), "Go on with pull 3 to ROPE: by the plan it lands 70 %, and you landed 0 of 1.");
  for (const pull of pulls) for (let n = 0; n < 40; n++) t.add(pull, true);
  assert.equal(t.next(pulls), null);
  assert.match(t.says(pulls, pulls[0]), /^Every pull/);
});

test("the words to come: what is said now and the next two lines, the cue filling", () => {
  const lines = [0, 2, 4, 6].map((at) => ({ who: "A", start_s: at, end_s: at + 1.5, words: [{ text: "w", start_s: at, end_s: at + 0.5 }, { text: "v", start_s: at + 0.5, end_s: at + 1.5 }] }));
  const pulls = [{ start_s: 2.5, land_s: 4 }];
  const at = coming(lines, pulls, 1.9);
  assert.equal(at.length, 3);
  assert.deepEqual(at.map((l) => l.said), [false, false, false]);
  assert.deepEqual(at.flatMap((l) => l.words.map((w) => w.cue)), [false, true, true, false, false, false]);
  close(at[0].words[1].fill, 0.4);
  assert.equal(at[1].words[0].fill, 0);
  assert.equal(coming(lines, pulls, 2.2)[0].said, true);
  assert.equal(coming(lines, pulls, 2.6)[0].words[1].fill, 1);
  assert.equal(coming(lines, pulls, 9).length, 0);
});
