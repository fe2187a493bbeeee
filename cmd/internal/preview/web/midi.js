// The line of the rehearsal where a MIDI controller is taken up as the wheel.

import { make } from "./shared.js";
import { Controller, listenMIDI, midiKinds } from "./input.js";
import { button } from "./transport.js";

// midiLine returns the line where a controller is taken up; turn is called with
// the degrees that it turns by and the stamp of the message. Permission is asked only when its button is
// pressed.
export function midiLine(turn) {
  let controller = new Controller();
  const line = make("div", "ways midi");
  const kind = make("select");
  kind.setAttribute("aria-label", "How the controller tells a turn");
  for (const [value, text] of Object.entries(midiKinds)) {
    const option = make("option", "", text);
    option.value = value;
    kind.append(option);
  }
  const scale = make("input");
  Object.assign(scale, { type: "number", min: 0.05, max: 720, step: 0.05 });
  const label = make("label", "", "");
  const name = make("span");
  label.append(name, " ", scale, " °");
  const set = () => {
    const whole = kind.value === "absolute" || kind.value === "fine";
    name.textContent = whole ? "its whole way is" : "a step is";
    scale.value = whole ? 300 : 1;
    controller = new Controller(kind.value, whole ? { span: 300 } : { step: 1 });
  };
  kind.addEventListener("change", set);
  scale.addEventListener("change", () => { controller.span = controller.step = Number(scale.value) || 1; });
  set();
  const state = make("span", "midi-state");
  const tell = (names) => { state.textContent = names.length ? `${names.join(", ")}: the first knob that is turned is the wheel` : "no controller is connected"; };
  const ask = button("MIDI controller", "", async () => {
    try {
      tell(await listenMIDI((data, stamp) => turn(controller.read(data), stamp), tell));
    } catch (e) {
      state.textContent = `Not to be had: ${e.message}`;
    }
  });
  line.append(ask, kind, label, state);
  return line;
}
