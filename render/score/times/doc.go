// Package times divides time for a score: its scale, the windows of a long shot, and the
// steps of its rulers.
//
//   - times.go: the scale, and where a long shot is cut
//   - screen.go: both for a screen in place of paper
//   - axis.go: the axis of time, with what the cut has taken out narrowed
//   - distances.go: the round distances of a scale
package times
