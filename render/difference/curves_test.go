package difference

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"pullscore/render/draw"
	"pullscore/render/score/hand"
)

// drawRun draws a run that goes from left to right.
func drawRun(t *rapid.T, name string) []draw.Point {
	x, run := rapid.Float64Range(0, 20).Draw(t, name+" from"), []draw.Point(nil)
	for range rapid.IntRange(1, 30).Draw(t, name+" points") {
		run = append(run, draw.Point{X: x, Y: rapid.Float64Range(0, 5).Draw(t, name)})
		x += rapid.Float64Range(0.01, 8).Draw(t, name+" step")
	}
	return run
}

// Between the pieces that are apart the runs lie on one another, and what is
// apart is a part of the run.
func TestApartFindsWhatIsOff(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		run, other := drawRun(t, "run"), drawRun(t, "other")
		pieces := apart([][]draw.Point{run}, [][]draw.Point{other})
		inPiece := func(x float64) bool {
			for _, piece := range pieces {
				if x >= piece[0].X-1e-9 && x <= piece[len(piece)-1].X+1e-9 {
					return true
				}
			}
			return false
		}
		for _, piece := range pieces {
			for _, p := range piece {
				if y, ok := heightAt(run, p.X); !ok || math.Abs(y-p.Y) > 1e-9 {
					t.Fatalf("%v is not on the run", p)
				}
			}
		}
		for _, p := range run {
			y, ok := heightAt(other, p.X)
			if off := !ok || math.Abs(y-p.Y) >= unlike; off && len(run) > 1 && !inPiece(p.X) {
				t.Fatalf("%v is off the other and in no piece", p)
			}
		}
	})
}

func TestApartOfTheSameIsNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		run := drawRun(t, "run")
		if pieces := apart([][]draw.Point{run}, [][]draw.Point{run}); pieces != nil {
			t.Fatalf("%v", pieces)
		}
	})
}

// A run that leaves another and comes back to it is apart from where it leaves
// to where it is back; it is so as well beyond the other's end.
func TestApartFromWhereItLeaves(t *testing.T) {
	flat := []draw.Point{{X: 0, Y: 0}, {X: 10, Y: 0}}
	bump := []draw.Point{{X: 0, Y: 0}, {X: 3, Y: 0}, {X: 5, Y: 4}, {X: 7, Y: 0}, {X: 14, Y: 0}}
	pieces := apart([][]draw.Point{bump}, [][]draw.Point{flat})
	if len(pieces) != 2 || pieces[0][0].X != 3 || pieces[0][len(pieces[0])-1].X != 7 || pieces[1][0].X != 10 || pieces[1][len(pieces[1])-1].X != 14 {
		t.Errorf("apart in %v", pieces)
	}
	back := apart([][]draw.Point{flat}, [][]draw.Point{bump})
	if len(back) != 1 || back[0][0].X != 3 || back[0][len(back[0])-1].X != 7 {
		t.Errorf("the other way apart in %v", back)
	}
}

func TestCounterparts(t *testing.T) {
	was := []hand.Mark{{Name: "ADA", Deg: 229}, {Name: "BELL", Deg: 100}, {Name: "ADA", Deg: 180}, {Name: "CAT", Deg: 5}}
	now := []hand.Mark{{Name: "ADA", Deg: 231.4}, {Name: "ADA", Deg: 229.01}, {Name: "BELL", Deg: 101}, {Name: "DOG", Deg: 9}}
	olds, left := counterparts(now, was)
	for i, want := range []float64{180, 229, 100} {
		if olds[i] == nil || olds[i].Deg != want {
			t.Errorf("%v was %v, want %v", now[i], olds[i], want)
		}
	}
	if olds[3] != nil || len(left) != 1 || left[0].Name != "CAT" {
		t.Errorf("DOG was %v, left are %v", olds[3], left)
	}
}
