// Package clock works out when everything in a shot happens. Times are seconds from the
// shot's start.
//
//   - clock.go: the statements in turn; it says how that is done and why
//   - lines.go: the times of spoken lines
//   - cues.go: named moments
//   - movements.go: who and what moves
//   - camera.go: what moves of the camera say
//   - pulls.go: racks and follows
//   - anchor.go: the moment that a word, a speaker or a cue stands for
//   - words.go: words, as package spoken finds them
//   - ends.go: when a line, a move, an action or a rack is over
//   - heard.go: what the cut says, which is asked before the plan
//   - given.go: times that a scene gives
//   - away.go: what the cut has taken away
//   - written.go: the times as the plan has them
package clock
