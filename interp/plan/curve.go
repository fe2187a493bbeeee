// The curves of a shot: where the focus is, how far everyone stands, what is
// sharp and where the hand is, at any time.

package plan

import (
	"math"
	"sort"

	"pullscore/optics"
)

// AtStop returns the shot with its lens at another f-number. All else is as it
// was, also what has been computed for the stop that the shot has.
func (s *Shot) AtStop(number float64) *Shot {
	other := *s
	other.Optics.Number = number
	return &other
}

// Focal returns the focal length at t, in metres.
func (s *Shot) Focal(t float64) float64 { return s.Optics.Focal.At(t) }

// Setting returns the lens as it is set at t. A zoom that closes its stop on
// the way closes it here too.
func (s *Shot) Setting(t float64) optics.Setting {
	o := &s.Optics
	f := s.Focal(t)
	n := max(o.Number, o.Widest(f))
	return optics.Setting{Focal: f, Number: n, Criterion: o.Criterion, Pupil: o.Pupil}
}

// Judged returns the lens as it is set at t, with what diffraction leaves of the
// criterion with the focus at x metres from the lens: what is sharp is judged by
// that, while Setting says how large a blur is.
func (s *Shot) Judged(x, t float64) optics.Setting { return s.Setting(t).Judged(x) }

// Diffraction returns the disc of diffraction alone with the focus at x metres
// from the lens, in arc minutes at the viewer.
func (s *Shot) Diffraction(x, t float64) float64 {
	return s.Setting(t).Diffraction(x) * s.Optics.ArcminPerBlur
}

// FromTape turns a tape reading along the axis at t into a distance from the
// lens's front principal plane, both in metres. A reading nearer than the lens
// can form an image of gives NaN.
func (s *Shot) FromTape(d, t float64) float64 {
	if s.Optics.FromLens {
		return d
	}
	x, ok := optics.FromSensor(d, s.Focal(t))
	if !ok {
		return math.NaN()
	}
	return x
}

// ToTape is the inverse of FromTape.
func (s *Shot) ToTape(x, t float64) float64 {
	if s.Optics.FromLens {
		return x
	}
	return optics.ToSensor(x, s.Focal(t))
}

// Subject returns the subject of that name, or nil.
func (s *Shot) Subject(name string) *Subject {
	for _, u := range s.Subjects {
		if u.Name == name {
			return u
		}
	}
	return nil
}

// DistanceAt returns the subject's distance along the axis at t as the tape
// reads it, in metres.
func (s *Shot) DistanceAt(u *Subject, t float64) float64 {
	return u.Along.At(t) - s.Optics.Camera.At(t)
}

// LensDistanceAt returns the subject's distance from the lens at t, in metres.
func (s *Shot) LensDistanceAt(u *Subject, t float64) float64 {
	return s.FromTape(s.DistanceAt(u, t), t)
}

// FocusAt returns the distance from the lens that the focus is planned at, in
// metres, at t.
func (s *Shot) FocusAt(t float64) float64 {
	i := sort.Search(len(s.Pulls), func(i int) bool { return float64(s.Pulls[i].Start) > t })
	if i == 0 {
		return s.Carried(s.Optics.Start.Distance, 0, t)
	}
	return s.during(s.Pulls[i-1], t)
}

// Carried is what the focus at x, set at one time, comes to at another: the
// ring stays, and with it the distance from the sensor, while a zoom moves the
// lens's principal plane. Distances are from the lens, in metres.
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

// during returns the focus of a pull that has started, also after its end.
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
	u := Ease((t-float64(p.Start))/float64(p.Land-p.Start), p.Profile == "smooth")
	if r := s.Optics.Ring; r != nil {
		return s.RingDistance(float64(p.FromDeg)+u*float64(p.ToDeg-p.FromDeg), t)
	}
	// Without a ring the move is even in what a ring would feel: 1/distance.
	return 1 / (1/p.FromLens + u*(1/p.ToLens-1/p.FromLens))
}

// RingDeg returns the ring angle that focuses at x metres from the lens at t,
// held at the ring's ends; inside tells whether x lies within the lens's marks.
// It is NaN where the lens has no ring to pull by angle, or forms no image of x.
func (s *Shot) RingDeg(x, t float64) (deg float64, inside bool) {
	r := s.Optics.Ring
	if r == nil || !(x > s.Focal(t)) {
		return math.NaN(), false
	}
	return r.Angle(optics.ToSensor(x, s.Focal(t)))
}

// RingDistance returns the distance from the lens that a ring angle focuses at.
func (s *Shot) RingDistance(deg, t float64) float64 {
	d := s.Optics.Ring.Distance(deg)
	x, ok := optics.FromSensor(d, s.Focal(t))
	if !ok {
		return math.NaN()
	}
	return x
}

// HandAt returns the angle at the hand at t, in degrees, or NaN.
func (s *Shot) HandAt(t float64) float64 {
	deg, _ := s.RingDeg(s.FocusAt(t), t)
	return deg * float64(s.Gear)
}

// BlurAt returns the disc that a point of the subject makes at the viewer's
// eye at t, in arc minutes.
func (s *Shot) BlurAt(u *Subject, t float64) float64 {
	return s.Blur(s.LensDistanceAt(u, t), s.FocusAt(t), t)
}

// Blur returns the disc, in arc minutes at the viewer, of a point at d with the
// focus at x, both from the lens.
func (s *Shot) Blur(d, x, t float64) float64 {
	return s.Setting(t).Blur(d, x) * s.Optics.ArcminPerBlur
}

// Fits reports whether some focus keeps the whole depth of a subject sharp at
// t. So does a subject without depth, and one that the lens forms no image of,
// which is another fault.
func (s *Shot) Fits(u *Subject, t float64) bool {
	half, d := float64(u.Deep)/2, s.DistanceAt(u, t)
	if half == 0 || math.IsNaN(s.FromTape(d, t)) {
		return true
	}
	front, back := s.FromTape(d-half, t), s.FromTape(d+half, t)
	return front > 0 && s.Setting(t).FitsJudged(front, back)
}

// ZoneAt returns the nearest and the farthest distance that is sharp at t, as
// the tape reads them; the farthest may be infinite.
func (s *Shot) ZoneAt(t float64) (near, far float64) {
	x := s.FocusAt(t)
	set := s.Judged(x, t)
	return s.ToTape(set.Near(x), t), s.ToTape(set.Far(x), t)
}

// Timecode returns the label of the frame at t where the shot begins at one,
// else "".
func (s *Shot) Timecode(t float64) string {
	if s.BeginsAt == "" {
		return ""
	}
	return s.Rate.Format(s.Begins + s.Rate.Frames(t))
}
