// Which shot is on show: the one that the user wants, and, while the text does
// not have that, what was on show last.

import { choose, has } from "./model.js";

// patience is how long a shot may be missing before another is shown, in
// milliseconds: some programs empty a file before they write it.
const patience = 2000;

// Places holds two places, {plan, shot} each: wanted, as the user has set it, and
// shown. They differ while the wanted shot is not there.
export class Places {
  // wanted is null where nobody has chosen yet. onFall is called when another
  // shot has taken the place of one that is missing.
  constructor(wanted, onFall) {
    Object.assign(this, { wanted, onFall, shown: null, state: null, index: 0, timer: null });
  }

  // missing tells that the shot on show is not in the text, and its last drawing
  // stays for a while.
  get missing() { return this.timer !== null; }

  // take looks where things are in a new state.
  take(state) {
    this.state = state;
    this.wanted ??= choose(state, null);
    const to = [this.wanted, this.shown].find((place) => has(state, place));
    if (to) this.settle(to);
    else if (!this.shown) this.settle(choose(state, this.wanted));
    else this.timer ??= setTimeout(() => this.fall(), patience);
  }

  // go shows a place that the user wants.
  go(to) {
    this.wanted = to;
    this.settle(to);
  }

  // fall shows the nearest there is.
  fall() {
    this.settle(choose(this.state, this.shown, this.index));
    this.onFall();
  }

  settle(place) {
    clearTimeout(this.timer);
    this.timer = null;
    this.shown = place;
    const shots = this.state?.plans.find((p) => p.key === place?.plan)?.shots ?? [];
    this.index = Math.max(0, shots.findIndex((s) => s.id === place?.shot)); // for when it is missing
  }
}
