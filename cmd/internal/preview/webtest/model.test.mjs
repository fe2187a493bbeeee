// What the page makes of what it is told.

import assert from "node:assert/strict";
import test from "node:test";
import * as model from "../web/model.js";

const finding = (severity, shot) => ({ severity, shot });
const state = {
  plans: [
    { key: "a", name: "a.pull", title: "", shots: [{ id: "1" }, { id: "2" }], findings: [finding("warning", "2"), finding("error", ""), finding("note", "gone")] },
    { key: "empty", name: "e.pull", title: "E", shots: [], findings: [] },
    { key: "b", name: "b.pull", title: "B", shots: [{ id: "1" }], findings: [] },
  ],
};

test("the worst finding is told first", () => {
  assert.equal(model.worst([]), "");
  assert.equal(model.worst([finding("note"), finding("error"), finding("warning")]), "error");
  assert.equal(model.tally([]), "");
  assert.equal(model.tally([finding("note"), finding("warning"), finding("warning")]), "2 warnings");
  assert.equal(model.tally([finding("note")]), "1 note");
});

test("no finding is lost between the shots and the plan", () => {
  const plan = state.plans[0];
  const told = [...plan.shots.flatMap((s) => model.ofShot(plan.findings, s.id)), ...model.ofPlan(plan)];
  assert.equal(told.length, plan.findings.length);
  assert.deepEqual(model.ofPlan(plan).map((f) => f.shot), ["", "gone"]);
});

test("what was on show stays while it is there", () => {
  assert.deepEqual(model.choose(state, { plan: "a", shot: "2" }), { plan: "a", shot: "2" });
  assert.deepEqual(model.choose(state, { plan: "a", shot: "9" }, 1), { plan: "a", shot: "2" });
  assert.deepEqual(model.choose(state, { plan: "a", shot: "9" }, 7), { plan: "a", shot: "2" });
  assert.deepEqual(model.choose(state, { plan: "a", shot: "9" }, -1), { plan: "a", shot: "1" });
  assert.deepEqual(model.choose(state, { plan: "empty", shot: "1" }), { plan: "a", shot: "1" });
  assert.deepEqual(model.choose(state, null), { plan: "a", shot: "1" });
  assert.equal(model.choose({ plans: [state.plans[1]] }, null), null);
});

test("neighbours go over all plans and stop at the ends", () => {
  let place = { plan: "a", shot: "1" };
  const way = [];
  for (let i = 0; i < 4; i++) {
    place = model.neighbour(state, place, 1);
    way.push(`${place.plan}${place.shot}`);
  }
  assert.deepEqual(way, ["a2", "b1", "b1", "b1"]);
  assert.deepEqual(model.neighbour(state, { plan: "a", shot: "1" }, -1), { plan: "a", shot: "1" });
  assert.deepEqual(model.neighbour(state, null, 1), { plan: "a", shot: "1" });
});

test("a place goes through the address, whatever its name", () => {
  for (const shot of ["14B", "a/b", "#?&%", "凪", "%E0%A4%A", " "]) {
    const place = { plan: "k1", shot };
    assert.deepEqual(model.fromHash(model.toHash(place)), place);
    assert.deepEqual(model.fromHash(model.toHash(place).replace("/", "%2F")), place);
  }
  for (const hash of ["", "#", "#a", "#a/b/c", "#a/%E0%A4%A"]) assert.equal(model.fromHash(hash), null);
});

test("a time is told with the frame that it shows", () => {
  assert.equal(model.clock(0, 24), "0.00 s · frame 0");
  assert.equal(model.clock(75 / 24, 24), "3.13 s · frame 75");
  assert.equal(model.clock(100 * 1001 / 24000, 24000 / 1001), "4.17 s · frame 100");
});

test("pulls are found both ways", () => {
  const pulls = [{ start_s: 1 }, { start_s: 4 }];
  assert.equal(model.nextPull(pulls, 0, 1), 1);
  assert.equal(model.nextPull(pulls, 1, 1), 4);
  assert.equal(model.nextPull(pulls, 4, 1), 4);
  assert.equal(model.nextPull(pulls, 4, -1), 1);
  assert.equal(model.nextPull(pulls, 0.5, -1), 0.5);
  assert.equal(model.nextPull([], 2, 1), 2);
});

test("tidings say what is on show", () => {
  assert.equal(model.tidings({ title: "", name: "a.pull", findings: [] }), "a.pull is drawn anew, no findings");
  assert.match(model.tidings({ title: "A", stale: true, findings: [finding("error")] }), /^A has 1 error; the drawing is the last one/);
});

test("findings stand in the order of their flags, those without one last", () => {
  const all = [{ number: 3, m: "c" }, { m: "x" }, { number: 1, m: "a" }, { number: 0, m: "y" }, { number: 2, m: "b" }];
  assert.equal(model.inOrder(all).map((f) => f.m).join(""), "abcxy");
  assert.equal(all[0].m, "c");
});

test("plans of one title are told apart by as little of their files as does", () => {
  const plans = (...names) => names.map(([title, name]) => ({ title, name }));
  const files = (list) => model.headings(list).map((h) => h.file);
  assert.deepEqual(files(plans(["Boat", "a/one.pull"], ["Boat", "a/two.pull"], ["Boat", "b/one.pull"], ["Pier", "b/two.pull"])), ["a/one.pull", "two.pull", "b/one.pull", ""]);
  assert.deepEqual(files(plans(["Boat", "one.pull"], ["Boat", "x/one.pull"])), ["one.pull", "x/one.pull"]);
  assert.deepEqual(files(plans(["", "one.pull"], ["", "two.pull"])), ["", ""]);
  assert.deepEqual(model.headings(plans(["", "one.pull"]))[0].title, "one.pull");
});

test("set-ups are gone through at the same moment of the action", () => {
  const shots = [
    { id: "12A", setup: { scene: 0, from_s: 0, to_s: 12 } },
    { id: "insert" },
    { id: "12B", setup: { scene: 0, from_s: 4, to_s: 9 } },
    { id: "31", setup: { scene: 1, from_s: 0, to_s: 20 } },
    { id: "12C", setup: { scene: 0, from_s: 6, to_s: 12 } },
  ];
  assert.deepEqual(model.setUpAt(shots, "12A", 7, 1), { shot: "12B", t: 3 });
  assert.deepEqual(model.setUpAt(shots, "12B", 3, 1), { shot: "12C", t: 1 });
  assert.deepEqual(model.setUpAt(shots, "12C", 1, 1), { shot: "12A", t: 7 });
  assert.deepEqual(model.setUpAt(shots, "12A", 7, -1), { shot: "12C", t: 1 });
  assert.deepEqual(model.setUpAt(shots, "12A", 5, 1), { shot: "12B", t: 1 }, "12C has not begun");
  assert.deepEqual(model.setUpAt(shots, "12A", 5, -1), { shot: "12B", t: 1 });
  assert.deepEqual(model.setUpAt(shots, "12B", 5, 1), { shot: "12C", t: 3 }, "12B has it to its end");
  assert.equal(model.setUpAt(shots, "12A", 2, 1), null, "no other has it");
  assert.equal(model.setUpAt(shots, "31", 2, 1), null);
  assert.equal(model.setUpAt(shots, "insert", 2, 1), null);
  assert.equal(model.setUpAt([], undefined, 0, 1), null);
});
