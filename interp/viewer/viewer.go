// Package viewer models the eye of the audience: how much blur it sees, and how long
// it needs to find what comes into focus. Angles are in arc minutes or degrees at the
// eye, times in seconds.
package viewer

import "math"

const (
	// Sharp is the widest disc that looks sharp, in arc minutes: the disc that
	// equals the eye's own blur. The standard deviation of a uniform disc along an
	// axis is a quarter of its diameter; that of the blur of the fovea is 0.5 (Levi
	// & Klein 1990, Vision Res 30(12), 1971-1993). Sharp is twice the gap that normal
	// sight resolves.
	Sharp = 4 * intrinsicBlur

	// Seen is the disc above which people notice the blur as such, in arc minutes.
	// It is half-way between the discs that people just notice through a pupil of
	// 3 mm and of 6 mm (Atchison et al. 2005, Vision Res 45(15), 1967-1974; see
	// DefocusDisc). Between Sharp and Seen, blur is faint.
	Seen = 4.6

	intrinsicBlur = 0.5 // standard deviation, arc minutes

	// Latency is the time before the eye jumps, in seconds (180 to 200 ms is
	// typical of saccades).
	Latency = 0.2

	// Fixation is the time that the eye must then rest on a thing to see it, in
	// seconds. Our own choice, not from literature.
	Fixation = 0.3

	// Cut is the time below which a rack looks like a cut, in seconds. Common
	// practice, no source.
	Cut = 0.2

	// ArcminPerRadian is the number of arc minutes in a radian.
	ArcminPerRadian = 60 * 180 / math.Pi
)

// FaintFrom returns the blur by defocus from which a thing looks faintly soft, in arc
// minutes. Diffraction blurs the whole picture by a disc of the given arc minutes.
// The eye's own blur and that of diffraction add up as squares. Diffraction never
// makes a blur easier to see.
func FaintFrom(diffraction float64) float64 { return math.Hypot(Sharp, diffraction) }

// SeenFrom returns the blur by defocus from which people notice it, in arc minutes. It
// is in proportion to FaintFrom, and takes the same diffraction.
func SeenFrom(diffraction float64) float64 {
	return Seen / Sharp * math.Hypot(Sharp, diffraction)
}

// DefocusDisc returns the disc, in arc minutes, that a point makes in an eye that is
// out of focus by the given dioptres. The width of the pupil is in metres.
func DefocusDisc(pupil, dioptres float64) float64 {
	return pupil * dioptres * ArcminPerRadian
}

// SaccadeTime returns the time that the eye needs to jump over an angle in degrees, in
// seconds: 21 ms plus 2.2 ms a degree (Carpenter 1988, Movements of the Eyes).
func SaccadeTime(degrees float64) float64 {
	return 0.021 + 0.0022*math.Abs(degrees)
}

// EyeNeeds returns how long a thing must stay sharp after the landing so that the eye
// can see it, in seconds: latency, jump and fixation. The thing is screenDegrees away
// from what was sharp before.
func EyeNeeds(screenDegrees float64) float64 {
	return Latency + SaccadeTime(screenDegrees) + Fixation
}
