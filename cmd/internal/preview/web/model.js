// What the page makes of what it is told: pure functions on the state.

const ranks = ["note", "warning", "error"];

// worst returns the worst severity of findings, "" without any.
export function worst(findings) {
  let rank = -1;
  for (const f of findings) rank = Math.max(rank, ranks.indexOf(f.severity));
  return rank < 0 ? "" : ranks[rank];
}

// tally says how many there are of the worst findings: "2 errors".
export function tally(findings) {
  const severity = worst(findings);
  if (!severity) return "";
  return count(findings.filter((f) => f.severity === severity).length, severity);
}

// count writes a number of things.
export function count(n, thing) {
  return `${n} ${thing}${n === 1 ? "" : "s"}`;
}

// ofShot returns the findings of a shot.
export function ofShot(findings, id) {
  return findings.filter((f) => f.shot === id);
}

// inOrder returns findings in the order of their flags on the drawing, then
// those that have none there, as they came.
export function inOrder(findings) {
  return findings.toSorted((a, b) => (a.number || Infinity) - (b.number || Infinity) || 0);
}

// ofPlan returns the findings that belong to no shot that is listed.
export function ofPlan(plan) {
  const listed = new Set(plan.shots.map((s) => s.id));
  return plan.findings.filter((f) => !listed.has(f.shot));
}

// choose returns what to show: the place that was shown if it is still there,
// else the shot of that plan nearest to where it was, else the first of all;
// null where there is no shot. A place is {plan, shot}, the plan by its key.
export function choose(state, place, index = 0) {
  const plan = state.plans.find((p) => p.key === place?.plan);
  if (plan?.shots.length) {
    const same = plan.shots.find((s) => s.id === place.shot);
    const shot = same ?? plan.shots[Math.min(Math.max(index, 0), plan.shots.length - 1)];
    return { plan: plan.key, shot: shot.id };
  }
  const first = state.plans.find((p) => p.shots.length);
  return first ? { plan: first.key, shot: first.shots[0].id } : null;
}

// has reports whether a place is there.
export function has(state, place) {
  return Boolean(place && state.plans.find((p) => p.key === place.plan)?.shots.some((s) => s.id === place.shot));
}

// headings returns what each plan is called in a list, { title, file }: file is
// as much of its file's name, from the end, as tells it from plans of the same
// title, "" where the title alone does.
export function headings(plans) {
  const titleOf = (p) => p.title || p.name;
  return plans.map((plan) => {
    const title = titleOf(plan);
    const others = plans.filter((p) => p !== plan && titleOf(p) === title).map((p) => p.name.split("/"));
    if (!others.length || !plan.title) return { title, file: "" };
    const parts = plan.name.split("/");
    const tail = (list, n) => list.slice(-n).join("/");
    let n = 1;
    while (n < parts.length && others.some((o) => tail(o, n) === tail(parts, n))) n++;
    return { title, file: tail(parts, n) };
  });
}

// neighbour returns the place so many shots further on over all plans, or the
// same at the ends.
export function neighbour(state, place, step) {
  const all = state.plans.flatMap((p) => p.shots.map((s) => ({ plan: p.key, shot: s.id })));
  const at = all.findIndex((s) => s.plan === place?.plan && s.shot === place?.shot);
  if (at < 0) return all[0] ?? place;
  return all[Math.min(Math.max(at + step, 0), all.length - 1)];
}

// setUpAt returns the set-up so many further on, round and round, that has the same moment
// of the action of a scene as a shot at a time: { shot, t }; null where no other has it. A
// shot that has none of the action has no other set-up.
export function setUpAt(shots, id, t, step) {
  const here = shots.find((s) => s.id === id);
  if (!here?.setup) return null;
  const moment = t + here.setup.from_s;
  const near = 1e-6;
  const all = shots.filter(({ id: other, setup: s }) => other === id || s && s.scene === here.setup.scene && moment >= s.from_s - near && moment <= s.to_s + near);
  if (all.length < 2) return null;
  const to = all[(all.indexOf(here) + step + all.length) % all.length];
  return { shot: to.id, t: moment - to.setup.from_s };
}

// toHash and fromHash write a place in the address and read it from there. A program that
// opens the address may have written its slash as %2F.
export function toHash(place) {
  return `#${encodeURIComponent(place.plan)}/${encodeURIComponent(place.shot)}`;
}

export function fromHash(hash) {
  const parts = hash.replace(/^#/, "").replace(/^([a-z0-9]+)%2F/i, "$1/").split("/");
  if (parts.length !== 2) return null;
  try {
    return { plan: decodeURIComponent(parts[0]), shot: decodeURIComponent(parts[1]) };
  } catch {
    return null;
  }
}

// clock writes a time with its frame: "3.12 s, frame 75".
export function clock(t, fps) {
  return `${t.toFixed(2)} s · frame ${Math.floor(t * fps + 1e-6)}`;
}

// nextPull returns the start of the next pull after t, or of the last before
// it; t itself where there is none.
export function nextPull(pulls, t, step) {
  const starts = pulls.map((p) => p.start_s);
  if (step > 0) return starts.find((s) => s > t + 1e-6) ?? t;
  return starts.findLast((s) => s < t - 1e-6) ?? t;
}

// tidings says in a sentence what a change brought to the plan on show.
export function tidings(plan) {
  const found = tally(plan.findings) || "no findings";
  if (plan.stale) return `${plan.title || plan.name} has ${found}; the drawing is the last one without errors`;
  const silent = !plan.findings.length && plan.not_judged ? `; ${plan.not_judged}` : "";
  return `${plan.title || plan.name} is drawn anew, ${found}${silent}`;
}
