// Package ring draws what is cut out and taped on, 1:1: the tape for the focus ring and
// the marking discs for the hand wheel, with the table of their marks. Package page makes
// its pages, package beside places labels at lines.
//
//   - ring.go: the sheet and its two parts, and what is said where something is missing
//   - words.go: what the sheet says beside its drawings
//   - strip.go: where the marks of the tape lie, how much it covers, where it is cut
//   - strip_labels.go: the names on the tape
//   - strip_draw.go: the pieces of tape
//   - stretch.go: free stretches along a tape
//   - disc.go: the discs
//   - disc_place.go: places for what is written on a disc
//   - disc_draw.go: a disc with its marks and names
//   - disc_thumbs.go: where the thumb takes hold
//   - sides.go: the two lines of a mark on a ring with play
//   - rows.go: the rows of the table
package ring
