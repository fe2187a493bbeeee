package floor

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/floor/layout"
	"pullscore/render/floor/seek"
	"pullscore/render/sheet"
	"pullscore/render/signs"
	"pullscore/render/testing/plans"
)

// groupsOf returns the groups of a page with that name, in order.
func groupsOf(root *draw.Group, name string) (list []*draw.Group) {
	for it := range root.All() {
		if g, ok := it.(*draw.Group); ok && g.Name == name {
			list = append(list, g)
		}
	}
	return list
}

// marksOf returns where the places of a page lie, by their letters: the dot of a disc that
// is beside its place, or else the disc.
func marksOf(p *draw.Page) map[string]draw.Point {
	at := map[string]draw.Point{}
	for _, g := range groupsOf(&p.Root, "spot") {
		letter, _, _ := strings.Cut(g.Title, ":")
		for it := range g.All() {
			if d, ok := it.(draw.Disc); ok {
				at[letter] = d.Centre
				break
			}
		}
	}
	return at
}

// scaleOf returns to how much a page is one, as its head says.
func scaleOf(p *draw.Page) (scale float64) {
	for it := range p.Root.All() {
		if text, ok := it.(draw.Text); ok {
			if i := strings.LastIndex(text.String, "1:"); i >= 0 && !strings.HasPrefix(text.String, "print") {
				if _, err := fmt.Sscanf(text.String[i:], "1:%g", &scale); err == nil && scale > 0 {
					return scale
				}
			}
		}
	}
	return 0
}

// printed reads a tape as a table prints it.
func printed(text string) (metres float64, ok bool) {
	var unit string
	if n, _ := fmt.Sscanf(strings.TrimPrefix(text, "≈ "), "%g %s", &metres, &unit); n < 2 {
		return 0, false
	}
	switch strings.TrimRight(unit, ",") {
	case "m":
		return metres, true
	case "cm":
		return metres / 100, true
	}
	return 0, false
}

// A place on the page, times the scale, is as far from the camera as the table prints, and
// as far aside.
func TestPlacesAreToScale(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := plans.New("1", "", 5)
		for i := range rapid.IntRange(1, 12).Draw(t, "subjects") {
			m.Put(fmt.Sprint("S", i), rapid.Float64Range(0.5, 30).Draw(t, "distance"), 0)
			m.Subjects[i].Across = plan.Still(rapid.Float64Range(-2, 2).Draw(t, "side"))
		}
		found := 0
		for _, p := range Draw(m.Start("S0").Shot, sheet.Options{}) {
			scale, marks := scaleOf(p), marksOf(p)
			rows := groupsOf(&p.Root, "tape-row")
			if len(marks) == 0 {
				continue
			}
			camera := draw.Point{X: math.Inf(1)}
			for _, g := range groupsOf(&p.Root, "ruler") {
				camera.X = g.Items[0].(draw.Line).From.X
			}
			for _, row := range rows {
				letter, _, _ := strings.Cut(row.Title, ":")
				at, ok := marks[letter]
				if !ok {
					continue
				}
				found++
				along, ok := printed(row.Items[2].(draw.Text).String)
				if got := (at.X - camera.X) * scale / 1000; !ok || math.Abs(got-along) > 0.006+along*0.006 {
					t.Errorf("%s lies %g m from the camera, and the table prints %q", row.Title, got, row.Items[2].(draw.Text).String)
				}
			}
			if digits := strings.TrimRight(fmt.Sprint(scale), "0"); !slices.Contains([]string{"1", "2", "25", "5"}, digits) {
				t.Errorf("the scale 1:%g is not round", scale)
			}
		}
		if found != len(m.Subjects) {
			t.Errorf("%d places of %d have a tape on their sheet", found, len(m.Subjects))
		}
	})
}

// rowMarks returns the tick and the focus of a row, and what it prints; ok is false if the
// focus lies beyond the sheet.
func rowMarks(row *draw.Group) (tick, focus float64, text string, ok bool) {
	for _, it := range groupsOf(row, signs.Tape)[0].Items {
		if l := it.(draw.Line); l.From.X == l.To.X {
			tick = l.From.X
		}
	}
	for _, it := range groupsOf(row, signs.Focus)[0].Items {
		if l, is := it.(draw.Line); is && l.Stroke.Ink == draw.Black {
			focus, ok = l.From.X, true
		}
	}
	for _, it := range row.Items {
		if s, is := it.(draw.Text); is && strings.Contains(s.String, ", sharp") {
			text = s.String
		}
	}
	return tick, focus, text, ok
}

// The mark of a row is as far from the tick of its row as the row prints, also when the
// camera has moved.
func TestRowsAreToScale(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := plans.New("1", "", 20)
		for i := range rapid.IntRange(1, 6).Draw(t, "subjects") {
			m.Put(fmt.Sprint("S", i), rapid.Float64Range(3, 12).Draw(t, "distance"), 0)
		}
		m.Start("S0").Dolly(rapid.Float64Range(-2, 2).Draw(t, "dolly"), 2, 6)
		for i := range m.Subjects {
			m.Rack(fmt.Sprint("S", i), "", "", 7+2*float64(i), 8+2*float64(i))
		}
		rows := 0
		for _, p := range Draw(m.Shot, sheet.Options{}) {
			for _, row := range groupsOf(&p.Root, "focus-row") {
				tick, focus, text, ok := rowMarks(row)
				if !ok {
					continue
				}
				rows++
				want, ok := printed(text)
				if got := math.Abs(focus-tick) * scaleOf(p) / 1000; !ok || math.Abs(got-want) > 0.006+want*0.006 {
					t.Errorf("the focus lies %g m from its tick, and the row prints %q", got, text)
				}
			}
		}
		if rows < len(m.Subjects) {
			t.Errorf("%d rows", rows)
		}
	})
}

// A row starts where the camera is when the focus lands.
func TestRowsStartAtTheirCamera(t *testing.T) {
	m := plans.New("1", "", 10).Put("ADA", 6, 0).Put("BO", 4, 0).Start("ADA").Dolly(1.5, 1, 4).Rack("BO", "", "", 6, 7)
	page := Draw(m.Shot, sheet.Options{})[0]
	rows := groupsOf(&page.Root, "focus-row")
	first, _, _, _ := rowMarks(rows[0])
	second, focus, text, _ := rowMarks(rows[1])
	scale := scaleOf(page)
	if got := (second - first) * scale / 1000; math.Abs(got-1.5) > 1e-6 {
		t.Errorf("the second row starts %g m beyond the first, want 1.5", got)
	}
	if got := (focus - second) * scale / 1000; math.Abs(got-2.5) > 1e-3 || !strings.HasPrefix(text, "2.5 m") {
		t.Errorf("the second focus lies %g m from its tick, and prints %q", got, text)
	}
}

// Names beside a dolly do not swap: on one height they lie as the places do.
func TestNamesKeepTheirOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := plans.New("1", "", 10)
		n := rapid.IntRange(2, 9).Draw(t, "subjects")
		for i := range n {
			m.Put(fmt.Sprint("NAME", i), 0.3+rapid.Float64Range(0, 5).Draw(t, "distance"), 0)
			m.Aside(fmt.Sprint("NAME", i), rapid.Float64Range(-0.4, 0.4).Draw(t, "side"))
		}
		m.Start("NAME0").Dolly(rapid.Float64Range(-1, 5).Draw(t, "dolly"), 1, 9)
		f := &Floor{*layout.Of(m.Shot)}
		for _, sheets := range f.parts(8) {
			l := f.layer(draw.Box{X: 12, Y: 27, W: 190, H: 150}, sheets[0])
			c := &seek.Clearing{Bounds: l.box}
			words := l.drawCameras(&draw.Group{}, c)
			var labels []seek.Label
			for i, p := range l.pins {
				labels = append(labels, l.nameOf(i, p))
			}
			for i := range words {
				words[i].Index = len(labels) + i
			}
			done := seek.Lay(c, append(labels, words...))
			for i, a := range done {
				for _, b := range done[:i] {
					level := a.Box.Y < b.Box.Bottom() && b.Box.Y < a.Box.Bottom()
					if level && a.At.X < b.At.X-0.5 && a.Box.X > b.Box.X && a.Box.Right() > b.Box.Right() {
						t.Errorf("%q stands right of %q", a.Lines[0].String, b.Lines[0].String)
					}
					if a.Box.Overlaps(b.Box) {
						t.Errorf("%q overlaps %q", a.Lines[0].String, b.Lines[0].String)
					}
				}
			}
		}
	})
}

// Nobody's letter is missing, however many stand in one place.
func TestEveryPlaceHasItsLetter(t *testing.T) {
	for _, n := range []int{1, 2, 9, 14, 17, 40} {
		m := plans.New("1", "", 5)
		for i := range n {
			m.Put(fmt.Sprint("S", i), 2, 0)
		}
		letters := map[string]bool{}
		for _, p := range Draw(m.Start("S0").Shot, sheet.Options{}) {
			for letter := range marksOf(p) {
				if letters[letter] {
					t.Errorf("%s is drawn twice", letter)
				}
				letters[letter] = true
			}
		}
		if len(letters) != n {
			t.Errorf("%d letters for %d", len(letters), n)
		}
	}
}

// A watch at hand and a house down the road are on sheets of their own, each with room.
func TestVeryNearAndVeryFarHaveTheirSheets(t *testing.T) {
	s := plans.New("1", "", 5).Put("WATCH", 0.4, 0).Put("HOUSE", 40, 0).Start("HOUSE").Shot
	pages := Draw(s, sheet.Options{})
	if len(pages) != 2 || scaleOf(pages[0])*10 > scaleOf(pages[1]) {
		t.Fatalf("%d pages", len(pages))
	}
}

// Every landing has its row on some sheet, once.
func TestEveryLandingHasARow(t *testing.T) {
	for name, s := range plans.Made() {
		seen := map[int]int{}
		for _, z := range layout.Of(s).Cameras[0].Zones {
			for _, p := range z.Pulls {
				seen[p.Number]++
			}
		}
		rows := 0
		for _, p := range Draw(s, sheet.Options{}) {
			rows += len(groupsOf(&p.Root, "focus-row"))
		}
		if rows != len(layout.Of(s).Cameras[0].Zones) {
			t.Errorf("%s: %d rows for %d places of the focus", name, rows, len(layout.Of(s).Cameras[0].Zones))
		}
		for n, times := range seen {
			if times != 1 {
				t.Errorf("%s: pull %d is shown %d times", name, n, times)
			}
		}
	}
}

// A lens of 50 mm focused at infinity sees 39.6 degrees across a picture 36 mm wide: 2
// atan(36/100), the angle of view as handbooks of optics have it (from memory; the figure
// is worked out by hand).
func TestFieldOfViewIsTheLenss(t *testing.T) {
	m := plans.New("1", "", 5).Put("A", 2, 0)
	m.Optics.Focal, m.Optics.SensorW, m.Optics.Ring = plan.Still(0.05), 0.036, nil
	m.Optics.Start = plan.Target{Text: "inf", Distance: math.Inf(1)}
	if got := layout.StateAt(m.Shot, 0).Angle(); math.Abs(got-39.598) > 0.001 {
		t.Errorf("%v degrees, want 39.598", got)
	}
}

// A side that nobody said is marked as assumed, in the table and beside the name.
func TestUnsaidSidesAreAssumed(t *testing.T) {
	m := plans.New("1", "", 5).Put("ADA", 2, 0).Put("BO", 3, 0).Start("ADA")
	m.Subject("ADA").SideSaid = true
	page := Draw(m.Shot, sheet.Options{})[0]
	text := plans.TextOf([]*draw.Page{page})
	if !strings.Contains(text, "≈ aside not said") || !strings.Contains(text, "≈ not said") {
		t.Errorf("it says %q", text)
	}
	if got := len(groupsOf(&page.Root, signs.Assumed)); got != 4 { // beside the name, slant, aside, and in the legend
		t.Errorf("%d signs of what is assumed", got)
	}
}
