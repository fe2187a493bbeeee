// The curves of a shot: the focus, the distance of every subject, the sharp zone and
// the angle of the hand, at any time t in seconds from the start of the shot.

package plan

import (
	"math"
	"sort"

	"pullscore/interp/hand"
	"pullscore/optics"
)

// AtStop returns a copy of the shot with its lens at another f-number. It changes
// nothing else, and does not compute the figures again.
func (s *Shot) AtStop(number float64) *Shot {
	other := *s
	other.Optics.Number = number
	return &other
}

// Focal returns the focal length at t, in metres.
func (s *Shot) Focal(t float64) float64 { return s.Optics.Focal.At(t) }

// Setting returns the setting of the lens at t. If a zoom closes its stop on the way,
// the setting has the smaller stop.
func (s *Shot) Setting(t float64) optics.Setting {
	o := &s.Optics
	f := s.Focal(t)
	n := max(o.Number, o.Widest(f))
	set := optics.Setting{Focal: f, Number: n, Criterion: o.Criterion, Pupil: o.Pupil}
	if p := o.Glass.Diopter; p > 0 {
		return set.Behind(p)
	}
	return set
}

// SettingTo is Setting with the focus at x metres from the lens: a macro lens is shorter
// near.
func (s *Shot) SettingTo(x, t float64) optics.Setting {
	set := s.Setting(t)
	if s.Optics.Glass.Macro() {
		set.Focal = s.FocalTo(x, t)
	}
	return set
}

// Judged returns the lens as it is set at t, with what diffraction leaves of the
// criterion with the focus at x metres from the lens: what is sharp is judged by
// that, while Setting says how large a blur is.
func (s *Shot) Judged(x, t float64) optics.Setting { return s.SettingTo(x, t).Judged(x) }

// Diffraction returns the size of the disc of diffraction alone at t, in arc minutes
// at the viewer, with the focus at x metres from the lens.
func (s *Shot) Diffraction(x, t float64) float64 {
	return s.SettingTo(x, t).Diffraction(x) * s.Optics.ArcminPerBlur
}

// FromTape converts a tape reading along the axis at t into a distance from the
// front principal plane of the lens, both in metres. It returns NaN if the lens
// forms no image at that distance.
func (s *Shot) FromTape(d, t float64) float64 {
	if s.Optics.FromLens {
		return d
	}
	x, ok := s.FromSensor(d, t)
	if !ok {
		return math.NaN()
	}
	return x
}

// ToTape converts a distance from the lens into a tape reading, both in metres. It is
// the inverse of FromTape.
func (s *Shot) ToTape(x, t float64) float64 {
	if s.Optics.FromLens {
		return x
	}
	return s.SensorTape(x, t)
}

// Subject returns the subject with that name, or nil if the shot has none.
func (s *Shot) Subject(name string) *Subject {
	for _, u := range s.Subjects {
		if u.Name == name {
			return u
		}
	}
	return nil
}

// DistanceAt returns the distance of the subject along the axis at t, as a tape reads
// it, in metres.
func (s *Shot) DistanceAt(u *Subject, t float64) float64 {
	if s.Optics.Rig == nil {
		return u.Along.At(t) - s.Optics.Camera.At(t)
	}
	return s.ViewOf(u, t).Along
}

// LensDistanceAt returns the subject's distance from the lens at t, in metres.
func (s *Shot) LensDistanceAt(u *Subject, t float64) float64 {
	return s.FromTape(s.DistanceAt(u, t), t)
}

// FocusAt returns the planned distance of the focus from the lens at t, in metres. It
// does not include the lag or spread of a hand.
func (s *Shot) FocusAt(t float64) float64 {
	if p := s.begunAt(t); p != nil {
		return s.during(p, t)
	}
	return s.Carried(s.Optics.Start.Distance, 0, t)
}

// begunAt returns the last pull that has started at t; nil if none has.
func (s *Shot) begunAt(t float64) *Pull {
	i := sort.Search(len(s.Pulls), func(i int) bool { return float64(s.Pulls[i].Start) > t })
	if i == 0 {
		return nil
	}
	return s.Pulls[i-1]
}

// Carried returns the distance of the focus at t, if it was x at the time set and the
// ring has not moved since. The distance from the sensor stays the same, while a zoom
// moves the principal plane of the lens. Both distances are from the lens, in metres.
// It returns NaN if the lens cannot focus there.
func (s *Shot) Carried(x, set, t float64) float64 {
	from, to := s.Focal(set), s.Focal(t)
	if from == to {
		return x
	}
	if carried, ok := optics.FromSensor(optics.ToSensor(x, from), to); ok {
		return carried
	}
	return math.NaN()
}

// during returns the focus of a pull that has started, in metres from the lens, also
// after its end.
func (s *Shot) during(p *Pull, t float64) float64 {
	land := float64(p.Land)
	if t >= land {
		return s.Carried(p.ToLens, land, t)
	}
	if p.Kind == "follow" {
		if u := s.Subject(p.To); u != nil {
			return s.LensDistanceAt(u, t)
		}
		return p.ToLens
	}
	if s.byRing(p) {
		return s.RingDistance(s.RingAt(t), t)
	}
	// Without a ring, or with an angle that nobody knows, the move is even in what a ring
	// would feel: 1/distance.
	u := p.Turned(t)
	return 1 / (1/p.FromLens + u*(1/p.ToLens-1/p.FromLens))
}

// RingDeg returns the angle of the ring in degrees that focuses at x metres from the
// lens at t. It returns NaN if the lens has no ring to pull by angle, if it forms no image
// at x, or if its law does not know the angle.
func (s *Shot) RingDeg(x, t float64) float64 {
	if r := s.Optics.Ring; r != nil && x > s.Focal(t) {
		return r.Angle(s.RingTape(x, t))
	}
	return math.NaN()
}

// RingHeld is like RingDeg, but beyond an end of the law it returns the angle of that
// end. It is for the edges of a window.
func (s *Shot) RingHeld(x, t float64) float64 {
	if r := s.Optics.Ring; r != nil && x > s.Focal(t) {
		if tape := s.RingTape(x, t); !math.IsNaN(tape) {
			return r.Held(tape)
		}
		return r.Held(math.Inf(1)) // behind the farthest that a close-up lens or a tube lets it
	}
	return math.NaN()
}

// RingDistance returns the distance from the lens, in metres, that a ring angle in
// degrees focuses at. It returns NaN if the lens forms no image there. The lens must
// have a ring.
func (s *Shot) RingDistance(deg, t float64) float64 {
	return s.Optics.Glass.Reaches(s.Focal(t), s.Optics.Ring.Distance(deg))
}

// WorstUntil returns when the worst half second of a follow ends, in seconds.
func (p *Pull) WorstUntil() Number { return min(p.WorstAt+hand.Eyeful, p.Land) }

// BlurAt returns the size of the disc that defocus makes of a point of the subject at
// t, in arc minutes at the viewer.
func (s *Shot) BlurAt(u *Subject, t float64) float64 {
	return s.Blur(s.LensDistanceAt(u, t), s.FocusAt(t), t)
}

// Blur returns the size of the disc that defocus makes of a point at d with the focus
// at x, in arc minutes at the viewer. Both are in metres from the lens.
func (s *Shot) Blur(d, x, t float64) float64 {
	return s.SettingTo(x, t).Blur(d, x) * s.Optics.ArcminPerBlur
}

// Fits reports whether one focus can keep the whole depth of a subject sharp at t. It
// is true for a subject without depth. It is also true if the lens forms no image of
// the subject, since another check reports that.
func (s *Shot) Fits(u *Subject, t float64) bool {
	half, d := float64(u.Deep)/2, s.DistanceAt(u, t)
	if half == 0 || math.IsNaN(s.FromTape(d, t)) {
		return true
	}
	front, back := s.FromTape(d-half, t), s.FromTape(d+half, t)
	return front > 0 && s.Setting(t).FitsJudged(front, back)
}

// ZoneAt returns the nearest and the farthest distance that is sharp at t, as a tape
// reads them, in metres. The farthest may be infinite.
func (s *Shot) ZoneAt(t float64) (near, far float64) {
	x := s.FocusAt(t)
	set := s.Judged(x, t)
	return s.ToTape(set.Near(x), t), s.ToTape(set.Far(x), t)
}

// Timecode returns the timecode of the frame at t in the record: "" where the shot does
// not say at which timecode it begins, and where the cut does not show the time. A shot
// that is one run of the record is counted on beyond its ends.
func (s *Shot) Timecode(t float64) string {
	switch {
	case s.BeginsAt == "":
		return ""
	case !s.Recut():
		return s.Rate.Format(s.Begins + s.Speed().Frames(t))
	}
	if n, ok := s.RecordAt(t); ok {
		return s.Rate.Format(n)
	}
	return ""
}
