// What a change did to the numbers, in words.

package rebuild

import "pullscore/cmd/internal/diff"

// says tells what is different in the numbers of two readings of a plan that
// have no errors; nothing while the later one has some.
func says(before, after *Plan) []string {
	if before.Good == nil || after.Good == nil || after.Good != after.Latest {
		return nil
	}
	d := diff.Compare(
		diff.State{Plan: before.Good, Findings: before.GoodFindings},
		diff.State{Plan: after.Good, Findings: after.GoodFindings},
	)
	return d.Saved()
}
