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
	"pullscore/render/sheet"
	"pullscore/render/svg"
	"pullscore/render/testing/plans"
)

func TestScoresAreClean(t *testing.T) {
	for name, s := range plans.Made() {
		plans.Held(s, "wheel")
		for size, paper := range map[string]sheet.Paper{"A4": sheet.A4, "Letter": sheet.Letter} {
			pages := Score(s, sheet.Options{Paper: paper})
			for i, p := range pages {
				plans.CheckPage(t, fmt.Sprintf("%s, %s, page %d", name, size, i+1), p)
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
		paper := rapid.SampledFrom([]sheet.Paper{sheet.A4, sheet.Letter}).Draw(t, "paper")
		for i, p := range Score(s, sheet.Options{Paper: paper}) {
			plans.CheckPage(t, fmt.Sprintf("page %d", i+1), p)
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
			for _, r := range w.Rows() {
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

func standsAt(r *bands.Row, said int, x float64) bool {
	for _, run := range r.Runs {
		if run.Said == said && run.Hangs && math.Abs(run.X-x) < 1e-6 {
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
		b := bands.DistanceBand{Leaf: sc.Sheets[0], Top: 50, Height: 60}
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

// Every moment belongs on exactly one sheet, and no sheet shows more than it
// has room for.
func TestTimeIsCutWithoutGaps(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := plans.Draw(t)
		cuts := bands.CutTime(s)
		if cuts[0] != 0 || cuts[len(cuts)-1] != float64(s.Duration) {
			t.Fatalf("cut from %v to %v, the shot lasts %v", cuts[0], cuts[len(cuts)-1], s.Duration)
		}
		for i := 1; i < len(cuts); i++ {
			if cuts[i] <= cuts[i-1] || cuts[i]-cuts[i-1] > bands.SheetSeconds*1.5 {
				t.Fatalf("a sheet from %v to %v", cuts[i-1], cuts[i])
			}
		}
		sc := bands.NewChart(s, sheet.A4)
		at := rapid.Float64Range(0, float64(s.Duration)).Draw(t, "at")
		n := 0
		for _, w := range sc.Windows {
			if w.Holds(at) {
				n++
			}
		}
		if n != 1 {
			t.Fatalf("%v s is on %d sheets", at, n)
		}
	})
}

func TestSheetsAreCutWhereItIsQuiet(t *testing.T) {
	m := plans.New("1", "", 30).Put("A", 1, 0).Put("B", 2, 0).Start("A").Rack("B", "", "", 14.5, 15.7).Line("A", "one two", 15.5, 16.5)
	if cuts := bands.CutTime(m.Shot); len(cuts) != 3 || cuts[1] != 14 && cuts[1] != 17 {
		t.Errorf("cut at %v, want 14 or 17", cuts)
	}
}

func TestDescription(t *testing.T) {
	pages := Score(plans.ThreeRacks(), sheet.Options{})
	want := "Shot 14B Nadia hears the door, 11.9 s long, against time: 2 spoken lines, 1 cue, 3 subjects and 4 moves of the focus, with 3 findings, the worst (error): The focus leaves OTTO within his line."
	if pages[0].Desc != want {
		t.Errorf("the description is %q", pages[0].Desc)
	}
	if pages[0].Title != "14B Nadia hears the door: score" {
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
	s := plans.New("1", "", 10).Put("A", 1, 0).Start("A").Line("A", "well *incomprehensibilities", 9.3, 9.99).Cue("incomprehensibilities", 9.98).
		Rack("A", "on incomprehensibilities", "", 9.8, 9.9).Shot
	w := bands.NewChart(s, sheet.A4).Windows[0]
	for _, r := range w.Rows() {
		heavy := 0
		for _, run := range r.Runs {
			if run.Hangs {
				heavy++
				if run.Full != "incomprehensibilities" {
					t.Errorf("%s: %q is short for %q", r.Name, run.String(), run.Full)
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

// Every finding is told on some page, once; a page whose findings are told
// elsewhere says where.
func TestEveryFindingIsToldOnce(t *testing.T) {
	for name, s := range plans.Made() {
		for size, paper := range map[string]sheet.Paper{"A4": sheet.A4, "Letter": sheet.Letter} {
			sc := bands.NewChart(s, paper)
			compose(sc)
			told := map[int]int{} // number to page
			for i, sh := range sc.Sheets {
				for _, p := range sh.Strips {
					for _, n := range p.Flags {
						if told[n] != 0 {
							t.Errorf("%s, %s: finding %d is told twice", name, size, n)
						}
						told[n] = i + 1
					}
				}
			}
			for _, f := range s.Flags {
				if told[f.Number] == 0 {
					t.Errorf("%s, %s: finding %d is not told", name, size, f.Number)
				}
			}
			for i, sh := range sc.Sheets {
				for _, f := range s.Flags {
					on := told[f.Number]
					if sh.Window != nil && sh.Window.Holds(f.Time) && on != i+1 && !slices.Contains(sh.ToldOn(i+1), on) {
						t.Errorf("%s, %s, page %d does not say that finding %d is told on page %d", name, size, i+1, f.Number, on)
					}
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
