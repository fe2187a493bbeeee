package score

import (
	"bytes"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/score/bands"
	"pullscore/render/score/lines"
	"pullscore/render/sheet"
	"pullscore/render/signs"
	"pullscore/render/svg"
	"pullscore/render/testing/drawtest"
	"pullscore/render/testing/plans"
)

func TestScoresAreClean(t *testing.T) {
	for name, s := range plans.Made() {
		plans.Held(s, "wheel")
		for size, paper := range map[string]sheet.Paper{"A4": sheet.A4, "Letter": sheet.Letter} {
			pages := Score(s, sheet.Options{Paper: paper})
			plans.CheckPaper(t, name+", "+size, sheet.Names(s), pages)
			for i, p := range pages {
				if doc := plans.SVGOf(t, p); len(doc) > 200_000 {
					t.Errorf("%s: page %d has %d bytes", name, i+1, len(doc))
				}
			}
		}
	}
}

func TestGeneratedScoresAreClean(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := plans.Draw(t)
		if rapid.Bool().Draw(t, "held") {
			plans.Held(s, rapid.SampledFrom([]string{"ring", "wheel"}).Draw(t, "on"))
		}
		if rapid.Bool().Draw(t, "cut") {
			plans.DrawCut(t, s)
		}
		paper := rapid.SampledFrom([]sheet.Paper{sheet.A4, sheet.Letter}).Draw(t, "paper")
		pages := Score(s, sheet.Options{Paper: paper})
		plans.CheckPaper(t, "score", sheet.Names(s), pages)
		for _, p := range pages {
			plans.SVGOf(t, p)
		}
	})
}

// A word that a move hangs on stands exactly at its time, whatever else has to
// give way.
func TestWeightyWordsStandAtTheirTime(t *testing.T) {
	for name, s := range plans.Made() {
		sc := bands.NewChart(s, sheet.A4)
		for _, w := range sc.Windows {
			for _, r := range lines.Rows(w) {
				for i, u := range r.Said {
					for _, word := range u.Words {
						if !word.Hangs || u.Cue || !w.Holds(word.Start) {
							continue
						}
						if !standsAt(r, i, w.X(word.Start)) {
							t.Errorf("%s: %q of %s does not stand at %.2f s", name, word.Text, r.Name, word.Start)
						}
					}
				}
			}
		}
	}
}

func standsAt(r *lines.Row, said int, x float64) bool {
	for _, run := range r.Runs {
		if run.Said == said && run.Hangs && math.Abs(run.X()-x) < 0.05 {
			return true
		}
	}
	return false
}

// No word is lost: what is not on the row is in the title that goes with it.
func TestTitlesHoldTheWholeText(t *testing.T) {
	s := plans.FastTalk()
	var doc strings.Builder
	for _, p := range Score(s, sheet.Options{}) {
		doc.WriteString(plans.SVGOf(t, p))
	}
	for _, l := range s.Lines {
		if !strings.Contains(doc.String(), ": "+l.Text) {
			t.Errorf("%q is nowhere whole", l.Text)
		}
	}
}

// Depth of field is even in 1/distance: with a depth of field that is small
// against the distance, its near and far half are drawn alike, near or far.
func TestDistancesAreEvenInTheirReciprocal(t *testing.T) {
	d := bands.DepthScale{Far: 0, Near: 2}
	for _, tc := range []struct{ metres, want float64 }{
		{math.Inf(1), 10}, {0.5, 110}, {1, 60}, {2, 35}, {0.1, 110}, {-1, 110},
	} {
		if got := d.Y(tc.metres, 10, 100); math.Abs(got-tc.want) > 1e-9 {
			t.Errorf("%v m stands at %v, want %v", tc.metres, got, tc.want)
		}
	}
}

func TestTicksAreRoundAndInRange(t *testing.T) {
	for name, s := range plans.Made() {
		sc := bands.NewChart(s, sheet.A4)
		sc.Lay(sc.Windows[0], bandsOf(sc.Windows[0]))
		b := bands.DistanceBand{Leaf: sc.Sheets[0].Leaves[0], Top: 50, Height: 60}
		ticks := b.Ticks()
		if len(ticks) == 0 {
			t.Errorf("%s: no distance is written", name)
		}
		for _, m := range ticks {
			if 1/m < sc.Depth.Far-1e-9 || 1/m > sc.Depth.Near+1e-9 {
				t.Errorf("%s: %v m is out of range", name, m)
			}
		}
	}
}

// Every moment belongs on exactly one window, and all windows have one scale of time,
// which is one of the ladder.
func TestTimeIsCutWithoutGaps(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := plans.Draw(t)
		paper := rapid.SampledFrom([]sheet.Paper{sheet.A4, sheet.Letter}).Draw(t, "paper")
		sc := bands.NewChart(s, paper)
		if !slices.Contains([]float64{160, 120, 80, 60, 40, 30, 25, 20}, sc.PerSecond) {
			t.Fatalf("%v mm a second", sc.PerSecond)
		}
		at := rapid.Float64Range(0, float64(s.Duration)).Draw(t, "at")
		n := 0
		for _, w := range sc.Windows {
			if w.Right > paper.W-27+1e-6 {
				t.Fatalf("a window reaches to %v mm", w.Right)
			}
			if w.Holds(at) {
				n++
			}
		}
		if n != 1 {
			t.Fatalf("%v s is on %d windows", at, n)
		}
	})
}

// All pages have one scale of time, and together they show the whole shot.
func TestPagesShareTheirScale(t *testing.T) {
	for name, s := range plans.Made() {
		end := 0.0
		for _, p := range Score(s, sheet.Options{}) {
			for _, span := range p.Spans {
				if scale := (span.Right - span.Left) / (span.To - span.From); !span.Narrow && math.Abs(scale-bands.NewChart(s, sheet.A4).PerSecond) > 1e-9 {
					t.Errorf("%s: %v mm a second", name, scale)
				}
				if span.From > end+1e-9 {
					t.Errorf("%s: nothing shows %v to %v s", name, end, span.From)
				}
				end = max(end, span.To)
			}
		}
		if math.Abs(end-bands.Lasting(s)) > 1e-9 {
			t.Errorf("%s: the pages end at %v s", name, end)
		}
	}
}

// No blue line runs along an edge of the band of distances, and where the zone goes on
// beyond it for long there is a sign.
func TestZonesHaveNoLimitAtTheEdge(t *testing.T) {
	for name, s := range plans.Made() {
		sc := bands.NewChart(s, sheet.A4)
		compose(sc)
		for _, w := range sc.Windows {
			b := bands.DistanceBand{Leaf: &bands.Leaf{Chart: sc, Window: w}, Top: 50, Height: 60}
			for _, run := range b.Limits() {
				for _, p := range run {
					if p.Y < 50.01 || p.Y > 109.99 {
						t.Errorf("%s: a limit at %v", name, p)
					}
				}
			}
			var g draw.Group
			b.DrawZone(&g)
			edges := 0
			for it := range g.All() {
				if sub, ok := it.(*draw.Group); ok && sub.Name == "edge" {
					edges++
				}
			}
			if far := w.EdgeRoom(true) > 0; far != (edges > 0) && w.EdgeRoom(false) == 0 {
				t.Errorf("%s: %d signs of a zone that goes on", name, edges)
			}
		}
	}
}

func TestDescription(t *testing.T) {
	pages := Score(plans.ThreeRacks(), sheet.Options{})
	want := "Shot 14B Nadia hears the door, 11.9 s long, against time: 2 spoken lines, 1 cue, 3 subjects and 4 moves of the focus, with 3 findings, the worst (error): The focus leaves OTTO within his line."
	if pages[0].Desc != want {
		t.Errorf("the description is %q", pages[0].Desc)
	}
	if pages[0].Title != "14B Nadia hears the door: score, page 1 of 2" {
		t.Errorf("the title is %q", pages[0].Title)
	}
	if got := Score(plans.OneRack(), sheet.Options{})[0].Desc; !strings.Contains(got, "with no findings; not judged: when one line is said (estimated)") {
		t.Errorf("the description is %q", got)
	}
}

// Every finding is told in full, on whatever page.
func TestFindingsAreNeverCut(t *testing.T) {
	s := plans.LongFindings()
	var told strings.Builder
	for _, p := range Score(s, sheet.Options{}) {
		for _, side := range []bool{true, false} { // the left column, then the right
			for it := range p.Root.All() {
				if text, ok := it.(draw.Text); ok && text.Font == sheet.FontNote && (text.At.X < p.W/2) == side {
					told.WriteString(strings.ReplaceAll(text.String, " ", ""))
				}
			}
		}
	}
	if want := strings.Repeat("unbreakable", 40); !strings.Contains(told.String(), want) {
		t.Error("a long word is cut")
	}
	for _, f := range s.Flags {
		if want := strings.ReplaceAll(f.Text, " ", ""); !strings.Contains(told.String(), want) {
			t.Errorf("finding %d is cut: %q", f.Number, f.Text)
		}
	}
}

func BenchmarkScore(b *testing.B) {
	s := plans.ThreeRacks()
	b.ReportAllocs()
	for b.Loop() {
		for _, p := range Score(s, sheet.Options{}) {
			var buf bytes.Buffer
			if err := svg.Write(&buf, p); err != nil {
				b.Fatal(err)
			}
		}
	}
}

// Also a long word that falls right before the edge of the page stands where it
// falls: it is shortened, and whole in its title.
func TestWeightyWordAtTheEdge(t *testing.T) {
	long := strings.Repeat("incomprehensibilities", 3)
	s := plans.New("1", "", 10).Put("A", 1, 0).Start("A").Line("A", "well *"+long, 9.3, 9.99).Cue(long, 9.98).
		Rack("A", "on "+long, "", 9.8, 9.9).Shot
	w := bands.NewChart(s, sheet.A4).Windows[0]
	for _, r := range lines.Rows(w) {
		heavy := 0
		for _, run := range r.Runs {
			if run.Hangs {
				heavy++
				if run.Full() != long {
					t.Errorf("%s: %q is short for %q", r.Name, run.String(), run.Full())
				}
			}
		}
		if heavy != 1 {
			t.Errorf("%s: %d weighty words, want 1", r.Name, heavy)
		}
	}
	for _, p := range Score(s, sheet.Options{}) {
		plans.CheckPage(t, "edge", p)
	}
}

// The notes of a plan stand on the first sheet to scale, and the cures tried together below
// the findings.
func TestNotesAndCuresAreTold(t *testing.T) {
	s := plans.ThreeRacks()
	s.Notes = []string{"WATCH THE BOOM", strings.Repeat("nobody steps on the tape ", 20)}
	s.Together = []plan.Tried{{Cure: "stop f/4", Leaves: 1}}
	pages := Score(s, sheet.Options{})
	for i, p := range pages {
		plans.CheckPage(t, fmt.Sprintf("page %d", i+1), p)
	}
	text := plans.TextOf(pages)
	for _, want := range []string{"Notes WATCH THE BOOM", "Tried together:", s.SaysTogether()} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in %q", want, text)
		}
	}
	if n := strings.Count(text, "Tried together"); n != 1 {
		t.Errorf("what was tried together stands there %d times", n)
	}
}

// Every link of a score leads somewhere, and every letter that a flag has is told.
func TestLinksLeadSomewhere(t *testing.T) {
	for name, s := range plans.Made() {
		for _, fault := range drawtest.Links(Score(s, sheet.Options{})) {
			t.Errorf("%s: %s", name, fault)
		}
	}
}

// Letters go down the page as they go along time, whatever columns they stand in.
func TestLettersAscendWithTime(t *testing.T) {
	for name, s := range plans.Made() {
		last := -1.0
		for _, l := range s.Lettered() {
			at := math.Inf(1)
			for _, n := range l.Flags {
				at = min(at, s.Flags[n-1].Time)
			}
			if at < last {
				t.Errorf("%s: %s lies before the letter before it", name, l.Letter)
			}
			last = at
		}
	}
}

// Every finding is told on some page, once.
func TestEveryFindingIsToldOnce(t *testing.T) {
	for name, s := range plans.Made() {
		for size, paper := range map[string]sheet.Paper{"A4": sheet.A4, "Letter": sheet.Letter} {
			sc := bands.NewChart(s, paper)
			compose(sc)
			told := map[int]int{} // number to how often
			for _, sh := range sc.Sheets {
				for _, lf := range sh.Leaves {
					for _, p := range lf.Strips {
						for _, n := range p.Flags {
							told[n]++
						}
					}
				}
			}
			for _, f := range s.Flags {
				if told[f.Number] != 1 {
					t.Errorf("%s, %s: finding %d is told %d times", name, size, f.Number, told[f.Number])
				}
			}
		}
	}
}

// Every place of one name has its distance in the band of the hand.
func TestPlacesOfOneNameHaveTheirDistance(t *testing.T) {
	walks := plans.New("2", "", 12).Put("NADIA", 1.7, 0.04).Put("DOOR", 5.2, 0.3).Start("DOOR").
		Rack("NADIA", "", "", 1, 2).Walk("NADIA", 3.2, 3, 5).Rack("NADIA", "", "", 6, 7)
	text := plans.TextOf(Score(walks.Shot, sheet.Options{}))
	for _, want := range []string{"222° · 1.7 m", "274° · 3.2 m"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in %q", want, text)
		}
	}
}

// The goldens show in a review what a change does to a drawing. Set
// PULLSCORE_UPDATE=1 to write them anew, then look at them.
func TestGoldenScores(t *testing.T) {
	for name, s := range map[string]*plan.Shot{"three-racks": plans.ThreeRacks(), "crowd": plans.Crowd(), "walk": plans.WalkAndDolly(), "pan-and-rack": plans.PanAndRack(), "all-ways": plans.AllWays()} {
		plans.CheckGolden(t, "score-"+name, Score(s, sheet.Options{}))
	}
}

// What a page marks together can be found by its number: every finding has its flag and its
// sentence, every pull its disc and its row, and a window where it lands in
// one; none where the cut does not have it.
func TestEveryPartHasItsNumber(t *testing.T) {
	for name, s := range plans.Made() {
		numbers := map[string]map[int]bool{}
		for _, p := range Score(s, sheet.Options{}) {
			for it := range p.Root.All() {
				if g, ok := it.(*draw.Group); ok && g.Number > 0 {
					if numbers[g.Name] == nil {
						numbers[g.Name] = map[int]bool{}
					}
					numbers[g.Name][g.Number] = true
				}
			}
		}
		for _, f := range s.Flags {
			if !numbers["sentence"][f.Number] || !numbers["finding"][f.Number] {
				t.Errorf("%s: finding %d has no sentence or no flag", name, f.Number)
			}
		}
		for _, p := range s.Pulls {
			if !numbers["pull-row"][p.Number] {
				t.Errorf("%s: pull %d has no row", name, p.Number)
			}
			w, drawn := p.WindowHand, numbers[signs.Window][p.Number] || numbers[signs.Narrow][p.Number]
			if lands := w[0].Known() && w[1].Known() && p.Kind == "rack" && s.Optics.Ring != nil && !p.IsRemoved(); lands != drawn && (lands || p.IsRemoved()) {
				t.Errorf("%s: pull %d has a window: %v", name, p.Number, drawn)
			}
		}
	}
}
