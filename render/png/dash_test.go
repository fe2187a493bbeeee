package png

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"pullscore/render/draw"
)

func lengthOf(run []draw.Point) float64 {
	sum := 0.0
	for i := 1; i < len(run); i++ {
		sum += math.Hypot(run[i].X-run[i-1].X, run[i].Y-run[i-1].Y)
	}
	return sum
}

// Along a run of any shape the dashes are as long as the pattern says, the last
// aside, and as many as go into it.
func TestDashesHaveTheirLength(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		coordinate := rapid.Float64Range(0, 200)
		var run []draw.Point
		for range rapid.IntRange(2, 8).Draw(t, "points") {
			run = append(run, draw.Point{X: coordinate.Draw(t, "x"), Y: coordinate.Draw(t, "y")})
		}
		on, off := rapid.Float64Range(0.1, 9).Draw(t, "on"), rapid.Float64Range(0.1, 9).Draw(t, "off")
		pieces := dashed(run, []float64{on, off})
		whole := lengthOf(run)
		if want := math.Ceil(whole / (on + off)); whole > 0 && math.Abs(float64(len(pieces))-want) > 1 {
			t.Fatalf("%d dashes, want %v", len(pieces), want)
		}
		for i, piece := range pieces {
			if got := lengthOf(piece); i < len(pieces)-1 && math.Abs(got-on) > 1e-6 || got > on+1e-6 {
				t.Fatalf("dash %d is %v long, want %v", i, got, on)
			}
		}
	})
}

// A long line does not lose its step: the last dash starts where arithmetic
// says.
func TestDashesKeepTheirStep(t *testing.T) {
	pieces := dashed([]draw.Point{{X: 0, Y: 0}, {X: 100, Y: 0}, {X: 200.5, Y: 0}}, []float64{2, 1})
	if last := pieces[len(pieces)-1]; len(pieces) != 67 || math.Abs(last[0].X-198) > 1e-9 || math.Abs(last[1].X-200) > 1e-9 {
		t.Errorf("%d dashes, the last %v", len(pieces), last)
	}
	if dashed(nil, []float64{1}) != nil {
		t.Error("nothing has dashes")
	}
}

func TestNoPatternIsNoDash(t *testing.T) {
	for _, pattern := range [][]float64{nil, {}, {0, 0}, {-1}} {
		if dashes(pattern) {
			t.Errorf("%v breaks a line", pattern)
		}
	}
}
