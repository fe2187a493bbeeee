// After the take: four buttons say how it went, and each tap is a row of the log. Whoever
// taps one after the other goes through the pulls of the shot, and from the last to the
// next take.

// ways are how a take can have gone, by the word of the log.
export const ways = [
  { word: "sharp", text: "Sharp" }, { word: "early", text: "Early" }, { word: "late", text: "Late" },
  { word: "buzz", text: "Buzz", means: "soft, or searched for" },
];

// mostTakes is the largest number of a take.
export const mostTakes = 999;

// readTake reads the number of a take as typed; what is none gives the one before.
export function readTake(text, before) {
  const n = Math.round(Number(text));
  return n >= 1 ? Math.min(n, mostTakes) : before;
}

// onward returns what comes after a pull of a take: the next pull, or the first of the next
// take. pulls are the numbers of the shot's.
export function onward({ take, pull }, pulls) {
  const next = pulls[pulls.indexOf(pull) + 1];
  return next === undefined ? { take: Math.min(take + 1, mostTakes), pull: pulls[0] } : { take, pull: next };
}

// A Tally says which pull of which take of each shot is next, and what was tapped.
export class Tally {
  constructor() {
    this.places = new Map(); // by shot: what is next
    this.taps = []; // { shot, place, word }, the last one last
  }

  // next returns what is next in a shot; a pull that it no longer has gives way to its first.
  next(shot, pulls) {
    const place = this.places.get(shot) ?? { take: 1, pull: pulls[0] };
    return pulls.includes(place.pull) ? place : { take: place.take, pull: pulls[0] };
  }

  // choose has another pull or take be next.
  choose(shot, place) { this.places.set(shot, place); }

  // tapped notes how a take of what is next went.
  tapped(shot, pulls, word) {
    const place = this.next(shot, pulls);
    this.taps.push({ shot, place, word });
    this.choose(shot, onward(place, pulls));
  }

  // back goes back to before the last tap of a plan, and returns that; undefined where there
  // is none. shots of a plan begin with its key.
  back(plan) {
    const i = this.taps.findLastIndex((tap) => tap.shot.startsWith(`${plan}/`));
    if (i < 0) return undefined;
    const [tap] = this.taps.splice(i, 1);
    this.choose(tap.shot, tap.place);
    return tap;
  }
}
