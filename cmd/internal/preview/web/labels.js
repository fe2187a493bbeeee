// Names beside the figures of the stage: over each, or at the edge of the frame
// where the figure is outside of it.

import { boxOf } from "./figures.js";
import { plain, shorten } from "./text.js";

// A name takes at most this share of the frame's width.
const widest = 0.4;

// place returns where the names go, each { text, x, y, w, out, over }: its middle and
// baseline in pixels, and whether its figure is outside the frame, to a side or above or
// below. Names that
// would lie over each other move down, in the order of their figures from left
// to right. measure gives the width of a text.
export function place(subjects, frame, size, measure) {
  const pad = size * 0.6;
  const names = subjects.map((u) => {
    const metre = u.metre * frame.width;
    const x = frame.midX + u.x * frame.width;
    const midY = frame.midY - (u.y ?? 0) * frame.width;
    const [left, top, right, bottom] = boxOf(u);
    const from = frame.midX - frame.width / 2, to = frame.midX + frame.width / 2;
    const out = x + right * metre < from ? -1 : x + left * metre > to ? 1 : 0;
    const over = midY + bottom * metre < frame.midY - frame.height / 2 ? 1 : midY + top * metre > frame.midY + frame.height / 2 ? -1 : 0;
    const name = shorten(plain(u.name), (part) => measure(part) <= frame.width * widest);
    const text = out < 0 ? `◂ ${name}` : out > 0 ? `${name} ▸` : over ? `${over > 0 ? "▴" : "▾"} ${name}` : name;
    const w = measure(text) + pad;
    const y = out && !over ? frame.midY : midY + top * metre - size * 0.5;
    return { text, out, over, w, x: clamp(x, from + w / 2 + pad / 2, to - w / 2 - pad / 2), y };
  }).sort((a, b) => a.x - b.x);
  const lines = [frame.midY - frame.height / 2 + size * 1.5, frame.midY + frame.height / 2 - size * 0.8];
  const put = [];
  for (const n of names) {
    n.y = clamp(n.y, lines[0], lines[1]);
    while (put.some((o) => Math.abs(o.x - n.x) < (o.w + n.w) / 2 && Math.abs(o.y - n.y) < size * 1.5) && n.y < lines[1]) n.y += size * 0.25;
    put.push(n);
  }
  return put;
}

const clamp = (v, lo, hi) => (hi < lo ? (lo + hi) / 2 : Math.min(Math.max(v, lo), hi));

// drawNames writes the names on a canvas. They are not of the picture, and are
// never blurred.
export function drawNames(c, subjects, frame, size) {
  c.font = `600 ${size}px Go, Arial, "Liberation Sans", sans-serif`;
  c.textAlign = "center";
  c.textBaseline = "alphabetic";
  for (const n of place(subjects, frame, size, (text) => c.measureText(text).width)) {
    c.fillStyle = "rgb(12 16 20 / 62%)";
    c.beginPath();
    c.roundRect(n.x - n.w / 2, n.y - size * 1.05, n.w, size * 1.4, size * 0.25);
    c.fill();
    c.fillStyle = "#f4f1ea";
    c.fillText(n.text, n.x, n.y);
  }
}
