// The playhead, with a clock of the test's own.

import assert from "node:assert/strict";
import test from "node:test";
import { Player } from "../web/player.js";

// fakeClock runs only when the test says so.
function fakeClock() {
  const clock = {
    time: 0, queue: new Map(), next: 1,
    now: () => clock.time,
    request(run) { clock.queue.set(clock.next, run); return clock.next++; },
    cancel(id) { clock.queue.delete(id); },
    tick(seconds) {
      clock.time += seconds;
      const due = [...clock.queue.values()];
      clock.queue.clear();
      for (const run of due) run();
    },
  };
  return clock;
}

function loaded(rate = 24, duration = 10) {
  const clock = fakeClock();
  const player = new Player(clock);
  player.load({ duration, rate, pulls: [{ number: 1, start_s: 3, land_s: 4.5 }, { number: 2, start_s: 0.2, land_s: 9.9 }] });
  return { clock, player };
}

const close = (a, b) => assert.ok(Math.abs(a - b) < 1e-9, `${a} is not ${b}`);

test("a step is a frame at every rate, however many are taken", () => {
  for (const rate of [[24, 1], [24000, 1001], [25, 1], [30000, 1001], [60000, 1001], 24000 / 1001]) {
    const { player } = loaded(rate, 3600);
    for (let n = 1; n <= 500; n++) {
      player.step(1);
      assert.equal(player.frame, n);
    }
    const [num, den] = Array.isArray(rate) ? rate : [24000, 1001];
    close(player.time, (500 * den) / num);
    player.step(-500);
    assert.equal(player.time, 0);
    player.step(86_000);
    assert.equal(player.frame, Math.min(86_000, player.frames));
  }
});

test("a step from between two frames goes to whole ones", () => {
  const { player } = loaded(24);
  player.seek(10.5 / 24);
  player.step(-1);
  assert.equal(player.time, 10 / 24);
  player.seek(10.5 / 24);
  player.step(1);
  assert.equal(player.time, 11 / 24);
});

test("it plays by the clock, at half speed too, and rests at the end", () => {
  const { clock, player } = loaded();
  const states = [];
  player.addEventListener("state", () => states.push(player.playing));
  player.play();
  clock.tick(1);
  close(player.time, 1);
  player.speed = 0.5;
  clock.tick(1);
  close(player.time, 1.5);
  clock.tick(100);
  assert.equal(player.time, 10);
  assert.equal(player.playing, false);
  assert.equal(clock.queue.size, 0);
  assert.deepEqual(states, [true, true, false]);
  player.play(); // from the start again
  assert.equal(player.time, 0);
});

test("seeking while it plays goes on from there", () => {
  const { clock, player } = loaded();
  player.play();
  clock.tick(1);
  player.seek(6);
  clock.tick(0.5);
  close(player.time, 6.5);
});

test("a loop comes back, whatever a repaint misses", () => {
  const { clock, player } = loaded();
  player.loopPull(1);
  assert.deepEqual(player.looping, { from: 2, to: 5.5, pull: 1 });
  assert.equal(player.time, 2);
  player.play();
  clock.tick(3.4);
  close(player.time, 5.4);
  clock.tick(0.2);
  close(player.time, 2.1);
  clock.tick(3.5 * 7 + 0.5); // many turns at once
  close(player.time, 2.6);
  assert.equal(player.playing, true);
  player.loopPull(2); // held within the shot
  assert.deepEqual(player.looping, { from: 0, to: 10, pull: 2 });
  player.loop();
  assert.equal(player.looping, null);
});

test("what cannot be is refused or held", () => {
  const { player } = loaded();
  player.seek(-3);
  assert.equal(player.time, 0);
  player.seek(NaN);
  assert.equal(player.time, 0);
  player.seek(99);
  assert.equal(player.time, 10);
  player.speed = 0;
  player.speed = NaN;
  assert.equal(player.speed, 1);
  player.loop(5, 5);
  assert.equal(player.looping, null);
  player.loopPull(7);
  assert.equal(player.looping, null);
  player.load({ duration: 0, rate: 0 });
  player.play();
  assert.equal(player.playing, false);
});

test("what leads in comes first, and is broken off by a pause", () => {
  const { clock, player } = loaded();
  let start;
  let broken = 0;
  player.lead = (run) => { start = run; return () => broken++; };
  player.play();
  clock.tick(1);
  assert.deepEqual([player.playing, player.moving, player.time], [true, false, 0]);
  start();
  clock.tick(1);
  assert.deepEqual([player.moving, player.time, broken], [true, 1, 0]);
  player.pause();
  assert.equal(broken, 0);
  player.play();
  player.pause();
  assert.deepEqual([player.playing, broken], [false, 1]);
});

test("a shot built anew goes on where it was", () => {
  const { clock, player } = loaded();
  const pulls = [{ number: 1, start_s: 4, land_s: 5 }];
  const states = [];
  player.play();
  clock.tick(1);
  player.addEventListener("state", () => states.push(player.playing));
  player.reload({ duration: 8, rate: 24, pulls });
  close(player.time, 1);
  clock.tick(0.5);
  close(player.time, 1.5);
  close(player.now, 1.5);
  assert.deepEqual([player.duration, player.pulls], [8, pulls]);
  assert.deepEqual(states, [true]); // nobody was told of a rest
  player.reload({ duration: 1.2, rate: 24 }); // it has ended meanwhile
  clock.tick(0.1);
  assert.deepEqual([player.time, player.playing], [1.2, false]);
});

test("a loop goes with its pull, and ends with it", () => {
  const { clock, player } = loaded();
  player.loopPull(1);
  player.play();
  clock.tick(1);
  player.reload({ duration: 10, rate: 24, pulls: [{ number: 1, start_s: 3.5, land_s: 5 }] });
  assert.deepEqual(player.looping, { from: 2.5, to: 6, pull: 1 });
  assert.deepEqual([player.time, player.playing], [3, true]);
  player.reload({ duration: 10, rate: 24, pulls: [] });
  assert.deepEqual([player.looping, player.time, player.playing], [null, 3, true]);
  player.loop(2, 9);
  player.reload({ duration: 6, rate: 24 });
  assert.deepEqual(player.looping, { from: 2, to: 6, pull: 0 });
});

test("what leads in is not broken off by a shot built anew", () => {
  const { clock, player } = loaded();
  let start;
  let leads = 0;
  player.lead = (run) => { start = run; leads++; return () => assert.fail("broken off"); };
  player.seek(2);
  player.play();
  player.reload({ duration: 9, rate: 24 });
  assert.deepEqual([player.playing, player.moving, leads], [true, false, 1]);
  start();
  clock.tick(1);
  assert.deepEqual([player.time, player.moving], [3, true]);
});

test("the time of an event is that of its stamp, however late it is heard of", () => {
  const { clock, player } = loaded();
  clock.tick(5);
  player.seek(2);
  player.play();
  clock.tick(0.5);
  close(player.at(5300), 2.3);
  close(player.now, 2.5);
  player.speed = 0.5; // from here on
  clock.tick(0.2);
  close(player.at(5600), 2.55);
  assert.ok(player.begun(5600) && !player.begun(4999));
  player.pause();
  assert.ok(!player.begun(5600));
  close(player.at(1), player.time);
});

test("a shot of a fast camera plays slowly, as on the screen, or as on set", () => {
  const { clock, player } = loaded(96);
  player.load({ duration: 10, rate: 96, pulls: [], slow: 4 });
  player.play();
  clock.tick(2);
  close(player.time, 0.5);
  player.onSet = true;
  clock.tick(2);
  close(player.time, 2.5);
  player.speed = 0.5;
  clock.tick(2);
  close(player.time, 3.5);
  player.onSet = false;
  clock.tick(4);
  close(player.time, 4);
  player.reload({ duration: 10, rate: 24, pulls: [] });
  clock.tick(2);
  close(player.time, 5);
});
