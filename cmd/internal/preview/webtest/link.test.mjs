// Coming back by itself, with a browser of the test's own.

import assert from "node:assert/strict";
import test from "node:test";
import { Link, backoff } from "../web/link.js";

test("tries grow apart, but never far", () => {
  const waits = [0, 1, 2, 3, 4, 5, 50].map(backoff);
  assert.equal(waits[0], 250);
  assert.deepEqual(waits, waits.toSorted((a, b) => a - b));
  assert.equal(waits.at(-1), 4000);
});

function fakeBrowser(t, status = 200) {
  globalThis.fetch = async () => ({ status });
  const made = [];
  const page = { visibilityState: "visible", look: null, addEventListener: (_, f) => { page.look = f; } };
  globalThis.document = page;
  globalThis.EventSource = class {
    static CLOSED = 2;
    constructor(url) { Object.assign(this, { url, readyState: 0, heard: {} }); made.push(this); }
    addEventListener(name, f) { this.heard[name] = f; }
    close() { this.readyState = 2; }
  };
  t.mock.timers.enable({ apis: ["setTimeout"] });
  return { made, page };
}

const settled = () => new Promise((done) => setImmediate(done));

test("a state is taken once, and a stream that broke is opened again", async (t) => {
  const { made } = fakeBrowser(t);
  const taken = [], states = [];
  new Link({ take: (s) => taken.push(s), changed: (s) => states.push(s) });
  made[0].onopen();
  made[0].onmessage({ lastEventId: "run-1", data: '{"version":1}' });
  made[0].onmessage({ lastEventId: "run-1", data: '{"version":1}' });
  assert.deepEqual(taken, [{ version: 1 }]);
  made[0].onerror(); // the browser tries by itself
  t.mock.timers.tick(10000);
  assert.equal(made.length, 1);
  made[0].readyState = 2;
  made[0].onerror(); // it has given up
  await settled();
  t.mock.timers.tick(249);
  assert.equal(made.length, 1);
  t.mock.timers.tick(1);
  assert.equal(made.length, 2);
  made[1].onopen();
  made[1].onmessage({ lastEventId: "other-1", data: '{"version":1}' });
  assert.equal(taken.length, 2);
  assert.deepEqual(states, ["live", "waiting", "waiting", "live"]);
});

test("a page that nobody sees holds no stream", (t) => {
  const { made, page } = fakeBrowser(t);
  const states = [];
  new Link({ take: () => {}, changed: (s) => states.push(s) });
  page.visibilityState = "hidden";
  page.look();
  assert.equal(made[0].readyState, 2);
  page.visibilityState = "visible";
  page.look();
  assert.equal(made.length, 2);
  made[1].onopen();
  assert.deepEqual(states, ["resting", "live"]);
});

test("the page in sight comes with the states", (t) => {
  const { made } = fakeBrowser(t);
  const kept = [];
  const link = new Link({ take: () => {}, keep: (page) => kept.push(page), changed: () => {} });
  assert.equal(made[0].url, "events");
  link.follow({ plan: "k", shot: "14 B", page: 2 });
  link.follow({ plan: "k", shot: "14 B", page: 2 });
  assert.equal(made.length, 2);
  assert.equal(made[0].readyState, 2);
  assert.equal(made[1].url, "events?plan=k&shot=14+B&page=2");
  made[1].heard.sheet({ data: '{"tag":"x"}' });
  assert.deepEqual(kept, [{ tag: "x" }]);
});

test("a page that is turned away says so, and asks no more until it is looked at again", async (t) => {
  const { made, page } = fakeBrowser(t, 403);
  const states = [];
  new Link({ take: () => {}, changed: (s) => states.push(s) });
  made[0].readyState = 2;
  made[0].onerror();
  await settled();
  t.mock.timers.tick(60_000);
  assert.equal(made.length, 1);
  assert.deepEqual(states, ["waiting", "refused"]);
  page.visibilityState = "hidden";
  page.look();
  page.visibilityState = "visible";
  page.look();
  assert.equal(made.length, 2);
});

test("a page that cannot be reached at all is tried again", async (t) => {
  const { made } = fakeBrowser(t);
  globalThis.fetch = async () => { throw new TypeError("no network"); };
  new Link({ take: () => {}, changed: () => {} });
  made[0].readyState = 2;
  made[0].onerror();
  await settled();
  t.mock.timers.tick(250);
  assert.equal(made.length, 2);
});
