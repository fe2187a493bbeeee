// Package edited has the checks that compare a shot with the cut that it follows.
//
// edit.go tells of shots, cues and lines that the cut has otherwise or lacks, takes.go of
// the clips and takes that show a shot, removed.go of moves that the cut leaves out or
// jumps in, trimmed.go of moves that it cuts into, unscripted.go of racks inside a
// sentence of a talk that nobody wrote.
package edited

import "pullscore/interp/checks/check"

// An edited is a shot as these checks see it.
type edited struct{ *check.Shot }
