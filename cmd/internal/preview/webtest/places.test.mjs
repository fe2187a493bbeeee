// Which shot is on show while plans come and go.

import assert from "node:assert/strict";
import test from "node:test";
import { Places } from "../web/places.js";

const state = (plans) => ({ plans: Object.entries(plans).map(([key, shots]) => ({ key, shots: shots.map((id) => ({ id })) })) });
const full = state({ a: ["1", "2"], b: ["3", "4", "5"] });
const emptied = state({ a: ["1", "2"], b: [] });
const at = (plan, shot) => ({ plan, shot });

function placed(t, wanted = null) {
  t.mock.timers.enable({ apis: ["setTimeout"] });
  const falls = [];
  const places = new Places(wanted, () => falls.push(places.shown));
  places.take(full);
  return { places, falls, wait: (ms) => t.mock.timers.tick(ms) };
}

test("a file that is empty for 80 ms or for a second loses nothing", (t) => {
  for (const ms of [80, 1000, 1999]) {
    const { places, falls, wait } = placed(t, at("b", "4"));
    places.take(emptied);
    wait(ms / 2);
    places.take(emptied); // another save while it is empty
    wait(ms / 2);
    assert.ok(places.missing);
    assert.deepEqual(places.shown, at("b", "4"));
    places.take(full);
    assert.ok(!places.missing);
    wait(10_000);
    assert.deepEqual([places.shown, falls], [at("b", "4"), []]);
    t.mock.timers.reset();
  }
});

test("after two seconds another shot is shown, until the wanted one is back", (t) => {
  const { places, falls, wait } = placed(t, at("b", "4"));
  places.take(emptied);
  wait(2000);
  assert.deepEqual([places.shown, places.wanted], [at("a", "1"), at("b", "4")]);
  assert.equal(falls.length, 1);
  places.take(emptied);
  wait(5000);
  assert.deepEqual(places.shown, at("a", "1"));
  places.take(full);
  assert.deepEqual(places.shown, at("b", "4"));
});

test("a shot that was renamed is followed by its place", (t) => {
  const { places, wait } = placed(t, at("b", "4"));
  places.take(state({ a: ["1", "2"], b: ["3", "4x", "5"] }));
  wait(2000);
  assert.deepEqual(places.shown, at("b", "4x"));
});

test("whoever has gone elsewhere is not brought back", (t) => {
  const { places, wait } = placed(t, at("b", "4"));
  places.take(emptied);
  wait(2000);
  places.go(at("a", "2"));
  places.take(full);
  assert.deepEqual(places.shown, at("a", "2"));
});

test("without any shot nothing is shown, and the first that comes is", (t) => {
  const { places, wait } = placed(t);
  assert.deepEqual(places.shown, at("a", "1"));
  places.take(state({ a: [], b: [] }));
  wait(2000);
  assert.equal(places.shown, null);
  places.take(state({ a: [], b: ["3"] }));
  assert.deepEqual(places.shown, at("b", "3"));
  places.take(full);
  assert.deepEqual(places.shown, at("a", "1"));
});
