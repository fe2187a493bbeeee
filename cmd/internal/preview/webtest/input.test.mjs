// Mouse wheels, keys, pointers and MIDI controllers. The messages are those of
// the MIDI 1.0 specification: a control change is Bn, number, value; numbers 32
// to 63 are the lower seven bits of 0 to 31.

import assert from "node:assert/strict";
import test from "node:test";
import { Controller, keyDegrees, turned, wheelDegrees } from "../web/input.js";

const close = (a, b) => assert.ok(Math.abs(a - b) < 1e-9, `${a} is not ${b}`);

test("a notch is a notch in pixels, lines and pages, up is farther", () => {
  close(wheelDegrees({ deltaY: -100, deltaX: 0, deltaMode: 0 }, 4), 4);
  close(wheelDegrees({ deltaY: 3, deltaX: 0, deltaMode: 1 }, 4), -4);
  close(wheelDegrees({ deltaY: 1, deltaX: 0, deltaMode: 2 }, 4), -4);
  close(wheelDegrees({ deltaY: 0, deltaX: 50, deltaMode: 0 }, 4), -2); // with Shift some send it so
});

test("keys turn, others do not", () => {
  assert.equal(keyDegrees({ key: "ArrowUp" }), 1);
  assert.equal(keyDegrees({ key: "ArrowLeft", shiftKey: true }), -5);
  assert.equal(keyDegrees({ key: "PageDown" }), -10);
  assert.equal(keyDegrees({ key: "Enter" }), undefined);
});

test("a pointer goes round the short way", () => {
  const centre = { x: 10, y: 10 };
  close(turned(centre, { x: 20, y: 10 }, { x: 10, y: 20 }), 90); // clockwise on a screen
  close(turned(centre, { x: 0, y: 9 }, { x: 0, y: 11 }), -2 * (Math.atan(0.1) * 180) / Math.PI);
});

test("a 7-bit value turns by its change, from wherever it stands", () => {
  const c = new Controller("absolute", { span: 254 });
  assert.equal(c.read([0xb0, 7, 64]), 0);
  close(c.read([0xb0, 7, 65]), 2);
  close(c.read([0xb0, 7, 60]), -10);
  assert.equal(c.read([0xb0, 8, 100]), 0); // another knob
  assert.equal(c.read([0xb1, 7, 100]), 0); // another channel
  assert.equal(c.read([0x90, 7, 100]), 0); // a note
  assert.equal(c.read([0xb0, 123, 0]), 0); // a mode
});

test("a 14-bit value puts its halves together", () => {
  const c = new Controller("fine", { span: 16383 });
  assert.equal(c.read([0xb0, 1, 64]), 0);
  assert.equal(c.read([0xb0, 33, 0]), 0);
  close(c.read([0xb0, 33, 5]), 5);
  assert.equal(c.read([0xb0, 1, 63]), 0);
  close(c.read([0xb0, 33, 127]), -6); // from 8197 to 8191
});

test("steps are read in each of their ways", () => {
  const read = (kind, data) => new Controller(kind, { step: 0.5 }).read([0xb0, 16, data]);
  close(read("complement", 1), 0.5);
  close(read("complement", 127), -0.5);
  close(read("complement", 3), 1.5);
  close(read("offset", 65), 0.5);
  close(read("offset", 62), -1);
  close(read("sign", 1), 0.5);
  close(read("sign", 66), -1);
});

test("forgetting takes the next knob that is turned", () => {
  const c = new Controller("complement");
  c.read([0xb0, 16, 1]);
  assert.equal(c.read([0xb0, 17, 1]), 0);
  c.forget();
  assert.equal(c.read([0xb0, 17, 1]), 1);
});
