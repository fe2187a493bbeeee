// Where a try has landed, as a distance: what the tape would say, and not the ring.

const inch = 0.0254;

// length writes how far two places are apart.
export function length(metres, imperial) {
  if (imperial) return metres < 12 * inch ? `${(metres / inch).toFixed(1)} in` : place(metres, true);
  if (metres < 0.01) return `${(metres * 1000).toFixed(0)} mm`;
  return metres < 1 ? `${(metres * 100).toFixed(metres < 0.1 ? 1 : 0)} cm` : `${metres.toFixed(2)} m`;
}

// place writes a distance from the camera.
export function place(metres, imperial) {
  if (metres === Infinity) return "infinity";
  if (!imperial) return `${metres.toFixed(2)} m`;
  const inches = Math.round((metres / inch) * 2) / 2;
  return `${Math.floor(inches / 12)} ft ${inches % 12} in`;
}

// miss returns where the focus landed beside its mark, in metres: off is positive behind it.
// law is that of the ring; degrees are at the hand. sharp are the distances of the window.
export function miss(law, pull, landed) {
  const [a, b] = pull.window_deg.map((deg) => law.distance(deg));
  const at = law.distance(landed), mark = law.distance(pull.to_deg);
  const near = pull.open_near ? 0 : Math.min(a, b), far = pull.open_far ? Infinity : Math.max(a, b);
  return { at, mark, off: at === mark ? 0 : at - mark, sharp: [near, far] };
}

// says puts a miss into words: "landed 4 cm behind KETTLE (1.14 m), sharp 1.09 m to 1.11 m".
export function says({ at, mark, off, sharp: [near, far] }, name, imperial) {
  const sharp = near === 0 ? `sharp up to ${place(far, imperial)}` : `sharp ${place(near, imperial)} to ${place(far, imperial)}`;
  if (at === Infinity || mark === Infinity) return `landed at ${place(at, imperial)}, ${name} is at ${place(mark, imperial)}; ${sharp}`;
  const where = Math.abs(off) < 5e-4 ? `on ${name}` : `${length(Math.abs(off), imperial)} ${off > 0 ? "behind" : "in front of"} ${name}`;
  return `landed ${where} (${place(at, imperial)}), ${sharp}`;
}

// pathAt returns where a hand was at a time: between two points of its path straight.
export function pathAt(path, t, before) {
  if (!path.length || t <= path[0].t) return path[0]?.deg ?? before;
  const i = path.findIndex((p) => p.t >= t);
  if (i < 0) return path.at(-1).deg;
  const [p, q] = [path[i - 1], path[i]];
  return q.t === p.t ? q.deg : p.deg + ((q.deg - p.deg) * (t - p.t)) / (q.t - p.t);
}
