// Package unplanned reads what a recorded focus curve did where no plan says what it
// was to do: which moves it made, and what was being said meanwhile.
//
//   - moves.go: the moves of a curve
//   - words.go: what is said, sentence by sentence; turns.go who says it
//   - place.go: which clips of a cut show a recording
//   - account.go: each move with its times in the cut and the words about it
package unplanned
