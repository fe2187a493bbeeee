package draw

import (
	"math"
	"testing"
)

// A hatch covers a square with as much line as its area over its pitch.
func TestHatchCovers(t *testing.T) {
	square := []Point{{10, 10}, {60, 10}, {60, 60}, {10, 60}}
	sum := 0.0
	for _, l := range Hatch(square, 0.5, 0) {
		sum += math.Hypot(l[1].X-l[0].X, l[1].Y-l[0].Y)
		if d := (l[0].X + l[0].Y) - (l[1].X + l[1].Y); math.Abs(d) > 1e-9 || l[1].X < l[0].X {
			t.Fatalf("line %v does not rise at 45 degrees", l)
		}
	}
	if want := 50 * 50 / 0.5; math.Abs(sum/want-1) > 0.01 {
		t.Errorf("%.1f mm of line, want about %.1f", sum, want)
	}
}

func TestHatchLeavesHolesAndShortLines(t *testing.T) {
	// Two towers on a base: lines across the gap must break.
	towers := []Point{{0, 0}, {10, 0}, {10, 30}, {20, 30}, {20, 0}, {30, 0}, {30, 40}, {0, 40}}
	for _, l := range Hatch(towers, 1, 2) {
		mid := Point{(l[0].X + l[1].X) / 2, (l[0].Y + l[1].Y) / 2}
		if mid.X > 10 && mid.X < 20 && mid.Y < 30 {
			t.Errorf("line %v runs through the gap", l)
		}
		if math.Hypot(l[1].X-l[0].X, l[1].Y-l[0].Y) < 2-1e-9 {
			t.Errorf("line %v is shorter than asked", l)
		}
	}
	if Hatch(nil, 1, 0) != nil {
		t.Error("nothing has a hatch")
	}
}
