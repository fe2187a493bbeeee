// The size of the score. A rung of the ladder is a scale of time, in millimetres a second:
// on each the score is laid out anew, as wide as its column, with type that can be read;
// between two rungs it is drawn larger.

export const ladder = [20, 25, 30, 40, 60, 80, 120, 160];

// largest is the largest size, in millimetres a second: beyond the last rung the score is
// drawn larger.
export const largest = 2 * ladder.at(-1);

// perMM is how many CSS pixels a millimetre of the score has at least: its smallest type,
// of 7 points, is then 11 pixels high.
export const perMM = 11 / ((7 * 25.4) / 72);

// A score is never laid out narrower or wider than this, in millimetres. The widest is a
// sheet of paper; on a wider column type grows.
const [narrowest, widest] = [70, 297];

// layoutWidth returns how wide the score is laid out for a column of that many pixels, in
// whole millimetres.
export function layoutWidth(column) { return Math.min(Math.max(Math.floor(column / perMM), narrowest), widest); }

// rung returns the rung to lay out at for a size: the nearest that is not above it.
export function rung(size) { return ladder.findLast((r) => r <= size + 1e-6) ?? ladder[0]; }

// hold keeps a size within those that there are.
export function hold(size) { return Math.min(Math.max(size, ladder[0]), largest); }

// next returns the next larger or smaller rung.
export function next(size, step) {
  if (step > 0) return ladder.find((s) => s > size * 1.001) ?? largest;
  return ladder.findLast((s) => s < size * 0.999) ?? ladder[0];
}

// wheeled returns the size after a turn of the wheel, in CSS pixels.
export function wheeled(size, delta) { return hold(size * Math.exp(-delta / 400)); }

// anchored returns how far to scroll so that what lies so far from the start
// of the content, of the old size, stays where it is on the screen.
export function anchored(scroll, offset, before, after) {
  return (scroll + offset) * (after / before) - offset;
}
