// The rehearsal: a pull is played without its answer, the hand turns, and the
// page says where it landed. A try can be kept in a log of tries.

import { make, post, say } from "./shared.js";
import { bind, byKeys } from "./keys.js";
import { dotsOf, graph } from "./graph.js";
import { keyDegrees, wheelDegrees } from "./input.js";
import { midiLine } from "./midi.js";
import { miss, pathAt, says } from "./miss.js";
import { Practice, Tally } from "./practice.js";
import { button, toggle } from "./transport.js";
import { follow, report, Try } from "./try.js";
import { Wheel } from "./wheel.js";

// The playing begins this long before the pull, and goes on so long after the
// planned landing, seconds.
const before = 2.5;
const after = 2;

// pause is how long a practice rests between two tries, milliseconds.
const pause = 1000;

export class Rehearsal {
  // onTurn is called whenever the hand has moved, to draw the picture anew.
  constructor(root, player, transport, onTurn) {
    Object.assign(this, { root, player, transport, onTurn });
    this.open = false;
    this.shot = null;
    this.pulls = []; // of the shot, those that can be rehearsed
    this.attempt = null; // the try that is on
    this.kept = null; // { pull, drop }: the try that can be kept
    this.replay = null; // the try that is played again
    this.practice = null; // while one is on
    this.tally = new Tally(); // of all tries
    this.lost = ""; // why a try has ended with its shot, until another is shown
    this.wheel = new Wheel((by, stamp) => this.turn(by, "drag", stamp));
    this.build();
    player.addEventListener("time", () => this.look());
    player.addEventListener("state", () => { if (!player.playing) this.finish(); });
    bind(["r"], "rehearse the pull", () => this.begin());
    bind(["Escape"], "back to the score", () => (this.attempt ? this.stop() : this.show(false)), () => this.open);
    bind(["Enter"], "the hand has landed", () => this.land(), () => this.attempt !== null);
  }

  build() {
    this.about = make("p", "about");
    this.pick = make("select");
    this.pick.addEventListener("change", () => this.arm());
    const pull = make("label", "", "Pull ");
    pull.append(this.pick);
    this.start = button("Start", "", () => (this.attempt ? this.stop() : this.begin()));
    this.start.className = "start";
    this.start.setAttribute("aria-keyshortcuts", "r");
    this.notch = make("input");
    Object.assign(this.notch, { type: "number", min: 0.5, max: 30, step: 0.5, value: 4 });
    const notch = make("label", "", "a notch of the mouse wheel turns ");
    notch.append(this.notch, " °");
    this.flip = toggle("Other way round", () => this.mark());
    this.again = toggle("Practice", (on) => this.setPractice(on));
    this.bar = make("div", "ways");
    this.bar.append(pull, this.start, this.again);
    this.settings = make("div", "ways settings");
    this.settings.append(notch, this.flip);
    this.midi = midiLine((by, stamp) => this.turn(by, "midi", stamp));
    this.outcome = make("div", "outcome");
    this.outcome.setAttribute("aria-live", "polite");
    this.drill = make("div", "practice"); // stays while the next try is on
    this.pair = make("div", "hand");
    this.dial = make("div", "dial");
    this.dial.append(this.wheel.root);
    this.pair.append(this.dial, this.outcome);
    this.root.append(make("h2", "", "Rehearse"), this.bar, this.pair, this.drill, this.about, this.settings, this.midi);
    document.addEventListener("wheel", (e) => this.roll(e), { passive: false });
    document.addEventListener("keydown", (e) => this.key(e), { capture: true });
  }

  // key turns the hand by keys: during a try wherever the focus is, else on the
  // drawn wheel for someone who has come to it by keys.
  key(event) {
    if (event.ctrlKey || event.metaKey || event.altKey || document.querySelector("dialog[open]")) return;
    const here = event.target === this.wheel.root && byKeys();
    const by = this.shot && (this.attempt || here) ? keyDegrees(event) : undefined;
    if (by === undefined) return;
    event.preventDefault();
    this.turn(by, "keys", event.timeStamp);
  }

  // roll turns the hand by a wheel of the mouse: over the drawn one, and during a
  // try anywhere.
  roll(event) {
    if (event.ctrlKey || !this.shot || !(this.attempt || this.wheel.root.contains(event.target))) return;
    event.preventDefault();
    this.turn(wheelDegrees(event, Number(this.notch.value) || 4), "wheel", event.timeStamp);
  }

  // take takes another shot, or the same one built anew. A try that is on goes on,
  // and one that can be kept stays so, only if its pull is still the same.
  take(shot, at) {
    const same = this.at?.plan === at.plan && this.at?.shot === at.shot;
    const chosen = same ? this.pick.value : "";
    this.shot = shot;
    this.at = at;
    const { ring } = shot.told;
    this.pulls = ring ? shot.told.pulls.filter((p) => p.kind === "rack" && p.to_deg !== undefined && p.from_deg !== p.to_deg && p.window_deg) : [];
    this.about.textContent = this.pulls.length
      ? `The score hides, ${shot.told.lines.length ? "the words to come stand below the picture and those that a pull hangs on fill up" : "the shot plays"}, and you turn: the picture follows your hand. Turn with the wheel of the mouse, a pointer on the hand wheel, the arrow keys, or a MIDI controller. It has landed when it rests for 0.3 s, or at Enter.`
      : ring
        ? "This shot has no rack with figures for the hand."
        : "This lens has no ring with angles, as by wire: there is nothing to rehearse by degrees.";
    this.hold();
    this.followPull();
    this.pick.replaceChildren(...this.pulls.map((p) => {
      const option = make("option", "", `${p.number}: to ${p.target}, ${Math.abs(p.to_deg - p.from_deg).toFixed(0)}° in ${(p.land_s - p.start_s).toFixed(1)} s`);
      option.value = p.number;
      return option;
    }));
    const pick = this.attempt?.pull.number ?? chosen;
    if (this.pulls.some((p) => String(p.number) === String(pick))) this.pick.value = pick;
    if (!this.attempt) this.arm(same);
  }

  // followPull looks what became of the pull of a try.
  followPull() {
    if (this.attempt) {
      const { pull, why } = follow(this.attempt.pull, this.pulls);
      if (why) this.lose(why);
      else this.attempt.pull = pull;
    }
    if (this.kept) {
      const { pull, why } = follow(this.kept.pull, this.pulls);
      if (why) this.kept.drop(why);
      else this.kept.pull = pull;
    }
  }

  clear() {
    this.lose("the shot cannot be shown any more");
    this.setPractice(false);
    this.shot = this.at = this.kept = this.replay = null;
    this.pulls = [];
    this.about.textContent = "";
    this.hold();
  }

  // hold hides what there is nothing to do with.
  hold() {
    this.root.hidden = !this.open || !(this.shot || this.lost);
    this.bar.hidden = this.dial.hidden = this.settings.hidden = this.midi.hidden = !this.pulls.length;
  }

  // show opens the rehearsal in the place of the score, or gives that back.
  show(open) {
    if (open === this.open) return;
    if (this.attempt) this.stop();
    if (!open) this.setPractice(false);
    this.open = open;
    this.hold();
    this.transport.rehearse.setAttribute("aria-pressed", open);
    this.transport.lend(open ? this.bar : null);
    document.body.classList.toggle("rehearsing", open);
    if (open) this.bringIntoSight();
  }

  // bringIntoSight has picture and wheel be seen: on a wide screen they are beside
  // each other at the top of the page.
  bringIntoSight() {
    if (matchMedia("(min-width: 60rem)").matches) window.scrollTo(0, 0);
    else document.getElementById("stage").scrollIntoView({ block: "start" });
  }

  // setPractice has a pull be tried again and again, until it is turned off or hands tire.
  setPractice(on) {
    clearTimeout(this.soon);
    this.practice = on ? new Practice() : null;
    this.again.setAttribute("aria-pressed", on);
    if (!on) return;
    this.drill.replaceChildren();
    this.begin();
  }

  // practised adds a try to the practice, shows what it comes to, and begins the next.
  practised(result, pull) {
    this.practice.add(result);
    this.drill.replaceChildren(dotsOf(this.practice.last(), result.window), make("p", "practice-says", this.practice.says()), make("p", "practice-next", this.tally.says(this.pulls, pull)));
    if (this.practice.over) this.setPractice(false);
    else this.soon = setTimeout(() => this.practice && this.open && this.pull?.number === pull.number && this.begin(), pause);
  }

  // replayer offers to see a try again beside the plan.
  replayer(attempt) {
    const box = make("div", "ways");
    for (const [text, speed] of [["Replay", 1], ["Replay at half speed", 0.5]]) {
      box.append(button(text, "", () => {
        clearTimeout(this.soon);
        const { player } = this;
        player.pause();
        player.loop();
        player.onSet = true;
        player.speed = speed;
        player.seek(Math.max(0, Math.min(attempt.pull.start_s, attempt.path[0].t) - 0.5));
        this.replay = attempt;
        const lead = player.lead;
        player.lead = null; // nobody has to be ready
        player.play();
        player.lead = lead;
      }));
    }
    return box;
  }

  get pull() { return this.pulls.find((p) => String(p.number) === this.pick.value); }

  // deg is where the hand has the focus while a try is on.
  deg() {
    if (this.replay) return pathAt(this.replay.path, this.player.time, this.replay.pull.from_deg);
    return this.attempt?.deg;
  }

  // arm puts the wheel to where the pull starts.
  arm(keep) {
    if (this.attempt) this.stop();
    if (!keep) {
      this.kept = null;
      this.outcome.replaceChildren(...(this.lost ? [make("p", "", this.lost)] : []));
    }
    this.lost = "";
    if (!this.pull) return;
    this.wheel.deg = this.pull.from_deg;
    this.mark();
  }

  // mark puts the marks of the shot's pulls on the wheel, each place once.
  mark() {
    const { told } = this.shot;
    const marks = [];
    for (const p of this.pulls) {
      for (const [deg, name] of [[p.from_deg, p.from ?? ""], [p.to_deg, p.to ?? p.target]]) {
        if (!marks.some((m) => Math.abs(m.deg - deg) < 0.5)) marks.push({ deg, name });
      }
    }
    const usual = told.ring.turns === "left" ? -1 : 1;
    this.wheel.take(told.ring.throw_deg, marks, this.flip.getAttribute("aria-pressed") === "true" ? -usual : usual);
  }

  // begin starts a try: the count-in, and then the lines.
  begin() {
    if (!this.shot || this.attempt) return;
    this.show(true);
    if (!this.pulls.length) return;
    const { player, pull, shot } = this;
    clearTimeout(this.soon);
    this.replay = null;
    player.pause();
    player.loop();
    player.onSet = true; // where the hand is
    player.speed = 1; // a hand learns nothing of a slower pull
    player.seek(Math.max(0, pull.start_s - before));
    this.attempt = new Try(pull, shot.fps, shot.told.ring.throw_deg);
    this.by = this.kept = null;
    this.wheel.set(this.attempt.deg);
    this.outcome.replaceChildren(make("p", "", "Get ready …"));
    this.start.textContent = "Stop";
    this.pick.disabled = true;
    document.body.classList.add("hiding");
    this.wheel.root.focus({ preventScroll: true });
    this.bringIntoSight();
    player.play();
    this.onTurn();
  }

  // turn moves the hand. Outside a try the wheel only turns. stamp is when it was
  // done, as the event tells.
  turn(by, means, stamp) {
    if (!by || !this.shot) return;
    const { attempt, player } = this;
    if (!attempt) {
      this.wheel.set(Math.min(Math.max(this.wheel.deg + by, 0), this.wheel.throw));
      return;
    }
    if (!player.begun(stamp) || attempt.landed) return; // the count-in is no time to turn
    this.by = this.by && this.by !== means ? "mixed" : means;
    attempt.turn(player.at(stamp), by);
    this.wheel.set(attempt.deg);
    this.onTurn();
  }

  // look sees whether the hand has landed, and ends the try some time later.
  look() {
    const { attempt, player } = this;
    if (this.replay) {
      this.outcome.querySelector(".graph")?.dispatchEvent(new CustomEvent("at", { detail: player.time }));
      if (player.time >= Math.max(this.replay.pull.land_s, this.replay.path.at(-1).t) + 0.5) player.pause();
    }
    if (!attempt || !player.moving) return;
    attempt.look(player.now);
    const end = Math.max(attempt.landed ? attempt.landed.t + 0.8 : 0, attempt.pull.land_s + (attempt.landed ? 0.2 : after));
    if (player.now >= Math.min(end, player.duration)) player.pause();
  }

  land() {
    this.attempt.land();
    if (this.attempt.landed) this.player.pause();
  }

  // stop breaks a try off, and a practice with it.
  stop(word = "Broken off.") {
    if (!this.attempt) return;
    this.setPractice(false);
    this.end();
    this.tell(make("p", "", word));
    this.player.pause();
  }

  // tell shows how a try ended; the score is back above it.
  tell(...parts) {
    this.outcome.replaceChildren(...parts);
    this.pair.scrollIntoView({ block: "nearest" });
  }

  // lose ends a try whose pull is not what it was: there is no result then. why
  // says what became of it.
  lose(why) {
    if (!this.attempt) return;
    const word = `The try has ended: ${why}. It is not counted.`;
    this.stop(word);
    this.lost = word;
    say(word);
  }

  end() {
    this.attempt = null;
    this.start.textContent = "Start";
    document.body.classList.remove("hiding");
    this.pick.disabled = false;
    this.onTurn();
  }

  // finish says how a try went, once the playing has ended.
  finish() {
    const { attempt } = this;
    if (this.replay && !attempt) {
      this.replay = null;
      this.player.speed = 1;
      this.onTurn();
    }
    if (!attempt || !this.shot) return;
    attempt.land();
    const result = attempt.result();
    this.end();
    if (!result) {
      this.setPractice(false);
      this.tell(make("p", "", "The hand never set off."));
      return;
    }
    const lines = report(result);
    const heading = make("p", `verdict ${result.hit ? "hit" : "miss"}`, lines[0]);
    this.outcome.dataset.error = result.error;
    this.outcome.dataset.hit = result.hit;
    this.outcome.dataset.onset = attempt.onset;
    const where = says(miss(this.shot.law, attempt.pull, attempt.landed.deg), attempt.pull.target, this.shot.told.imperial);
    lines.splice(1, 0, `${where[0].toUpperCase()}${where.slice(1)}.`);
    this.tell(heading, make("p", "where", lines[1]), make("p", "", lines[2]), make("p", "", lines[3]), graph(attempt, this.planned(attempt.pull)), this.replayer(attempt), this.keeper(attempt.pull, result, this.by));
    say(lines.join(" "));
    this.tally.add(attempt.pull, result.hit);
    if (this.practice) this.practised(result, attempt.pull);
  }

  // planned is the planned hand round a pull.
  planned(pull) {
    const { shot } = this;
    const way = [];
    const last = Math.min(shot.sampleAt(pull.land_s + 0.6), shot.told.samples - 1);
    for (let i = shot.sampleAt(Math.max(0, pull.start_s - 0.4)); i <= last; i++) {
      way.push({ t: (i * shot.told.every) / shot.fps, deg: shot.handAt(i) });
    }
    return way;
  }

  // keeper offers to keep a try, and says what it can teach.
  keeper(pull, result, by) {
    const box = make("div", "keeper");
    if (!(result.time > 0)) { // one key, one notch
      box.append(make("p", "hint", "The hand went there in one step and took no time, so there is nothing to keep."));
      return box;
    }
    const note = make("p", "hint", "A try teaches about what it was turned with: one by mouse or keys says little of the hand on a real wheel. The log notes which it was.");
    const kept = { pull, drop: (why) => { box.replaceChildren(make("p", "hint", `This try cannot be kept any more: ${why}.`)); this.kept = null; } };
    const keep = button("Keep in the log of tries", "", async () => {
      keep.disabled = true;
      try {
        const { file } = await post("api/take", {
          plan: this.at.plan, shot: this.at.shot, pull: kept.pull.number, sign: kept.pull.sign, by,
          error_deg: result.error, time_s: result.time,
        });
        this.kept = null;
        keep.replaceWith(make("p", "kept", `Kept in ${file}.`));
        say("Kept.");
      } catch (e) {
        keep.disabled = false;
        note.textContent = `Not kept: ${e.message}`;
      }
    });
    this.kept = kept;
    box.append(keep, note);
    return box;
  }
}
