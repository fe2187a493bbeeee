package draw

import (
	"math"
	"testing"
)

// A line of dots ends with a dot that all forms of file draw, and keeps its length else.
func TestClearOfDots(t *testing.T) {
	const every = dotLong + dotsFrom
	for hundredths := range 5000 {
		length := float64(hundredths) / 100
		got := ClearOfDots(length)
		if got > length || got < length-0.04-1e-9 {
			t.Fatalf("%.2f mm became %.4f", length, got)
		}
		if off := math.Abs(math.Remainder(got, every)); got > every/2 && off < 0.0199 {
			t.Errorf("%.2f mm became %.4f, which ends %.4f from a dot", length, got, off)
		}
	}
}
