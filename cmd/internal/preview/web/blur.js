// The lens in numbers: the same formulas as the program's own, for a focus that
// a hand turns here. Lengths are metres, Infinity where infinite.

// blurDisc is the diameter on the sensor of the disc that a point at d makes
// with the focus at x, both from the lens: (f^2/N) |d-x| / ((d+z)(x-f)). behind
// is z, how far the entrance pupil lies behind the front principal plane.
export function blurDisc({ focal, number, behind = 0 }, d, x) {
  const fromPupil = d + behind;
  if (!(x > focal) || !(fromPupil > 0)) return Infinity;
  const square = (focal * focal) / number;
  if (d === Infinity && x === Infinity) return 0;
  if (d === Infinity) return square / (x - focal);
  if (x === Infinity) return square / fromPupil;
  return ((square / fromPupil) * Math.abs(d - x)) / (x - focal);
}

// diffractionDisc is the diameter on the sensor of the disc that diffraction alone
// makes of every point with the focus at x: the uniform disc of equal half contrast,
// in green light.
export function diffractionDisc({ focal, number, behind = 0 }, x) {
  const magnification = x === Infinity ? 0 : x > focal ? focal / (x - focal) : Infinity;
  return 1.745 * 550e-9 * number * (1 + magnification * (1 + behind / focal));
}

// limitsOf returns up to which disc of defocus a thing looks sharp, and from which
// the blur shows, beside a disc of diffraction. sharp is the criterion without
// diffraction and seen the least that shows without it; all share a unit.
export function limitsOf(sharp, seen, diffraction) {
  if (!Number.isFinite(diffraction)) return { sharp, seen };
  const eye = 2; // arcmin, the eye's own blur
  const whole = Math.max(sharp, 1.15 * diffraction);
  return {
    sharp: Math.sqrt((whole - diffraction) * (whole + diffraction)),
    seen: (seen / eye) * Math.hypot(eye, diffraction),
  };
}

// fromSensor turns a distance from the sensor into one from the lens; NaN where
// the lens focuses nothing.
export function fromSensor(D, focal) {
  if (D === Infinity) return D;
  if (!(D >= 4 * focal)) return NaN;
  return (D / 2) * (1 + Math.sqrt(1 - (4 * focal) / D));
}

// scaleOf is how large a thing at a metre from the entrance pupil is on the
// sensor, metres a metre. share is how much of the ring has turned from its
// near end, for a lens whose breathing is known.
export function scaleOf({ focal, behind = 0, breathes }, x, share) {
  if (breathes !== undefined) return focal * (1 + (breathes / 100) * (1 - share));
  return x === Infinity ? focal : (focal * (x + behind)) / (x - focal);
}

// A Law ties the angle at the hand to the distance that the ring sets.
export class Law {
  // sensor holds the distances from the sensor in even steps of the throw,
  // degrees. Between steps it is straight in 1/distance, as rings nearly are.
  constructor(throwDeg, sensor) {
    this.throw = throwDeg;
    this.inverse = sensor.map((d) => 1 / d); // 1/Infinity is 0
  }

  // distance returns what an angle sets, from the sensor; beyond the stops it
  // counts as the stop.
  distance(deg) {
    const last = this.inverse.length - 1;
    const at = (Math.min(Math.max(deg, 0), this.throw) / this.throw) * last;
    const i = Math.min(Math.floor(at), last - 1);
    const inverse = this.inverse[i] + (this.inverse[i + 1] - this.inverse[i]) * (at - i);
    return inverse <= 0 ? Infinity : 1 / inverse;
  }
}

// wordFor says how a blur looks from the seats.
export function wordFor(arcmin, sharp, seen) {
  if (arcmin <= sharp * (1 + 1e-6)) return "sharp";
  return arcmin <= Math.max(seen, sharp) ? "faint" : "soft";
}
