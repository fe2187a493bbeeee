package ring

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/marks"
	"pullscore/render/sheet"
	"pullscore/render/testing/drawtest"
	"pullscore/render/testing/plans"
)

// papers are the sheet and its two parts.
var papers = map[string]func(*plan.Shot, sheet.Options) []*draw.Page{"ring": Ring, "strip": Strip, "dial": Dial}

type failer interface {
	Helper()
	Errorf(string, ...any)
	Fatalf(string, ...any)
}

// check fails for everything that breaks the grammar of papers.
func check(t failer, name string, pages []*draw.Page) {
	t.Helper()
	for i, p := range pages {
		for _, faults := range [][]string{drawtest.Strict(p), drawtest.Signs(p), drawtest.Units(p)} {
			for _, f := range faults {
				t.Errorf("%s, page %d: %s", name, i+1, f)
			}
		}
		plans.SVGOf(t, p)
	}
	for _, f := range drawtest.Links(pages) {
		t.Errorf("%s: %s", name, f)
	}
	for _, part := range slices.Concat(groups(pages, "piece"), groups(pages, "disc")) {
		keepsOff(t, name, part)
	}
}

// keepsOff fails where a name on a tape or a disc, as wide as it may come out, lies on the
// line of a mark, its own or another's, or on a stop of the ring. On a tape no name even
// stands under such a line.
func keepsOff(t failer, name string, part *draw.Group) {
	t.Helper()
	var lines []draw.Line
	for _, of := range []string{"mark", "stop"} {
		for _, g := range within(part, of) {
			for it := range g.All() {
				if l, ok := it.(draw.Line); ok {
					lines = append(lines, l)
				}
			}
		}
	}
	for _, g := range within(part, "label") {
		for it := range g.All() {
			text, ok := it.(draw.Text)
			if !ok {
				continue
			}
			level := text.Wide()
			level.Turn = 0
			room := level.Box()
			for _, l := range lines {
				if part.Name == "piece" {
					room.Y, room.H = 0, 1000
				}
				for i := range 21 {
					share := float64(i) / 20
					at := text.Level(draw.Point{X: l.From.X + share*(l.To.X-l.From.X), Y: l.From.Y + share*(l.To.Y-l.From.Y)})
					if room.Holds(draw.Box{X: at.X, Y: at.Y}) && !alongside(part, l) {
						t.Errorf("%s: %q lies on or under the line at %.1f of a mark or stop", name, text.String, l.From)
						break
					}
				}
			}
		}
	}
}

// alongside reports whether a line runs along a tape: what joins the two lines of a mark.
func alongside(part *draw.Group, l draw.Line) bool {
	return part.Name == "piece" && l.From.Y == l.To.Y
}

// within returns the groups of a name in a group.
func within(part *draw.Group, name string) (list []*draw.Group) {
	for it := range part.All() {
		if g, ok := it.(*draw.Group); ok && g.Name == name {
			list = append(list, g)
		}
	}
	return list
}

func TestSheetsAreClean(t *testing.T) {
	for name, s := range plans.Made() {
		for _, wheel := range []plan.Number{0, 80, 120} {
			if s.WheelMM = wheel; wheel > 0 {
				plans.Held(geared(s, wheel, 1.1), "wheel")
			}
			for size, paper := range map[string]sheet.Paper{"A4": sheet.A4, "Letter": sheet.Letter} {
				for kind, pages := range papers {
					check(t, fmt.Sprintf("%s, %s, %s, wheel %v", kind, name, size, wheel), pages(s, sheet.Options{Paper: paper}))
				}
			}
		}
	}
}

func TestGeneratedSheetsAreClean(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := plans.Draw(t)
		s.Optics.Diameter = rapid.SampledFrom([]float64{0.02, 0.05, 0.08, 0.114, 0.3, math.NaN()}).Draw(t, "diameter")
		s.Optics.TurnsTo = rapid.SampledFrom([]string{"", "left", "right"}).Draw(t, "turns")
		s.Optics.Marked = rapid.Bool().Draw(t, "marked")
		geared(s, plan.Number(rapid.SampledFrom([]float64{0, 10, 40, 80, 110, 1000}).Draw(t, "wheel")),
			plan.Number(rapid.SampledFrom([]float64{0.05, 0.5, 1, 1.5, 4, 20}).Draw(t, "gear")))
		if rapid.Bool().Draw(t, "play") {
			s.Ring = plans.Play(rapid.Float64Range(0, 60).Draw(t, "degrees"))
		}
		if rapid.Bool().Draw(t, "held") {
			plans.Held(s, "wheel")
		}
		paper := rapid.SampledFrom([]sheet.Paper{sheet.A4, sheet.Letter}).Draw(t, "paper")
		check(t, "generated", Ring(s, sheet.Options{Paper: paper}))
	})
}

// Marks from 0.2 to 20 degrees apart, up to twelve of them, with names of up to 24
// letters, are told apart on all that is cut out: by name, by letter, or in words.
func TestCloseMarksAreClean(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := plans.New("9", "Close", 30)
		n := rapid.IntRange(1, 12).Draw(t, "subjects")
		deg := rapid.Float64Range(0, 100).Draw(t, "first")
		for i := range n {
			name := rapid.StringOfN(rapid.SampledFrom([]rune("ABELMNOW ЖΩ凪")), 1, 24, -1).Draw(t, "name")
			m.Put(fmt.Sprintf("%s%d", draw.Clean(name), i), m.Optics.Ring.Distance(deg), 0.05)
			deg = min(deg+math.Exp(rapid.Float64Range(math.Log(0.2), math.Log(20)).Draw(t, "apart")), 309)
		}
		m.Start(m.Subjects[0].Name)
		for i, u := range m.Subjects[1:] {
			if rapid.IntRange(0, 3).Draw(t, "pulled") > 0 {
				m.Rack(u.Name, "", "", float64(2*i), float64(2*i+1))
			}
		}
		geared(m.Shot, 80, plan.Number(rapid.SampledFrom([]float64{0.75, 1, 3}).Draw(t, "gear")))
		paper := rapid.SampledFrom([]sheet.Paper{sheet.A4, sheet.Letter}).Draw(t, "paper")
		check(t, "close", Ring(m.Shot, sheet.Options{Paper: paper}))
	})
}

// Whatever a lens lacks is said on the sheet, and the rest is drawn.
func TestSheetsSayWhatIsMissing(t *testing.T) {
	unmarked, undated, small := plans.OneRack(), plans.OneRack(), plans.OneRack()
	unmarked.Optics.Marked = false
	undated.Optics.Diameter, undated.WheelMM = math.NaN(), 80
	small.WheelMM = 20
	unknown := plans.NoRing()
	unknown.Ring = &plan.Ring{Kind: plan.UnknownRing}
	for _, tc := range []struct {
		name, want  string
		shot        *plan.Shot
		tape, discs int // drawn
	}{
		{"all", "Tape for the ring", wheeled(plans.OneRack()), 1, 2},
		{"computed law", "BY LAW, NOT MEASURED", unmarked, 2, 0},
		{"no diameter", "needs the ring's diameter", undated, 0, 2},
		{"no wheel", "no hand wheel", plans.OneRack(), 1, 0},
		{"small wheel", "too small for a disc", small, 1, 0},
		{"by wire", "no mark on it repeats", plans.NoRing(), 0, 0},
		{"unknown", "Nothing says how far its ring turns", unknown, 0, 0},
	} {
		pages := Ring(tc.shot, sheet.Options{})
		if text := plans.TextOf(pages); !strings.Contains(text, tc.want) {
			t.Errorf("%s: %q is not said in %q", tc.name, tc.want, text)
		}
		if tape, discs := len(groups(pages, "piece")), len(groups(pages, "disc")); tape != tc.tape || discs != tc.discs {
			t.Errorf("%s: %d pieces of tape and %d discs, want %d and %d", tc.name, tape, discs, tc.tape, tc.discs)
		}
		if rows := plans.TextOf(pages); !strings.Contains(rows, "Marks, far to near") {
			t.Errorf("%s: no table", tc.name)
		}
	}
}

// geared puts a wheel and a gear onto a shot that was made without.
func geared(s *plan.Shot, wheel, gear plan.Number) *plan.Shot {
	s.WheelMM = wheel
	for _, p := range s.Pulls {
		for i := range p.WindowHand {
			p.WindowHand[i] *= gear / s.Gear
		}
	}
	s.Gear = gear
	return s
}

func wheeled(s *plan.Shot) *plan.Shot {
	s.WheelMM = 80
	return s
}

// groups returns all groups of a name on pages.
func groups(pages []*draw.Page, name string) (list []*draw.Group) {
	for _, p := range pages {
		for it := range p.Root.All() {
			if g, ok := it.(*draw.Group); ok && g.Name == name {
				list = append(list, g)
			}
		}
	}
	return list
}

// The parts have the same tape, and the same discs, as the whole.
func TestPartsAreThoseOfTheSheet(t *testing.T) {
	s := wheeled(plans.Crowd())
	for _, tc := range []struct {
		name     string
		part     []*draw.Page
		has, not string
	}{{"strip", Strip(s, sheet.Options{}), "piece", "disc"}, {"dial", Dial(s, sheet.Options{}), "disc", "piece"}} {
		whole := groups(Ring(s, sheet.Options{}), tc.has)
		if got := groups(tc.part, tc.has); len(got) != len(whole) || len(got) == 0 {
			t.Errorf("%s: %d of %q, the sheet has %d", tc.name, len(got), tc.has, len(whole))
		}
		if got := groups(tc.part, tc.not); len(got) > 0 {
			t.Errorf("%s has %q", tc.name, tc.not)
		}
	}
}

// The line of provenance stands on all three, in the words that lists have.
func TestSheetsSayWhereTheMarksComeFrom(t *testing.T) {
	for name, s := range plans.Made() {
		s.Ring = plans.Play(0)
		for kind, pages := range papers {
			if text := plans.TextOf(pages(s, sheet.Options{})); s.Optics.Ring != nil && !strings.Contains(text, ": measured, ") {
				t.Errorf("%s of %s does not say where its marks come from", kind, name)
			}
		}
	}
}

// A mark to be set by eye is dashed, has its sign, and is told of.
func TestMarksByEye(t *testing.T) {
	s := wheeled(plans.ThreeRacks())
	s.Optics.Marked = false
	pages := Ring(s, sheet.Options{})
	n := 0
	for _, g := range groups(pages, "mark") {
		for it := range g.All() {
			if l, ok := it.(draw.Line); ok {
				if n++; !l.Stroke.MeansSomething() || len(l.Stroke.Dash) == 0 {
					t.Errorf("a mark by law is drawn with %v", l.Stroke)
				}
			}
		}
	}
	if want := 3 * len(marks.Of(s)); n != want {
		t.Errorf("%d dashed lines, want %d: one on the tape and one on either disc", n, want)
	}
	if text := plans.TextOf(pages); !strings.Contains(text, "~ NADIA") || !strings.Contains(text, "~ set by eye") {
		t.Errorf("marks by eye are not told: %q", text)
	}
}

func TestLetters(t *testing.T) {
	for i, want := range map[int]string{0: "a", 25: "z", 26: "aa", 51: "az", 52: "ba", 701: "zz", 702: "aaa"} {
		if got := letter(i); got != want {
			t.Errorf("letter %d is %q, want %q", i, got, want)
		}
	}
}

// The goldens show in a review what a change does to a drawing. Set PULLSCORE_UPDATE=1 to
// write them anew, then look at them.
func TestGoldenRings(t *testing.T) {
	for name, s := range map[string]*plan.Shot{"three-racks": plans.ThreeRacks(), "crowd": plans.Crowd(), "both-ways": plans.BothWays()} {
		plans.CheckGolden(t, "ring-"+name, Ring(geared(s, 80, 0.75), sheet.Options{}))
	}
	s := plans.WalkAndDolly()
	plans.CheckGolden(t, "ring-walk", Ring(s, sheet.Options{}))
	plans.CheckGolden(t, "dial-spiral", Dial(geared(plans.ThreeRacks(), 80, 2.5), sheet.Options{}))
}
