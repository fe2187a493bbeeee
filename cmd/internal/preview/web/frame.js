// What stays in sight of a sheet while it scrolls: the heads of the rows at the left, and
// the ruler of time at the top. Both are copies of what is drawn, in the same place on
// the paper, so nobody sees them until the sheet has gone on below them.

import { make } from "./make.js";

const namespace = "http://www.w3.org/2000/svg";

// mostOfColumn is how much of a column the heads may take: more would hide what they name.
const mostOfColumn = 0.65;

// Frame holds them for one sheet.
export class Frame {
  // sheet is the element of the sheet.
  constructor(sheet) {
    this.sheet = sheet;
    this.heads = this.layer("heads");
    this.rules = [];
    this.page = null;
  }

  layer(cls) {
    const layer = make("div", cls);
    layer.hidden = true;
    layer.setAttribute("aria-hidden", "true"); // the drawing says it
    this.sheet.append(layer);
    return layer;
  }

  // take copies what is to stay from a new drawing of the sheet.
  take(drawing, page) {
    this.page = page;
    for (const rule of this.rules) rule.layer.remove();
    this.rules = [];
    if (!page.spans.length) {
      this.heads.replaceChildren();
      return;
    }
    const left = this.left = Math.min(...page.spans.map((s) => s.left_mm));
    this.copy(this.heads, { x: page.origin_mm, y: 0, width: left - 0.4 - page.origin_mm, height: page.height_mm }, headsOf(drawing, left));
    for (const ruler of drawing.querySelectorAll("g.ruler")) {
      const box = ruler.getBBox();
      const span = page.spans.find((s) => s.top_mm <= box.y + box.height && box.y < s.bottom_mm + box.height) ?? page.spans[0];
      const layer = this.layer("rule");
      this.copy(layer, { x: page.origin_mm, y: box.y - 0.6, width: page.width_mm, height: box.height + 1.2 }, [ruler.cloneNode(true)]);
      this.rules.push({ layer, top: box.y - 0.6, height: box.height + 1.2, end: span.bottom_mm });
    }
  }

  // copy puts nodes into a layer that covers a box of the sheet, in millimetres.
  copy(layer, { x, y, width, height }, nodes) {
    const svg = document.createElementNS(namespace, "svg");
    svg.setAttribute("viewBox", `${x} ${y} ${width} ${height}`);
    const paper = document.createElementNS(namespace, "rect");
    for (const [name, value] of Object.entries({ x, y, width, height, class: "f-paper" })) paper.setAttribute(name, value);
    svg.append(paper, ...nodes);
    for (const e of svg.querySelectorAll("[id]")) e.removeAttribute("id");
    for (const e of svg.querySelectorAll("[tabindex]")) e.removeAttribute("tabindex");
    layer.replaceChildren(svg);
    layer.style.left = `${((x - this.page.origin_mm) / this.page.width_mm) * 100}%`;
    layer.style.top = `${(y / this.page.height_mm) * 100}%`;
    layer.style.width = `${(width / this.page.width_mm) * 100}%`;
    layer.style.height = `${(height / this.page.height_mm) * 100}%`;
  }

  // follow moves the layers to where the sheet is cut: across is how many pixels of it are
  // beyond the left edge, and down beyond the upper edge.
  follow(across, down) {
    if (!this.page) return;
    const perMM = this.sheet.clientWidth / this.page.width_mm;
    move(this.heads, Math.max(0, across), 0, across > 0.5 && this.heads.firstChild && (this.left - this.page.origin_mm) * perMM < mostOfColumn * this.sheet.parentElement.clientWidth);
    for (const { layer, top, height, end } of this.rules) {
      const by = Math.min(down, (end - height) * perMM) - top * perMM;
      move(layer, 0, Math.max(0, by), by > 0 && down < end * perMM);
    }
  }
}

function move(layer, x, y, shown) {
  layer.hidden = !shown;
  if (shown) layer.style.transform = `translate(${x}px, ${y}px)`;
}

// headsOf returns copies of the texts that stand left of the axis of time, below the head
// of the sheet.
function headsOf(drawing, left) {
  const copies = [];
  const top = Math.min(...[...drawing.querySelectorAll("g.ruler")].map((g) => g.getBBox().y));
  for (const text of drawing.querySelectorAll("text")) {
    const x = Number(text.getAttribute("x"));
    const end = text.getAttribute("text-anchor") === "end";
    if (x < left && Number(text.getAttribute("y")) > top && (end || x + Number(text.getAttribute("textLength") ?? 0) < left)) copies.push(text.cloneNode(true));
  }
  return copies;
}
