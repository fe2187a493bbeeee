// Package lines draws the band of lines of a score: who speaks, what happens, and the words
// that the moves hang on.
//
//   - lines.go: the band of lines, cues and actions
//   - setting.go: the words of a row, each utterance on a lane
//   - alone.go: the band of the hand on sheets of its own, with those words
package lines
