// Package clock works out when everything in a shot happens.
//
// clock.go takes the statements in turn and can be asked ahead; anchor.go finds
// the moment that a word, a speaker or a cue stands for, said.go where a phrase
// stands in the lines; pulls.go times racks and follows, movements.go the moves
// of people, camera and zoom; heard.go asks the cut before the plan. Times are
// seconds from the shot's start.
package clock
