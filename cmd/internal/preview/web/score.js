// The score: its pages one below the other, replaced in place; the playhead
// over them; their size.

import { make } from "./shared.js";
import { clock } from "./model.js";
import { placeOf, timeAt } from "./spans.js";
import * as sizes from "./zoom.js";

export class Score {
  // root holds the sheets; player is the playhead; out shows the size, and
  // time the playhead's time.
  constructor(root, player, out, time) {
    Object.assign(this, { root, player, out, time, pages: [], sheets: [], zoom: 1, fps: 24 });
    this.head = make("div", "playhead");
    this.head.tabIndex = 0;
    this.head.setAttribute("role", "slider");
    this.head.setAttribute("aria-label", "Playhead");
    this.head.setAttribute("aria-valuemin", "0");
    player.addEventListener("time", () => this.follow());
    player.addEventListener("state", () => this.follow());
    root.addEventListener("wheel", (e) => this.wheel(e), { passive: false });
    root.addEventListener("pointerdown", (e) => this.press(e));
    new ResizeObserver(() => this.resize()).observe(root);
  }

  // show puts pages in the place of those before. A page that is the same
  // stays, so that nothing moves where nothing changed; empty is what to say
  // where there is none.
  show(pages, fps, empty) {
    this.fps = fps;
    while (this.sheets.length > pages.length) this.sheets.pop().remove();
    this.root.querySelector(".empty")?.remove();
    pages.forEach((page, i) => this.put(i, page));
    this.pages = pages;
    if (!pages.length) this.root.append(make("p", "empty", empty));
    this.follow();
  }

  put(i, page) {
    if (!this.sheets[i]) {
      this.sheets[i] = make("div", "sheet");
      this.root.append(this.sheets[i]);
    } else if (this.pages[i]?.svg === page.svg) {
      return;
    }
    const sheet = this.sheets[i];
    sheet.style.setProperty("aspect-ratio", `${page.width_mm} / ${page.height_mm}`);
    const drawing = document.importNode(new DOMParser().parseFromString(page.svg, "image/svg+xml").documentElement, true);
    drawing.removeAttribute("width");
    drawing.removeAttribute("height");
    const old = sheet.querySelector("svg");
    if (old) old.replaceWith(drawing);
    else sheet.append(drawing);
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

  // press moves the playhead to where the score is pressed, and with the
  // pointer until it is let go.
  press(event) {
    const sheet = event.target.closest?.(".sheet");
    if (!sheet || event.button !== 0) return;
    const page = this.pages[this.sheets.indexOf(sheet)];
    const pull = event.target.closest("g.pull[data-number]");
    if (pull) {
      this.onPull?.(Number(pull.dataset.number));
      return;
    }
    const flag = event.target.closest("g.finding[data-number]");
    if (flag) {
      this.onFlag?.(Number(flag.dataset.number));
      return;
    }
    const seek = (e, loose) => {
      const box = sheet.getBoundingClientRect();
      const t = timeAt(page, (e.clientX - box.left) / box.width, (e.clientY - box.top) / box.height, loose);
      if (t !== null) this.player.seek(t);
      return t !== null;
    };
    if (event.pointerType === "touch") {
      sheet.addEventListener("click", (e) => seek(e, false), { once: true });
      return;
    }
    if (!seek(event, false)) return;
    event.preventDefault();
    this.head.focus({ preventScroll: true });
    const drag = (e) => seek(e, true);
    sheet.setPointerCapture(event.pointerId);
    sheet.addEventListener("pointermove", drag);
    sheet.addEventListener("lostpointercapture", () => sheet.removeEventListener("pointermove", drag), { once: true });
  }

  wheel(event) {
    if (!event.ctrlKey) return;
    event.preventDefault();
    this.setZoom(sizes.wheeled(this.zoom, event.deltaY), event.clientX, event.clientY);
  }

  larger() { this.setZoom(sizes.next(this.zoom, 1)); }
  smaller() { this.setZoom(sizes.next(this.zoom, -1)); }
  fit() { this.setZoom(sizes.fit(this.root.clientWidth)); }

  // setZoom sets the size; the point of the screen that is given, else the
  // middle of the column, keeps what it shows.
  setZoom(zoom, x, y) {
    const box = this.root.getBoundingClientRect();
    x ??= box.left + box.width / 2;
    y ??= Math.max(box.top, 0) + 80;
    const before = this.zoom;
    const left = this.root.scrollLeft;
    this.zoom = zoom;
    this.resize();
    this.root.scrollLeft = sizes.anchored(left, x - box.left, before, zoom);
    if (y > box.top) window.scrollBy(0, sizes.anchored(0, y - box.top, before, zoom));
  }

  resize() {
    this.root.style.setProperty("--page", `${sizes.baseWidth(this.root.clientWidth) * this.zoom}px`);
    this.out.value = `${Math.round(this.zoom * 100)} %`;
  }

  // jump shows a place: the flag of that number if the drawing has it, else
  // the time.
  jump(number, t) {
    this.player.seek(t);
    for (const lit of this.root.querySelectorAll("g.lit")) lit.classList.remove("lit");
    const flag = number ? this.root.querySelector(`g.finding[data-number="${number}"]`) : null;
    flag?.classList.add("lit");
    (flag ?? this.head).scrollIntoView({ block: "center", inline: "center" });
  }
}
