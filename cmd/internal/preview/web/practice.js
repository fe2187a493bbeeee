// Practice: one pull again and again, and what the last landings come to.

// mostTries is after how many tries a practice ends: hands tire (common practice, no source).
export const mostTries = 20;

// dots is how many landings are shown.
export const dots = 10;

// t95 are the 95 % points of Student's t by degrees of freedom, from 1 on, as tables print
// them; beyond the last the normal distribution's is near enough.
const t95 = [6.314, 2.92, 2.353, 2.132, 2.015, 1.943, 1.895, 1.86, 1.833, 1.812, 1.796, 1.782, 1.771, 1.761, 1.753, 1.746, 1.74, 1.734, 1.729];

export class Practice {
  constructor() { this.results = []; }

  // add takes the result of a try, as Try gives it.
  add(result) { this.results.push({ error: result.error, hit: result.hit }); }

  get over() { return this.results.length >= mostTries; }

  // last returns the landings to show, the oldest first.
  last() { return this.results.slice(-dots); }

  // bias returns the mean of the landings that are shown past the mark with its 90 % range,
  // in degrees, from three tries on; null before.
  bias() {
    const last = this.last(), n = last.length;
    if (n < 3) return null;
    const mean = last.reduce((sum, r) => sum + r.error, 0) / n;
    const spread = Math.sqrt(last.reduce((sum, r) => sum + (r.error - mean) ** 2, 0) / (n - 1));
    return { mean, range: ((t95[n - 2] ?? 1.645) * spread) / Math.sqrt(n) };
  }

  // says puts the practice into words.
  says() {
    const n = this.results.length, hits = this.results.filter((r) => r.hit).length;
    if (!n) return "";
    const parts = [`${hits} of ${n} in the window`];
    const bias = this.bias();
    if (bias) {
      const way = bias.mean > 0 ? "past" : "short of";
      parts.push(Math.abs(bias.mean) <= bias.range
        ? `no side is sure: ${Math.abs(bias.mean).toFixed(1)}° ${way} the mark in the mean, give or take ${bias.range.toFixed(1)}°`
        : `you land ${Math.abs(bias.mean).toFixed(1)}° ${way} the mark in the mean, give or take ${bias.range.toFixed(1)}° (90 %)`);
    }
    return `${parts.join("; ")}.${this.over ? " Enough: hands tire." : ""}`;
  }
}

// Tally counts the tries at every pull of a shot, practised or not, to say which is next.
export class Tally {
  constructor() { this.counts = new Map(); }

  // add counts a try at a pull, which is known by its sign as long as it means the same.
  add(pull, hit) {
    const { tries, hits } = this.of(pull);
    this.counts.set(pull.sign, { tries: tries + 1, hits: hits + (hit ? 1 : 0) });
  }

  of(pull) { return this.counts.get(pull.sign) ?? { tries: 0, hits: 0 }; }

  // next returns the pull that needs practice most: how likely it misses by the plan, times
  // how much of the wanted share of landings is lacking yet. null where none needs any.
  next(pulls) {
    let most = 0, found = null;
    for (const pull of pulls) {
      const { tries, hits } = this.of(pull);
      const lacks = (pull.wanted ?? 1) - (tries ? hits / tries : 0);
      const needs = (1 - (pull.probability ?? 0)) * lacks;
      if (lacks > 0 && needs > most) [most, found] = [needs, pull];
    }
    return found;
  }

  // says puts what is next into words, for who has just tried a pull.
  says(pulls, now) {
    const next = this.next(pulls);
    if (!next) return "Every pull of this shot lands as often as the plan wants.";
    const { tries, hits } = this.of(next);
    const done = tries ? `you landed ${hits} of ${tries}` : "you have not tried it";
    const chance = next.probability === undefined ? "nobody knows how often it lands" : `by the plan it lands ${percent(next.probability)}`;
    return `${next.number === now.number ? "Go on with" : "Next:"} pull ${next.number} to ${next.target}: ${chance}, and ${done}.`;
  }
}

// percent writes a chance, which is never quite 0 or 1.
function percent(p) {
  if (p > 0.99) return "more than 99 %";
  return p < 0.01 ? "less than 1 %" : `${Math.round(p * 100)} %`;
}
