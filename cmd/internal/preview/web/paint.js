// Painting a picture of the stage: from the farthest to the nearest, each thing
// spread over its disc of blur before it covers what is behind it.

import { blurBy, varianceOf } from "./disc.js";
import { boxOf, drawFigure, floor } from "./figures.js";
import { farAway, floorLines, horizon, shades } from "./sight.js";

// A disc is worked out on as few points as show it: at most this radius, and in
// all at most so many points times rows of the disc, a figure. While the picture
// moves its views share that; at rest there is time for more.
const finest = 9;
const effort = { moving: 60_000, resting: 3_000_000 };

// A blur of less than this radius, pixels, is not seen on the canvas.
const unseen = 0.15;

// A blur of up to this radius is worked out on the full grid: on a coarser one
// the grid alone would spread more than that.
const small = 1.5;

// Lights far behind everyone: how far they stand off the axis, in parts of their
// distance, how strong they are, and their colour. Our own; they are there to
// show discs.
const amber = "255 196 120", white = "255 240 214", green = "176 224 190";
const lights = [
  [-0.3, 0.012, 0.9, amber], [-0.262, 0.02, 0.7, amber], [-0.225, 0.011, 1, white], [-0.19, 0.03, 0.8, amber],
  [-0.158, 0.014, 0.7, green], [-0.128, 0.022, 1, amber], [-0.098, 0.012, 0.8, white], [-0.071, 0.034, 0.7, amber],
  [-0.044, 0.014, 0.9, amber], [-0.02, 0.024, 0.7, white], [0.012, 0.012, 1, amber], [0.039, 0.03, 0.8, amber],
  [0.066, 0.016, 0.7, green], [0.093, 0.023, 0.9, amber], [0.124, 0.012, 1, white], [0.152, 0.036, 0.7, amber],
  [0.187, 0.015, 0.9, amber], [0.222, 0.026, 0.8, white], [0.258, 0.012, 0.9, amber], [0.298, 0.02, 0.7, amber],
  [-0.11, 0.085, 0.8, white], [0.142, 0.1, 0.8, white],
];

// So many degrees on, the lights begin anew: a camera that turns has some before it
// wherever it looks. A whole number of them goes round.
const again = 36;

// A Painter paints on one canvas.
export class Painter {
  constructor(canvas) {
    this.canvas = canvas;
    this.context = canvas.getContext("2d");
    this.spread = new Map(); // subjects that were spread, by name
  }

  // paint shows a picture of shot.js. resting tells that there is time; round
  // is how much more than the frame is shown, 1 for the frame alone; views are how
  // many are painted at once.
  paint(picture, { resting = true, round = 1, views = 1 } = {}) {
    const { canvas, context: c } = this;
    const width = canvas.width / round;
    this.frame = { width, height: width / picture.aspect, midX: canvas.width / 2, midY: canvas.height / 2 };
    c.setTransform(1, 0, 0, 1, 0, 0);
    this.back(picture.back, picture.camera);
    if (picture.camera) this.grid(floorLines(picture.camera, picture.camera.floor === undefined ? floor : -picture.camera.floor, picture.back.tangent));
    const most = resting ? effort.resting : effort.moving / views;
    for (const u of picture.subjects) this.subject(u, most);
    if (round > 1) this.surround();
  }

  // back paints the sky, the sea and the lights beyond it. A level camera has
  // the horizon in its middle; that too is spread over its disc. camera is one that
  // turns, or null.
  back({ tangent, disc }, camera) {
    const { canvas, context: c } = this;
    const { width, midX, midY } = this.frame;
    const r = Math.max((disc * width) / 2, 1);
    const line = midY - (camera ? horizon(camera, tangent) * width : 0);
    const sky = c.createLinearGradient(0, 0, 0, canvas.height);
    const at = (y) => Math.min(Math.max(y / canvas.height, 0), 1);
    sky.addColorStop(0, "#30485c");
    sky.addColorStop(at(line - r), "#8195a0");
    sky.addColorStop(at(line + r), "#33454f");
    sky.addColorStop(1, "#141d24");
    c.fillStyle = sky;
    c.fillRect(0, 0, canvas.width, canvas.height);
    for (const [x, y, strength, colour] of lights) {
      for (const p of camera ? round(x, y, camera, tangent) : [{ x: x * tangent, y: y * tangent }]) {
        this.light(midX + p.x * width, midY - p.y * width, r, strength, colour);
      }
    }
  }

  // grid paints lines of the floor, faintly and never blurred: they are not of the
  // picture, and show how the camera turns and goes.
  grid(lines) {
    const { canvas, context: c } = this;
    const { width, midX, midY } = this.frame;
    c.lineWidth = Math.max(1, canvas.width / 900);
    for (let shade = 0; shade < shades; shade++) {
      c.strokeStyle = `rgb(235 240 242 / ${(0.32 * (shades - shade)) / shades})`;
      c.beginPath();
      for (const l of lines) {
        if (l.shade !== shade) continue;
        c.moveTo(midX + l.x1 * width, midY - l.y1 * width);
        c.lineTo(midX + l.x2 * width, midY - l.y2 * width);
      }
      c.stroke();
    }
  }

  // light paints a point of light: a disc of even light, the fainter the larger.
  light(x, y, r, strength, colour) {
    const { context: c, frame } = this;
    const least = frame.width * 0.0025;
    const dim = Math.max(0.12, Math.min(1, (least * 7 / r) ** 2)) * strength;
    c.globalCompositeOperation = "screen";
    c.fillStyle = `rgb(${colour} / ${dim})`;
    c.beginPath();
    c.arc(x, y, Math.max(r, least), 0, 2 * Math.PI);
    c.fill();
    c.globalCompositeOperation = "source-over";
  }

  subject(u, most) {
    const { canvas, context: c, frame } = this;
    const metre = u.metre * frame.width;
    const x = frame.midX + u.x * frame.width, y = frame.midY - u.y * frame.width;
    const r = Number.isFinite(u.disc) ? (u.disc * frame.width) / 2 : canvas.width;
    if (r < unseen) {
      c.setTransform(metre, 0, 0, metre, x, y);
      drawFigure(c, u);
      c.setTransform(1, 0, 0, 1, 0, 0);
      return;
    }
    const [left, top, right, bottom] = boxOf(u);
    const edge = Math.ceil(r) + 1;
    const region = clip({
      left: x + left * metre - edge, top: y + top * metre - edge,
      right: x + right * metre + edge, bottom: y + bottom * metre + edge,
    }, -edge, -edge, canvas.width + edge, canvas.height + edge);
    if (!region) return;
    const made = this.spreadOut(u, { metre, x, y, r, region, most });
    c.imageSmoothingQuality = "low"; // straight between points, everywhere alike
    c.drawImage(made.canvas, 0, 0, made.width, made.height, region.left, region.top, made.width / made.scale, made.height / made.scale);
  }

  // spreadOut draws a figure by itself and spreads it over its disc. What was
  // made for the last frame is taken again where nothing has changed.
  spreadOut(u, { metre, x, y, r, region, most }) {
    const key = [metre, x, y, r, most, this.canvas.width, u.eyes ?? 0].map((v) => Number(v).toFixed(2)).join();
    let made = this.spread.get(u.name);
    if (made?.key === key) return made;
    if (!made) {
      made = { canvas: document.createElement("canvas") };
      made.context = made.canvas.getContext("2d", { willReadFrequently: true });
      this.spread.set(u.name, made);
    }
    const w = region.right - region.left, h = region.bottom - region.top;
    const scale = scaleFor(w, h, r, most);
    const width = Math.ceil(w * scale), height = Math.ceil(h * scale);
    Object.assign(made, { key, scale, width, height });
    if (made.canvas.width < width) made.canvas.width = width;
    if (made.canvas.height < height) made.canvas.height = height;
    const c = made.context;
    c.setTransform(1, 0, 0, 1, 0, 0);
    c.clearRect(0, 0, made.canvas.width, made.canvas.height);
    c.setTransform(metre * scale, 0, 0, metre * scale, (x - region.left) * scale, (y - region.top) * scale);
    drawFigure(c, u);
    c.putImageData(blurBy(c.getImageData(0, 0, width, height), (varianceOf(r) - gridVariance(scale)) * scale * scale), 0, 0);
    return made;
  }

  // surround dims what is outside the frame.
  surround() {
    const { canvas, context: c } = this;
    const { width, height, midX, midY } = this.frame;
    c.fillStyle = "rgb(10 12 14 / 62%)";
    c.beginPath();
    c.rect(0, 0, canvas.width, canvas.height);
    c.rect(midX - width / 2, midY - height / 2, width, height);
    c.fill("evenodd");
    c.strokeStyle = "#f2f2f2";
    c.lineWidth = Math.max(1, canvas.width / 640);
    c.strokeRect(midX - width / 2, midY - height / 2, width, height);
  }
}

// round returns where a camera that turns has a light, as often as it is before it.
function round(x, y, camera, tangent) {
  const places = [];
  for (let around = 0; around < 360; around += again) {
    const p = farAway(x, y, around, camera, tangent);
    if (p && Math.abs(p.x) < 1) places.push(p);
  }
  return places;
}

// scaleFor is how much smaller than the canvas a disc of radius r is worked out
// in a region: points times rows of the disc stay within the effort. A grid never
// spreads more than the disc itself.
export function scaleFor(w, h, r, effort) {
  if (r <= small) return 1;
  const byRadius = Math.min(1, finest / r);
  const byEffort = Math.cbrt(effort / (w * h * Math.max(2 * r, 1)));
  const byGrid = Math.min(1, 1.6 / Math.sqrt(r * r + 1 / 3));
  return Math.max(Math.min(byRadius, byEffort), byGrid);
}

// gridVariance is how far a grid of that scale spreads a picture by itself: each
// point is the mean of a square, less that of the canvas, and what lies between
// points is straight.
export function gridVariance(scale) {
  return scale === 1 ? 0 : (1 / scale ** 2 - 1) / 12 + 1 / (6 * scale ** 2);
}

// clip cuts a box to a frame, and widens it to whole pixels: what is worked out
// pixel by pixel is put down pixel on pixel.
function clip(box, left, top, right, bottom) {
  const b = {
    left: Math.floor(Math.max(box.left, left)), top: Math.floor(Math.max(box.top, top)),
    right: Math.ceil(Math.min(box.right, right)), bottom: Math.ceil(Math.min(box.bottom, bottom)),
  };
  return b.right - b.left > 0.5 && b.bottom - b.top > 0.5 ? b : null;
}
