// The score: its pages one below the other, replaced in place; the playhead
// over them; their size.

import { Frame } from "./frame.js";
import { make } from "./shared.js";
import { byKeys } from "./keys.js";
import { clock } from "./model.js";
import { morph } from "./morph.js";
import { clearTargets, layTargets, makeReachable, markAt, pressable } from "./near.js";
import { placeOf, timeAt } from "./spans.js";
import * as sizes from "./zoom.js";

// afterPaint runs something once the next frame has been painted.
export function afterPaint(run) {
  requestAnimationFrame(() => setTimeout(run));
}

export class Score {
  // root holds the sheets; player is the playhead; out shows the size, and
  // time the playhead's time.
  constructor(root, player, out, time) {
    Object.assign(this, { root, player, out, time, pages: [], tags: [], sheets: [], subjects: [], frames: new WeakMap(), asked: 0, wanted: 0, fps: 24 });
    this.head = make("div", "playhead");
    this.head.tabIndex = 0;
    this.head.setAttribute("role", "slider");
    this.head.setAttribute("aria-label", "Playhead");
    this.head.setAttribute("aria-valuemin", "0");
    player.addEventListener("time", () => this.follow());
    player.addEventListener("state", () => this.follow());
    root.addEventListener("wheel", (e) => this.wheel(e), { passive: false });
    root.addEventListener("pointerdown", (e) => this.press(e));
    root.addEventListener("click", (e) => this.tap(e));
    root.addEventListener("keydown", (e) => this.key(e));
    root.addEventListener("scroll", () => this.scrolled(), { passive: true });
    window.addEventListener("scroll", () => this.scrolled(), { passive: true });
    new ResizeObserver(() => this.resize()).observe(root);
  }

  // layout returns how the score is to be laid out: how wide, in millimetres, and to which
  // scale of time; 0 is the scale that shows all of a shot.
  layout() {
    this.column = this.root.clientWidth || this.column; // nothing while it is not on show
    return { width: sizes.layoutWidth(this.column), scale: this.wanted ? sizes.rung(this.wanted) : 0 };
  }

  // show puts a shot's pages in the place of those before, and returns once
  // those in sight are there. drawn tells whether there is a drawing. load fetches
  // a page by its number from 1, which tells the tags of all: one whose tag is the
  // same stays. It gives null where there is none any more; then its sheet stays as
  // it is, since a newer state comes. empty is what to say where there is no drawing;
  // fresh tells that the shot is another; subjects are the names of those in it.
  async show(drawn, load, { fps, empty, fresh, subjects = [] }) {
    const request = ++this.asked; // whatever was on its way is not wanted any more
    this.fps = fps;
    this.subjects = subjects;
    if (fresh) this.forget();
    if (!drawn) this.size(0, empty);
    const first = drawn ? await load(fresh ? 1 : this.inSightFirst()) : null;
    if (!first || request !== this.asked) return request === this.asked;
    const { tags } = first;
    const anchor = this.relaid ? this.anchor() : null;
    if (this.relaid) [this.tags, this.pages] = [[], []];
    this.size(tags.length, empty);
    this.put(tags.indexOf(first.tag), first);
    const missing = [...tags.keys()].filter((i) => this.tags[i] !== tags[i]);
    const seen = missing.filter((i) => this.inSight(i));
    const put = async (i) => {
      const page = await load(i + 1);
      if (page && request === this.asked) this.put(i, page);
    };
    await Promise.all((this.relaid ? missing : seen).map(put));
    if (request === this.asked && this.relaid) this.hold(anchor);
    afterPaint(async () => {
      for (const i of missing) if (this.tags[i] !== tags[i] && request === this.asked) await put(i);
    });
    return request === this.asked;
  }

  // anchor returns a moment that is in sight, and how far down the window it is.
  anchor() {
    const box = this.head.getBoundingClientRect();
    if (this.head.isConnected && box.bottom > 0 && box.top < window.innerHeight) return { t: this.player.time, y: box.top };
    const at = this.sheets.findIndex((sheet) => sheet.getBoundingClientRect().bottom > 0);
    const rect = this.sheets[at]?.getBoundingClientRect();
    const span = rect && this.pages[at]?.spans.find((s) => rect.top + (s.bottom_mm / this.pages[at].height_mm) * rect.height > 0);
    return span ? { t: span.from_s, y: rect.top + (span.top_mm / this.pages[at].height_mm) * rect.height } : null;
  }

  // hold scrolls so that a moment is where it was before the score was laid out anew.
  hold(anchor) {
    this.relaid = false;
    const place = anchor && placeOf(this.pages, anchor.t);
    if (!place) return;
    const rect = this.sheets[place.page].getBoundingClientRect();
    window.scrollBy(0, rect.top + place.top * rect.height - anchor.y);
  }

  // forget has no page taken for one of the shot before.
  forget() {
    this.tags = [];
    this.pages = [];
    for (const sheet of this.sheets.slice(1)) sheet.remove();
    this.sheets.length = Math.min(this.sheets.length, 1);
  }

  // size makes as many sheets as there are pages.
  size(count, empty) {
    while (this.sheets.length > count) this.sheets.pop().remove();
    this.tags.length = this.pages.length = Math.min(this.tags.length, count);
    while (this.sheets.length < count) {
      this.sheets.push(make("div", "sheet"));
      this.root.append(this.sheets.at(-1));
    }
    this.root.querySelector(".empty")?.remove();
    if (!count) this.root.append(make("p", "empty", empty));
  }

  // inSight tells whether a sheet can be seen; the first always counts.
  inSight(i) {
    const box = this.sheets[i].getBoundingClientRect();
    return i === 0 || (box.top < window.innerHeight && box.bottom > 0);
  }

  // inSightFirst returns the number of the first page in sight, from 1.
  inSightFirst() {
    return Math.max(1, this.sheets.findIndex((sheet) => sheet.getBoundingClientRect().bottom > 0) + 1);
  }

  put(i, page) {
    const sheet = this.sheets[i];
    sheet.style.setProperty("aspect-ratio", `${page.width_mm} / ${page.height_mm}`);
    const drawing = document.adoptNode(new DOMParser().parseFromString(page.svg, "image/svg+xml").documentElement);
    drawing.removeAttribute("width");
    drawing.removeAttribute("height");
    makeReachable(drawing, this.subjects);
    const old = sheet.querySelector(":scope > svg");
    if (old) {
      this.beforePut?.();
      clearTargets(old);
    }
    if (old) morph(old, drawing);
    else sheet.prepend(drawing);
    this.tags[i] = page.tag;
    this.pages[i] = page;
    this.scale();
    if (!this.frames.has(sheet)) this.frames.set(sheet, new Frame(sheet));
    this.frames.get(sheet).take(sheet.querySelector(":scope > svg"), page);
    layTargets(sheet.querySelector(":scope > svg"), sheet.clientWidth / page.width_mm);
    this.scrolled();
    this.follow();
    this.afterPut?.();
  }

  // scrolled keeps the heads of rows and the rulers in sight, once a frame.
  scrolled() {
    this.onScroll?.();
    this.moving ??= requestAnimationFrame(() => {
      this.moving = null;
      for (const sheet of this.sheets) this.frames.get(sheet)?.follow(this.root.scrollLeft, -sheet.getBoundingClientRect().top);
    });
  }

  // follow puts the playhead where the player is.
  follow() {
    const t = this.player.time;
    const place = placeOf(this.pages, t);
    this.head.hidden = !place;
    this.time.value = place ? clock(t, this.fps) : "";
    if (!place) {
      this.head.remove();
      return;
    }
    const sheet = this.sheets[place.page];
    const moved = this.head.parentElement !== sheet;
    if (moved) {
      const focused = document.activeElement === this.head;
      sheet.append(this.head);
      if (focused) this.head.focus();
    }
    this.head.style.left = `${place.x * 100}%`;
    this.head.style.top = `${place.top * 100}%`;
    this.head.style.height = `${(place.bottom - place.top) * 100}%`;
    this.head.setAttribute("aria-valuemax", this.player.duration.toFixed(2));
    this.head.setAttribute("aria-valuenow", t.toFixed(2));
    this.head.setAttribute("aria-valuetext", clock(t, this.fps));
    if (this.player.playing) this.keepInSight(place, moved);
  }

  // keepInSight scrolls with a playhead that runs out of the column.
  keepInSight(place, turned) {
    const { scrollLeft, clientWidth } = this.root;
    const x = this.sheets[place.page].offsetLeft + place.x * this.sheets[place.page].offsetWidth;
    if (x < scrollLeft || x > scrollLeft + clientWidth - 24) this.root.scrollLeft = x - clientWidth / 4;
    if (turned) this.sheets[place.page].scrollIntoView({ block: "nearest" });
  }

  // markAt returns the flag or the pull on the drawing at the place of an event,
  // also below the playhead; null where there is none.
  markAt(event) { return markAt(event, pressable, this.head); }

  // pick goes to what a flag or a pull stands for, and reports whether there is
  // one.
  pick(mark) {
    if (!mark) return false;
    const go = mark.classList.contains("pull") ? this.onPull : this.onFlag;
    go?.(Number(mark.dataset.number));
    return true;
  }

  // point takes the playhead to the time at a point of a sheet, and reports
  // whether there is one; loose takes the time above or below any point.
  point(sheet, event, loose = false) {
    const page = this.pages[this.sheets.indexOf(sheet)];
    const box = sheet.getBoundingClientRect();
    const t = page ? timeAt(page, (event.clientX - box.left) / box.width, (event.clientY - box.top) / box.height, loose) : null;
    if (t !== null) this.player.seek(t);
    return t !== null;
  }

  // press points with a mouse or a pen, and moves the playhead with it until
  // it is let go. A finger scrolls; it points where it taps. Flags and pulls
  // wait for the click: what is focused before would lose the focus to it.
  press(event) {
    const sheet = event.target.closest(".sheet");
    if (!sheet || event.button !== 0 || event.pointerType === "touch") return;
    this.pressed = event;
    const onHead = event.target === this.head;
    if (!onHead && this.markAt(event)) return;
    if (!onHead && !this.point(sheet, event)) return;
    event.preventDefault();
    this.head.focus({ preventScroll: true });
    const drag = (e) => this.point(sheet, e, true);
    sheet.setPointerCapture(event.pointerId);
    sheet.addEventListener("pointermove", drag);
    sheet.addEventListener("lostpointercapture", () => sheet.removeEventListener("pointermove", drag), { once: true });
  }

  // leads follows a link within the drawings, and reports whether the event is on one.
  leads(event) {
    const link = event.target.closest?.('a[href^="#"]');
    if (!link) return false;
    event.preventDefault(); // the address of the page names the shot
    const to = document.getElementById(decodeURIComponent(link.getAttribute("href").slice(1)));
    to?.scrollIntoView({ block: "start" });
    return true;
  }

  tap(event) {
    if (!this.markAt(event) && this.leads(event)) return;
    const sheet = event.target.closest(".sheet");
    const from = event.pointerType === "touch" ? event : this.pressed;
    if (!sheet || !from || Math.hypot(event.clientX - from.clientX, event.clientY - from.clientY) > 4) return; // was dragged
    if (!this.pick(this.markAt(from)) && event.pointerType === "touch") this.point(sheet, event);
  }

  // key picks a flag that has the focus.
  key(event) {
    if (event.key !== "Enter" && (event.key !== " " || !byKeys())) return;
    if (!event.ctrlKey && !event.metaKey && !event.altKey && this.pick(event.target.closest(pressable))) event.preventDefault();
  }

  wheel(event) {
    if (!event.ctrlKey) return;
    event.preventDefault();
    this.setSize(sizes.wheeled(this.now(), event.deltaY), event.clientX, event.clientY);
  }

  larger() { this.setSize(sizes.next(this.now(), 1)); }
  smaller() { this.setSize(sizes.next(this.now(), -1)); }
  fit() { this.setSize(0); }

  // drawnAt returns the scale of time that the pages were drawn to, in millimetres a second.
  drawnAt() { return this.pages.find((page) => page)?.per_second_mm ?? sizes.ladder[0]; }

  // now returns the size as it is seen, in millimetres a second.
  now() { return this.wanted || this.drawnAt(); }

  // setSize sets the size, 0 to see all of the shot; the point of the screen that is given,
  // else the middle of the column, keeps what it shows. Until the pages of another rung
  // come, those that there are are drawn larger or smaller.
  setSize(size, x, y) {
    const box = this.root.getBoundingClientRect();
    x ??= box.left + box.width / 2;
    y ??= Math.max(box.top, 0);
    const before = this.now();
    const left = this.root.scrollLeft;
    this.wanted = size;
    this.resize();
    this.root.scrollLeft = sizes.anchored(left, x - box.left, before, this.now());
    if (y > box.top) window.scrollBy(0, sizes.anchored(0, y - box.top, before, this.now()));
  }

  // scale draws the pages larger by what their size lies above their rung, and never beyond
  // what one step is.
  scale() {
    const by = Math.min(Math.max(this.now() / this.drawnAt(), 1), 2);
    this.root.style.setProperty("--page", `${this.root.clientWidth * by}px`);
    this.out.value = `${Math.round(this.now())} mm/s`;
  }

  // ask has the score laid out anew where its width or its rung is another, once that has
  // come to rest.
  ask() {
    const { width, scale } = this.layout();
    const key = `${width} ${scale}`;
    if (key === this.laid) return;
    const first = this.laid === undefined;
    this.laid = key;
    if (first) return;
    this.relaid = true;
    clearTimeout(this.asking);
    this.asking = setTimeout(() => this.onLayout?.(), 60);
  }

  resize() {
    if (!this.root.clientWidth) return; // it is not on show
    this.beforePut?.();
    this.scale();
    this.ask();
    this.sheets.forEach((sheet, i) => this.pages[i] && layTargets(sheet.querySelector(":scope > svg"), sheet.clientWidth / this.pages[i].width_mm));
    this.scrolled();
    this.afterPut?.();
  }

  // jump shows a place: the flag of that number if the drawing has it, else
  // the time.
  jump(number, t) {
    this.player.seek(t);
    (this.light(number) ?? this.head).scrollIntoView({ block: "center", inline: "center" });
  }

  // light has the flag of that number stand out, and returns it; null where the
  // drawing has none.
  light(number) {
    for (const lit of this.root.querySelectorAll("g.lit")) lit.classList.remove("lit");
    const flag = number ? this.root.querySelector(`g.finding[data-number="${number}"]`) : null;
    flag?.classList.add("lit");
    return flag;
  }
}
