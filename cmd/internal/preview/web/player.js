// The playhead: one for the whole page. It counts in frames of the plan's exact
// rate, so that a step is a frame at 24000/1001 too.

// A whisker is how much of a frame rounding may cost before a time counts as
// before that frame.
const whisker = 1e-6;

// browserClock tells the time in seconds and calls back before each repaint.
const browserClock = {
  now: () => performance.now() / 1000,
  request: (run) => requestAnimationFrame(run),
  cancel: (id) => cancelAnimationFrame(id),
};

// rateOf reads a rate: frames a second, or a fraction [frames, seconds].
function rateOf(rate) {
  const fps = Array.isArray(rate) ? rate[0] / rate[1] : rate;
  return fps > 0 && Number.isFinite(fps) ? fps : 24;
}

// A Player sends "time" when the time has moved and "state" when it has started
// or stopped, when the speed or the loop is another, or when it was loaded.
export class Player extends EventTarget {
  #clock;
  #request = null;
  #began = { clock: 0, time: 0 };
  #speed = 1;
  #onSet = false;
  #leading = null;

  // clock replaces the browser's: now() in seconds, request(run), cancel(id).
  constructor(clock = browserClock) {
    super();
    this.#clock = clock;
    this.duration = 0; // seconds of set time, as all times are
    this.slow = 1; // how much longer everything takes on the screen
    this.fps = 24; // frames a second
    this.pulls = []; // { number, start_s, land_s }
    this.time = 0; // seconds
    this.looping = null; // { from, to, pull }: seconds; pull is 0 for a bare stretch
    // lead is what comes before playing, as a count-in: a function that is given
    // what to call when it is over, and returns what breaks it off.
    this.lead = null;
  }

  // playing includes the lead; moving does not.
  get playing() { return this.moving || this.#leading !== null; }
  get moving() { return this.#request !== null; }
  get speed() { return this.#speed; }

  // onSet is whether it plays in the time of the set. Else it plays as on the screen,
  // where a shot of a camera that runs fast is slow.
  get onSet() { return this.#onSet; }
  set onSet(on) {
    if (on === this.#onSet) return;
    this.#goOn(() => { this.#onSet = on; });
  }

  // pace is how much set time goes by in a second.
  get #pace() { return this.#speed / (this.#onSet ? 1 : this.slow); }

  // goOn makes a change of the pace: the time goes on from where it is.
  #goOn(change) {
    const now = this.now;
    change();
    if (this.moving) this.time = now;
    this.#mark();
    this.#tell("state");
  }

  get frames() { return Math.floor(this.duration * this.fps + whisker); }

  // now is the time to the instant, where time is that of the last repaint.
  get now() { return this.at(this.#clock.now() * 1000); }

  // at returns the time that it was at a stamp of an event, milliseconds of the
  // page's clock: what a hand does is heard of later than it was done. A stamp
  // from before the playing gives the time it began at.
  at(stamp) {
    if (!this.moving) return this.time;
    const since = Math.max(0, stamp / 1000 - this.#began.clock);
    return Math.min(this.#began.time + since * this.#pace, this.duration);
  }

  // begun reports whether it was playing at a stamp.
  begun(stamp) { return this.moving && stamp / 1000 >= this.#began.clock; }

  // frame is the number of the frame on show, from 0.
  get frame() { return this.frameAt(this.time); }
  frameAt(t) { return Math.floor(t * this.fps + whisker); }
  timeOf(frame) { return frame / this.fps; }

  set speed(speed) {
    if (!(speed > 0) || speed === this.#speed) return;
    this.#speed = speed;
    this.#mark();
    this.#tell("state");
  }

  // load takes another shot. The playhead stands at 0 and rests; what loops is
  // forgotten.
  load(shot) {
    this.#stop();
    this.#hold(shot);
    this.time = 0;
    this.looping = null;
    this.#tell("state");
    this.#tell("time");
  }

  // reload takes the same shot built anew: the time, the playing and what comes
  // before it, and the loop go on, as far as the shot still reaches.
  reload(shot) {
    const { looping } = this;
    this.#hold(shot);
    this.looping = null;
    if (this.time > this.duration) this.seek(this.duration);
    if (looping?.pull) this.loopPull(looping.pull);
    else if (looping) this.loop(looping.from, looping.to);
    this.#tell("state");
    this.#tell("time");
  }

  #hold({ duration, rate, pulls = [], slow = 1 }) {
    this.duration = Math.max(0, duration || 0);
    const longer = slow > 0 ? slow : 1;
    if (longer !== this.slow) this.#goOn(() => { this.slow = longer; });
    this.fps = rateOf(rate);
    this.pulls = pulls;
  }

  seek(t) {
    const to = Math.min(Math.max(t || 0, 0), this.duration);
    const moved = to !== this.time;
    this.time = to;
    this.#mark();
    if (moved) this.#tell("time");
  }

  // play goes on from where the playhead is, or from the start where it has
  // run out.
  play() {
    if (this.playing || this.duration === 0) return;
    const { from, to } = this.#stretch();
    if (this.time >= to - whisker || this.time < from) this.seek(from);
    if (this.lead) this.#leading = this.lead(() => this.#start());
    else this.#start();
    this.#tell("state");
  }

  #start() {
    this.#leading = null;
    this.#mark();
    this.#request = this.#clock.request(() => this.#run());
    if (this.lead) this.#tell("state");
  }

  pause() {
    if (!this.playing) return;
    this.#stop();
    this.#tell("state");
  }

  // step rests, and shows the frame that many frames on. Frames are whole: from
  // between two, a step back goes to the start of the one on show.
  step(count) {
    this.pause();
    const here = this.frame;
    const between = this.time - this.timeOf(here) > whisker / this.fps;
    const to = here + count + (count < 0 && between ? 1 : 0);
    this.seek(this.timeOf(Math.min(Math.max(to, 0), this.frames)));
  }

  // loop plays a stretch again and again; without one, no more.
  loop(from, to) {
    this.#loop(from === undefined ? null : { from: Math.max(0, from), to: Math.min(to, this.duration), pull: 0 });
  }

  // loopPull loops a pull with the second before and after it.
  loopPull(number) {
    const pull = this.pulls.find((p) => p.number === number);
    if (!pull) return;
    const from = Math.max(0, pull.start_s - 1);
    this.#loop({ from, to: Math.min(pull.land_s + 1, this.duration), pull: number });
  }

  #loop(stretch) {
    this.looping = stretch && stretch.to > stretch.from ? stretch : null;
    if (this.looping && (this.time < this.looping.from || this.time > this.looping.to)) this.seek(this.looping.from);
    this.#tell("state");
  }

  #stretch() { return this.looping ?? { from: 0, to: this.duration }; }

  // run is called before each repaint while it plays.
  #run() {
    const { from, to } = this.#stretch();
    let t = this.#began.time + (this.#clock.now() - this.#began.clock) * this.#pace;
    if (t >= to && this.looping) {
      t = from + ((t - from) % (to - from));
      this.#began = { clock: this.#clock.now(), time: t };
    }
    this.time = Math.min(t, to);
    if (t >= to) this.#stop();
    else this.#request = this.#clock.request(() => this.#run());
    this.#tell("time");
    if (!this.playing) this.#tell("state");
  }

  // mark notes when and where the playing starts, or goes on otherwise.
  #mark() { this.#began = { clock: this.#clock.now(), time: this.time }; }

  #stop() {
    if (this.#request !== null) this.#clock.cancel(this.#request);
    this.#request = null;
    this.#leading?.();
    this.#leading = null;
  }

  #tell(what) { this.dispatchEvent(new Event(what)); }
}
