// The page: takes every new state and shows the shot that is picked.

import { get, make, player, post, say, setToken } from "./shared.js";
import { choose, count, fromHash, has, neighbour, nextPull, ofShot, setUpAt, tidings, toHash } from "./model.js";
import { bind, listen } from "./keys.js";
import { AfterBar } from "./afterbar.js";
import { Findings } from "./findings.js";
import { Link } from "./link.js";
import { Near } from "./near.js";
import { List } from "./list.js";
import { Places } from "./places.js";
import { Score, afterPaint } from "./score.js";
import { showHelp } from "./help.js";
import * as stage from "./stage.js";

const $ = (id) => document.getElementById(id);
const list = new List($("list"), (to) => go(to));
const findings = new Findings($("findings"), {
  jump: (f) => {
    stage.showScore();
    score.jump(f.number, f.t_s);
  },
  point: (number) => near.from(number),
});
const score = new Score($("sheets"), player, $("zoom"), $("clock"));

const near = new Near(score, $("card"), { about: (kind, key) => about(kind, key), sentences: (list) => findings.near(list) });
const after = new AfterBar($("after"));
score.onScroll = () => near.moved();
score.beforePut = () => near.clear();
score.afterPut = () => lightPointed();
score.onLayout = () => state && show();

let state = null; // as last told
const places = new Places(fromHash(location.hash), () => show());
let kept = null; // the page that came with the last state
let drawn = ""; // what the score shows: plan, shot, version and run
let pointed = null; // what somebody points at in an editor: plan, shot, pull
let loaded = ""; // what the playhead is on: plan and shot

const planOf = (at) => state?.plans.find((p) => p.key === at?.plan);
const shotOf = (at) => planOf(at)?.shots.find((s) => s.id === at?.shot);

// take shows a new state.
function take(fresh) {
  if (state && fresh.files !== state.files) {
    location.reload(); // the program is another, and so may the page be
    return;
  }
  setToken(fresh.token);
  const before = planOf(places.shown);
  state = fresh;
  places.take(state);
  for (const id of ["list", "findings", "main"]) $(id).hidden = false; // there is something in them now
  const now = planOf(places.shown);
  show();
  if (before && now && (before.version !== now.version || before.key !== now.key)) say(tidings(now));
}

// go shows another shot.
function go(to) {
  if (!has(state, to) || (!places.missing && to.plan === places.shown?.plan && to.shot === places.shown.shot)) return;
  places.go(to);
  player.pause();
  show();
  say(`Shot ${shotOf(to)?.label ?? ""}`);
}

// goSetUp shows another set-up of the same scene at the same moment of the action, and plays
// on where it played.
function goSetUp(step) {
  const to = state && !places.missing && setUpAt(planOf(places.shown)?.shots ?? [], places.shown?.shot, player.time, step);
  if (!to) {
    say("No other set-up of the scene has this moment");
    return;
  }
  const moving = player.moving;
  go({ plan: places.shown.plan, shot: to.shot });
  player.seek(to.t);
  if (moving) player.play();
}

// show puts everything on the page that the state says of the place. What is
// missing stays as it was drawn last.
function show() {
  const place = places.shown;
  const plan = planOf(place);
  const shot = shotOf(place);
  const { wanted } = places;
  if (wanted && location.hash !== toHash(wanted)) history.replaceState(null, "", toHash(wanted));
  if (!places.missing) showShot(plan, shot); // first: while its pages come, the rest is written
  list.show(state, place);
  findings.show(plan ?? state.plans[0], place?.shot);
  if (!places.missing) showName(shot);
  showNotice(plan, shot);
}

function showName(shot) {
  $("shot-name").replaceChildren();
  document.title = shot ? `${shot.label} · Pullscore` : "Pullscore";
  if (shot) $("shot-name").append(make("bdi", "shot-id", shot.label), " ", make("bdi", "shot-title", shot.title));
  const notes = shot?.notes ?? [];
  $("notes").hidden = !notes.length;
  $("notes").replaceChildren(...notes.map((note) => make("li", "", note)));
}

// showNotice tells that the drawing is not what the text says.
function showNotice(plan, shot) {
  const notice = $("notice");
  notice.hidden = !plan?.stale && !places.missing;
  document.body.classList.toggle("stale", !notice.hidden);
  if (notice.hidden) return;
  if (places.missing) {
    notice.replaceChildren(make("p", "", "The text has no such shot now. This is its last drawing."));
    return;
  }
  const errors = plan.findings.filter((f) => f.severity === "error");
  const what = shot?.pages.length ? "This drawing is older than the text." : "There is no drawing of this yet.";
  const text = make("p", "", `${what} ${count(errors.length, "error")} to mend first.`);
  const first = make("p", "first");
  first.append(make("bdi", "place", errors[0].place), " ", make("bdi", "", errors[0].message));
  notice.replaceChildren(text, first);
}

// showShot loads the score with a shot, then the playhead, then the stage.
async function showShot(plan, shot) {
  const place = places.shown;
  const layout = score.layout();
  const wanted = shot ? `${place.plan}/${place.shot}/${plan.version} of ${state.run}, ${layout.width} ${layout.scale}` : "";
  if (wanted === drawn && wanted) return;
  const at = shot ? `${place.plan}/${place.shot}` : "";
  const same = Boolean(at) && at === loaded;
  drawn = wanted;
  loaded = at;
  load(shot, same);
  after.show(plan, shot);
  if (shot?.stage) stage.reserve(shot.stage);
  else stage.clear();
  const shown = await score.show(Boolean(shot?.pages.length), (page) => fetchPage(place, page, layout), {
    fps: shot?.fps ?? 24, fresh: !same, subjects: shot?.subjects.map((u) => u.name) ?? [], empty: shot ? "Drawn as soon as the plan has no errors." : "",
  });
  if (!shown) return;
  followSight();
  if (shot?.stage) afterPaint(() => wanted === drawn && stage.show(place.plan, place.shot, plan.version, besideOf(plan, shot)));
}

// besideOf returns the shots that other cameras take at the same time as a shot, { id, label,
// shift }: shift is how many seconds their clock is ahead.
function besideOf(plan, shot) {
  return (shot.setup?.beside ?? []).map((id) => plan.shots.find((s) => s.id === id)).filter((s) => s?.stage && s.setup)
    .map((s) => ({ id: s.id, label: s.label, shift: shot.setup.from_s - s.setup.from_s }));
}

// sheetOf says which page of a shot is wanted, by its number from 1, and how it is laid out.
function sheetOf({ plan, shot }, page, layout) { return { plan, shot, page, ...layout }; }

// fetchPage returns a page of a shot; null where the program has gone, or has something newer
// by now: then a new state comes.
async function fetchPage(place, page, layout) {
  const what = sheetOf(place, page, layout);
  if (kept?.for === new URLSearchParams(what).toString()) return kept;
  try {
    return await get("api/score", what);
  } catch {
    drawn = "";
    return null;
  }
}

// followSight has the page in sight come with every state.
function followSight() {
  const place = places.shown;
  if (shotOf(place)?.pages.length) link.follow(sheetOf(place, score.inSightFirst(), score.layout()));
}

// load sets the playhead to a shot; where it is the same as before, all that is
// on goes on. A try that is on when another shot comes has lost its own.
function load(shot, same) {
  const now = { duration: shot?.duration_s ?? 0, rate: shot?.fps ?? 24, pulls: shot?.pulls ?? [], slow: shot?.slow_factor ?? 1 };
  if (same) {
    player.reload(now);
    return;
  }
  stage.leave();
  player.load(now);
}

// findingsHere returns the findings that the drawing of the shot on show has flags of.
function findingsHere() {
  const plan = planOf(places.shown);
  return ofShot((plan?.stale ? plan.old : plan?.findings) ?? [], places.shown?.shot);
}

// about returns what there is to say of a pull, a subject or a finding of the shot.
function about(kind, key) {
  const shot = shotOf(places.shown);
  if (!shot) return null;
  if (kind === "pull") {
    const pull = shot.pulls.find((p) => p.number === key);
    if (!pull) return null;
    return {
      title: `${key} ${pull.name}`, figures: pull.figures, subjects: pull.to ? [pull.to] : [], pulls: [key],
      findings: findingsHere().filter((f) => f.pull === key), times: [pull.start_s, pull.land_s],
    };
  }
  if (kind === "subject") {
    const subject = shot.subjects.find((u) => u.name === key);
    const pulls = shot.pulls.filter((p) => p.to === key).map((p) => p.number);
    if (!subject) return null;
    return { title: key, figures: subject.figures, subjects: [key], pulls, findings: findingsHere().filter((f) => pulls.includes(f.pull)), times: [] };
  }
  const found = findingsHere().filter((f) => key.includes(f.number));
  if (!found.length) return null;
  const figures = found.flatMap((f) => [
    { title: "", text: f.message }, ...(f.detail ? [{ title: "", text: f.detail }] : []),
    ...(f.cures?.length ? [{ title: "", text: `Cure: ${f.cures.join(", or ")}`, kind: "cures" }] : []),
  ]);
  const title = found.length === 1 ? `${found[0].letter ?? ""} ${found[0].severity}` : count(found.length, "finding");
  return { title, figures, subjects: [], pulls: found.map((f) => f.pull).filter(Boolean), findings: found, times: found.map((f) => f.t_s) };
}

score.onPull = (number) => {
  const pull = shotOf(places.shown)?.pulls.find((p) => p.number === number);
  if (pull) player.seek(pull.start_s);
  if (pull && state.picks) post("api/pick", { plan: places.shown.plan, shot: places.shown.shot, pull: number }).catch(() => {}); // the editor has gone
};

// pointAt shows what somebody points at in an editor.
function pointAt(at) {
  if (!state || !has(state, at) || at.n === pointed?.n) return;
  const first = pointed === null;
  pointed = at;
  const there = at.plan === places.shown?.plan && at.shot === places.shown.shot && !places.missing;
  if (there) lightPointed();
  else if (!(at.old && first)) go({ plan: at.plan, shot: at.shot }); // it lights once that is drawn
}

// lightPointed lights it on the drawing, which may be new, unless somebody points at the
// page itself.
function lightPointed() {
  if (pointed && !near.mark && pointed.plan === places.shown?.plan && pointed.shot === places.shown.shot) near.pull(pointed.pull);
}
score.onFlag = (number) => {
  const of = findingsHere().find((f) => f.number === number);
  score.light(number);
  if (of) findings.pick(of);
};

const pullsHere = () => shotOf(places.shown)?.pulls ?? [];
bind(" ", "play or pause", () => (player.playing ? player.pause() : player.play()));
bind(["ArrowLeft"], "a frame back", () => player.step(-1));
bind(["ArrowRight"], "a frame on", () => player.step(1));
bind(["Shift+ArrowLeft"], "a second back", () => player.seek(Math.max(0, player.time - 1)));
bind(["Shift+ArrowRight"], "a second on", () => player.seek(Math.min(player.duration, player.time + 1)));
bind(["Home"], "to the start", () => player.seek(0));
bind(["End"], "to the end", () => player.seek(player.duration));
bind(["p"], "to the next pull", () => player.seek(nextPull(pullsHere(), player.time, 1)));
bind(["P"], "to the pull before", () => player.seek(nextPull(pullsHere(), player.time, -1)));
bind(["["], "the shot before", () => state && go(neighbour(state, places.shown, -1)));
bind(["]"], "the next shot", () => state && go(neighbour(state, places.shown, 1)));
bind(["s"], "the next set-up of the scene, at the same moment", () => goSetUp(1));
bind(["S"], "the set-up before, at the same moment", () => goSetUp(-1));
bind(["n"], "the next finding", () => findings.step(1));
bind(["N"], "the finding before", () => findings.step(-1));
bind(["+", "="], "larger", () => score.larger());
bind(["-"], "smaller", () => score.smaller());
bind(["0"], "all of the shot at once", () => score.fit());
bind(["?"], "these keys", () => showHelp($("help")));
listen(document);

$("zoom-in").addEventListener("click", () => score.larger());
$("zoom-out").addEventListener("click", () => score.smaller());
$("zoom-fit").addEventListener("click", () => score.fit());
$("help-open").addEventListener("click", () => showHelp($("help")));
window.addEventListener("hashchange", () => state && go(choose(state, fromHash(location.hash))));

const words = { live: "live", waiting: "waiting for the program", resting: "resting", refused: "Open the address that the program printed." };
const link = new Link({
  take,
  keep: (page) => { kept = page; },
  point: pointAt,
  changed: (now) => {
    $("link").dataset.state = now;
    $("link").textContent = words[now];
  },
});
document.addEventListener("scrollend", followSight);
