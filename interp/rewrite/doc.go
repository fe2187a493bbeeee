// Package rewrite writes a change of one shot into the files of its plan, as edits. It
// changes that shot alone: where the place to be edited belongs to other shots too, it
// writes into the shot what differs there, or nothing if a shot cannot say it.
//
// rewrite.go is what others call, and writes the set-up; statements.go writes what the
// statements of the shot say otherwise, and kit.go what cameras and lenses do.
package rewrite
