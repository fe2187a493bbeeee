package viewer

import (
	"math"
	"testing"
)

// Atchison et al. 2005, Vision Res 45(15), abstract: blur is noticed from 0.33
// dioptres through a pupil of 3 mm, from 0.28 through one of 6 mm.
func TestSeenIsHalfWayBetweenPupils(t *testing.T) {
	half := (DefocusDisc(0.003, 0.33) + DefocusDisc(0.006, 0.28)) / 2
	if math.Abs(half-Seen) > 0.05 {
		t.Errorf("half-way is %.2f arcmin, Seen is %v", half, Seen)
	}
}

// A jump has no direction and never takes less for a longer way.
func TestEyeNeeds(t *testing.T) {
	before := 0.0
	for a := 0.0; a < 60; a += 0.5 {
		if EyeNeeds(a) != EyeNeeds(-a) || EyeNeeds(a) <= before {
			t.Fatalf("at %v degrees %v s, to the other side %v", a, EyeNeeds(a), EyeNeeds(-a))
		}
		before = EyeNeeds(a)
	}
}
