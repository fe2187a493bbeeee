// The sizes of the score: 1 is a page as wide as its column, or as wide as it
// can be read on a narrow screen.

export const steps = [0.35, 0.5, 0.7, 0.85, 1, 1.25, 1.5, 2, 3, 4];

// readable is the least width of a page, in CSS pixels, at which its smallest
// type can be read.
export const readable = 760;

// nearly is the share of that width from which a column is wide enough after
// all: to scroll sideways for the rest is worse than somewhat smaller type.
const nearly = 0.85;

// baseWidth returns the width of a page at size 1 in a column of that width.
export function baseWidth(column) { return column >= nearly * readable ? column : readable; }

// fit returns the size at which a page is as wide as its column.
export function fit(column) { return hold(column / baseWidth(column)); }

// hold keeps a size within those that there are.
export function hold(zoom) {
  return Math.min(Math.max(zoom, steps[0]), steps[steps.length - 1]);
}

// next returns the next larger or smaller step.
export function next(zoom, step) {
  if (step > 0) return steps.find((s) => s > zoom * 1.001) ?? steps[steps.length - 1];
  return steps.findLast((s) => s < zoom * 0.999) ?? steps[0];
}

// wheeled returns the size after a turn of the wheel, in CSS pixels.
export function wheeled(zoom, delta) { return hold(zoom * Math.exp(-delta / 400)); }

// anchored returns how far to scroll so that what lies so far from the start
// of the content, of the old size, stays where it is on the screen.
export function anchored(scroll, offset, before, after) {
  return (scroll + offset) * (after / before) - offset;
}
