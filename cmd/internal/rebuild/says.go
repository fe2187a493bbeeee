// What a change did to the numbers, in words.

package rebuild

import "pullscore/cmd/internal/difference"

// says tells what is different in the numbers of two readings of a plan that
// have no errors; nothing while the later one has some.
func says(before, after *Plan) []string {
	if before.Good == nil || after.Good == nil || after.Good != after.Latest {
		return nil
	}
	d := difference.Compare(
		difference.State{Plan: before.Good, Findings: before.GoodFindings},
		difference.State{Plan: after.Good, Findings: after.GoodFindings},
	)
	return d.Lines()
}
