// Package cards draws the two papers of a shot that people fill in or hold in the hand:
// the tolerance card, which says how far everybody may miss their mark, and the log of
// takes.
//
//   - tolerance.go: the tolerance card
//   - marks.go: the marks of a shot that somebody can miss
//   - bar.go: how far the sharpness goes, as bars
//   - columns.go: the words and numbers of a row, and how wide they are
//   - watch.go: who is the one to watch, in sentences
//   - log.go: the log of takes
//   - logged.go: which pulls have a column in it, and what stands above each
package cards
