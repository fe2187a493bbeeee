// The list of plans and shots, each with its worst finding.

import { make } from "./shared.js";
import { headings, ofPlan, ofShot, tally, worst } from "./model.js";
import { sign } from "./signs.js";

// A List draws itself into a nav, and calls choose with the place of a shot
// that is picked.
export class List {
  constructor(root, choose) {
    this.root = root;
    this.choose = choose;
  }

  // show draws the state anew; place is what is on show. Focus stays where it
  // was.
  show(state, place) {
    const focused = this.root.contains(document.activeElement) ? document.activeElement.dataset.place : null;
    const fold = make("details", "fold");
    fold.open = this.root.querySelector("details")?.open ?? matchMedia("(min-width: 60rem)").matches;
    const summary = make("summary", "", "Shots");
    const shown = state.plans.find((p) => p.key === place?.plan)?.shots.find((s) => s.id === place.shot);
    if (shown) summary.append(": ", make("bdi", "", shown.label));
    fold.append(summary);
    const names = headings(state.plans);
    state.plans.forEach((plan, i) => fold.append(this.plan(plan, names[i], place)));
    if (!state.plans.length) fold.append(make("p", "empty", "No plans yet. The page fills as soon as one is saved."));
    this.root.replaceChildren(fold);
    if (focused) this.root.querySelector(`[data-place="${CSS.escape(focused)}"]`)?.focus();
  }

  plan(plan, { title, file }, place) {
    const group = make("section", "plan");
    const heading = make("h2", "plan-name");
    heading.append(make("bdi", "", title));
    if (file) heading.append(" ", make("bdi", "plan-file", file));
    heading.title = plan.name;
    group.append(heading);
    const rest = ofPlan(plan);
    if (rest.length) group.append(badge(rest));
    const shots = make("ul", "shots");
    for (const shot of plan.shots) shots.append(this.shot(plan, shot, place));
    group.append(shots);
    if (!plan.shots.length && !rest.length) group.append(make("p", "empty", "No shots"));
    return group;
  }

  shot(plan, shot, place) {
    const item = make("li");
    const button = make("button", "shot");
    button.type = "button";
    button.dataset.place = `${plan.key}/${shot.id}`;
    if (plan.key === place?.plan && shot.id === place.shot) button.setAttribute("aria-current", "true");
    button.append(make("bdi", "shot-id", shot.label), make("bdi", "shot-title", shot.title));
    const found = ofShot(plan.findings, shot.id);
    if (found.length) button.append(badge(found));
    button.addEventListener("click", () => this.choose({ plan: plan.key, shot: shot.id }));
    item.append(button);
    return item;
  }
}

// badge tells the worst findings by sign and word.
function badge(findings) {
  const severity = worst(findings);
  const el = make("span", `badge ${severity}`);
  el.append(sign(severity), make("span", "", tally(findings)));
  return el;
}
