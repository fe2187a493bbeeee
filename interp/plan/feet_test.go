package plan

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// A foot is 0.3048 m exactly (international yard and pound agreement, 1959).
func TestFeetInches(t *testing.T) {
	for _, tc := range []struct {
		m            float64
		parts        int
		feet, inches float64
		part         int
	}{
		{0, 4, 0, 0, 0}, {0.3048, 4, 1, 0, 0}, {0.0127, 2, 0, 0, 1}, {0.0127, 4, 0, 0, 2},
		{1.7, 1, 5, 7, 0}, {1.7, 4, 5, 7, 0}, {0.95, 2, 3, 1, 1}, {0.3048 * 1.9999, 4, 2, 0, 0}, {30.48, 1, 100, 0, 0},
	} {
		if f, i, p := FeetInches(tc.m, tc.parts); f != tc.feet || i != tc.inches || p != tc.part {
			t.Errorf("%v m in 1/%d: %v ft %v %d, want %v ft %v %d", tc.m, tc.parts, f, i, p, tc.feet, tc.inches, tc.part)
		}
	}
}

// Put together again they are the length, to half a part.
func TestFeetInchesAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := rapid.Float64Range(0, 10000).Draw(t, "metres")
		parts := rapid.IntRange(1, 8).Draw(t, "parts")
		feet, inches, part := FeetInches(m, parts)
		if inches < 0 || inches >= InchesPerFoot || part < 0 || part >= parts {
			t.Fatalf("%v ft %v %d/%d", feet, inches, part, parts)
		}
		sum := (feet*InchesPerFoot + inches + float64(part)/float64(parts)) * Inch
		if math.Abs(sum-m) > Inch/float64(parts)/2+1e-9 {
			t.Fatalf("%v m became %v m", m, sum)
		}
	})
}
