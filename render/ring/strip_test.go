package ring

import (
	"encoding/xml"
	"fmt"
	"io"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/marks"
	"pullscore/render/sheet"
	"pullscore/render/testing/plans"
)

func TestStripsAreClean(t *testing.T) {
	for name, s := range plans.Made() {
		for size, paper := range map[string]sheet.Paper{"A4": sheet.A4, "Letter": sheet.Letter} {
			for i, p := range Strip(s, sheet.Options{Paper: paper}) {
				plans.CheckPage(t, fmt.Sprintf("%s, %s, page %d", name, size, i+1), p)
				plans.SVGOf(t, p)
			}
		}
	}
}

func TestGeneratedStripsAreClean(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := plans.Draw(t)
		s.Optics.Diameter = rapid.SampledFrom([]float64{0.02, 0.05, 0.08, 0.114, 0.3, math.NaN()}).Draw(t, "diameter")
		s.Optics.TurnsTo = rapid.SampledFrom([]string{"", "left", "right"}).Draw(t, "turns")
		s.Optics.Marked = rapid.Bool().Draw(t, "marked")
		if rapid.Bool().Draw(t, "play") {
			s.Ring = plans.Play(rapid.Float64Range(0, 60).Draw(t, "degrees"))
		}
		paper := rapid.SampledFrom([]sheet.Paper{sheet.A4, sheet.Letter}).Draw(t, "paper")
		for i, p := range Strip(s, sheet.Options{Paper: paper}) {
			plans.CheckPage(t, fmt.Sprintf("page %d", i+1), p)
			plans.SVGOf(t, p)
		}
	})
}

// The length of an arc is diameter x pi x angle / 360 (Euclid's circle, in any
// table of formulas); the figures are worked out by hand.
func TestRingLength(t *testing.T) {
	for _, tc := range []struct{ diameter, deg, want float64 }{
		{0.1, 360, 314.1593}, {0.1, 90, 78.5398}, {0.08, 1, 0.6981}, {0.11, 310, 297.5786},
	} {
		if got := ringLength(tc.diameter, tc.deg); math.Abs(got-tc.want) > 5e-5 {
			t.Errorf("%v deg of %v m: %v mm, want %v", tc.deg, tc.diameter, got, tc.want)
		}
	}
}

// Every mark of a strip lies where diameter x pi x angle / 360 says, measured
// from the wedge of the closest stop, over all pieces, in the file that is
// printed.
func TestMarksLieWhereTheRingHasThem(t *testing.T) {
	const tolerance = 0.05 // mm
	for _, turns := range []string{"left", "right"} {
		for _, diameter := range []float64{0.05, 0.08, 0.11, 0.2} {
			s := plans.Crowd()
			s.Optics.Diameter, s.Optics.TurnsTo = diameter, turns
			got := printedMarks(t, Strip(s, sheet.Options{}), turns == "right")
			list := marks.Of(s)
			if len(got) != len(list) {
				t.Fatalf("%d marks are printed, want %d", len(got), len(list))
			}
			for i, m := range list {
				if want := diameter * 1000 * math.Pi * m.Deg / 360; math.Abs(got[i]-want) > tolerance {
					t.Errorf("ring of %v m, turning %s: %s lies at %.3f mm, want %.3f", diameter, turns, m.Name, got[i], want)
				}
			}
		}
	}
}

// A printedPiece is what a file has of a piece: millimetres on the page.
type printedPiece struct{ edges, marks, wedges []float64 }

// printedMarks reads the marks of all pieces off the SVG files, in millimetres
// from the wedge of the closest stop, rising.
func printedMarks(t *testing.T, pages []*draw.Page, mirrored bool) []float64 {
	var list []float64
	zero, joined := math.NaN(), 0.0 // joined: where on the tape the piece begins
	for _, p := range pages {
		for _, piece := range readPieces(t, plans.SVGOf(t, p)) {
			if len(piece.edges) != 2 {
				t.Fatalf("a piece has %d cut ends, want 2", len(piece.edges))
			}
			left := slices.Min(piece.edges)
			for _, x := range piece.marks {
				list = append(list, joined+x-left)
			}
			if len(piece.wedges) > 0 && (math.IsNaN(zero) || mirrored) { // the closest stop is drawn first
				zero = joined + piece.wedges[0] - left
			}
			joined += slices.Max(piece.edges) - left
		}
	}
	for i := range list {
		list[i] = math.Abs(list[i] - zero)
	}
	slices.Sort(list)
	return list
}

// readPieces finds the pieces of tape in a file: their upright dashed edges,
// the lines of their marks and the tips of their wedges.
func readPieces(t *testing.T, doc string) []printedPiece {
	var pieces []printedPiece
	var groups []string
	dec := xml.NewDecoder(strings.NewReader(doc))
	for {
		tok, err := dec.Token()
		if err == io.EOF {
			return pieces
		}
		if err != nil {
			t.Fatal(err)
		}
		switch el := tok.(type) {
		case xml.EndElement:
			if el.Name.Local == "g" {
				groups = groups[:len(groups)-1]
			}
		case xml.StartElement:
			at := attributes(el)
			if el.Name.Local == "g" {
				groups = append(groups, at["class"])
				if strings.HasPrefix(at["class"], "piece-") {
					pieces = append(pieces, printedPiece{})
				}
				continue
			}
			if len(groups) > 1 && len(pieces) > 0 {
				pieces[len(pieces)-1].read(t, el.Name.Local, groups[len(groups)-1], at)
			}
		}
	}
}

func (p *printedPiece) read(t *testing.T, element, group string, at map[string]string) {
	switch {
	case element == "line" && group == "mark":
		p.marks = append(p.marks, millimetres(t, at["x1"]))
	case element == "line" && group == "cut" && at["stroke-dasharray"] != "" && at["x1"] == at["x2"]:
		p.edges = append(p.edges, millimetres(t, at["x1"]))
	case element == "path" && group == "lens-marks":
		tip, _, _ := strings.Cut(strings.TrimPrefix(at["d"], "M"), " ")
		p.wedges = append(p.wedges, millimetres(t, tip))
	}
}

func attributes(el xml.StartElement) map[string]string {
	at := map[string]string{}
	for _, a := range el.Attr {
		at[a.Name.Local] = a.Value
	}
	return at
}

func millimetres(t *testing.T, text string) float64 {
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// The bar that tells whether the printer kept to the size is 50 mm long, on
// every sheet that is cut out, and its file is measured in millimetres.
func TestCheckBarIsFiftyMillimetres(t *testing.T) {
	bar := regexp.MustCompile(`(?s)<g class="check-bar".*?<line x1="([0-9.]+)" y1="([0-9.]+)" x2="([0-9.]+)" y2="([0-9.]+)"`)
	size := regexp.MustCompile(`width="([0-9.]+)mm" height="([0-9.]+)mm" viewBox="0 0 ([0-9.]+) ([0-9.]+)"`)
	s := plans.Crowd()
	s.WheelMM = 80
	for _, p := range slices.Concat(Strip(s, sheet.Options{}), Dial(s, sheet.Options{Paper: sheet.Letter}), Strip(plans.NoRing(), sheet.Options{})) {
		doc := plans.SVGOf(t, p)
		m, d := bar.FindStringSubmatch(doc), size.FindStringSubmatch(doc)
		if m == nil || d == nil || d[1] != d[3] || d[2] != d[4] {
			t.Fatalf("%s has no bar, or is not in millimetres", p.Title)
		}
		if long := millimetres(t, m[3]) - millimetres(t, m[1]); math.Abs(long-50) > 0.005 || m[2] != m[4] {
			t.Errorf("%s: the bar is %v mm", p.Title, long)
		}
		if !strings.Contains(doc, "Print at 100 %") {
			t.Errorf("%s does not say at what size to print", p.Title)
		}
	}
}

// Whatever a lens lacks is said on the page.
func TestStripsSayWhatIsMissing(t *testing.T) {
	unmarked, undated := plans.OneRack(), plans.OneRack()
	unmarked.Optics.Marked = false
	undated.Optics.Diameter = math.NaN()
	for _, tc := range []struct {
		name, want string
		pages      []*draw.Page
	}{
		{"computed law", "computed law", Strip(unmarked, sheet.Options{})},
		{"no diameter", "needs the ring's diameter", Strip(undated, sheet.Options{})},
		{"by wire", "no mark on it repeats", Strip(plans.NoRing(), sheet.Options{})},
		{"no wheel", "this shot has none", Dial(plans.OneRack(), sheet.Options{})},
		{"by wire, wheel", "no mark on it repeats", Dial(plans.NoRing(), sheet.Options{})},
	} {
		if text := plans.TextOf(tc.pages); !strings.Contains(text, tc.want) {
			t.Errorf("%s: %q is not said in %q", tc.name, tc.want, text)
		}
	}
}

// The goldens show in a review what a change does to a drawing. Set
// PULLSCORE_UPDATE=1 to write them anew, then look at them.
func TestGoldenStrips(t *testing.T) {
	for name, s := range map[string]*plan.Shot{"three-racks": plans.ThreeRacks(), "crowd": plans.Crowd(), "walk": plans.WalkAndDolly(), "both-ways": plans.BothWays()} {
		plans.CheckGolden(t, "strip-"+name, Strip(s, sheet.Options{}))
	}
}

// The tape shows the marks of the lens as they are engraved.
func TestStripsHaveTheEngravedMarks(t *testing.T) {
	s := plans.FeetLens(t)
	pages := Strip(s, sheet.Options{})
	for _, p := range pages {
		plans.CheckPage(t, "strip", p)
	}
	for _, want := range []string{"closest 1′8″ (50.8 cm)", "2′ (61 cm)", "20′ (6.1 m)"} {
		if text := plans.TextOf(pages); !strings.Contains(text, want) {
			t.Errorf("the strip has no %q: %q", want, text)
		}
	}
}
