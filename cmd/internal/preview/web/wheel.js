// The hand wheel as it is drawn: it turns under a pointer at the top, with the
// plan's marks on it.

import { turned } from "./input.js";
import { plain, shorten } from "./text.js";

const ns = "http://www.w3.org/2000/svg";
const radius = 100;

// svg returns a new element of a drawing.
export function svg(name, attributes = {}, text) {
  const el = document.createElementNS(ns, name);
  for (const [key, value] of Object.entries(attributes)) el.setAttribute(key, value);
  if (text !== undefined) el.textContent = plain(text);
  return el;
}

export class Wheel {
  // onTurn is called with degrees and the stamp of the event when a pointer turns
  // it.
  constructor(onTurn) {
    this.deg = 0;
    this.marks = [];
    this.way = 1; // 1: clockwise is farther
    this.root = svg("svg", {
      class: "wheel", viewBox: "-128 -140 256 268", role: "slider", tabindex: 0, "aria-label": "Hand wheel",
      "aria-valuemin": 0,
    });
    this.disc = svg("g", { class: "disc" });
    this.names = svg("g", { class: "names" });
    this.root.append(this.disc, svg("path", { class: "pointer", d: "M0 -104 l-7 -14 h14 z" }), this.names);
    this.root.addEventListener("pointerdown", (e) => this.press(e, onTurn));
  }

  // take shows the wheel of a shot: marks are { deg, name }.
  take(throwDeg, marks, way) {
    Object.assign(this, { throw: throwDeg, marks, way });
    this.root.setAttribute("aria-valuemax", throwDeg.toFixed(1));
    this.disc.replaceChildren(svg("circle", { r: radius }), svg("circle", { class: "hub", r: 22 }));
    for (let deg = 0; deg < 360; deg += 10) {
      const to = deg % 30 ? 94 : 88;
      this.disc.append(svg("line", { class: "tick", y1: -radius, y2: -to, transform: `rotate(${deg})` }));
    }
    this.lines = marks.map((m) => {
      const line = svg("line", { class: "mark", y1: -radius, y2: -74, transform: `rotate(${-m.deg * way})` });
      this.disc.append(line);
      return line;
    });
    this.set(this.deg);
  }

  // set turns the wheel to an angle at the hand.
  set(deg) {
    this.deg = deg;
    this.disc.setAttribute("transform", `rotate(${deg * this.way})`);
    this.root.setAttribute("aria-valuenow", deg.toFixed(1));
    this.root.setAttribute("aria-valuetext", `${deg.toFixed(1)} degrees`);
    this.names.replaceChildren();
    this.marks.forEach((m, i) => {
      const near = Math.abs(deg - m.deg) <= 180; // another turn of the wheel has other marks
      this.lines[i].classList.toggle("away", !near);
      if (near) this.name(m.name, (deg - m.deg) * this.way);
    });
  }

  // name writes a mark's name upright outside the rim, where no other is near.
  name(text, angle) {
    const a = (angle * Math.PI) / 180;
    const x = Math.sin(a) * 114, y = -Math.cos(a) * 114;
    for (const other of this.names.children) {
      if (Math.hypot(Number(other.getAttribute("x")) - x, Number(other.getAttribute("y")) - y) < 14) return;
    }
    const short = shorten(plain(text), (part) => [...part].length <= 15);
    const anchor = Math.abs(x) < 30 ? "middle" : x < 0 ? "start" : "end";
    const inward = Math.abs(x) < 30 ? x : Math.sign(x) * 126;
    this.names.append(svg("text", { x: inward.toFixed(1), y: (y + 4 - (Math.abs(x) < 30 && y < 0 ? 16 : 0)).toFixed(1), "text-anchor": anchor }, short));
  }

  // press turns the wheel with a pointer until it is let go.
  press(event, onTurn) {
    if (event.button !== 0) return;
    event.preventDefault();
    this.root.focus({ preventScroll: true });
    this.root.setPointerCapture(event.pointerId);
    const box = this.root.getBoundingClientRect();
    const centre = { x: box.left + box.width / 2, y: box.top + (box.height * 140) / 268 };
    let from = { x: event.clientX, y: event.clientY };
    const move = (e) => {
      const to = { x: e.clientX, y: e.clientY };
      onTurn(turned(centre, from, to) * this.way, e.timeStamp);
      from = to;
    };
    this.root.addEventListener("pointermove", move);
    this.root.addEventListener("lostpointercapture", () => this.root.removeEventListener("pointermove", move), { once: true });
  }
}
