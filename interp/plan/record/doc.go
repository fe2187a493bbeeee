// Package record leads between the time of a shot, the source and the record of a cut.
//
//   - piece.go: an event of the cut that shows a part of a shot
//   - shown.go: what of a shot is shown at all
package record
