// Package clock works out when everything in a shot happens.
//
// clock.go takes the statements in turn, and says how that is done and why;
// lines.go times spoken lines, cues.go named moments, movements.go who and what
// moves, camera.go what moves of the camera say, pulls.go racks and follows. anchor.go finds the moment that a word, a
// speaker or a cue stands for: words.go the words, said.go where all words of a
// shot are, ends.go when a line, a move, an action or a rack is over. heard.go asks
// the cut before the plan, away.go says what it has taken away. written.go gives the times to the plan. Times are
// seconds from the shot's start.
package clock
