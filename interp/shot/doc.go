// Package shot builds one shot: from the statements of its section to a value
// that checks and drawings read, and that nobody writes to afterwards.
//
// build.go goes from one end to the other; builder.go takes what the shot says
// itself, resolve.go looks at a shot that cannot
// be computed and at what no shot says, in_cut.go what
// the cut shows of it, clips.go which clips show it. pull.go ties
// the racks and follows to one another; figures.go fills in their numbers,
// landing.go what they ask of the hand, band.go how far their chances hang on it,
// follow.go how far a hand is behind somebody who moves, rest.go how often somebody who
// sways is sharp, light.go what light is lost near the lens, glass.go what is on the lens
// and between hand and ring, miss.go how far somebody may be from the mark, places.go
// where everyone stands, turns.go how the camera turns, ring.go how well the ring is known, unknown.go what holds where
// nothing is. questions.go is what checks ask of a built shot.
package shot
