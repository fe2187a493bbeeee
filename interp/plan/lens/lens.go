// Package lens says what the glass of a lens does beside focusing: shortening, close-up
// lenses and tubes, squeeze, breathing, and light lost near. Focal lengths and distances
// are in metres; a focal length f is that of the lens itself at infinity.
package lens

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

// Macro reports whether the lens shortens its focal length near.
func (g *Glass) Macro() bool { return g.MacroNear > 0 }

// focalAt returns the focal length in metres, f at infinity, with the focus at a distance
// from the sensor. Nearer than its closest focus the lens cannot go.
func (g *Glass) focalAt(f, tape float64) float64 {
	if !g.Macro() {
		return f
	}
	return f + (g.MacroNear-f)*min(1, optics.Nearness(max(tape, g.Closest), g.Closest, g.Origin))
}

// focusedAt returns the focal length in metres, f at infinity, with the focus at x metres
// from the lens. The tape that belongs to x hangs on the focal length, and the focal
// length on the tape: the tape is found by halving, in 1/D, because x rises with it.
func (g *Glass) focusedAt(f, x float64) float64 {
	if !g.Macro() || math.IsInf(x, 1) || math.IsNaN(x) {
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

// FocalTo returns the focal length of all the glass in metres, f that of the lens at
// infinity, with the focus at x metres from it.
func (g *Glass) FocalTo(f, x float64) float64 {
	if g.Diopter > 0 { // the lens itself is set to elsewhere
		return g.bent(g.focusedAt(f, optics.CloseupSetting(x, g.Diopter)))
	}
	return g.bent(g.focusedAt(f, x))
}

// SensorTape returns the distance in metres from the sensor of what is x metres from the
// lens. It returns +Inf where no image forms.
func (g *Glass) SensorTape(f, x float64) float64 {
	return optics.ToSensorApart(x, g.FocalTo(f, x), g.Planes)
}

// FromSensor converts a distance from the sensor into the distance from the lens, both in
// metres. ok is false where the lens forms no image.
func (g *Glass) FromSensor(f, tape float64) (x float64, ok bool) {
	set := tape // what the ring shows
	if g.Diopter > 0 && g.Macro() {
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
// focus at x metres from the lens. Behind a close-up lens or on a tube that is
// another one than the tape reads. It is NaN where no place of a ring can do it: beyond
// the farthest that glass or tube let the lens focus at.
func (g *Glass) RingTape(f, x float64) float64 {
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
	tape := g.SensorTape(f, x)
	if g.Tube > 0 {
		return optics.TubeSetting(tape, f, g.Tube)
	}
	return tape
}

// Reaches is the inverse of RingTape: the distance from the lens at which it focuses
// with the ring at a distance of its marks. It returns NaN where no image forms.
func (g *Glass) Reaches(f, tape float64) float64 {
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

// NearLoss returns the light lost with the focus at x metres from a lens that is set so,
// in stops against infinity: as measured, by the magnification, or by that of a lens that
// focuses as a unit.
func (g *Glass) NearLoss(set optics.Setting, f, x float64) float64 {
	switch {
	case g.Darkens.Known():
		return max(0, g.Darkens.At(g.RingTape(f, x)))
	case g.Ratio.Known():
		return optics.LightLost(max(0, g.Ratio.At(g.RingTape(f, x))), max(set.Pupil, 1e-9))
	case g.Diopter > 0: // it takes no light: what counts is how far the lens itself is out
		x = optics.CloseupSetting(x, g.Diopter)
	}
	set.Focal = g.focusedAt(f, x)
	return set.NearLoss(x)
}
