package takes

import (
	"strings"
	"testing"

	"pullscore/interp/plan"
	"pullscore/interp/takes/predicted"
	"pullscore/render/draw"
	"pullscore/render/sheet"
	"pullscore/render/testing/drawtest"
)

// reportOf is a report with a band for every pair of hits and takes.
func reportOf(title string, pairs ...[2]int) *predicted.Report {
	r := &predicted.Report{Plan: title}
	for i, pair := range pairs {
		from := float64(i) / float64(len(pairs))
		said, rate := from+0.5/float64(len(pairs)), float64(pair[0])/float64(pair[1])
		r.Bands = append(r.Bands, predicted.Band{
			From: plan.Number(from), To: plan.Number(from + 1/float64(len(pairs))), Hits: pair[0], Takes: pair[1], Said: plan.Number(said),
			Rate: plan.Number(rate), Interval: plan.Interval{plan.Number(max(rate-0.2, 0)), plan.Number(min(rate+0.2, 1))},
		})
		r.All.Takes += pair[1]
	}
	return r
}

func TestCalibrationIsDrawnWithoutFaults(t *testing.T) {
	tests := map[string]*predicted.Report{
		"no takes":    reportOf(""),
		"one band":    reportOf("Pier", [2]int{3, 4}),
		"all bands":   reportOf("Pier", [2]int{0, 9}, [2]int{9, 9}, [2]int{1, 9}, [2]int{3, 9}, [2]int{900, 9000}, [2]int{5, 9}, [2]int{0, 1}, [2]int{8, 9}, [2]int{8, 9}, [2]int{8, 9}, [2]int{8, 9}, [2]int{9, 9}),
		"a long name": reportOf(strings.Repeat("Pier ", 60), [2]int{3, 4}),
	}
	for name, r := range tests {
		for _, paper := range []sheet.Paper{sheet.A4, sheet.Letter} {
			for _, page := range Calibration(r, sheet.Options{Paper: paper}) {
				for _, check := range []func(*draw.Page) []string{drawtest.Strict, drawtest.Signs, drawtest.Units} {
					for _, f := range check(page) {
						t.Errorf("%s: %s", name, f)
					}
				}
				if text := takesSVG(t, page); strings.Contains(text, "NaN") || strings.Contains(text, "Inf") {
					t.Errorf("%s: holds a number that is none", name)
				}
			}
		}
	}
}
