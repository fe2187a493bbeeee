// The metronome: a click a beat before the playing starts, heard and shown.

// beatsOf returns when the beats of a count-in fall, in seconds from its start,
// and when it is over: a beat after the last.
export function beatsOf(count, beat) {
  return { beats: Array.from({ length: count }, (_, n) => n * beat), end: count * beat };
}

// beatRange holds the length of a beat, seconds, as plans have it.
export const beatRange = { least: 0.1, most: 4, usual: 0.5 };

// readBeat reads the length of a beat as typed; what is none gives the usual.
export function readBeat(text) {
  const v = Number(text);
  if (!(v > 0)) return beatRange.usual;
  return Math.min(Math.max(v, beatRange.least), beatRange.most);
}

// A Metronome counts in. Sound is made only after a key or a button was
// pressed, as browsers want it; where there is none, the beats still show.
export class Metronome {
  #audio = null;

  // makeAudio returns an AudioContext or null.
  constructor(makeAudio = () => (globalThis.AudioContext ? new AudioContext() : null)) {
    this.makeAudio = makeAudio;
    this.count = 4;
    this.beat = beatRange.usual;
    this.onBeat = () => {}; // called with how many beats are left, 0 at the end
  }

  // lead counts in and then calls start; it returns what breaks it off.
  lead(start) {
    const { beats, end } = beatsOf(this.count, this.beat);
    const stopSound = this.#sound(beats);
    const timers = beats.map((at, n) => setTimeout(() => this.onBeat(beats.length - n), at * 1000));
    timers.push(setTimeout(() => {
      this.onBeat(0);
      start();
    }, end * 1000));
    return () => {
      timers.forEach(clearTimeout);
      stopSound();
      this.onBeat(0);
    };
  }

  // sound sets the clicks ahead on the clock of the sound, which keeps time
  // better than timers do.
  #sound(beats) {
    const audio = (this.#audio ??= this.makeAudio());
    if (!audio) return () => {};
    audio.resume?.();
    const from = audio.currentTime + 0.005;
    const clicks = beats.map((at, n) => click(audio, from + at, n === 0 ? 1320 : 990));
    return () => clicks.forEach((c) => c.stop());
  }
}

// click plays a short tone at a time of the sound's clock.
function click(audio, at, pitch) {
  const tone = audio.createOscillator();
  const volume = audio.createGain();
  tone.frequency.value = pitch;
  volume.gain.setValueAtTime(0.0001, at);
  volume.gain.exponentialRampToValueAtTime(0.4, at + 0.002);
  volume.gain.exponentialRampToValueAtTime(0.0001, at + 0.06);
  tone.connect(volume).connect(audio.destination);
  tone.start(at);
  tone.stop(at + 0.08);
  return tone;
}
