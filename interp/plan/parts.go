// What the plan has from packages below it.

package plan

import (
	"pullscore/interp/plan/exposure"
	"pullscore/interp/plan/lens"
	"pullscore/interp/plan/motion"
)

// Where things are over time is of package motion.
type (
	// Track is a value over time.
	Track = motion.Track
	// Spot is a position, alone or from a track.
	Spot = motion.Spot
	// Step takes a track to another spot.
	Step = motion.Step
	// Pose is where the camera is and where it looks.
	Pose = motion.Pose
	// View is where a point is as the lens sees it.
	View = motion.View
)

// What is on a lens, its stops and their light are of packages lens and exposure.
type (
	// Glass is what a lens and what is on it do beside focusing.
	Glass = lens.Glass
	// StopsAt holds the stops of a lens at a focal length.
	StopsAt = exposure.Stops
	// Scale is the stops of a lens over its focal lengths.
	Scale = exposure.Scale
	// Spoken is the scale of stops that a shot speaks.
	Spoken = exposure.Spoken
	// Light holds the light of a shot and the settings that can change it.
	Light = exposure.Light
	// Loss is the light lost where the focus rests.
	Loss = exposure.Loss
)

// Still returns a track that stays at v.
func Still(v float64) *Track { return motion.Still(v) }

// Sorted sorts times and leaves out those that come again.
func Sorted(times []float64) []float64 { return motion.Sorted(times) }

// Ease returns the share of a move that is done after the share u of its time.
func Ease(u float64, smooth bool) float64 { return motion.Ease(u, smooth) }

// Wrapped returns an angle as the shortest turn: over -180 and up to 180 degrees.
func Wrapped(deg float64) float64 { return motion.Wrapped(deg) }
