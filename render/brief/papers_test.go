// What holds for all papers alike.

package brief

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"pullscore/interp"
	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/floor"
	"pullscore/render/ring"
	"pullscore/render/score"
	"pullscore/render/sheet"
	"pullscore/render/testing/plans"
)

// drawings are those that are made of every shot.
var drawings = []struct {
	name string
	draw func(*plan.Shot, sheet.Options) []*draw.Page
}{
	{"score", score.Score}, {"floor", floor.Draw}, {"strip", ring.Strip}, {"dial", ring.Dial},
}

// checkDrawn fails for every fault of a page, and for figures that are none.
func checkDrawn(t *testing.T, name string, page *draw.Page) {
	t.Helper()
	plans.CheckPage(t, name, page)
	doc := plans.SVGOf(t, page)
	for _, bad := range []string{"NaN", "Inf"} {
		if strings.Contains(doc, bad) {
			t.Errorf("%s holds %s", name, bad)
		}
	}
	if page.Title == "" || page.Desc == "" {
		t.Errorf("%s has no words for those who cannot see it", name)
	}
}

// Real plans: those of the examples, and those that are wrong on purpose. What
// the interpreter hands over is drawn without faults, whatever it is.
func TestPlansAreDrawnWithoutFaults(t *testing.T) {
	shots := 0
	for name, src := range plans.Real(t) {
		res := interp.Interpret(name, src, interp.Options{})
		for _, s := range res.Plan.Shots {
			for _, paper := range []sheet.Paper{sheet.A4, sheet.Letter} {
				for _, d := range drawings {
					for i, page := range d.draw(s, sheet.Options{Paper: paper}) {
						shots++
						checkDrawn(t, fmt.Sprintf("%s, shot %s, %s, page %d", name, s.ID, d.name, i+1), page)
					}
				}
			}
		}
	}
	if shots < 160 {
		t.Errorf("only %d pages were drawn", shots)
	}
}

// carriedBack returns a shot of a camera in the hand that someone walks towards.
func carriedBack() *plan.Shot {
	s := plans.New("1", "", 5).Put("A", 4, 0).Start("A").Walk("A", 2, 1, 3).Shot
	s.Support = "hand"
	return s
}

// Cautions stand on each paper that shows the work that they are for, on no
// other, and leave the decision to the people in charge.
func TestCautions(t *testing.T) {
	const (
		movingCaution    = "Moving camera: clear the path, one person watches the operator's back."
		backwardsCaution = "Walking backwards: that person does nothing else; walk the way once without the camera."
		walkingCaution   = "People move here: clear and light their ways."
		laserCaution     = "Where a laser meter takes the distances: never towards eyes; its class and local rules apply."
		chargeCaution    = "This is a plan, not permission: the people in charge and local rules decide."
	)
	all := []string{movingCaution, backwardsCaution, walkingCaution}
	back := plans.WalkAndDolly()
	for i := range back.Blocking {
		if b := &back.Blocking[i]; b.Kind == "dolly" {
			b.From, b.To = b.To, b.From
		}
	}
	for _, tc := range []struct {
		name string
		shot *plan.Shot
		want []string
	}{
		{"still", plans.OneRack(), nil},
		{"someone walks", plans.New("1", "", 5).Put("A", 4, 0).Start("A").Walk("A", 2, 1, 3).Shot, []string{walkingCaution}},
		{"dolly in", plans.WalkAndDolly(), []string{movingCaution}},
		{"dolly back", back, []string{movingCaution, backwardsCaution}},
		{"carried, somebody comes", carriedBack(), []string{movingCaution, backwardsCaution}},
	} {
		cover := CoverPages("", Cover([]*plan.Plan{{Shots: []*plan.Shot{tc.shot}}}, nil), sheet.Options{})
		var words []Passage // that are printed, with something besides the cautions
		words = append(words, Passage{Heading: "Rests", Sentences: []string{"None."}}, Passage{Heading: cautions, Sentences: sheet.Cautions(tc.shot)})
		papers := map[string][]*draw.Page{
			"cover": cover, "sheet": wordPages(tc.shot, words, sheet.Options{Paper: sheet.Letter}), "score": score.Score(tc.shot, sheet.Options{Paper: sheet.Letter}), "floor": floor.Draw(tc.shot, sheet.Options{}),
		}
		for name, pages := range papers {
			text := plans.TextOf(pages)
			for _, caution := range all {
				if got, want := strings.Contains(text, caution), slices.Contains(tc.want, caution); got != want {
					t.Errorf("%s, %s: %q stands there: %v, want %v", tc.name, name, caution, got, want)
				}
			}
			measured := name != "score"
			if got := strings.Contains(text, laserCaution); got != measured {
				t.Errorf("%s, %s: the caution for lasers stands there: %v, want %v", tc.name, name, got, measured)
			}
			if (measured || tc.want != nil) && !strings.Contains(text, chargeCaution) {
				t.Errorf("%s, %s: it does not say who decides", tc.name, name)
			}
			for _, p := range pages {
				plans.CheckPage(t, tc.name+", "+name, p)
			}
		}
	}
}

func TestSameShotSameBytes(t *testing.T) {
	draw := func() string {
		var all strings.Builder
		for _, s := range []*plan.Shot{plans.ThreeRacks(), plans.WalkAndDolly(), plans.Crowd(), plans.LongFindings()} {
			s.WheelMM = 80
			for _, p := range slices.Concat(score.Score(s, sheet.Options{}), floor.Draw(s, sheet.Options{}), ring.Strip(s, sheet.Options{}), ring.Dial(s, sheet.Options{})) {
				all.WriteString(plans.SVGOf(t, p))
			}
		}
		return all.String()
	}
	first := draw()
	local := time.Local
	defer func() { time.Local = local }()
	time.Local = time.FixedZone("elsewhere", -11*3600)
	t.Setenv("TZ", "Pacific/Apia")
	t.Setenv("LANG", "de_DE.UTF-8")
	t.Chdir(t.TempDir())
	if draw() != first {
		t.Error("the same shots gave other bytes")
	}
}

// The sheet of a shot says how far somebody may miss each mark, how often somebody is
// sharp while the focus rests and between what chances lie; the cover names the worst
// moment of each shot, which may be a rest.
func TestMomentsOnPapers(t *testing.T) {
	s := plans.ThreeRacks()
	s.WheelMM, s.Wanted = plan.None(), 0.9
	first := s.Pulls[0]
	first.Miss = &plan.Miss{SoftForward: 0.02, SoftBack: 0.022, SeenForward: 0.07, SeenBack: 0.08, Left: plan.None(), Right: 0.4, RingNear: -5.2, RingFar: 4.7}
	first.ChanceBand = plan.Interval{0.64, 0.91}
	s.Pulls[1].SharpShare, s.Pulls[1].WorstShare, s.Pulls[1].WorstAt = 0.9, 0.71, 2.4
	s.Rests = []plan.Rest{{Subject: "ANN", Start: 1, End: 3, Share: 0.35, Stays: 0.1, Sway: 0.008, Zone: plan.Interval{-0.004, 0.005}}}
	var said []string
	for _, p := range NewShot(s, "s1-1", sheet.Options{}).Sheet {
		said = append(said, p.Heading)
		for _, row := range p.Rows {
			said = append(said, row...)
		}
	}
	text := strings.Join(said, " ")
	for _, want := range []string{
		"How far somebody may miss the mark", "−2.0/+2.2 cm", "−7/+8 cm", "−5.2°", "+4.7°", "40 cm", "86 % (64–91)", "71 % 2.4 s",
		"Rests", "35 %", "10 %", "8 mm", "−4/+5 mm",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is missing on the sheet of the shot", want)
		}
	}
	shots := shotTable([]*plan.Plan{{Shots: []*plan.Shot{s}}}, nil)
	if !slices.Contains(shots.Rows[0], "rest on ANN at 1 s: sharp 35 %") {
		t.Errorf("the cover says %q", shots.Rows[0])
	}
}
