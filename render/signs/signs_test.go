package signs

import (
	"testing"

	"pullscore/render/draw"
)

// Every sign draws itself into a group of its name, inside the place that the legend
// gives it.
func TestTheTableDrawsItself(t *testing.T) {
	seen := map[string]bool{}
	for s := range Table() {
		if seen[s.Name] {
			t.Errorf("%s stands twice in the table", s.Name)
		}
		seen[s.Name] = true
		if s.Words == "" || s.Short == "" || len([]rune(s.Short)) > len([]rune(s.Words)) {
			t.Errorf("%s: words %q, short %q", s.Name, s.Words, s.Short)
		}
		var root draw.Group
		s.Draw(&root, 100, 50)
		if on := On(&root); len(on) != 1 || on[0].Name != s.Name {
			t.Errorf("%s draws %v", s.Name, on)
		}
		place := draw.Box{X: 100, Y: 50 - 2.3, W: s.Width, H: 4.6}.Grow(0.02)
		for it := range root.All() {
			for _, p := range corners(it) {
				if p.X < place.X || p.X > place.Right() || p.Y < place.Y || p.Y > place.Bottom() {
					t.Errorf("%s: %T at %.2f is outside %.2f", s.Name, it, p, place)
				}
			}
		}
	}
}

// corners returns points that hold an item between them.
func corners(it draw.Item) []draw.Point {
	box := func(b draw.Box) []draw.Point { return []draw.Point{{X: b.X, Y: b.Y}, {X: b.Right(), Y: b.Bottom()}} }
	switch it := it.(type) {
	case draw.Line:
		return []draw.Point{it.From, it.To}
	case draw.Rect:
		return box(it.Box)
	case draw.Disc:
		return box(draw.Box{X: it.Centre.X, Y: it.Centre.Y}.Grow(it.Radius + it.Stroke.Width/2))
	case draw.Text:
		return box(it.Box())
	case draw.Path:
		var all []draw.Point
		for _, run := range it.Runs {
			all = append(all, run...)
		}
		return all
	}
	return nil
}

func TestOnlyWhatIsDrawnIsOn(t *testing.T) {
	var root draw.Group
	root.Group(Rack)                                // holds nothing
	root.Group("band").Group(Window).Group("empty") // nor does this
	DrawCue(root.Group("lines"), 10, 10, "dark")
	legend := root.Group(Legend)
	DrawCue(legend, 10, 200, "")
	DrawPlumb(legend, 20, 198, 201)
	if on := On(&root); len(on) != 1 || on[0].Name != Cue {
		t.Errorf("on the page: %v", on)
	}
	if told := InLegend(&root); len(told) != 2 || told[0].Name != Cue || told[1].Name != Plumb {
		t.Errorf("in the legend: %v", told)
	}
}

// All signs use the pens of all papers.
func TestPens(t *testing.T) {
	for s := range Table() {
		var root draw.Group
		s.Draw(&root, 100, 50)
		for it := range root.All() {
			var stroke draw.Stroke
			switch it := it.(type) {
			case draw.Line:
				stroke = it.Stroke
			case draw.Path:
				stroke = it.Stroke
			case draw.Disc:
				stroke = it.Stroke
			case draw.Rect:
				stroke = it.Stroke
			}
			if !stroke.MeansSomething() {
				t.Errorf("%s has a dash %v", s.Name, stroke.Dash)
			}
		}
	}
}
