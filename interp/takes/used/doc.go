// Package used lays a log of takes beside a cut: which take the cut uses of every rack,
// and how that take landed.
//
//   - used.go: the report, rack by rack
//   - match.go: whether a row of the log is of the take that a piece shows
//   - words.go: a rack in words
//   - others.go: the other takes of a rack that landed
package used
