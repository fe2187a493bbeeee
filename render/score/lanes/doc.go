// Package lanes draws what a camera does that turns or leaves its axis against time, for
// the score of a shot and for the difference of two.
//
//   - lanes.go: the ways in which a camera turns and goes, as curves
//   - place.go: a lane on a sheet
package lanes
