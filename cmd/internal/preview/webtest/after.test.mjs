// Which pull of which take is next.

import assert from "node:assert/strict";
import test from "node:test";
import { Tally, onward, readTake } from "../web/after.js";

test("taps go through the pulls and on to the next take", () => {
  const tally = new Tally();
  const places = [];
  for (const word of ["sharp", "late", "buzz", "sharp", "early"]) {
    places.push(tally.next("k/1", [1, 2, 4]));
    tally.tapped("k/1", [1, 2, 4], word);
  }
  assert.deepEqual(places.map((p) => `${p.take}.${p.pull}`), ["1.1", "1.2", "1.4", "2.1", "2.2"]);
});

test("undo goes back to what was tapped last in the plan, also in another shot", () => {
  const tally = new Tally();
  tally.tapped("k/1", [1, 2], "sharp");
  tally.tapped("k/2", [1], "late");
  tally.tapped("other/1", [1], "buzz");
  assert.equal(tally.back("k").word, "late");
  assert.deepEqual(tally.next("k/2", [1]), { take: 1, pull: 1 });
  assert.equal(tally.back("k").word, "sharp");
  assert.deepEqual(tally.next("k/1", [1, 2]), { take: 1, pull: 1 });
  assert.equal(tally.back("k"), undefined);
  assert.equal(tally.back("other").word, "buzz");
});

test("a pull that is gone gives way to the first", () => {
  const tally = new Tally();
  tally.choose("k/1", { take: 3, pull: 7 });
  assert.deepEqual(tally.next("k/1", [1, 2]), { take: 3, pull: 1 });
});

test("takes count from 1 to 999", () => {
  assert.equal(readTake("7", 2), 7);
  assert.equal(readTake("0", 2), 2);
  assert.equal(readTake("many", 2), 2);
  assert.equal(readTake("1e9", 2), 999);
  assert.deepEqual(onward({ take: 999, pull: 2 }, [1, 2]), { take: 999, pull: 1 });
});
