// The bar of the four buttons below the stage.

import { Tally, mostTakes, readTake, ways } from "./after.js";
import { make, post, say } from "./shared.js";
import { button } from "./transport.js";

export class AfterBar {
  constructor(root) {
    Object.assign(this, { root, tally: new Tally(), place: null, pulls: [], busy: false });
    this.take = make("input", "take-number");
    Object.assign(this.take, { type: "number", min: 1, max: mostTakes, step: 1 });
    this.take.addEventListener("change", () => this.choose({ take: readTake(this.take.value, this.next().take) }));
    const take = make("label", "", "take ");
    take.append(this.take);
    this.pull = make("select");
    this.pull.setAttribute("aria-label", "Pull");
    this.pull.addEventListener("change", () => this.choose({ pull: Number(this.pull.value) }));
    this.buttons = ways.map(({ word, text, means }) => {
      const b = button(text, means ? `${text}: ${means}` : "", () => this.tap(word));
      b.dataset.word = word;
      return b;
    });
    this.undo = button("Undo", "Undo the last tap", () => this.back());
    this.said = make("p", "after-said");
    this.said.setAttribute("role", "status");
    const keys = make("div", "after-keys");
    keys.append(...this.buttons, this.undo);
    root.append(make("h2", "", "After the take"), take, this.pull, keys, this.said);
  }

  // show shows the bar of a shot: its key is that of its plan and its own.
  show(plan, shot) {
    this.pulls = shot?.pulls ?? [];
    this.root.hidden = !this.pulls.length;
    const key = shot ? `${plan.key}/${shot.id}` : "";
    if (key !== this.place?.key) this.said.textContent = "";
    this.place = shot ? { key, plan: plan.key, shot: shot.id } : null;
    this.pull.replaceChildren(...this.pulls.map((p) => {
      const option = make("option", "", `${p.number} ${p.name}`);
      option.value = p.number;
      return option;
    }));
    this.follow();
  }

  numbers() { return this.pulls.map((p) => p.number); }
  next() { return this.tally.next(this.place.key, this.numbers()); }

  choose(part) {
    this.tally.choose(this.place.key, { ...this.next(), ...part });
    this.follow();
  }

  follow() {
    if (!this.pulls.length) return;
    const { take, pull } = this.next();
    this.take.value = take;
    this.pull.value = pull;
    this.undo.disabled = !this.tally.taps.some((tap) => tap.shot.startsWith(`${this.place.plan}/`));
  }

  tell(text) {
    this.said.textContent = text;
    say(text);
  }

  // send asks for something, one thing after the other.
  async send(path, value) {
    if (this.busy) return null;
    this.busy = true;
    try {
      return await post(path, value);
    } catch (e) {
      this.tell(`Not done: ${e.message}`);
      return null;
    } finally {
      this.busy = false;
    }
  }

  async tap(word) {
    const { place } = this;
    const { take, pull } = this.next();
    const { name } = this.pulls.find((p) => p.number === pull);
    const numbers = this.numbers();
    const done = await this.send("api/result", { plan: place.plan, shot: place.shot, pull, name, take, result: word });
    if (!done) return;
    this.tally.tapped(place.key, numbers, word);
    this.follow();
    this.tell(`Take ${take}, pull ${pull} ${word}: kept in ${done.file}.`);
  }

  async back() {
    if (!await this.send("api/undo", { plan: this.place.plan })) return;
    const tap = this.tally.back(this.place.plan);
    this.follow();
    this.tell(`Taken back: take ${tap.place.take}, pull ${tap.place.pull} ${tap.word}.`);
  }
}
