// A view of the stage: the picture at one stop, and how blurred everyone is.

import { make } from "./shared.js";
import { Painter } from "./paint.js";
import { drawNames } from "./labels.js";
import { wordFor } from "./blur.js";
import { plain } from "./text.js";

// The canvas has at most so many pixels a side: more costs time and shows
// nothing.
const widest = 1280;

export class View {
  // name tells the view from the other; onStop is called with the mark of the
  // stop that is picked, "" for the plan's own.
  constructor(name, onStop) {
    this.root = make("figure", "view");
    this.root.dataset.view = name;
    this.frame = make("div", "frame");
    this.canvas = make("canvas");
    this.canvas.setAttribute("role", "img");
    this.canvas.setAttribute("aria-label", "The picture is on its way."); // until the shot has come
    this.count = make("output", "count");
    this.count.hidden = true;
    this.frame.append(this.canvas, this.count);
    const caption = make("figcaption");
    this.setUp = make("bdi", "set-up"); // where the views are of two set-ups
    this.setUp.hidden = true;
    const label = make("label", "stop-label", "Stop ");
    this.stop = make("select");
    this.stop.addEventListener("change", () => onStop(this.stop.value));
    label.append(this.stop);
    this.list = make("ul", "blurs");
    this.list.setAttribute("aria-label", `Blur at the viewer, ${name}`);
    caption.append(this.setUp, label, this.list);
    this.root.append(this.frame, caption);
    this.painter = new Painter(this.canvas);
    this.shot = null;
    this.shift = 0;
    this.items = new Map();
    new ResizeObserver(() => this.resize()).observe(this.frame);
  }

  // take shows another shot, or the same one at another stop; own is the plan's
  // stop by name, setUp the name of the set-up where another is beside it. shift is how
  // many seconds its clock is ahead of the page's.
  take(shot, own, picked, setUp = "", shift = 0) {
    this.shot = shot;
    this.shift = shift;
    this.setUp.hidden = !setUp;
    this.setUp.textContent = setUp;
    const options = [["", `${own}, as planned`], ...shot.told.stops.map((s) => [String(s.mark), s.name])];
    this.stop.replaceChildren(...options.map(([value, text]) => {
      const option = make("option", "", text);
      option.value = value;
      return option;
    }));
    this.stop.value = picked;
    this.items.clear();
    this.list.replaceChildren();
    this.resize();
  }

  // reserve takes the room that a shot will need, before it is there.
  reserve({ aspect, subjects }) {
    this.frame.style.setProperty("aspect-ratio", aspect);
    if (this.list.children.length === subjects) return;
    this.items.clear();
    this.list.replaceChildren(...Array.from({ length: subjects }, () => make("li", "blur", "\u00a0")));
  }

  // resize gives the canvas the pixels that the screen shows of it.
  resize() {
    if (!this.shot) return;
    const { sensor_width_mm: w, sensor_height_mm: h } = this.shot.told;
    this.frame.style.setProperty("aspect-ratio", `${w} / ${h}`);
    const width = Math.min(Math.round(this.frame.clientWidth * (globalThis.devicePixelRatio || 1)), widest);
    if (width < 2) return;
    const height = Math.round((width * h) / w);
    if (this.canvas.width !== width || this.canvas.height !== height) {
      this.canvas.width = width;
      this.canvas.height = height;
      this.onResize?.();
    }
  }

  // draw shows a time; deg is where a hand has the focus, if one has.
  draw(t, { deg, resting, round, views }) {
    if (!this.shot || this.canvas.width < 2) return;
    const picture = this.shot.picture(t + this.shift, deg);
    this.painter.paint(picture, { resting, round, views });
    const perPixel = this.canvas.width / this.frame.clientWidth;
    drawNames(this.painter.context, picture.subjects, this.painter.frame, 12.5 * perPixel);
    this.tell(picture);
  }

  // tell writes everyone's blur below the picture.
  tell({ subjects, sample, limits }) {
    this.list.dataset.sample = sample;
    const words = [];
    const seen = new Set(subjects.map((u) => u.name));
    for (const [name, item] of this.items) {
      if (!seen.has(name)) away(item);
    }
    for (const u of [...subjects].sort((a, b) => a.index - b.index)) {
      let item = this.items.get(u.name);
      if (!item) {
        item = make("li", "blur");
        item.dataset.subject = u.name;
        item.append(make("bdi", "who", u.name), make("span", "value"), make("span", "word"));
        this.list.append(item);
        this.items.set(u.name, item);
      }
      const word = wordFor(u.blur, limits.sharp, limits.seen);
      item.dataset.blur = u.blur;
      item.dataset.word = word;
      item.children[1].textContent = arcmin(u.blur);
      item.children[2].textContent = word;
      words.push(`${u.name} ${word}`);
    }
    const of = this.setUp.hidden ? "" : ` of ${this.setUp.textContent}`;
    const text = plain(`The frame${of} at ${this.shot.told.stop}: ${words.join(", ")}`);
    if (this.canvas.getAttribute("aria-label") !== text) this.canvas.setAttribute("aria-label", text);
  }
}

// away says of somebody that the lens has no image of them, as they are behind it or too
// near.
function away(item) {
  delete item.dataset.blur;
  item.dataset.word = "";
  item.children[1].textContent = arcmin(NaN);
  item.children[2].textContent = "";
}

// arcmin writes a blur for people.
export function arcmin(v) {
  if (!Number.isFinite(v)) return "no image";
  return `${v < 9.95 ? v.toFixed(1) : Math.round(v)} arcmin`;
}
