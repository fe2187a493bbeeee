// What the glass does beside focusing: shortening, close-up lenses and tubes, squeeze,
// breathing, and light lost near.

package plan

import (
	"math"

	"pullscore/optics"
	"pullscore/optics/ring"
)

// Glass is what a lens and what is on it do beside focusing.
type Glass struct {
	Squeeze   ring.Figure // over the distance from the sensor; the zero figure is 1
	Rear      bool        // the squeeze is behind the pupil
	Breathing ring.Figure // percent larger than at infinity; the zero figure: not said at distances
	Ratio     ring.Figure // magnification; the zero figure: not said
	Darkens   ring.Figure // stops lost against infinity; the zero figure: not said

	MacroNear float64 // focal length at the closest focus, metres; 0: no macro lens
	Closest   float64 // metres from the sensor
	Origin    float64 // metres: figures go along 1/(D-origin)

	Diopter float64 // power of the close-up lens, 1/m; 0: none
	Tube    float64 // length of the extension tube, metres; 0: none
	Planes  float64 // between the principal planes, metres
}

// PictureW returns the width in metres of the sensor that would show as much without a
// squeeze as the picture does with it.
func (o *Optics) PictureW() float64 { return o.SensorW * o.Squeeze() }

// Squeeze returns by how much the picture is stretched across when it is shown: the
// squeeze at infinity, 1 for a lens without one. Near, lenses may squeeze less, and
// nobody stretches a picture by another factor for that.
func (o *Optics) Squeeze() float64 {
	if !o.Glass.Squeeze.Known() {
		return 1
	}
	return o.Glass.Squeeze.At(math.Inf(1))
}

// macro reports whether the lens shortens its focal length near.
func (g *Glass) macro() bool { return g.MacroNear > 0 }

// focalAt returns the focal length in metres, f at infinity, with the focus at a distance
// from the sensor. Nearer than its closest focus the lens cannot go.
func (g *Glass) focalAt(f, tape float64) float64 {
	if !g.macro() {
		return f
	}
	return f + (g.MacroNear-f)*min(1, optics.Nearness(max(tape, g.Closest), g.Closest, g.Origin))
}

// focusedAt returns the focal length in metres, f at infinity, with the focus at x metres
// from the lens. The tape that belongs to x hangs on the focal length, and the focal
// length on the tape: the tape is found by halving, in 1/D, because x rises with it.
func (g *Glass) focusedAt(f, x float64) float64 {
	if !g.macro() || math.IsInf(x, 1) || math.IsNaN(x) {
		return f
	}
	far, _ := g.halve(func(tape float64) bool {
		at, ok := optics.FromSensor(tape, g.focalAt(f, tape))
		return ok && at > x
	})
	return g.focalAt(f, far)
}

// halve finds by halving, in 1/D, where beyond begins to hold of a distance from the
// sensor in metres, from the closest focus on. It returns the nearest at which it holds
// and the farthest at which it does not.
func (g *Glass) halve(beyond func(tape float64) bool) (far, near float64) {
	lo, hi := 0.0, 1/g.Closest // of 1/D
	for range 60 {
		if mid := (lo + hi) / 2; beyond(1 / mid) {
			lo = mid
		} else {
			hi = mid
		}
	}
	return 1 / lo, 1 / hi
}

// bent returns the focal length of a lens behind its close-up lens.
func (g *Glass) bent(f float64) float64 { return f / (1 + g.Diopter*f) }

// FocalTo returns the focal length of all the glass at t in metres, with the focus at x
// metres from the lens.
func (s *Shot) FocalTo(x, t float64) float64 {
	g := &s.Optics.Glass
	if g.Diopter > 0 { // the lens itself is set to elsewhere
		return g.bent(g.focusedAt(s.Focal(t), optics.CloseupSetting(x, g.Diopter)))
	}
	return g.bent(g.focusedAt(s.Focal(t), x))
}

// SensorTape returns the distance in metres from the sensor of what is x metres from the
// lens at t. It returns +Inf where no image forms.
func (s *Shot) SensorTape(x, t float64) float64 {
	return optics.ToSensorApart(x, s.FocalTo(x, t), s.Optics.Glass.Planes)
}

// FromSensor converts a distance from the sensor at t into the distance from the lens,
// both in metres. ok is false where the lens forms no image.
func (s *Shot) FromSensor(tape, t float64) (x float64, ok bool) {
	g, f := &s.Optics.Glass, s.Focal(t)
	set := tape // what the ring shows
	if g.Diopter > 0 && g.macro() {
		set = g.setBehind(f, tape)
	}
	return optics.FromSensorApart(tape, g.bent(g.focalAt(f, set)), g.Planes)
}

// setBehind returns the distance from the sensor that a macro lens shows where it is sharp
// at another one behind its close-up lens, both in metres; f is its focal length at
// infinity. The focal length hangs on what the ring shows, so it is found by halving, in
// 1/D. Beyond what it reaches the end of the ring is returned.
func (g *Glass) setBehind(f, tape float64) float64 {
	_, near := g.halve(func(shown float64) bool {
		at := g.focalAt(f, shown)
		x, ok := optics.FromSensorApart(shown, at, g.Planes)
		return ok && optics.ToSensorApart(optics.Closeup(x, g.Diopter), g.bent(at), g.Planes) > tape
	})
	return near
}

// RingTape returns the distance in metres from the sensor that the ring has to show, to
// focus at x metres from the lens at t. Behind a close-up lens or on a tube that is
// another one than the tape reads. It is NaN where no place of a ring can do it: beyond
// the farthest that glass or tube let the lens focus at.
func (s *Shot) RingTape(x, t float64) float64 {
	g, f := &s.Optics.Glass, s.Focal(t)
	if g.Diopter > 0 {
		x = optics.CloseupSetting(x, g.Diopter)
		if math.IsNaN(x) {
			return x
		}
		f = g.focusedAt(f, x)
		tape := optics.ToSensorApart(x, f, g.Planes)
		if g.Tube > 0 {
			return optics.TubeSetting(tape, f, g.Tube)
		}
		return tape
	}
	tape := s.SensorTape(x, t)
	if g.Tube > 0 {
		return optics.TubeSetting(tape, f, g.Tube)
	}
	return tape
}

// ringReaches is the inverse of RingTape: the distance from the lens at which it focuses
// with the ring at a distance of its marks. It returns NaN where no image forms.
func (s *Shot) ringReaches(tape, t float64) float64 {
	g, f := &s.Optics.Glass, s.Focal(t)
	f = g.focalAt(f, tape)
	x, ok := optics.FromSensorApart(tape, f, g.Planes)
	if !ok {
		return math.NaN()
	}
	if g.Tube > 0 {
		e := optics.Extension(f, x) + g.Tube
		x = f + f*f/e
	}
	if g.Diopter > 0 {
		return optics.Closeup(x, g.Diopter)
	}
	return x
}

// Farthest returns the farthest distance in metres from the lens that it can focus at: at
// infinity without a close-up lens and a tube.
func (s *Shot) Farthest(t float64) float64 { return s.ringReaches(math.Inf(1), t) }

// Closest returns the closest distance in metres from the lens that it can focus at, with
// its close-up lens and its tube. It returns NaN where no image forms there.
func (s *Shot) Closest(t float64) float64 { return s.ringReaches(s.Optics.Glass.Closest, t) }

// NearLoss returns the light lost with the focus at x metres from the lens at t, in stops
// against infinity: as measured, by the magnification, or by that of a lens that focuses
// as a unit.
func (s *Shot) NearLoss(x, t float64) float64 {
	g := &s.Optics.Glass
	set := s.Setting(t)
	switch {
	case g.Darkens.Known():
		return max(0, g.Darkens.At(s.RingTape(x, t)))
	case g.Ratio.Known():
		return optics.LightLost(max(0, g.Ratio.At(s.RingTape(x, t))), max(set.Pupil, 1e-9))
	case g.Diopter > 0: // it takes no light: what counts is how far the lens itself is out
		x = optics.CloseupSetting(x, g.Diopter)
	}
	set.Focal = g.focusedAt(s.Focal(t), x)
	return set.NearLoss(x)
}

// LossByUnit reports whether the light lost near is that of a lens that focuses as a
// unit, because nothing else is said of it.
func (o *Optics) LossByUnit() bool { return !o.Glass.Darkens.Known() && !o.Glass.Ratio.Known() }

// Grown returns how much larger the image is with the focus at x metres from the lens than
// at infinity, in percent, where that is said for distances; NaN where it is not.
func (s *Shot) Grown(x, t float64) float64 {
	if g := &s.Optics.Glass; g.Breathing.Known() {
		return g.Breathing.At(s.SensorTape(x, t))
	}
	return math.NaN()
}
