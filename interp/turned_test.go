package interp_test

import (
	"math"
	"path/filepath"
	"testing"

	"pullscore/interp"
	"pullscore/interp/load"
	"pullscore/interp/plan"
)

// Hand and focus are one curve: at any time the hand stands where the ring focuses, and
// a rack is nowhere steeper than the peak that is printed for it.
func TestHandAndFocusAgree(t *testing.T) {
	var plans []string
	for _, pattern := range []string{"../examples/*.pull", "../examples/*/*.pull"} {
		paths, err := filepath.Glob(pattern)
		if err != nil {
			t.Fatal(err)
		}
		plans = append(plans, paths...)
	}
	points, peaks := 0, 0
	check := func(name string, p *plan.Plan) {
		for _, s := range p.Shots {
			if s.Optics.Ring == nil {
				continue
			}
			points += agree(t, name, s)
			for _, p := range s.Pulls {
				if p.Kind != "rack" || p.PlayShift.Known() || !(p.Peak > 0) || p.Peak.IsInf() || cutShort(s, p) {
					continue
				}
				peaks++
				if got := slope(s, p); math.Abs(got/float64(p.Peak)-1) > 0.01 {
					t.Errorf("%s, shot %s, pull %d: the steepest slope is %v deg/s, and %v is printed", name, s.ID, p.Number, got, p.Peak)
				}
			}
		}
	}
	for _, path := range plans {
		res, err := interp.Read(path, load.Options{})
		if err != nil {
			t.Fatal(err)
		}
		check(path, res.Plan)
	}
	for i := range 60 {
		check("generated", interpret("plan.pull", generated.Example(i)).Plan)
	}
	if points < 2000 || peaks < 50 {
		t.Errorf("only %d points and %d peaks were compared", points, peaks)
	}
}

// agree compares hand and focus at 200 times, and returns how many could be.
func agree(t *testing.T, name string, s *plan.Shot) (points int) {
	for i := range 200 {
		at := float64(s.Duration) * (float64(i) + 0.5) / 200
		hand, ring := s.HandAt(at), s.RingDeg(s.FocusAt(at), at)
		if math.IsNaN(ring) {
			continue
		}
		points++
		if off := math.Abs(hand - ring*float64(s.Gear)); !(off < 0.05) {
			t.Errorf("%s, shot %s at %v s: the hand is at %v, the focus asks for %v", name, s.ID, at, hand, ring*float64(s.Gear))
		}
	}
	return points
}

// cutShort reports whether the next pull starts before a rack has landed.
func cutShort(s *plan.Shot, p *plan.Pull) bool {
	return p.Number < len(s.Pulls) && s.Pulls[p.Number].Start < p.Land
}

// slope returns the steepest slope of the hand in a rack, in degrees a second.
func slope(s *plan.Shot, p *plan.Pull) (most float64) {
	const steps = 4000
	dt := float64(p.Land-p.Start) / steps
	last := s.HandAt(float64(p.Start))
	for i := 1; i < steps; i++ {
		now := s.HandAt(float64(p.Start) + float64(i)*dt)
		most, last = max(most, math.Abs(now-last)/dt), now
	}
	return most
}
