// The graph of a try: the hand's way over the planned one.

import { svg } from "./wheel.js";

// As wide as the narrowest column that it stands in, so that its letters are never
// drawn smaller than they are.
const width = 288, height = 140;
const left = 42, right = 42, top = 8, bottom = 22;

// graph draws a try; planned is the planned hand round the pull, { t, deg }.
export function graph(attempt, planned) {
  const { pull, path, landed } = attempt;
  const all = [...planned, ...path];
  const from = Math.min(planned[0].t, ...path.map((p) => p.t)), to = Math.max(planned.at(-1).t, ...path.map((p) => p.t));
  const degs = all.map((p) => p.deg);
  const low = Math.min(...degs), high = Math.max(...degs);
  const pad = (high - low) * 0.08 || 1;
  const x = (t) => left + ((t - from) / (to - from || 1)) * (width - left - right);
  const y = (deg) => height - bottom - ((deg - low + pad) / (high - low + 2 * pad)) * (height - top - bottom);
  const held = (deg) => Math.min(Math.max(deg, low - pad), high + pad);
  const root = svg("svg", { class: "graph", viewBox: `0 0 ${width} ${height}`, role: "img" });
  root.append(svg("title", {}, "The hand's way over the planned one, degrees at the hand over seconds"));
  const [a, b] = pull.window_deg;
  const edge = [held(pull.open_near ? -Infinity : a), held(pull.open_far ? Infinity : b)];
  root.append(svg("rect", { class: "window", x: left, width: width - left - right, y: y(edge[1]), height: Math.max(y(edge[0]) - y(edge[1]), 1) }));
  const near = x(pull.land_s) - x(pull.start_s) < left; // the two times would touch
  for (const [t, anchor] of [[pull.start_s, "end"], [pull.land_s, "start"]]) {
    root.append(svg("line", { class: "rule", x1: x(t), x2: x(t), y1: top, y2: height - bottom }));
    root.append(svg("text", { x: x(t), y: height - 7, "text-anchor": near ? anchor : "middle" }, `${t.toFixed(2)} s`));
  }
  for (const deg of [pull.from_deg, pull.to_deg]) {
    root.append(svg("text", { x: left - 6, y: y(deg) + 4, "text-anchor": "end" }, `${deg.toFixed(0)}°`));
  }
  root.append(svg("polyline", { class: "planned", points: planned.map((p) => `${x(p.t).toFixed(1)},${y(p.deg).toFixed(1)}`).join(" ") }));
  root.append(svg("polyline", { class: "hand", points: path.map((p) => `${x(p.t).toFixed(1)},${y(p.deg).toFixed(1)}`).join(" ") }));
  const now = svg("line", { class: "now", y1: top, y2: height - bottom, x1: left, x2: left, visibility: "hidden" });
  root.append(now);
  root.addEventListener("at", ({ detail: t }) => { // while the try is played again
    const shown = t >= from && t <= to;
    now.setAttribute("visibility", shown ? "visible" : "hidden");
    if (shown) for (const end of ["x1", "x2"]) now.setAttribute(end, x(t));
  });
  if (landed) root.append(svg("circle", { class: "landed", cx: x(landed.t), cy: y(landed.deg), r: 3.5 }));
  return root;
}

// dotsOf draws landings of a practice as dots over the window, the last one filled; window
// is from the mark, degrees.
export function dotsOf(landings, window) {
  const high = 40, span = Math.max(...landings.map((l) => Math.abs(l.error)), ...window.filter(Number.isFinite).map(Math.abs)) * 1.15 || 1;
  const x = (deg) => left + ((Math.min(Math.max(deg, -span), span) + span) / (2 * span)) * (width - left - right);
  const root = svg("svg", { class: "graph dots", viewBox: `0 0 ${width} ${high}`, role: "img" });
  root.append(svg("title", {}, `The last ${landings.length} landings, short of the mark at the left and past it at the right`));
  root.append(svg("rect", { class: "window", x: x(window[0]), width: Math.max(x(window[1]) - x(window[0]), 1), y: 6, height: high - 12 }));
  root.append(svg("line", { class: "rule", x1: x(0), x2: x(0), y1: 2, y2: high - 2 }));
  landings.forEach((l, i) => root.append(svg("circle", { class: i === landings.length - 1 ? "landed" : "earlier", cx: x(l.error), cy: high / 2, r: 4 })));
  return root;
}
