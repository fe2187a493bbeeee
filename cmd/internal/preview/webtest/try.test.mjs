// Tries at a pull: onset, landing, result.

import assert from "node:assert/strict";
import test from "node:test";
import { follow, report, rest, Try } from "../web/try.js";

const pull = { from_deg: 200, to_deg: 100, window_deg: [97, 104], start_s: 3, land_s: 4.5 };

// made turns the hand evenly from one time to another.
function made(to, from = 3.1, until = 4.6, p = pull) {
  const t = new Try(p, 24, 300);
  for (let n = 1; n <= 60; n++) t.turn(from + ((until - from) * n) / 60, (to - p.from_deg) / 60);
  return t;
}

const close = (a, b, by = 1e-6) => assert.ok(Math.abs(a - b) < by, `${a} is not ${b}`);

test("it lands when it rests, and not before", () => {
  const t = made(101);
  assert.equal(t.look(4.6 + rest - 0.01), false);
  assert.equal(t.look(4.6 + rest + 0.001), true);
  const r = t.result();
  close(r.travel, 100);
  close(r.error, -1); // short of the mark: it came from above
  assert.equal(r.hit, true);
  assert.equal(r.late, 2); // 0.1 s
  close(r.time, 1.5, 0.03);
  assert.ok(r.onset >= 2 && r.onset <= 3);
  close(r.overshoot, 0);
  close(r.window[0], -4);
  close(r.window[1], 3);
});

test("a turn after the landing counts no more", () => {
  const t = made(101);
  t.look(5);
  t.turn(5.1, -20);
  close(t.result().error, -1);
});

test("the window has two sides", () => {
  assert.equal(made(96.9).look(9) && made(96.9).landed, null);
  for (const [to, hit] of [[96.9, false], [97.1, true], [103.9, true], [104.1, false]]) {
    const t = made(to);
    t.look(9);
    assert.equal(t.result().hit, hit, `${to}`);
    close(t.result().error, 100 - to);
  }
  const open = made(20, 3.1, 4.6, { ...pull, open_near: true });
  open.look(9);
  assert.equal(open.result().hit, true);
  assert.equal(open.result().window[1], Infinity);
});

test("an overshoot is how far past the mark the hand was", () => {
  const t = made(94);
  t.turn(4.7, 5);
  t.look(9);
  const r = t.result();
  close(r.overshoot, 6);
  close(r.error, 1);
});

test("a rest early on the way is a pause, a tremble no motion", () => {
  const t = new Try(pull, 24, 300);
  t.turn(2, 0.2);
  t.turn(2.1, -0.2);
  assert.equal(t.onset, undefined);
  assert.equal(t.look(3.9), false);
  t.turn(3.2, -10);
  assert.equal(t.onset, 2.1);
  assert.equal(t.look(3.9), false);
  t.turn(4, -40);
  assert.equal(t.look(4.4), true);
});

test("the stops hold the hand, and a hand that never sets off has no result", () => {
  const t = new Try(pull, 24, 300);
  t.turn(3, 500);
  assert.equal(t.deg, 300);
  const still = new Try(pull, 24, 300);
  still.land();
  assert.equal(still.result(), undefined);
});

test("words say which way", () => {
  const t = made(103, 3, 4.5);
  t.look(9);
  const [verdict, when] = report(t.result());
  assert.match(verdict, /^In the window: 3\.0° short of the mark\. The window goes from −4\.0° to \+3\.0°\.$/);
  assert.match(when, /^Landed on the frame, set off/);
  const late = made(110, 3, 5);
  late.look(9);
  assert.match(report(late.result()).join(" "), /^Outside the window: 10\.0° short of the mark.*Landed 12 frames late/);
});

test("a pull is followed through a save by what it is, not by its number", () => {
  const was = { ...pull, sign: "a", number: 2, from: "NORA", to: "KEY", target: "KEY" };
  const other = { ...was, sign: "b", number: 2, from: "KEY", to: "DOOR", target: "DOOR" };
  const moved = { ...was, number: 3 };
  assert.deepEqual(follow(was, [other, moved]), { pull: moved });
  for (const [now, why] of [
    [[], "pull 2 to KEY is gone"],
    [[other], "pull 2 to KEY is gone"],
    [[{ ...was, sign: "c", start_s: 3.25, land_s: 4.75 }], "pull 2 now starts at 3.25 s and not 3.00 s, now lands at 4.75 s and not 4.50 s"],
    [[{ ...was, sign: "c", to_deg: 90 }], "pull 2 now goes to 90.0° and not 100.0°"],
    [[{ ...was, sign: "c", window_deg: [98, 103] }], "the window of pull 2 is another now"],
    [[{ ...was, sign: "c", open_near: true }], "the window of pull 2 is another now"],
    [[{ ...was, sign: "c" }], "pull 2 is for another hand, ring or rate now"],
  ]) assert.deepEqual(follow(was, now), { why });
});

test("stamps out of order do not turn time back", () => {
  const t = new Try(pull, 24, 300);
  t.turn(3.2, -5);
  t.turn(3.1, -5);
  t.turn(3.3, -5);
  assert.deepEqual(t.path.map((p) => p.t), [3.2, 3.2, 3.2, 3.3]);
});
