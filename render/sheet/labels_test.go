package sheet

import (
	"math"
	"sort"
	"testing"

	"pgregory.net/rapid"

	"pullscore/render/draw"
	"pullscore/render/testing/plans"
)

func TestSpreadLeavesAloneWhatStandsApart(t *testing.T) {
	want := []float64{10, 40, 25}
	for i, at := range Spread(want, []float64{4, 4, 4}, 0, 50) {
		if at != want[i] {
			t.Errorf("thing %d moved from %v to %v", i, want[i], at)
		}
	}
}

func TestSpreadSharesTheWay(t *testing.T) {
	// Two that want the same place each give way by half.
	at := Spread([]float64{20, 20}, []float64{6, 6}, 0, 50)
	if at[0] != 17 || at[1] != 23 {
		t.Errorf("at %v, want 17 and 23", at)
	}
	// At the end of the room they give way to it.
	at = Spread([]float64{49, 49}, []float64{6, 6}, 0, 50)
	if at[0] != 41 || at[1] != 47 {
		t.Errorf("at %v, want 41 and 47", at)
	}
}

// Whatever is wanted, things keep apart, inside and in order, and no small
// push of a single thing that keeps them so would bring it nearer.
func TestSpreadKeepsApart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 20).Draw(t, "n")
		want, size := make([]float64, n), make([]float64, n)
		for i := range n {
			want[i] = rapid.Float64Range(-20, 120).Draw(t, "want")
			size[i] = rapid.Float64Range(0.5, 5).Draw(t, "size")
		}
		at := Spread(want, size, 0, 100)
		order := make([]int, n)
		for i := range order {
			order[i] = i
		}
		sort.SliceStable(order, func(a, b int) bool { return at[order[a]] < at[order[b]] })
		lower := 0.0
		for k, i := range order {
			if at[i]-size[i]/2 < lower-1e-6 {
				t.Fatalf("thing %d at %v stands on the one before, which ends at %v", i, at[i], lower)
			}
			upper := 100.0
			if k+1 < n {
				next := order[k+1]
				upper = at[next] - size[next]/2
				if want[i] > want[next] {
					t.Fatalf("things %d and %d changed places", i, next)
				}
			}
			const push = 0.01
			nearer := at[i] + math.Copysign(push, want[i]-at[i])
			if math.Abs(want[i]-at[i]) > push && nearer-size[i]/2 > lower && nearer+size[i]/2 < upper {
				t.Fatalf("thing %d stands at %v where it could be nearer to %v", i, at[i], want[i])
			}
			lower = at[i] + size[i]/2
		}
		if lower > 100+1e-6 {
			t.Fatalf("things end at %v", lower)
		}
	})
}

func TestCapacity(t *testing.T) {
	for _, tc := range []struct {
		size []float64
		room float64
		want int
	}{{nil, 5, 0}, {[]float64{2, 2, 2}, 6, 3}, {[]float64{2, 2, 2}, 5.9, 2}, {[]float64{7}, 6, 0}} {
		if got := Capacity(tc.size, tc.room); got != tc.want {
			t.Errorf("%v in %v: %d, want %d", tc.size, tc.room, got, tc.want)
		}
	}
}

func TestClearingFindsFreePlaces(t *testing.T) {
	c := Clearing{Bounds: draw.Box{W: 60, H: 30}}
	c.Block([]draw.Point{{X: 0, Y: 15}, {X: 60, Y: 15}}, 1)
	var placed []draw.Box
	for range 8 {
		if b, ok := c.Near(draw.Point{X: 30, Y: 15}, 8, 3); ok {
			placed = append(placed, b)
		}
	}
	if len(placed) < 5 {
		t.Errorf("only %d of 8 found a place", len(placed))
	}
	line := draw.Box{Y: 14.5, W: 60, H: 1}
	for i, b := range placed {
		if !c.Bounds.Holds(b) || b.Overlaps(line) {
			t.Errorf("box %v is outside or on the line", b)
		}
		for _, o := range placed[:i] {
			if o.Overlaps(b) {
				t.Errorf("boxes %v and %v overlap", o, b)
			}
		}
	}
	c = Clearing{Bounds: draw.Box{W: 5, H: 5}}
	if _, ok := c.Near(draw.Point{X: 2, Y: 2}, 8, 3); ok {
		t.Error("a box found a place in a plot smaller than itself")
	}
}

func TestSimplifyStaysOnTheCurve(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		height := rapid.Float64Range(0, 60).Draw(t, "height")
		length := rapid.Float64Range(1, 80).Draw(t, "length")
		n := rapid.IntRange(2, 300).Draw(t, "n")
		run := make([]draw.Point, n)
		for i := range run {
			u := float64(i) / float64(n-1)
			run[i] = draw.Point{X: u * length, Y: height * math.Sin(4*u)}
		}
		short := Simplify(run)
		if short[0] != run[0] || short[len(short)-1] != run[n-1] {
			t.Fatal("an end moved")
		}
		for _, p := range run {
			off := math.Inf(1)
			for i := 1; i < len(short); i++ {
				off = min(off, math.Sqrt(newChord(short[i-1], short[i]).off(p)))
			}
			if off > draw.Chord+1e-9 {
				t.Fatalf("point %v lies %.4f mm off the simplified run", p, off)
			}
		}
	})
}

// An offset stays with its name wherever a pull is named.
func TestOffsetsStayWithTheirNames(t *testing.T) {
	m := plans.New("1", "", 12).Put("NADIA", 1.7, 0.04).Put("AUNT VEE", 2.4, 0.02).Start("NADIA").
		Rack("AUNT VEE", "", "", 1, 2).Rack("NADIA", "", "", 4, 5)
	m.Pulls[0].Target = `"AUNT VEE" - 10 cm`
	for i, want := range []string{"NADIA to AUNT VEE - 10 cm", "AUNT VEE - 10 cm to NADIA"} {
		if got := PullName(m.Shot, m.Pulls[i]); got != want {
			t.Errorf("pull %d is %q, want %q", i+1, got, want)
		}
	}
}
