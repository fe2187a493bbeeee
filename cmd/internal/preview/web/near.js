// What belongs together: whoever points at a pull, a subject or a flag, or moves the focus
// to it, sees its strokes heavier, its rows with a slab below them, its plumb and its
// sentences marked, and beside it a card that says what the table says. Nothing else
// changes, so all stays as easy to read as it was.

import { make } from "./make.js";

const namespace = "http://www.w3.org/2000/svg";

// pressable are the parts of a drawing that lead somewhere: pulls and flags. A flag of
// several findings is one group within the other.
export const pressable = "g.pull[data-number], g.finding[data-number]:not(g.finding g.finding)";

// marks are the parts that can be reached by the keyboard too.
const marks = `${pressable}, g[data-subject]`;

// tellers say elsewhere on the sheet what a pull or a finding is: its row in the table, its
// sentence, its window. Whoever points at one sees what they would see at the mark itself.
const tellers = "g.pull-row[data-number], g.sentence[data-number]:not(g.sentence g.sentence), g.window[data-number], g.narrow[data-number]";

// pointed are the parts that somebody can point at.
const pointed = `${marks}, ${tellers}`;

// least is how large a target is at least, in CSS pixels (WCAG 2.2, 2.5.8).
export const least = 24;

// heavier is how much wider the strokes of what is pointed at are.
const heavier = 1.5;

// Near watches the sheets of a score.
export class Near {
  // score has the sheets. about returns what there is to say of a mark: {title, figures,
  // subjects, pulls, findings, times}. sentences is called with the findings to mark.
  constructor(score, card, { about, sentences }) {
    Object.assign(this, { score, card, about, sentences, mark: null, timer: null, undo: [] });
    const { root } = score;
    root.addEventListener("pointermove", (e) => e.pointerType !== "touch" && this.over(markAt(e, pointed), e));
    root.addEventListener("pointerleave", () => this.leave());
    root.addEventListener("focusin", (e) => e.target.matches(":focus-visible") && this.over(e.target.closest(marks))); // a click shows no card
    root.addEventListener("focusout", () => this.leave());
    card.addEventListener("pointerenter", () => clearTimeout(this.timer));
    card.addEventListener("pointerleave", () => this.leave());
    document.addEventListener("keydown", (e) => e.key === "Escape" && this.clear());
  }

  // over shows a mark, or leaves the one before.
  over(mark, event) {
    if (!mark) {
      if (this.mark) this.leave();
      return;
    }
    clearTimeout(this.timer);
    this.timer = null;
    if (mark !== this.mark) this.show(mark, event);
  }

  // leave clears all after a moment, in which the pointer can reach the card. What has the
  // focus stays marked.
  leave() {
    this.timer ??= setTimeout(() => {
      this.timer = null;
      const focused = this.focused();
      if (focused) this.over(focused);
      else this.clear();
    }, 150);
  }

  // focused returns the mark that the keyboard has come to, or null.
  focused() { return this.score.root.querySelector(":focus-visible")?.closest(marks) ?? null; }

  // moved keeps the card beside what has the focus while the page scrolls. What the pointer
  // was on is elsewhere then.
  moved() {
    if (this.mark && this.mark === this.focused()) this.place();
    else if (this.mark) this.clear();
  }

  // show marks what belongs to a mark.
  show(mark, event) {
    this.clear();
    const said = this.about(...keyOf(mark));
    if (!said) return;
    this.mark = mark;
    for (const g of this.groupsOf(mark)) this.thicken(g);
    for (const g of this.rowsOf(mark, said)) this.slab(g);
    for (const g of this.plumbsAt(said.times)) this.thicken(g);
    this.sentences(said.findings);
    this.undo.push(() => this.sentences([]));
    this.tell(said, mark, event);
  }

  // from marks on the drawing what belongs to a finding of the list; null clears. The list
  // says all of it, so there is no card.
  from(number) {
    this.clear();
    if (number === null) return;
    for (const g of this.all(`g.finding[data-number="${number}"]`)) this.thicken(g);
    for (const g of this.rowsOf(null, { subjects: [], pulls: [], findings: [{ number }] })) this.slab(g);
  }

  // pull marks a pull that somebody points at elsewhere; 0 marks none.
  pull(number) {
    this.clear();
    for (const g of this.all(`g.pull[data-number="${number}"]`)) this.thicken(g);
    if (number) for (const g of this.rowsOf(null, { subjects: [], pulls: [number], findings: [] })) this.slab(g);
  }

  // clear takes back all that show has done.
  clear() {
    clearTimeout(this.timer);
    this.timer = null;
    for (const undo of this.undo.splice(0)) undo();
    this.mark = null;
  }

  all(selector) { return [...this.score.root.querySelectorAll(selector)].filter((g) => g.closest(".sheet > svg")); }

  // groupsOf returns the parts of the drawing that are the mark itself.
  groupsOf(mark) {
    const [kind, key] = keyOf(mark);
    if (kind === "subject") return this.all(`g[data-subject="${CSS.escape(key)}"]`);
    if (kind === "finding") return this.all(key.map((n) => `g.finding[data-number="${n}"]`).join(", "));
    return this.all(["pull", "window", "narrow"].map((name) => `g.${name}[data-number="${key}"]`).join(", "));
  }

  // rowsOf returns the rows that belong to the mark.
  rowsOf(mark, { subjects, pulls, findings }) {
    const rows = new Set();
    for (const name of subjects) for (const g of this.all(`g[data-subject="${CSS.escape(name)}"]`)) if (!g.matches(".subject")) rows.add(g);
    for (const n of pulls) for (const g of this.all(`g.pull-row[data-number="${n}"]`)) rows.add(g);
    for (const f of findings) for (const g of this.all(`g.sentence[data-number="${f.number}"]`)) rows.add(g.parentElement.closest("g.sentence") ?? g);
    const own = mark?.closest("g[data-subject]:not(.subject)");
    if (own) rows.add(own);
    return rows;
  }

  // plumbsAt returns the plumbs that fall at one of the times.
  plumbsAt(times) {
    const found = [];
    this.score.sheets.forEach((sheet, i) => {
      for (const line of sheet.querySelectorAll(":scope > svg g.plumb line, :scope > svg g.plumb-lines line")) {
        const x = Number(line.getAttribute("x1"));
        const hit = this.score.pages[i]?.spans.some((s) => times.some((t) => t >= s.from_s && t <= s.to_s &&
          Math.abs(s.left_mm + ((t - s.from_s) / (s.to_s - s.from_s)) * (s.right_mm - s.left_mm) - x) < 0.05));
        if (hit) found.push(line.closest("g.plumb") ?? line);
      }
    });
    return found;
  }

  // thicken draws the strokes of a group heavier.
  thicken(g) {
    g.classList.add("near");
    for (const e of [g, ...g.querySelectorAll("[stroke-width]")]) {
      const width = e.getAttribute("stroke-width");
      if (width) e.style.strokeWidth = heavier * width;
    }
    this.undo.push(() => {
      g.classList.remove("near");
      for (const e of [g, ...g.querySelectorAll("[stroke-width]")]) e.style.strokeWidth = "";
    });
  }

  // slab lays a slab below a row, from margin to margin, and below all else that is drawn.
  slab(g) {
    const box = inkOf(g);
    const page = this.score.pages[this.score.sheets.indexOf(g.closest(".sheet"))];
    if (!page) return; // it is laid out anew
    const margin = 11;
    const slab = rect("slab", { x: margin, y: box.y - 0.3, width: page.width_mm + 2 * (page.origin_mm - margin), height: box.height + 0.6 });
    slab.dataset.row = g.dataset.subject ?? g.dataset.number;
    g.ownerSVGElement.querySelector(":scope > rect").after(slab); // the paper
    this.undo.push(() => slab.remove());
  }

  // place puts the card beside the mark.
  place(event) {
    const { x, y } = placeBeside(this.mark.getBoundingClientRect(), this.card.getBoundingClientRect(), event);
    this.card.style.left = `${x}px`;
    this.card.style.top = `${y}px`;
  }

  // tell writes the card and puts it beside the mark.
  tell({ title, figures }, mark, event) {
    const list = make("dl");
    for (const f of figures) {
      const line = make("div", f.kind ?? "");
      if (f.title) line.append(make("dt", "", f.title));
      line.append(make("dd", "", f.text));
      list.append(line);
    }
    this.card.replaceChildren(make("p", "card-name", title), list);
    this.card.hidden = false;
    mark.setAttribute("aria-describedby", this.card.id);
    this.place(event);
    this.undo.push(() => {
      this.card.hidden = true;
      mark.removeAttribute("aria-describedby");
    });
  }
}

// placeBeside returns where a card stands: right of what it is about, or left of it, or
// below what is wider than the window has room for; always in the window.
function placeBeside(box, card, event) {
  const gap = 8;
  const hold = (v, most) => Math.max(gap, Math.min(v, most - gap));
  const bottom = hold(box.top, innerHeight - card.height);
  if (box.right + gap + card.width < innerWidth - gap) return { x: box.right + gap, y: bottom };
  if (box.left - gap - card.width > gap) return { x: box.left - gap - card.width, y: bottom };
  const x = hold((event?.clientX ?? box.left) - card.width / 2, innerWidth - card.width);
  const below = box.bottom + gap;
  return { x, y: below + card.height < innerHeight ? below : Math.max(gap, box.top - gap - card.height) };
}

// keyOf returns the kind of a mark and which of them it is: of a flag, the numbers of all
// its findings.
function keyOf(mark) {
  if (mark.dataset.subject !== undefined) return ["subject", mark.dataset.subject];
  if (!mark.matches(".finding, .sentence")) return ["pull", Number(mark.dataset.number)];
  return ["finding", [mark, ...mark.querySelectorAll("g.finding, g.sentence")].map((g) => Number(g.dataset.number))];
}

// markAt returns the mark at the place of an event: what is drawn there, or else that
// whose drawing is nearest of those whose target is there. skip lies above the drawing.
export function markAt({ clientX, clientY }, selector, skip) {
  const here = document.elementsFromPoint(clientX, clientY).filter((e) => e !== skip && e.closest(".sheet > svg"));
  for (const e of here) {
    const drawn = !e.matches(".target, .slab") && e.closest(selector);
    if (drawn) return drawn;
  }
  let best = null;
  let nearest = Infinity;
  for (const e of here) {
    const mark = e.matches(".target") && e.closest(selector);
    if (!mark) continue;
    const box = e.getBoundingClientRect();
    const [w, h] = e.dataset.ink.split(" ").map((v) => Number(v) * box.width);
    const dx = Math.max(0, Math.abs(clientX - (box.left + box.right) / 2) - w / 2);
    const dy = Math.max(0, Math.abs(clientY - (box.top + box.bottom) / 2) - h / 2);
    if (Math.hypot(dx, dy) < nearest) [best, nearest] = [mark, Math.hypot(dx, dy)];
  }
  return best;
}

// makeReachable finds the parts of a new drawing that belong to one of the subjects, and has all
// marks be reached by Tab. What is in a picture is not told of by itself, so a drawing with
// marks is a group.
export function makeReachable(drawing, subjects) {
  for (const g of drawing.querySelectorAll("g.subject, g.row, g.bar")) {
    const name = g.firstElementChild?.localName === "title" ? g.firstElementChild.textContent : "";
    if (subjects.includes(name)) g.dataset.subject = name;
  }
  const told = new Set();
  for (const mark of drawing.querySelectorAll(marks)) {
    const [kind, key] = keyOf(mark);
    if (kind === "subject" && told.has(key)) continue; // one of its parts is enough
    told.add(key);
    for (const link of mark.querySelectorAll("a")) link.replaceWith(...link.childNodes); // one thing to press, not two
    drawing.setAttribute("role", "group");
    mark.setAttribute("tabindex", "0");
    mark.setAttribute("role", kind === "subject" ? "img" : "button");
    const title = mark.querySelector("title")?.textContent ?? "";
    const flag = [...mark.querySelectorAll("text")].at(-1)?.textContent ?? key;
    mark.setAttribute("aria-label", { pull: `Pull ${key}: ${title}`, finding: `Finding ${flag}: ${title}`, subject: `Subject ${title}` }[kind]);
  }
}

// layTargets gives every mark of a drawing an invisible box that is large enough to be hit
// at that scale, in CSS pixels a millimetre.
export function layTargets(drawing, scale) {
  clearTargets(drawing);
  if (!scale) return; // it is not on show
  const need = least / scale;
  const boxes = [...drawing.querySelectorAll(marks)].map((mark) => [mark, mark.getBBox()]);
  for (const [mark, box] of boxes) {
    const width = Math.max(box.width, need), height = Math.max(box.height, need);
    const target = rect("target", { x: box.x + (box.width - width) / 2, y: box.y + (box.height - height) / 2, width, height });
    target.dataset.ink = `${box.width / width} ${box.height / width}`;
    mark.prepend(target);
  }
}

// clearTargets takes them away.
export function clearTargets(drawing) {
  for (const e of drawing.querySelectorAll(".target")) e.remove();
}

// inkOf returns the box of what is drawn of a mark, in millimetres.
function inkOf(mark) {
  const targets = [...mark.querySelectorAll(".target")].map((e) => [e, e.parentElement]);
  for (const [e] of targets) e.remove();
  const box = mark.getBBox();
  for (const [e, parent] of targets) parent.prepend(e);
  return box;
}

function rect(cls, attributes) {
  const e = document.createElementNS(namespace, "rect");
  e.setAttribute("class", cls);
  for (const [name, value] of Object.entries(attributes)) e.setAttribute(name, value);
  return e;
}
