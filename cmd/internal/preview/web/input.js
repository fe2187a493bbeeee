// What stands for the hand wheel: a mouse wheel, keys, a controller by MIDI.
// Each comes to degrees that the hand has turned.

// wheelDegrees turns a wheel event into degrees: a notch of the wheel is
// perNotch degrees, and away from the user is farther.
export function wheelDegrees({ deltaY, deltaX, deltaMode }, perNotch) {
  const delta = Math.abs(deltaY) >= Math.abs(deltaX) ? deltaY : deltaX;
  const notch = [100, 3, 1][deltaMode] ?? 100; // pixels, lines, pages
  return (-delta / notch) * perNotch;
}

// keyDegrees turns a key into degrees, or undefined.
export function keyDegrees({ key, shiftKey }) {
  const small = shiftKey ? 5 : 1;
  const table = { ArrowUp: small, ArrowRight: small, ArrowDown: -small, ArrowLeft: -small, PageUp: 10, PageDown: -10 };
  return table[key];
}

// turned returns how far a pointer has gone round a centre, degrees clockwise,
// the short way.
export function turned(centre, from, to) {
  const angle = (p) => (Math.atan2(p.y - centre.y, p.x - centre.x) * 180) / Math.PI;
  const by = angle(to) - angle(from);
  return by - 360 * Math.round(by / 360);
}

// midiKinds are the ways in which controllers tell a turn.
export const midiKinds = {
  absolute: "a value, 7 bit",
  fine: "a value, 14 bit",
  complement: "steps, 1 and 127",
  offset: "steps, 65 and 63",
  sign: "steps, 1 and 65",
};

// A Controller reads the turns of one knob from MIDI messages: the first that
// sends a control change, until it is forgotten. span is how many degrees at
// the hand the whole way of a value comes to, step those of one step.
export class Controller {
  constructor(kind = "absolute", { span = 300, step = 1 } = {}) {
    Object.assign(this, { kind, span, step });
    this.forget();
  }

  forget() {
    this.knob = null; // channel and number
    this.value = null; // the last, 0 to 1
    this.high = null; // the upper 7 of 14 bits
  }

  // read returns the degrees of a message; 0 where it says nothing of a turn.
  read([status, number, data]) {
    if (status >> 4 !== 0xb || number > 119) return 0; // 120 and up are modes (MIDI 1.0)
    const fine = this.kind === "fine";
    const low = fine && number >= 32 && number < 64; // the lower bits of number - 32
    const knob = `${status & 15}:${low ? number - 32 : number}`;
    this.knob ??= knob;
    if (knob !== this.knob) return 0;
    if (fine && number < 64) return this.readFine(low, data);
    if (this.kind === "absolute" || fine) return this.move(data / 127);
    return this.steps(data) * this.step;
  }

  // readFine puts the two halves of a value together. The lower follows the
  // upper, and the value counts with it; a knob that sends the upper half alone
  // is one of 7 bits.
  readFine(low, data) {
    if (!low) {
      this.high = data;
      return 0; // the lower half follows
    }
    if (this.high === null) return 0;
    return this.move(((this.high << 7) | data) / 16383);
  }

  // move takes a new value; the first only says where the knob stands.
  move(value) {
    const by = this.value === null ? 0 : value - this.value;
    this.value = value;
    return by * this.span;
  }

  steps(data) {
    switch (this.kind) {
      case "complement": return data < 64 ? data : data - 128;
      case "offset": return data - 64;
      default: return data < 64 ? data : 64 - data;
    }
  }
}

// listenMIDI asks the user for controllers and hands on their messages, each with
// its stamp; it returns the names of those that are there, and tells of changes.
export async function listenMIDI(onMessage, onChange) {
  if (!navigator.requestMIDIAccess) throw new Error("This browser has no Web MIDI.");
  const access = await navigator.requestMIDIAccess();
  const names = () => {
    const inputs = [...access.inputs.values()];
    for (const i of inputs) i.onmidimessage = (m) => onMessage(m.data, m.timeStamp);
    return inputs.map((i) => i.name ?? "a controller");
  };
  access.onstatechange = () => onChange(names());
  return names();
}
