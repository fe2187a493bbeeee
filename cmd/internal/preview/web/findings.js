// The findings of the shot on show and of its plan; each leads to its place on
// the drawing and tells its place in the text.

import { make } from "./shared.js";
import { count, inOrder, ofPlan, ofShot } from "./model.js";
import { sign } from "./signs.js";

export class Findings {
  // jump is called with a finding that is picked; point with the number of one that somebody
  // points at, or null where they leave it.
  constructor(root, { jump, point }) {
    this.root = root;
    this.jump = jump;
    this.point = point;
    this.buttons = [];
    this.shown = []; // the findings of the buttons
  }

  show(plan, id) {
    const focused = this.buttons.indexOf(document.activeElement);
    this.buttons = [];
    this.shown = [];
    const blocks = [];
    if (plan) {
      const here = inOrder(ofShot(plan.findings, id));
      const rest = ofPlan(plan);
      if (plan.stale) {
        blocks.push(this.block("In the text now", [...rest, ...here], "text-now"));
        blocks.push(this.block("On this older drawing", inOrder(ofShot(plan.old ?? [], id)), "older"));
      } else {
        const causes = (plan.causes ?? []).filter((c) => c.shot === id);
        blocks.push(this.block("Findings", [...here, ...rest], "", causes, plan.shots.find((s) => s.id === id)?.not_judged));
      }
    }
    this.root.replaceChildren(...blocks.filter(Boolean));
    if (focused >= 0) this.buttons[Math.min(focused, this.buttons.length - 1)]?.focus();
  }

  // causes are what several of the findings have in common; they stand above them.
  block(title, findings, cls, causes = [], silent = "") {
    if (!findings.length && cls) return null;
    const block = make("section", `block ${cls}`);
    block.append(make("h2", "", title));
    if (!findings.length) {
      block.append(make("p", "empty", silent ? `No findings; ${silent}.` : "No findings."));
      return block;
    }
    block.append(make("p", "how-many", count(findings.length, "finding")));
    for (const c of causes) block.append(make("p", "cause", `${c.text}.`));
    const list = make("ol", "finding-list");
    for (const f of findings) list.append(this.item(f));
    block.append(list);
    return block;
  }

  item(f) {
    const item = make("li");
    const button = make("button", `finding-item ${f.severity}`);
    button.type = "button";
    if (f.number) button.dataset.number = f.number;
    const head = make("span", "finding-head");
    head.append(sign(f.severity, f.letter ?? f.number), make("span", "severity", f.severity), make("bdi", "place", f.place));
    head.title = `${f.file}:${f.line}:${f.column}`;
    button.append(head, make("bdi", "message", f.message));
    if (f.detail) button.append(make("bdi", "detail", f.detail));
    if (f.cures?.length) button.append(make("bdi", "cures", `Cure: ${f.cures.join(", or ")}`));
    button.addEventListener("click", () => this.jump(f));
    if (f.number) {
      button.addEventListener("pointerenter", () => this.point(f.number));
      button.addEventListener("pointerleave", () => this.point(null));
    }
    this.buttons.push(button);
    this.shown.push(f);
    item.append(button);
    return item;
  }

  // pick brings a finding into sight and moves the focus to it.
  pick(f) {
    const button = this.buttons[this.shown.indexOf(f)];
    if (!button) return;
    for (let fold = button.closest("details"); fold; fold = fold.parentElement.closest("details")) fold.open = true;
    for (const lit of this.buttons) lit.classList.toggle("lit", lit === button);
    button.focus({ preventScroll: true });
    button.scrollIntoView({ block: "nearest" });
  }

  // near marks findings that belong to what somebody points at on the drawing.
  near(list) {
    this.buttons.forEach((button, i) => button.classList.toggle("near", list.includes(this.shown[i])));
  }

  // step moves the focus to the next or the last finding and picks it.
  step(by) {
    if (!this.buttons.length) return;
    const at = this.buttons.indexOf(document.activeElement);
    const to = at < 0 ? (by > 0 ? 0 : this.buttons.length - 1) : (at + by + this.buttons.length) % this.buttons.length;
    this.buttons[to].focus();
    this.buttons[to].click();
  }
}
