// Facts of the trade that the model has to reproduce on concrete kits. They are
// common practice; no source is known.

package interp_test

import (
	"fmt"
	"testing"

	"pullscore/interp"
	"pullscore/interp/plan"
	"pullscore/interp/viewer"
)

// tradeKit is a cinema film on a large and a small sensor with three lenses.
const tradeKit = `
watched on 12 m screen from 18 m
camera large
  sensor 36 x 24 mm
camera small
  sensor 13.2 x 8.8 mm
lens "modern 85"
  focal 85 mm
  stops f/1.4 to f/16
  closest 85 cm
  ring %d deg, diameter 76 mm
lens "old 85"
  focal 85 mm
  stops f/2 to f/22
  closest 1 m
  ring 250 deg, diameter 70 mm
lens "normal"
  focal 50 mm
  stops f/1.4 to f/16
  closest 45 cm
  ring 90 deg, diameter 66 mm
lens "normal small"
  focal 18 mm
  stops f/1.4 to f/16
  closest 25 cm
  ring 90 deg, diameter 66 mm
subject NEAR at 1.5 m
subject FAR at 4 m
subject CLOSE at 1.7 m
subject BACK at 3 m
`

// rackIn interprets one rack and returns it; the rack is given a second and a
// half, a usual length.
func rackIn(t *testing.T, throw int, with, from, to string) *plan.Pull {
	t.Helper()
	text := fmt.Sprintf(tradeKit, throw) + fmt.Sprintf("shot 1\n  with %s\n  start on %s\n  rack to %s, landing on 3 s, over 1.5 s\n", with, from, to)
	res := interp.Interpret("trade.pull", []byte(text), interp.Options{})
	if len(res.Plan.Shots) != 1 || len(res.Plan.Shots[0].Pulls) != 1 {
		t.Fatalf("no pull: %v", res.Findings)
	}
	return res.Plan.Shots[0].Pulls[0]
}

// Common practice, no source: a current stills prime of 85 mm with 70 to 90
// degrees of ring cannot be landed reliably wide open, whichever way it goes.
func TestModernPrimeWideOpen(t *testing.T) {
	for _, throw := range []int{70, 80, 90} {
		for _, way := range [][2]string{{"NEAR", "FAR"}, {"FAR", "NEAR"}} {
			p := rackIn(t, throw, `camera large, lens "modern 85", stop f/1.4`, way[0], way[1])
			t.Logf("%d deg, %s to %s: %.2f, ceiling %.2f", throw, way[0], way[1], p.Chance, p.Ceiling)
			if p.Ceiling >= 0.9 {
				t.Errorf("%d deg, %s to %s: lands with %.2f at best, reliably", throw, way[0], way[1], p.Ceiling)
			}
		}
	}
}

// Common practice, no source: at f/2.8 that lens is workable, but not sure.
func TestModernPrimeWorkable(t *testing.T) {
	worst := 1.0
	for _, throw := range []int{70, 80, 90} {
		for _, way := range [][2]string{{"NEAR", "FAR"}, {"FAR", "NEAR"}} {
			p := rackIn(t, throw, `camera large, lens "modern 85", stop f/2.8`, way[0], way[1])
			t.Logf("%d deg, %s to %s: %.2f", throw, way[0], way[1], p.Chance)
			worst = min(worst, float64(p.Chance))
		}
	}
	if worst < 0.5 || worst >= 0.95 {
		t.Errorf("the worst of them lands with %.2f: workable is above one half, and sure is not to be had", worst)
	}
}

// Common practice, no source: an older prime with a long throw is safe at f/2.8.
func TestOldPrimeSafe(t *testing.T) {
	for _, way := range [][2]string{{"NEAR", "FAR"}, {"FAR", "NEAR"}} {
		p := rackIn(t, 90, `camera large, lens "old 85", stop f/2.8`, way[0], way[1])
		t.Logf("%s to %s: %.3f", way[0], way[1], p.Chance)
		if p.Chance < 0.97 {
			t.Errorf("%s to %s lands with %.2f only", way[0], way[1], p.Chance)
		}
	}
}

// stopsShowing is the last full stop at which a rack is seen.
func stopsShowing(t *testing.T, camera, lens string) float64 {
	last := 0.0
	for _, n := range []float64{1.4, 2, 2.8, 4, 5.6, 8, 11, 16} {
		p := rackIn(t, 90, fmt.Sprintf("camera %s, lens %q, stop f/%g", camera, lens, n), "CLOSE", "BACK")
		if p.LeftBlur > viewer.Seen {
			last = n
		}
	}
	return last
}

// Common practice, no source: with a normal lens, from 1.7 to 3 m, the rack
// stops showing between f/5.6 and f/11, and sooner on a smaller sensor.
func TestWhereARackStopsShowing(t *testing.T) {
	large := stopsShowing(t, "large", "normal")
	small := stopsShowing(t, "small", "normal small")
	t.Logf("last seen at f/%g on the large sensor, f/%g on the small one", large, small)
	if large < 5.6 || large > 11 {
		t.Errorf("on the large sensor it is last seen at f/%g", large)
	}
	if small >= large {
		t.Errorf("it shows as long on the small sensor (f/%g) as on the large (f/%g)", small, large)
	}
}
