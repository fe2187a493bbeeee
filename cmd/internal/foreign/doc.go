// Package foreign turns files that other programs write about a camera and a lens
// into statements of a kit: OpenTrackIO samples, and ASC framing decision lists
// for the sensor alone.
//
// Nothing is guessed. Every statement has a comment that names its field. What
// the file does not say is a comment in place of the statement, and says how to
// get the value.
//
//   - read.go: which form a file has
//   - foreign.go: a kit as it is written, line by line
//   - track.go: what samples say, gathered in memory that does not grow
//   - camera.go: the statements of a camera
//   - lens.go: the statements of a lens
//   - places.go: the positions of the ring and their distances: joined, put in order
//   - thin.go: as many of them as a kit can use
//   - framing.go: a framing decision list
//   - settle.go: statements that the language refuses become comments
package foreign
