// The figures of the stage: plain cut-out people and things, told apart by
// tone, hair and the weave of a coat, also in grey. They are drawn in metres,
// the eyes of a person at height 0, up is negative as on a canvas.

import { plain } from "./text.js";

// Heights that are taken where the plan gives none. A standing person of 1.7 m has the
// eyes some 11 cm below the top of the head (from memory), and the camera looks
// level from there.
const crown = -0.11;
export const floor = 1.59;
const thingHeight = 0.2;

// Nobody is drawn with the eyes nearer to what they stand on: a body needs so much room.
const leastEyes = 0.45;

// feetOf is how far below the eyes somebody stands: as the plan has it, or as usual.
export const feetOf = (subject) => (subject.eyes === undefined ? floor : Math.max(subject.eyes, leastEyes));

const looks = [
  { coat: "#e9dfc6", weave: "#b9a679", hair: "#4a3a2c", skin: "#d9b08f" },
  { coat: "#2b4a63", weave: "#87a9c2", hair: "#d8c9a8", skin: "#e6c6a8" },
  { coat: "#b4603a", weave: "#e9b58f", hair: "#231d1a", skin: "#a87450" },
  { coat: "#8fae9c", weave: "#3f5e50", hair: "#7a3d24", skin: "#f0d6bd" },
  { coat: "#5b3f58", weave: "#c39dbd", hair: "#b9b4ad", skin: "#7d5238" },
  { coat: "#d6a63f", weave: "#7c5a14", hair: "#39322d", skin: "#cf9f7a" },
];

// lookOf returns the look of the subject of that index.
const lookOf = (index) => looks[index % looks.length];

// boxOf returns the box round a figure, metres: left, top, right, bottom.
export function boxOf(subject) {
  if (subject.person) return [-0.26, crown - 0.09, 0.26, feetOf(subject)];
  const h = thingSize(subject);
  return [-h * 0.55, -h * 0.55 + thingDrop, h * 0.55, h * 0.55 + thingDrop];
}

// Things are held or stand a little below the eyes.
const thingDrop = 0.04;

// thingSize is how high a thing is drawn: as high as it is deep where the plan
// says that, within reason.
export function thingSize(subject) {
  return subject.deep > 0.05 ? Math.min(subject.deep, 1.2) : thingHeight;
}

// drawFigure draws the figure of a subject on a canvas that is set to metres.
export function drawFigure(c, subject) {
  const look = lookOf(subject.index);
  c.lineJoin = "round";
  c.lineCap = "round";
  if (subject.person) person(c, look, subject.index, feetOf(subject));
  else thing(c, look, subject, thingSize(subject));
}

function person(c, look, index, feet) {
  body(c, look, index, feet);
  c.fillStyle = shade(look.skin, -0.22); // neck
  c.fillRect(-0.045, 0.06, 0.09, 0.11);
  oval(c, 0, 0.008, 0.079, 0.118, look.skin);
  oval(c, -0.079, 0.012, 0.012, 0.026, shade(look.skin, -0.12));
  oval(c, 0.079, 0.012, 0.012, 0.026, shade(look.skin, -0.12));
  face(c, look);
  hair(c, look, index);
}

// body draws a coat down to the feet; below the shoulders it is as long as they are far.
function body(c, look, index, feet) {
  const down = (y) => 0.31 + ((y - 0.31) * (feet - 0.31)) / (floor - 0.31);
  c.beginPath();
  c.moveTo(-0.055, 0.14);
  c.bezierCurveTo(-0.13, 0.175, -0.225, 0.17, -0.232, 0.31);
  c.lineTo(-0.25, down(0.82));
  c.lineTo(-0.19, down(0.84));
  c.lineTo(-0.2, feet);
  c.lineTo(0.2, feet);
  c.lineTo(0.19, down(0.84));
  c.lineTo(0.25, down(0.82));
  c.lineTo(0.232, 0.31);
  c.bezierCurveTo(0.225, 0.17, 0.13, 0.175, 0.055, 0.14);
  c.closePath();
  c.fillStyle = look.coat;
  c.fill();
  c.save();
  c.clip();
  weave(c, look.weave, index, -0.26, 0.14, 0.26, feet);
  c.restore();
  c.fillStyle = shade(look.coat, -0.3); // collar
  c.beginPath();
  c.moveTo(-0.058, 0.13);
  c.lineTo(0, 0.235);
  c.lineTo(0.058, 0.13);
  c.lineTo(0.094, 0.16);
  c.lineTo(0.012, 0.295);
  c.lineTo(-0.012, 0.295);
  c.lineTo(-0.094, 0.16);
  c.closePath();
  c.fill();
}

// weave fills a box with one of four weaves.
function weave(c, colour, index, left, top, right, bottom) {
  c.strokeStyle = c.fillStyle = colour;
  c.lineWidth = 0.006;
  const step = 0.045;
  const line = (x, y, u, v) => { c.beginPath(); c.moveTo(x, y); c.lineTo(u, v); c.stroke(); };
  const kind = index % 4;
  if (kind === 0 || kind === 3) for (let y = top + step / 2; y < bottom; y += step) line(left, y, right, y);
  if (kind === 1 || kind === 3) for (let x = left + step / 2; x < right; x += step) line(x, top, x, bottom);
  if (kind === 2) {
    for (let y = top, odd = 0; y < bottom; y += step, odd ^= 1) {
      for (let x = left + (odd ? step / 2 : 0); x < right; x += step) oval(c, x, y, 0.008, 0.008, colour);
    }
  }
}

function face(c, look) {
  const ink = shade(look.skin, -0.62);
  for (const side of [-1, 1]) {
    oval(c, side * 0.031, 0, 0.0135, 0.0085, "#f6f1ea");
    oval(c, side * 0.031, 0, 0.0068, 0.0078, ink);
    c.strokeStyle = shade(look.hair, -0.1);
    c.lineWidth = 0.0042;
    c.beginPath();
    c.moveTo(side * 0.019, -0.027);
    c.quadraticCurveTo(side * 0.033, -0.034, side * 0.047, -0.024);
    c.stroke();
  }
  c.strokeStyle = shade(look.skin, -0.25);
  c.lineWidth = 0.005;
  c.beginPath();
  c.moveTo(0.003, 0.004);
  c.lineTo(0.012, 0.042);
  c.lineTo(-0.003, 0.045);
  c.stroke();
  c.strokeStyle = shade(look.skin, -0.45);
  c.beginPath();
  c.moveTo(-0.022, 0.075);
  c.quadraticCurveTo(0, 0.087, 0.022, 0.075);
  c.stroke();
}

// hair draws one of three heads of hair.
function hair(c, look, index) {
  c.fillStyle = look.hair;
  c.beginPath();
  const kind = index % 3;
  if (kind === 1) { // long, to the shoulders
    c.moveTo(-0.084, 0.15);
    c.bezierCurveTo(-0.115, 0.02, -0.11, crown - 0.035, 0, crown - 0.035);
    c.bezierCurveTo(0.11, crown - 0.035, 0.115, 0.02, 0.084, 0.15);
    c.lineTo(0.066, 0.15);
    c.bezierCurveTo(0.078, 0.06, 0.075, -0.02, 0.04, -0.058);
    c.bezierCurveTo(0, -0.062, -0.05, -0.05, -0.07, -0.01);
    c.bezierCurveTo(-0.078, 0.04, -0.07, 0.1, -0.066, 0.15);
  } else {
    c.moveTo(-0.084, 0.012);
    c.bezierCurveTo(-0.098, -0.075, -0.062, crown - 0.022, 0, crown - 0.022);
    c.bezierCurveTo(0.062, crown - 0.022, 0.098, -0.075, 0.084, 0.012);
    c.bezierCurveTo(0.072, -0.03, 0.062, -0.05, 0.03, -0.056);
    c.bezierCurveTo(-0.01, -0.062, -0.06, -0.05, -0.084, 0.012);
  }
  c.fill();
  if (kind === 2) { // a knitted cap
    c.beginPath();
    c.moveTo(-0.088, -0.042);
    c.bezierCurveTo(-0.09, crown - 0.05, -0.05, crown - 0.06, 0, crown - 0.06);
    c.bezierCurveTo(0.05, crown - 0.06, 0.09, crown - 0.05, 0.088, -0.042);
    c.closePath();
    c.fillStyle = shade(look.coat, -0.5);
    c.fill();
    c.fillStyle = shade(look.coat, -0.66);
    c.fillRect(-0.091, -0.066, 0.182, 0.03);
  }
}

// thing draws a block of that height with the first letter of its name: what it
// is the plan does not say, and the edges of a letter show blur well.
function thing(c, look, subject, h) {
  c.save();
  c.translate(0, thingDrop);
  c.scale(h, h);
  outline(c, subject.index, 0.5);
  c.fillStyle = shade(look.coat, -0.45);
  c.fill();
  outline(c, subject.index, 0.44);
  c.fillStyle = look.coat;
  c.fill();
  c.fillStyle = shade(look.coat, luminance(look.coat) > 0.45 ? -0.68 : 0.75);
  c.textAlign = "center";
  c.textBaseline = "middle";
  c.scale(0.01, 0.01); // a browser has no letters of half a unit
  c.font = `700 56px Go, Arial, "Liberation Sans", sans-serif`;
  c.fillText(initial(subject.name), 0, 4);
  c.restore();
}

// outline sets the path of one of three blocks: square, round, eight-sided.
function outline(c, index, r) {
  c.beginPath();
  if (index % 3 === 0) c.roundRect(-r, -r, 2 * r, 2 * r, 0.12);
  else if (index % 3 === 1) c.ellipse(0, 0, r, r, 0, 0, 2 * Math.PI);
  else {
    for (let n = 0; n < 8; n++) {
      const a = ((n + 0.5) * Math.PI) / 4;
      c.lineTo((Math.cos(a) * r) / Math.cos(Math.PI / 8), (Math.sin(a) * r) / Math.cos(Math.PI / 8));
    }
    c.closePath();
  }
}

// initial is the first letter of a name as people see it, marks included.
export function initial(name) {
  const [first] = new Intl.Segmenter(undefined, { granularity: "grapheme" }).segment(plain(name).replace(/[^\p{L}\p{N}].*?(?=[\p{L}\p{N}])/u, ""));
  return first?.segment ?? "";
}

function oval(c, x, y, rx, ry, colour) {
  c.beginPath();
  c.ellipse(x, y, rx, ry, 0, 0, 2 * Math.PI);
  c.fillStyle = colour;
  c.fill();
}

// shade makes a colour #rrggbb darker (below 0) or lighter.
function shade(colour, by) {
  const to = by < 0 ? 0 : 255;
  const parts = [1, 3, 5].map((i) => {
    const v = parseInt(colour.slice(i, i + 2), 16);
    return Math.round(v + (to - v) * Math.abs(by)).toString(16).padStart(2, "0");
  });
  return `#${parts.join("")}`;
}

// luminance is how light a colour #rrggbb is, 0 to 1.
function luminance(colour) {
  const [r, g, b] = [1, 3, 5].map((i) => parseInt(colour.slice(i, i + 2), 16) / 255);
  return 0.21 * r + 0.72 * g + 0.07 * b;
}
