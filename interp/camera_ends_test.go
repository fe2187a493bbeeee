package interp_test

import (
	"strings"
	"testing"
)

// The end of a camera move by its word, and by a name that wins over it.
func TestEndOfCameraMoves(t *testing.T) {
	const moves = "pan left 5 deg over 2 s, on 1 s\ntilt up 3 deg over 1 s, on 4 s\nboom up 10 cm over 1 s, on 6 s\ntrack left 10 cm over 1 s, on 8 s\npush in 10 cm over 1 s, on 10 s\n"
	for word, want := range map[string]float64{"pan": 3, "tilt": 5, "boom": 7, "track": 9, "push": 11, "dolly": 11} {
		p := theShot(t, moves+"rack to LAMP, on end of "+word+", over 1 s").Pulls[0]
		if !near(p.Start, want) {
			t.Errorf("end of %s is at %.3f s, not %.3f s", word, p.Start, want)
		}
	}
	voice := strings.Replace(scene(moves+"pan: \"One two.\", from 14 s to 15 s\nrack to LAMP, on end of pan, over 1 s"), "voice OTTO", "voice pan", 1)
	res := interpret("plan.pull", voice)
	if n := countErrors(res.Findings); n > 0 {
		t.Fatalf("%d errors: %v", n, res.Findings)
	}
	if p := res.Plan.Shots[0].Pulls[0]; !near(p.Start, 15) {
		t.Errorf("the voice pan ends at %.3f s, not 15 s", p.Start)
	}
}
