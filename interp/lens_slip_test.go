package interp_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pullscore/interp"
	"pullscore/lang"
)

// Of a ring that slips the list, the score and the finding tell one window; the end of a
// ring that holds is told as open.
func TestWindowOfARingThatSlips(t *testing.T) {
	const text = `plan "Slips"
rate 24
watched on 12 m screen from 18 m
subject FAR at 3 m
camera A
  sensor 24.89 x 14 mm
lens "50"
  focal 50 mm
  stops f/1.8 to f/22
  closest 45 cm
  ring 300 deg, diameter 110 mm
  ends HOW
shot 1
  with camera A, lens "50", stop f/1.8
  start on FAR
  pause 1 s
  rack to inf, over 0.2 s, because "it rings"
  hold 2 s
`
	for _, how := range []string{"slip", "hard"} {
		res := interp.Interpret("plan.pull", []byte(strings.Replace(text, "HOW", how, 1)), interp.Options{})
		p := res.Plan.Shots[0].Pulls[0]
		window, asks := float64(p.WindowHand[1]-p.WindowHand[0]), p.Asks.Hi-p.Asks.Lo
		if how == "hard" {
			if !p.OpenFar || !math.IsInf(asks, 1) {
				t.Errorf("%s: the window is %g and open far: %v", how, asks, p.OpenFar)
			}
			continue
		}
		if p.OpenFar || math.Abs(window-asks) > 1e-9 || !(window > 0) {
			t.Errorf("%s: the window is %g in the list and %g for the hand", how, window, asks)
		}
		if middle := float64(p.WindowHand[0]+p.WindowHand[1]) / 2; math.Abs(middle-float64(p.ToDeg)) > 1e-6 {
			t.Errorf("%s: the mark at %g is not the middle of the window, %g", how, float64(p.ToDeg), middle)
		}
		told := false
		for _, d := range res.Findings {
			told = told || strings.HasPrefix(d.Detail, fmt.Sprintf("Window %.1f", window)) && d.Severity != lang.Note
		}
		if !told {
			t.Errorf("%s: no finding tells the window of %.1f deg: %v", how, window, res.Findings)
		}
	}
}
