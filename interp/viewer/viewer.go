// Package viewer is the eye in the audience: how much blur it sees, and how
// long it takes to get to what comes into focus. Angles are in arc minutes or
// degrees at the eye, times in seconds.
package viewer

import "math"

const (
	// Sharp is the widest disc that looks sharp, arc minutes: the disc that
	// equals the eye's own blur. A uniform disc spreads a quarter of its
	// diameter along an axis, and the fovea blurs by a standard deviation of
	// 0.5 (Levi & Klein 1990, Vision Res 30(12), 1971-1993). It is twice the
	// gap that normal sight resolves.
	Sharp = 4 * intrinsicBlur

	// Seen is the disc above which blur is noticed for what it is, arc
	// minutes: half-way between those that are just noticed through a pupil
	// of 3 mm and of 6 mm (Atchison et al. 2005, Vision Res 45(15),
	// 1967-1974; see DefocusDisc). From Sharp to Seen blur is faint.
	Seen = 4.6

	intrinsicBlur = 0.5 // standard deviation, arc minutes

	// Latency is the time before the eye jumps, seconds (180 to 200 ms is
	// typical of saccades).
	Latency = 0.2

	// Fixation is the time that the eye must then rest on a thing to have
	// seen it, seconds. The landing model's own, not literature.
	Fixation = 0.3

	// Cut is the time below which a rack reads as a cut, seconds. Common
	// practice, no source.
	Cut = 0.2

	// ArcminPerRadian turns radians into arc minutes.
	ArcminPerRadian = 60 * 180 / math.Pi
)

// FaintFrom and SeenFrom return the blur by defocus, arc minutes, from which a thing
// is faintly soft and from which that shows, where diffraction blurs all of the
// picture by a disc of that many arc minutes. The eye's own blur and that of
// diffraction add up as squares, and what is seen on top of them stays in
// proportion; so diffraction never makes a blur easier to see.
func FaintFrom(diffraction float64) float64 { return math.Hypot(Sharp, diffraction) }
func SeenFrom(diffraction float64) float64 {
	return Seen / Sharp * math.Hypot(Sharp, diffraction)
}

// DefocusDisc returns the disc, in arc minutes, that a point makes in an eye
// with a pupil of that many metres that is out of focus by that many dioptres.
func DefocusDisc(pupil, dioptres float64) float64 {
	return pupil * dioptres * ArcminPerRadian
}

// SaccadeTime returns how long a jump of the eye over an angle in degrees
// takes, seconds: 21 ms and 2.2 ms a degree (Carpenter 1988, Movements of the
// Eyes).
func SaccadeTime(degrees float64) float64 {
	return 0.021 + 0.0022*math.Abs(degrees)
}

// EyeNeeds returns how long a thing must stay sharp after the landing for the
// eye to have seen it, seconds, where it is screenDegrees away from what was
// sharp before: latency, jump and fixation.
func EyeNeeds(screenDegrees float64) float64 {
	return Latency + SaccadeTime(screenDegrees) + Fixation
}
