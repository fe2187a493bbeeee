package draw

import (
	"math"
	"testing"
)

// The corners of a text that is turned by a right angle are those of the level one, with
// x and y exchanged.
func TestTurnedTexts(t *testing.T) {
	text := NewText(50, 40, "HALDIS", Font{Size: 12, Bold: true}, Black).Aligned(Middle)
	level := text.Box()
	near := func(a, b float64) bool { return math.Abs(a-b) < 1e-9 }
	b := text.Turned(90).Box() // its head to the right
	if !near(b.X, 50-(level.Bottom()-40)) || !near(b.Right(), 50+(40-level.Y)) || !near(b.Y, 40-level.W/2) || !near(b.H, level.W) {
		t.Errorf("turned to the right, %v became %v", level, b)
	}
	if got := text.Turned(360).Box(); !near(got.X, level.X) || !near(got.H, level.H) {
		t.Errorf("turned all round, %v became %v", level, got)
	}
	if got := text.Turned(30).Corners()[1]; !near(math.Hypot(got.X-50, got.Y-40), math.Hypot(level.W/2, 40-level.Y)) {
		t.Errorf("a corner went to %v", got)
	}
	if p := text.Turned(30).Level(text.Turned(30).Corners()[2]); !near(p.X, level.Right()) || !near(p.Y, level.Bottom()) {
		t.Errorf("the level corner is at %v, want the right lower one of %v", p, level)
	}
}

// Two texts side by side along a slope do not clash, though the upright boxes round them
// overlap.
func TestClash(t *testing.T) {
	f := Font{Size: 10}
	for _, tc := range []struct {
		name string
		turn float64
		off  float64 // across the text, millimetres
		want bool
	}{
		{"level, apart", 0, 4, false},
		{"level, over each other", 0, 2, true},
		{"level, within what counts", 0, f.Height() - 0.01, false},
		{"on a slope, apart", 40, 4, false},
		{"on a slope, over each other", 40, 2, true},
		{"upside down, apart", 180, 4, false},
	} {
		a := NewText(50, 50, "a long name", f, Black).Turned(tc.turn)
		sin, cos := math.Sincos(tc.turn * math.Pi / 180)
		b := NewText(50-tc.off*sin, 50+tc.off*cos, "a long name", f, Black).Turned(tc.turn)
		if got := Clash(a, b, 0.02); got != tc.want || Clash(b, a, 0.02) != tc.want {
			t.Errorf("%s: %v", tc.name, got)
		}
	}
}

// What the fonts lack is turned with the text: its boxes become paths, and every piece
// starts where the level one would, turned.
func TestTurnedFallback(t *testing.T) {
	text := NewText(20, 20, "Sa 字 b", Font{Size: 10}, Black).Aligned(Middle)
	level, turned := text.Set(), text.Turned(90).Set()
	if len(level) != len(turned) || len(level) < 4 {
		t.Fatalf("%d items level, %d turned", len(level), len(turned))
	}
	for i, it := range level {
		switch it := it.(type) {
		case Text:
			got := turned[i].(Text)
			if got.Turn != 90 || math.Abs(got.At.X-(20-(it.At.Y-20))) > 1e-9 || math.Abs(got.At.Y-(20+it.At.X-20)) > 1e-9 {
				t.Errorf("%q at %v went to %v", it.String, it.At, got.At)
			}
		case Rect:
			got := turned[i].(Path).Runs[0][0]
			if math.Abs(got.X-(20-(it.Box.Y-20))) > 1e-9 || math.Abs(got.Y-it.Box.X) > 1e-9 {
				t.Errorf("a box at %v went to %v", it.Box, got)
			}
		}
	}
}

// A chord passes a text by the text's own sides, turned as it is.
func TestPassed(t *testing.T) {
	level := NewText(10, 10, "HALDIS", Font{Size: 10}, Black)
	box := level.Box()
	across := level.Turned(90)
	for _, tc := range []struct {
		name     string
		text     Text
		from, to Point
		clear    float64
		want     bool
	}{
		{"through it", level, Point{box.X - 5, box.Y + 1}, Point{box.Right() + 5, box.Y + 1}, 0, true},
		{"above it", level, Point{box.X, box.Y - 1}, Point{box.Right(), box.Y - 1}, 0, false},
		{"too near above it", level, Point{box.X, box.Y - 1}, Point{box.Right(), box.Y - 1}, 1.5, true},
		{"ends before it", level, Point{box.X - 5, box.Y + 1}, Point{box.X - 1, box.Y + 1}, 0, false},
		{"where it lay before it was turned", across, Point{box.Right() - 1, 0}, Point{box.Right() - 1, 20}, 0, false},
	} {
		if got := tc.text.Passed(tc.from, tc.to, tc.clear); got != tc.want {
			t.Errorf("%s: %v", tc.name, got)
		}
	}
}
