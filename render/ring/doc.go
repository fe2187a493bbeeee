// Package ring draws what is cut out and taped on, 1:1: the tape for the focus
// ring and the disc for the hand wheel.
//
//   - strip.go: the tape, and what both papers say in words
//   - strip_lay.go: where marks lie, where the tape is cut, in which rows
//     names stand
//   - strip_draw.go: the pieces of tape
//   - dial.go: the disc
//   - dial_names.go: which names have room on the disc
//   - dial_draw.go: the disc with its marks and names
//   - dial_thumbs.go: where the thumb takes hold
//   - sides.go: the two lines of a mark on a ring with play
package ring
