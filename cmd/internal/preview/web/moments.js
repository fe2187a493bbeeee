// The pulls and rests of the shot on show in words: how likely each lands, how often
// somebody is sharp, how far somebody may miss the mark. Each leads to its time.

import { make } from "./shared.js";

// A chance that no measured ring stands behind ends in these words, and is underlined.
const assumed = / (by the law|ring not known)$/;

export class Moments {
  // seek is called with the time of a moment that is picked, in seconds.
  constructor(seek) {
    this.seek = seek;
    this.root = make("details", "moments");
    this.list = make("ol");
    this.root.append(make("summary", "", "Pulls and rests"), this.list);
  }

  // take shows the moments of a shot. Its line is there before, so that nothing moves.
  take(told) {
    this.list.replaceChildren(...told.map((m) => this.item(m)));
  }

  item(m) {
    const item = make("li");
    const button = make("button", m.hard ? "moment hard" : "moment");
    button.type = "button";
    const head = make("span", "moment-head");
    head.append(make("bdi", "moment-name", m.name), " ", make("span", "moment-time", `${m.t_s.toFixed(1)} s`));
    if (m.hard) head.append(" ", make("span", "severity", "less often than wanted"));
    button.append(head, ...m.says.map((text) => make("bdi", assumed.test(text) ? "detail assumed" : "detail", text)));
    button.addEventListener("click", () => this.seek(m.t_s));
    item.append(button);
    return item;
  }
}
