// The words to come: the line that is being said and the next two, with the words marked
// that a pull hangs on.

// warned is how long before its time a word begins to fill, seconds.
export const warned = 1;

// hung is how near a word and a pull are that belong together, seconds.
const hung = 0.002;

// coming returns up to three lines from a time on, each with its words: whether one has
// fallen, whether a pull starts or lands on it, and how much of it is filled, from 0 to 1.
export function coming(lines, pulls, t, most = 3) {
  const times = pulls.flatMap((p) => [p.start_s, p.land_s]);
  return lines.filter((l) => l.end_s > t).slice(0, most).map((l) => ({
    who: l.who, said: l.start_s <= t,
    words: l.words.map((w) => {
      const cue = times.some((at) => Math.abs(at - w.start_s) < hung);
      return { text: w.text, fallen: t >= w.start_s, cue, fill: cue ? Math.min(Math.max(1 - (w.start_s - t) / warned, 0), 1) : 0 };
    }),
  }));
}
