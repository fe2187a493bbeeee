// A try at a pull: what the hand did, and what came of it. Angles are degrees at
// the hand, times seconds of the shot.

// A hand that does not move for this long has landed.
export const rest = 0.3;

// A turn of less than this, in all, is no motion yet: hands tremble.
const stir = 0.4;

// Resting short of this share of the way before the planned landing is a pause
// and no landing.
const wayBeforeRest = 0.25;

export class Try {
  // pull is one of a shot as the stage is told it; fps is for frames.
  constructor(pull, fps, throwDeg) {
    Object.assign(this, { pull, fps, throw: throwDeg });
    this.deg = pull.from_deg;
    this.path = []; // { t, deg }
    this.landed = null; // { t, deg }
  }

  get way() { return Math.sign(this.pull.to_deg - this.pull.from_deg) || 1; }

  // turn moves the hand by degrees at a time; the ring's stops hold it. Stamps of
  // several devices may come in another order: time does not go back.
  turn(at, by) {
    if (this.landed) return;
    const t = Math.max(at, this.path.at(-1)?.t ?? at);
    const deg = Math.min(Math.max(this.deg + by, 0), this.throw);
    if (deg === this.deg) return;
    if (!this.path.length) this.path.push({ t, deg: this.deg });
    this.deg = deg;
    this.path.push({ t, deg });
  }

  // onset is when the hand set off; undefined while it has not.
  get onset() {
    const i = this.path.findIndex((p) => Math.abs(p.deg - this.pull.from_deg) >= stir);
    return i < 0 ? undefined : this.path[Math.max(i - 1, 0)].t;
  }

  // look is called as time goes on; it reports whether the hand has landed.
  look(t) {
    if (this.landed || this.onset === undefined) return this.landed !== null;
    const last = this.path.at(-1);
    const share = (this.deg - this.pull.from_deg) / (this.pull.to_deg - this.pull.from_deg);
    if (t - last.t < rest || (share < wayBeforeRest && t < this.pull.land_s)) return false;
    this.land();
    return true;
  }

  // land takes the last motion for the landing. Without any there is none.
  land() {
    if (!this.landed && this.onset !== undefined) this.landed = { ...this.path.at(-1) };
  }

  // result says how it went; undefined where the hand never set off.
  result() {
    if (!this.landed) return undefined;
    const { pull, way, landed, fps } = this;
    const past = (deg) => (deg - pull.to_deg) * way;
    const [low, high] = edges(pull);
    return {
      travel: Math.abs(pull.to_deg - pull.from_deg),
      error: past(landed.deg),
      window: way > 0 ? [low - pull.to_deg, high - pull.to_deg] : [pull.to_deg - high, pull.to_deg - low],
      hit: landed.deg >= low && landed.deg <= high,
      time: landed.t - this.onset,
      late: Math.round((landed.t - pull.land_s) * fps), // frames; below 0 early
      onset: Math.round((this.onset - pull.start_s) * fps),
      overshoot: Math.max(0, ...this.path.map((p) => past(p.deg))),
    };
  }
}

// follow finds the pull of a try among those of its shot built anew. It returns
// { pull } where it is the same, by whatever number; else { why }: what became of
// it, as a clause.
export function follow(pull, pulls) {
  const same = pulls.find((p) => p.sign === pull.sign);
  if (same) return { pull: same };
  const now = pulls.find((p) => p.number === pull.number && p.from === pull.from && p.to === pull.to);
  return { why: now ? difference(pull, now) : `pull ${pull.number} to ${pull.target} is gone` };
}

// difference says how a pull is not what it was: what the hand notices first.
function difference(was, now) {
  const seconds = (v) => `${v.toFixed(2)} s`;
  const degrees = (v) => `${v.toFixed(1)}°`;
  const parts = [
    ["starts at", seconds, was.start_s, now.start_s], ["lands at", seconds, was.land_s, now.land_s],
    ["starts from", degrees, was.from_deg, now.from_deg], ["goes to", degrees, was.to_deg, now.to_deg],
  ].filter(([, write, a, b]) => write(a) !== write(b)).map(([verb, write, a, b]) => `now ${verb} ${write(b)} and not ${write(a)}`);
  if (parts.length) return `pull ${now.number} ${parts.join(", ")}`;
  const window = JSON.stringify;
  if (window(edges(was)) !== window(edges(now))) return `the window of pull ${now.number} is another now`;
  return `pull ${now.number} is for another hand, ring or rate now`;
}

// edges returns the window; an edge that only the ring's stop holds is open.
function edges({ window_deg: [low, high], open_near, open_far }) {
  return [open_near ? -Infinity : low, open_far ? Infinity : high];
}

// report puts a result into words.
export function report(r) {
  const frames = (n, later, sooner) => {
    if (n === 0) return "on the frame";
    return `${Math.abs(n)} ${Math.abs(n) === 1 ? "frame" : "frames"} ${n > 0 ? later : sooner}`;
  };
  const degrees = (v) => `${v.toFixed(1)}°`;
  const at = Math.abs(r.error) < 0.05 ? "on the mark" : `${degrees(Math.abs(r.error))} ${r.error > 0 ? "past" : "short of"} the mark`;
  const edge = (v) => (Number.isFinite(v) ? `${v < 0 ? "−" : "+"}${degrees(Math.abs(v))}` : "the stop");
  return [
    `${r.hit ? "In the window" : "Outside the window"}: ${at}. The window goes from ${edge(r.window[0])} to ${edge(r.window[1])}.`,
    `Landed ${frames(r.late, "late", "early")}, set off ${frames(r.onset, "late", "early")}.`,
    `${r.time.toFixed(2)} s from the first motion to the landing; ${r.overshoot < 0.05 ? "no overshoot" : `${degrees(r.overshoot)} past the mark on the way`}.`,
  ];
}
