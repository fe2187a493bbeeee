package away

import "pullscore/interp/clock"

// mostRuns bounds how often a shot is built to find what is to be shifted in it.
const mostRuns = 12

// Shifts returns by how many seconds each run of lines that the cut does not have is to be
// shifted. What is behind a run can be told only once that is shifted: build returns the
// clock of the shot with some shifts; nil where it has none.
func Shifts(build func(by map[int]float64) *clock.Clock) map[int]float64 {
	by := map[int]float64{}
	for n := range mostRuns {
		c := build(by)
		if c == nil {
			break
		}
		runs, seconds := c.Runs()
		for i, run := range runs {
			if i == 0 || n == mostRuns-1 {
				by[run] = seconds[i]
			}
		}
		if len(runs) < 2 {
			break
		}
	}
	return by
}
