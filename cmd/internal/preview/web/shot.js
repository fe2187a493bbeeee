// A shot as the stage was told it: what is where, and how blurred, at a frame,
// as planned or with the focus wherever a hand has turned it.

import { blurDisc, diffractionDisc, fromSensor, Law, limitsOf, scaleOf } from "./blur.js";

const whisker = 1e-6; // of a frame, see player.js

// far reads a figure of a series: null is infinite.
const far = (v) => (v === null ? Infinity : v);

export class Shot {
  constructor(told) {
    this.told = told;
    this.fps = told.rate[0] / told.rate[1];
    this.law = told.ring ? new Law(told.ring.throw_deg, told.ring.from_sensor_m.map(far)) : null;
  }

  // sampleAt returns the number of the sample on show at a time in seconds.
  sampleAt(t) {
    const frame = Math.floor(t * this.fps + whisker);
    return Math.min(Math.max(Math.floor(frame / this.told.every), 0), this.told.samples - 1);
  }

  // at returns a figure of a series; a series of one never changes.
  at(series, i) { return far(series.length === 1 ? series[0] : series[i]); }

  // lensAt is the lens as it is set, for blur.js.
  lensAt(i) {
    const { told } = this;
    return {
      focal: this.at(told.focal_m, i), number: this.at(told.f_number, i), behind: this.at(told.pupil_behind_m, i),
      breathes: told.ring?.breathes_percent,
    };
  }

  // focusAt is the focus from the lens: as planned, or with the hand at deg.
  focusAt(i, deg) {
    if (deg === undefined) return this.at(this.told.focus_m, i);
    return fromSensor(this.law.distance(deg), this.at(this.told.focal_m, i));
  }

  handAt(i) { return this.at(this.told.ring.hand_deg, i); }

  // picture returns what the frame shows, from the farthest to the nearest.
  // Places and sizes are parts of the frame's width, from its middle, up and to
  // the right positive; disc is the diameter of the blur.
  picture(t, deg) {
    const { told } = this;
    const i = this.sampleAt(t);
    const lens = this.lensAt(i);
    const focus = this.focusAt(i, deg);
    const sensor = told.sensor_width_mm / 1000;
    const scale = deg === undefined ? this.at(told.scale_m, i) : scaleOf(lens, focus, deg / this.law.throw);
    const perBlur = told.arcmin_per_width / sensor;
    const diffraction = diffractionDisc(lens, focus) * perBlur;
    const subjects = told.subjects.map((u, index) => {
      const distance = this.at(u.lens_distance_m, i);
      const blur = deg === undefined ? this.at(u.blur_arcmin, i) : blurDisc(lens, distance, focus) * perBlur;
      const metre = scale / (distance + lens.behind) / sensor;
      return {
        name: u.name, person: u.person, deep: u.deep_m, index, distance, blur, eyes: u.eyes_m && this.at(u.eyes_m, i),
        metre, x: this.at(u.side_m, i) * metre, y: u.above_m ? this.at(u.above_m, i) * metre : 0, disc: Math.hypot(blur, diffraction) / told.arcmin_per_width,
      };
    });
    return {
      sample: i, focus, aspect: told.sensor_width_mm / told.sensor_height_mm,
      limits: limitsOf(told.sharp_arcmin, told.seen_arcmin, diffraction),
      back: this.back(lens, focus, scale, sensor),
      camera: this.cameraAt(i),
      subjects: subjects.filter((u) => u.distance > 0 && u.metre > 0).sort((a, b) => b.distance - a.distance),
    };
  }

  // cameraAt is where the camera is and looks, for sight.js, and how high the floor is, if
  // that is known; null where it only goes along its axis.
  cameraAt(i) {
    const { camera } = this.told;
    if (!camera) return null;
    const [x, y, z, pan, tilt, pupil] = [camera.right_m, camera.upstage_m, camera.high_m, camera.pan_deg, camera.tilt_deg, camera.pupil_ahead_m].map((s) => this.at(s, i));
    return { x, y, z, pan, tilt, pupil, ...(camera.floor_m !== undefined && { floor: camera.floor_m }) };
  }

  // back is what lies far behind everyone: how large it is, in parts of the
  // frame's width for the tangent of an angle off the axis, and its disc.
  back(lens, focus, scale, sensor) {
    const away = Math.max(60, ...this.told.subjects.map((u) => 2 * this.at(u.lens_distance_m, 0)).filter(Number.isFinite));
    return { tangent: scale / sensor, disc: blurDisc(lens, away, focus) / sensor };
  }

  // words returns the lines that are heard around t, each word with whether it
  // has fallen. A line stays for a moment after its end.
  words(t, stays = 0.8) {
    return this.told.lines
      .filter((l) => t >= l.start_s && t < l.end_s + stays)
      .map((l) => ({ who: l.who, words: l.words.map((w) => ({ text: w.text, fallen: t >= w.start_s })) }));
  }

  // signs returns the cues and the business around t.
  signs(t, stays = 0.8) {
    const { cues, actions } = this.told;
    return [
      ...(cues ?? []).filter((c) => t >= c.t_s && t < c.t_s + stays).map((c) => ({ kind: "cue", text: c.name })),
      ...(actions ?? []).filter((a) => t >= a.start_s && t < a.end_s).map((a) => ({ kind: "action", text: a.text })),
    ];
  }
}
