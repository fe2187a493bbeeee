// The stage: the frame as the lens sees it, at the plan's stop and, beside it,
// at another one; what is spoken; the transport.

import { get, make, player } from "./shared.js";
import { bind } from "./keys.js";
import { coming } from "./coming.js";
import { Metronome } from "./metronome.js";
import { Moments } from "./moments.js";
import { Rehearsal } from "./rehearse.js";
import { Shot } from "./shot.js";
import { Transport, toggle } from "./transport.js";
import { View } from "./view.js";

const root = document.getElementById("stage");
const metronome = new Metronome();
const transport = new Transport(player, metronome, (open) => rehearsal.show(open));
const rehearsal = new Rehearsal(document.getElementById("rehearse"), player, transport, () => paintSoon());
const views = { A: new View("A", (mark) => pick("A", mark)), B: new View("B", (mark) => pick("B", mark)) };
const picked = { A: "", B: null }; // marks; "": the plan's stop, null: a view not on show
const panel = make("div", "panel");
const spoken = make("p", "spoken");
const beside = toggle("Two stops", (on) => compare(on));
const mates = make("span", "mates"); // a switch for each shot that another camera takes at the same time
const around = toggle("Look round the frame", () => paintSoon());
const note = make("details", "truth");
const moments = new Moments((t) => player.seek(t));

let at = null; // { plan, shot, version } on show
let own = { A: "", B: "" }; // the plan's stops by name
let mate = null; // the shot of another camera that the second view has, see page.js; null: it is another stop
let asked = 0; // numbers the requests, the newest counts
let painting = 0;
let stir = 0; // the timer since the last change of time or size; 0: all rests

build();

// reserve takes the room of a shot that show will show: the page does not move
// when that comes. frame has the aspect of its picture and its subjects.
export function reserve(frame) {
  root.hidden = false;
  panel.style.setProperty("--aspect", frame.aspect);
  for (const v of Object.values(views)) v.reserve(frame);
}

// show shows a shot of a plan; the same one again where the plan has changed. beside are
// the shots that other cameras take at the same time.
export async function show(plan, shot, version, beside = []) {
  const same = at?.plan === plan && at?.shot === shot;
  if (!same) picked.A = "";
  at = { plan, shot, version };
  keepMate(beside);
  const request = ++asked;
  try {
    const plain = await Promise.all([ask(""), mate ? ask("", mate.id) : null]);
    const told = plain[0];
    plain[1] ??= told;
    const others = await Promise.all(["A", "B"].map((name, n) => (picked[name] ? ask(picked[name], shotIn(name)).catch(() => null) : plain[n])));
    if (request !== asked) return;
    own = { A: told.stop, B: plain[1].stop };
    ["A", "B"].forEach((name, n) => {
      if (!others[n]) picked[name] = ""; // a stop that the lens no longer has
      put(name, others[n] ?? plain[n]);
    });
    explain(told);
    moments.take(told.moments ?? []);
    transport.take(told.pulls, told.beat_s);
    rehearsal.take(new Shot(told), at);
    stirred();
    paint();
    root.dataset.shot = shot;
  } catch {
    if (request === asked && !same) clear(); // else the program is away for a while
  }
}

// leave ends what is on, since its shot is gone.
export function leave() {
  rehearsal.lose("the shot is gone");
}

// showScore has the score be seen, where a rehearsal is in its place.
export function showScore() {
  rehearsal.show(false);
}

// clear shows nothing.
export function clear() {
  at = null;
  asked++;
  root.hidden = true;
  rehearsal.clear();
}

function ask(stop, shot = at.shot) {
  return get("api/stage", { plan: at.plan, shot, ...(stop && { stop }) });
}

// shotIn is the shot that a view has.
function shotIn(name) { return name === "B" && mate ? mate.id : at.shot; }

// put gives a view what it shows.
function put(name, told) {
  const other = name === "B" && mate;
  views[name].take(new Shot(told), own[name], picked[name] ?? "", mate ? (other ? mate.label : at.shot) : "", other ? mate.shift : 0);
}

// pick shows a view at another stop.
async function pick(name, mark) {
  picked[name] = mark;
  const request = ++asked;
  const told = await ask(mark, shotIn(name)).catch(() => null);
  if (!told || request !== asked) return;
  put(name, told);
  paint();
}

// keepMate offers the shots that may be beside the one on show. One that was beside another
// before gives way to the first of them.
function keepMate(beside) {
  mates.replaceChildren(...beside.map((b) => {
    const t = toggle(`Beside ${b.label}`, (on) => accompany(on ? b : null));
    t.dataset.shot = b.id;
    return t;
  }));
  mates.hidden = !beside.length;
  const was = mate;
  mate = was && (beside.find((b) => b.id === was.id) ?? beside[0] ?? null);
  if (was?.id !== mate?.id) picked.B = mate ? "" : null;
  if (was && !mate) open(false);
  pressMates();
}

// accompany shows the shot of another camera beside the one on show, or no more.
async function accompany(to) {
  beside.setAttribute("aria-pressed", false);
  mate = to;
  picked.B = to ? "" : null;
  pressMates();
  open(Boolean(to));
  const request = ++asked;
  const told = await Promise.all([ask(picked.A), ask("", shotIn("B"))]).catch(() => null);
  if (!told || request !== asked) return;
  own.B = told[1].stop;
  put("A", told[0]);
  put("B", told[1]);
  paint();
}

// nextMate shows the next of the shots that may be beside, and after the last none.
function nextMate() {
  const all = [...mates.children];
  (all[all.findIndex((t) => t.dataset.shot === mate?.id) + 1] ?? all.at(-1))?.click();
}

function pressMates() {
  for (const t of mates.children) t.setAttribute("aria-pressed", t.dataset.shot === mate?.id);
}

// open shows the second view or hides it.
function open(on) {
  views.B.root.hidden = !on;
  panel.classList.toggle("two", on);
}

// compare shows the second view: at first at a stop far enough from the plan's
// to tell them apart.
function compare(on) {
  if (!views.A.shot) return; // a key was pressed before there is a stage
  if (mate) {
    mate = null;
    pressMates();
    own.B = own.A;
    put("A", views.A.shot.told);
  }
  open(on);
  if (!on) {
    picked.B = null;
    paintSoon();
    return;
  }
  const told = views.A.shot.told;
  const here = told.f_number[0];
  const far = (s) => Math.abs(Math.abs(2 * Math.log2(s.mark / here)) - 3);
  const best = [...told.stops].sort((a, b) => far(a) - far(b))[0];
  pick("B", String(best?.mark ?? ""));
}

// calm is how long the picture rests before it is worked out as well as it can be,
// in milliseconds: whoever scrubs sees the next frame sooner.
const calm = 120;

// stirred paints what has changed, at first quickly.
function stirred() {
  clearTimeout(stir);
  stir = setTimeout(() => {
    stir = 0;
    paintSoon();
  }, calm);
  paintSoon();
}

// paintSoon paints before the next repaint, once for all that has changed.
function paintSoon() {
  if (!painting) painting = requestAnimationFrame(paint);
}

function paint() {
  cancelAnimationFrame(painting);
  painting = 0;
  if (root.hidden || !views.A.shot) return;
  const deg = rehearsal.deg();
  const options = { deg, resting: stir === 0 && !player.playing && deg === undefined, round: around.getAttribute("aria-pressed") === "true" ? 1.6 : 1, views: views.B.root.hidden ? 1 : 2 };
  views.A.draw(player.time, options);
  if (!views.B.root.hidden) views.B.draw(player.time, mate ? { ...options, deg: undefined } : options);
  speak();
}

// speak shows the words as they fall, and the cues and business beside them.
function speak() {
  const { shot } = views.A;
  if (document.body.classList.contains("rehearsing")) {
    expect(shot);
    return;
  }
  const lines = shot.words(player.time);
  const signs = shot.signs(player.time);
  const key = JSON.stringify([lines, signs]);
  if (spoken.dataset.key === key) return;
  spoken.dataset.key = key;
  spoken.replaceChildren(...lines.map(spokenLine), ...signs.map((s) => make("bdi", `sign ${s.kind}`, s.text)));
}

// expect shows the words to come, those that a pull hangs on filling up.
function expect(shot) {
  const lines = coming(shot.told.lines, shot.told.pulls, player.time);
  const key = JSON.stringify(lines);
  if (spoken.dataset.key === key) return;
  spoken.dataset.key = key;
  spoken.replaceChildren(...lines.map(({ who, said, words }) => {
    const line = make("span", said ? "line coming said" : "line coming");
    line.append(make("bdi", "speaker", who), " ");
    for (const w of words) {
      const word = make("span", `word${w.fallen ? " fallen" : ""}${w.cue ? " cue-word" : ""}`, w.text);
      if (w.cue) word.style.setProperty("--fill", `${Math.round(w.fill * 100)}%`);
      line.append(word, " ");
    }
    return line;
  }));
}

function spokenLine({ who, words }) {
  const line = make("span", "line");
  line.append(make("bdi", "speaker", who), " ");
  for (const w of words) line.append(make("span", w.fallen ? "word fallen" : "word", w.text), " ");
  return line;
}

function build() {
  const pair = make("div", "views");
  pair.append(views.A.root, views.B.root);
  views.B.root.hidden = true;
  transport.ways.append(beside, mates, around);
  note.append(make("summary", "", "What this shows"), make("div"));
  panel.append(pair, spoken, transport.root, transport.ways, note);
  root.append(panel, moments.root);
  for (const v of Object.values(views)) v.onResize = () => { stirred(); paint(); };
  player.addEventListener("time", stirred);
  player.addEventListener("state", paintSoon);
  metronome.onBeat = (left) => {
    for (const v of Object.values(views)) {
      v.count.hidden = left === 0;
      v.count.value = left || "";
    }
  };
  bind(["h"], "half speed", () => transport.half.click());
  bind(["l"], "loop the pull", () => transport.loopHere());
  bind(["m"], "count in before playing and trying", () => transport.count.click());
  bind(["b"], "two stops beside each other", () => beside.click());
  bind(["w"], "a shot that runs with this one beside it", () => nextMate());
}

// explain says what the picture is made from, and what it cannot know.
function explain(told) {
  const placed = told.camera?.floor_m !== undefined; // heights are given
  const camera = told.camera ? "with their eyes as high as the lens at the start of the shot" : "with the camera level with the eyes and looking along the axis";
  const parts = [
    "Each figure has its true place and size in the field of view, and every point of it is spread over the disc that the lens makes of it on the sensor, at the scale of this picture. The discs are even and round everywhere: of the shape of the iris and the edge of the field the plan says nothing.",
    placed ? `Camera and eyes are as high as the plan says, each over the floor or what they stand on; who speaks, walks or sways is drawn standing, and shorter or taller as the eyes are lower or higher. The middle of a thing is where the focus is on it: it is a block as high as it is deep, or 20 cm. Each figure is flat: all of it has the blur of the distance in the plan.${unsaid(told)} Sea and lights lie far behind, to show discs.`
    : `Heights are assumed, as the plan does not give them: who speaks, walks or sways is drawn 1.7 m tall, ${camera}; anything else is a block as high as it is deep, or 20 cm. Each figure is flat: all of it has the blur of the distance in the plan. Sea and lights lie far behind, to show discs.`,
    told.camera ? `The grid is ${placed ? "the floor of the scene with a line each metre from its zero point" : "a floor with a line each metre, on which they stand"}. It is not in the picture, and shows how the camera turns and goes. Sea and lights are there on every side. Figures face the lens, and stay upright in the picture where it tilts.` : "",
    told.ring?.breathes_percent !== undefined
      ? "The picture grows as the focus comes nearer, by the lens's breathing over the whole ring. That it grows and does not shrink is an assumption."
      : "The picture grows as the focus comes nearer, as with a lens that moves as a whole.",
  ];
  if (told.screen) {
    const widths = (told.screen.viewer_m / told.screen.width_m).toFixed(1);
    parts.push(`Seen from ${widths} widths of the picture, it looks as it does from the seats. Up to ${told.sharp_arcmin.toFixed(1)} arcmin (minutes of arc at the viewer) is sharp, beyond ${told.seen_arcmin.toFixed(1)} arcmin soft, faint between. A small stop blurs all of it: that is painted, and less defocus is then sharp, and more is needed to show.`);
  }
  if (told.every > 1) parts.push(`The shot is long, so the stage shows every ${told.every}th frame.`);
  note.lastChild.replaceChildren(...parts.filter(Boolean).map((p) => make("p", "", p)));
}

// unsaid names who is drawn of a usual height, as the plan gives theirs by no floor.
function unsaid({ subjects }) {
  const names = subjects.filter((u) => u.person && !u.eyes_m).map((u) => u.name);
  return names.length ? ` Of ${names.join(", ")} the plan gives no height over a floor, and 1.7 m is assumed.` : "";
}
