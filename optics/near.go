// Lenses near the subject: how much light they lose, how macro lenses focus, close-up
// lenses and extension tubes.
//
// What changes with distance inside a lens is mostly even in 1/(D-c), as the turn of its
// ring is (see optics/ring): D is the distance from the sensor and c a little more than
// twice the focal length, about where such a lens would have to stand to be infinitely far
// out. Nearness is that coordinate, as a part of its value at a distance that is known.

package optics

import "math"

// Origin returns c in metres, from which the coordinate of a lens counts: min(2f, D0/2).
// f is its shortest focal length and D0 its closest distance from the sensor, in metres.
func Origin(f, closest float64) float64 { return min(2*f, closest/2) }

// Nearness returns how near a distance is, as a part of a known distance in the coordinate
// 1/(D-c): 1 at the known distance, 0 at infinity, above 1 nearer than that. All three are
// in metres from the sensor, and both distances above the origin c; either may be +Inf.
func Nearness(distance, known, origin float64) float64 {
	switch {
	case math.IsInf(distance, 1):
		return 0
	case math.IsInf(known, 1):
		return math.Inf(1)
	}
	return (known - origin) / (distance - origin)
}

// LightLost returns the stops that a lens loses at magnification m against infinity:
// 2 log2(1 + m/p), p the pupil ratio. It follows from the effective f-number N (1 + m/p)
// (Ray, from memory; P. van Walree, Derivation of the DOF equations, read).
func LightLost(m, pupil float64) float64 { return 2 * math.Log2(1+m/pupil) }

// MacroFocal returns the focal length in metres of the thin lens that has magnification m
// with the sensor D metres away: D / (2 + m + 1/m). A macro lens that focuses nearer than
// four of its focal lengths has shortened its focal length to about that.
func MacroFocal(distance, m float64) float64 { return distance / (2 + m + 1/m) }

// MacroFocalAt returns the focal length in metres that a macro lens has at a distance from
// the sensor: f at infinity and MacroFocal, at most f, at its closest distance, even in
// 1/(D-c) between them. m is its magnification at the closest distance.
func MacroFocalAt(distance, f, closest, m float64) float64 {
	near := min(f, MacroFocal(closest, m))
	return f + (near-f)*Nearness(distance, closest, Origin(f, closest))
}

// Closeup returns the distance in metres at which a lens set to x is sharp behind a
// close-up lens of that power in 1/m: x / (1 + power x), and 1/power at infinity. Both
// distances are from the close-up lens, taken as touching the front principal plane. The
// lenses are thin: 1/f' = 1/f + power (Kingslake, Optics in Photography, 1992, from
// memory).
func Closeup(x, power float64) float64 {
	if math.IsInf(x, 1) {
		return 1 / power
	}
	return x / (1 + power*x)
}

// CloseupSetting returns the x in metres to which a lens must be set, to be sharp at d
// metres behind a close-up lens of that power in 1/m. It is +Inf at 1/power, and NaN
// beyond, where no setting is sharp. It is the inverse of Closeup.
func CloseupSetting(d, power float64) float64 {
	left := 1 - power*d
	switch {
	case math.IsInf(d, 1) && power > 0, left < -1e-12:
		return math.NaN()
	case math.IsInf(d, 1) || left <= 1e-12 && power > 0:
		return math.Inf(1)
	}
	return d / left
}

// Behind returns the setting behind a close-up lens of that power in 1/m: both focal
// length and f-number are those of the two lenses together, f / (1 + power f) and
// N / (1 + power f). No light is lost.
func (s Setting) Behind(power float64) Setting {
	k := 1 + power*s.Focal
	s.Focal, s.Number = s.Focal/k, s.Number/k
	return s
}

// TubeSetting returns the distance that a ring must show for a subject D metres from the
// sensor with an extension tube of t metres: 2f + f^2/e + e, where the lens itself has
// moved out by e = f^2/(x-f) - t. It is +Inf where the tube alone focuses on the subject,
// and NaN for a subject farther than that or nearer than 4f. Like TubeRange it is exact
// for a lens that moves as a unit.
func TubeSetting(distance, f, t float64) float64 {
	x, ok := FromSensor(distance, f)
	if !ok {
		return math.NaN()
	}
	e := Extension(f, x) - t
	switch {
	case e < -1e-12:
		return math.NaN()
	case e <= 1e-12:
		return math.Inf(1)
	}
	return 2*f + f*f/e + e
}

// TubeRange returns the nearest and the farthest distance in metres from the sensor that a
// lens focuses at with an extension tube of t metres; closest is its closest distance
// without. It returns NaN where the lens forms no image, also nearer than its focal length
// with the tube.
func TubeRange(f, closest, t float64) (near, far float64) {
	x, ok := FromSensor(closest, f)
	if !ok {
		return math.NaN(), math.NaN()
	}
	e := Extension(f, x) + t
	far = math.Inf(1)
	if t > 0 {
		far = 2*f + f*f/t + t
	}
	return 2*f + f*f/e + e, far
}
