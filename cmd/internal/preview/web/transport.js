// The transport of the stage: play, step, rehearse and scrub; and, as ways, speed,
// loop and count-in.

import { make } from "./shared.js";
import { beatRange, readBeat } from "./metronome.js";

export class Transport {
  // rehearse is called with whether the rehearsal is to be open.
  constructor(player, metronome, rehearse) {
    Object.assign(this, { player, metronome });
    this.root = make("div", "transport");
    this.root.setAttribute("role", "group");
    this.root.setAttribute("aria-label", "Playing");
    this.back = button("◂", "A frame back", () => player.step(-1));
    this.run = button("Play", "", () => (player.playing ? player.pause() : player.play()));
    this.run.classList.add("play");
    this.on = button("▸", "A frame on", () => player.step(1));
    this.rehearse = toggle("Rehearse", rehearse);
    this.scrub = make("input", "scrub");
    Object.assign(this.scrub, { type: "range", min: 0, step: 1, value: 0 });
    this.scrub.setAttribute("aria-label", "Frame");
    this.scrub.addEventListener("input", () => player.seek(player.timeOf(Number(this.scrub.value))));
    this.frame = make("output", "frame-number");
    this.half = toggle("Half speed", (on) => { player.speed = on ? 0.5 : 1; });
    this.onSet = toggle("Set time", (on) => { player.onSet = on; });
    this.onSet.title = "Play as on set, and not as on the screen";
    this.loop = make("select");
    this.loop.setAttribute("aria-label", "Loop");
    this.loop.addEventListener("change", () => this.setLoop(Number(this.loop.value)));
    this.touched = false; // whether someone has set the count-in
    this.count = toggle("Count in", (on) => {
      this.touched = true;
      this.setCount(on);
    });
    this.beat = make("input", "beat");
    Object.assign(this.beat, { type: "number", min: beatRange.least, max: beatRange.most, step: 0.05, value: beatRange.usual });
    this.beat.addEventListener("change", () => this.setBeat(readBeat(this.beat.value)));
    this.planned = metronome.beat; // the beat of the plan
    const beat = make("label", "beat-label", "beat ");
    beat.append(this.beat, " s");
    this.counting = make("span", "counting");
    this.counting.append(this.count, beat);
    const keys = make("div", "buttons");
    keys.append(this.back, this.run, this.on, this.rehearse);
    this.ways = make("div", "ways");
    this.ways.append(this.half, this.onSet, this.loop, this.counting);
    this.root.append(keys, this.scrub, this.frame);
    player.addEventListener("time", () => this.follow());
    player.addEventListener("state", () => this.follow());
  }

  // take offers the pulls of a shot, and counts in by the beat of its plan; one
  // that was typed stays until the plan has another.
  take(pulls, beat) {
    if (beat !== this.planned) this.setBeat(beat);
    this.planned = beat;
    const options = [[0, "No loop"], ...pulls.map((p) => [p.number, `Loop pull ${p.number}: ${p.target}`])];
    this.loop.replaceChildren(...options.map(([value, text]) => {
      const option = make("option", "", text);
      option.value = value;
      return option;
    }));
    this.follow();
  }

  setLoop(number) {
    if (number) this.player.loopPull(number);
    else this.player.loop();
  }

  setBeat(seconds) {
    this.metronome.beat = seconds;
    this.beat.value = Number(seconds.toFixed(3));
  }

  // setCount has what is played be counted in.
  setCount(on) {
    this.player.lead = on ? (start) => this.metronome.lead(start) : null;
    this.follow();
  }

  // lend puts the one switch of the count-in where it is wanted: to a rehearsal,
  // which counts in unless someone has said otherwise, or back.
  lend(bar) {
    if (!this.touched) this.setCount(Boolean(bar));
    if (bar) bar.append(this.counting);
    else this.loop.after(this.counting);
  }

  // loopHere loops the pull that the playhead is at or before, or stops looping.
  loopHere() {
    const { player } = this;
    if (player.looping) return player.loop();
    const pull = player.pulls.find((p) => p.land_s + 1 >= player.time) ?? player.pulls.at(-1);
    if (pull) player.loopPull(pull.number);
  }

  follow() {
    const { player } = this;
    const word = player.playing ? "Pause" : "Play";
    if (this.run.textContent !== word) this.run.textContent = word;
    this.scrub.max = player.frames;
    this.scrub.value = player.frame;
    const seconds = player.time.toFixed(2);
    const screen = player.slow === 1 ? "" : `, ${(player.time * player.slow).toFixed(2)} s on the screen`;
    this.scrub.setAttribute("aria-valuetext", `frame ${player.frame}, ${seconds} s${screen}`);
    this.frame.value = `frame ${player.frame} · ${seconds} s${screen}`;
    this.onSet.hidden = player.slow === 1;
    this.onSet.setAttribute("aria-pressed", player.onSet);
    this.half.setAttribute("aria-pressed", player.speed === 0.5);
    this.count.setAttribute("aria-pressed", player.lead !== null);
    this.loop.value = player.looping?.pull ?? 0;
  }
}

// button returns a button with a text, and with another name for those who do
// not see it.
export function button(text, name, run) {
  const b = make("button", "", text);
  b.type = "button";
  if (name) {
    b.setAttribute("aria-label", name);
    b.title = name;
  }
  b.addEventListener("click", run);
  return b;
}

// toggle returns a button that stays pressed.
export function toggle(text, set) {
  const b = button(text, "", () => {
    const on = b.getAttribute("aria-pressed") !== "true";
    b.setAttribute("aria-pressed", on);
    set(on);
  });
  b.setAttribute("aria-pressed", "false");
  return b;
}
