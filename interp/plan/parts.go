// What the plan has from packages below it.

package plan

import (
	"pullscore/interp/plan/exposure"
	"pullscore/interp/plan/figure"
	"pullscore/interp/plan/lens"
	"pullscore/interp/plan/motion"
	"pullscore/interp/plan/record"
)

// Numbers that can be missing are of package figure, what a cut shows of package record.
type (
	// Number is a figure of the plan; NaN means that it does not apply.
	Number = figure.Number
	// Interval is a pair of Numbers, the lower first.
	Interval = figure.Interval
	// Piece is an event of the cut that shows a part of a shot.
	Piece = record.Piece
	// Stretch is a stretch of shot time, in seconds.
	Stretch = record.Stretch
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

// None returns the Number that means "does not apply".
func None() Number { return figure.None() }

// NoInterval returns the Interval that means "does not apply".
func NoInterval() Interval { return figure.NoInterval() }

// Shown returns the stretches of the shot that its pieces show, in their order; those
// that touch are one.
func Shown(pieces []Piece) []Stretch { return record.Shown(pieces) }

// ShowAll reports whether pieces show all of a stretch of shot time, in seconds.
func ShowAll(pieces []Piece, from, to float64) bool { return record.ShowAll(pieces, from, to) }
