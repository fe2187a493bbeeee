package lens

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"pullscore/render/draw"
	"pullscore/render/sheet"
	"pullscore/render/testing/plans"
)

var inf = math.Inf(1)

// papers are the sheets that the pages are tested on.
var papers = map[string]sheet.Paper{"a4": sheet.A4, "letter": sheet.Letter}

// seventyFive is a lens of our own, metric.
var seventyFive = Lens{
	Name: "75", Kit: "Harbour kit", Focal: "75 mm", Stop: "f/2.8", Criterion: 21.7e-6,
	Distances:    []float64{0.75, 0.82, 0.92, 1.04, 1.22, 1.48, 1.92, 2.8, 5.5, inf},
	InfinityFrom: 370.257784,
}

// fifty is one in feet and inches.
var fifty = Lens{
	Name: "50", Kit: "Old kit", Focal: "50 mm", Stop: "f/2.8", Criterion: 21.7e-6, Imperial: true,
	Distances:    inches(18, 20, 22.5, 26, 31.5, 41, 59, 114),
	InfinityFrom: 164.625682,
}

// macro has as many distances as a sheet ever has.
var macro = Lens{
	Name: "100 close", Focal: "100 mm", Stop: "f/5.6", Criterion: 21.7e-6,
	Distances:    []float64{0.3, 0.31, 0.32, 0.335, 0.35, 0.37, 0.39, 0.415, 0.45, 0.495, 0.55, 0.63, 0.75, 0.95, 1.35, 2.55, inf},
	InfinityFrom: 329.1,
}

func inches(list ...float64) (metres []float64) {
	for _, v := range list {
		metres = append(metres, v*0.0254)
	}
	return append(metres, inf)
}

var lenses = map[string]Lens{"75": seventyFive, "50": fifty, "macro": macro}

func TestSheetsAreClean(t *testing.T) {
	for name, l := range lenses {
		for size, paper := range papers {
			pages := Sheet(l, sheet.Options{Paper: paper})
			if len(pages) != 2 {
				t.Errorf("%s on %s: %d pages, not 2", name, size, len(pages))
			}
			for i, p := range pages {
				checkPage(t, fmt.Sprintf("%s on %s, page %d", name, size, i+1), p)
			}
		}
	}
}

// checkPage looks for the faults of all papers, and for anything in the margins or
// below the contents that is not the head or the bar.
func checkPage(t interface {
	Helper()
	Errorf(string, ...any)
	Fatalf(string, ...any)
}, name string, p *draw.Page) {
	t.Helper()
	plans.CheckPage(t, name, p)
	room := draw.Box{X: sheet.Margin, Y: sheet.HandoutTop, W: p.W - 2*sheet.Margin, H: p.H - sheet.HandoutBottom - sheet.HandoutTop}.Grow(0.01)
	for _, it := range p.Root.Items {
		g, ok := it.(*draw.Group)
		if !ok || g.Name == "head" || g.Name == "check-bar" {
			continue
		}
		for it := range g.All() {
			switch it := it.(type) {
			case draw.Text:
				if !room.Holds(it.Box()) {
					t.Errorf("%s: %q leaves the sheet", name, it.String)
				}
			case draw.Line:
				if !room.Holds(draw.Box{X: it.From.X, Y: it.From.Y}) || !room.Holds(draw.Box{X: it.To.X, Y: it.To.Y}) {
					t.Errorf("%s: a line leaves the sheet: %v", name, it)
				}
			}
		}
	}
}

func TestGeneratedSheetsAreClean(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := Lens{
			Name: rapid.StringN(1, 40, 80).Draw(t, "name"), Kit: rapid.StringN(0, 40, 80).Draw(t, "kit"),
			Focal: "70 mm of 24 to 70 mm", Stop: rapid.SampledFrom([]string{"f/1.4", "T2.8", "f/22"}).Draw(t, "stop"),
			Criterion: rapid.Float64Range(1e-6, 1e-3).Draw(t, "criterion"),
			Imperial:  rapid.Bool().Draw(t, "imperial"), InfinityFrom: rapid.Float64Range(1, 1e5).Draw(t, "infinity"),
		}
		d := rapid.Float64Range(0.05, 3).Draw(t, "closest")
		for range rapid.IntRange(3, 16).Draw(t, "gaps") {
			l.Distances = append(l.Distances, d)
			d *= rapid.Float64Range(1.01, 2).Draw(t, "farther")
		}
		l.Distances = append(l.Distances, inf)
		paper := rapid.SampledFrom([]sheet.Paper{sheet.A4, sheet.Letter}).Draw(t, "paper")
		for i, p := range Sheet(l, sheet.Options{Paper: paper}) {
			checkPage(t, fmt.Sprintf("page %d", i+1), p)
			plans.SVGOf(t, p)
		}
	})
}

func TestGolden(t *testing.T) {
	for size, paper := range papers {
		plans.CheckGolden(t, "lens-75-"+size, Sheet(seventyFive, sheet.Options{Paper: paper}))
		plans.CheckGolden(t, "lens-50-"+size, Sheet(fifty, sheet.Options{Paper: paper}))
	}
}
