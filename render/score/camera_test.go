package score

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/sheet"
	"pullscore/render/signs"
	"pullscore/render/testing/plans"
)

// The shade lies where a turn and a rack overlap, and nowhere else.
func TestJointsAreWhereBothGo(t *testing.T) {
	joints := jointsOf(plans.PanAndRack())
	if len(joints) != 2 {
		t.Fatalf("%d joints", len(joints))
	}
	apart := plans.New("1", "", 9).Put("ADA", 2, 0.1).Put("BO", 3, 0.1).Start("ADA").
		Pan("BO", 10, 1, 2).Rack("BO", "", "", 2, 3).Pan("", 0, 4, 6).Follow("BO", 4, 6).Shot
	if joints := jointsOf(apart); len(joints) != 0 {
		t.Errorf("%v overlap nowhere", joints)
	}
	groups := 0
	for _, p := range Score(plans.PanAndRack(), sheet.Options{}) {
		eachGroup(&p.Root, func(g *draw.Group) {
			if g.Name == signs.Joint && g.Title != "" {
				groups++
			}
		})
	}
	if groups != 2 {
		t.Errorf("%d shades are drawn", groups)
	}
}

func eachGroup(g *draw.Group, do func(*draw.Group)) {
	do(g)
	for _, it := range g.Items {
		if sub, ok := it.(*draw.Group); ok {
			eachGroup(sub, do)
		}
	}
}

// Out of the picture is all of the shot in which the subject is not in it.
func TestOutIsTheRestOfIn(t *testing.T) {
	s := plans.PanAndRack()
	for _, u := range s.Subjects {
		outs := outOf(s, u)
		for at := 0.003; at < 10; at += 0.0137 {
			out := slices.ContainsFunc(outs, func(o [2]float64) bool { return o[0] < at && at < o[1] })
			near := slices.ContainsFunc(outs, func(o [2]float64) bool { return math.Abs(o[0]-at) < 0.01 || math.Abs(o[1]-at) < 0.01 })
			if in := s.FrameAt(u, at) != plan.OutOfFrame; in == out && !near {
				t.Errorf("%s at %g s: in %v, hatched %v", u.Name, at, in, out)
			}
		}
	}
	if outs := outOf(plans.WalkAndDolly(), plans.WalkAndDolly().Subjects[0]); outs != nil {
		t.Errorf("a camera on its axis hatches %v", outs)
	}
}

// A shot whose camera neither turns nor leaves its axis has no band of the camera.
func TestNoBandWithoutTurns(t *testing.T) {
	for name, s := range plans.Made() {
		has := strings.Contains(" "+plans.TextOf(Score(s, sheet.Options{}))+" ", " Camera ")
		if has != (s.Optics.Rig != nil) {
			t.Errorf("%s: the band is there: %v", name, has)
		}
	}
}

// The legend has room for all signs, on both papers.
func TestKeyHoldsEverySign(t *testing.T) {
	s := plans.PanAndRack()
	s.Pulls[0].Grips = []float64{2}
	for i, severity := range []string{"error", "warning", "note"} {
		s.Flags = append(s.Flags, plan.Flag{Number: i + 1, Severity: severity, Code: "hard-to-land", Text: "It is late.", Row: "hand", Time: 3})
	}
	for name, paper := range map[string]sheet.Paper{"A4": sheet.A4, "Letter": sheet.Letter} {
		pages := Score(s, sheet.Options{Paper: paper})
		plans.CheckPage(t, name, pages[0])
		on, in := signs.On(&pages[0].Root), signs.InLegend(&pages[0].Root)
		same := func(a, b signs.Sign) bool { return a.Name == b.Name }
		if len(on) < 10 || !slices.EqualFunc(on, in, same) {
			t.Errorf("%s: %d signs on the page, %d in the legend", name, len(on), len(in))
		}
	}
}

// A subject is marked as behind somebody where the plan says so and the picture has it.
func TestBehindIsInThePicture(t *testing.T) {
	s := plans.Scene().Shots[0] // PEVIN is in the picture until 5.83 s
	u := s.Subject("PEVIN")
	u.Blocked = []plan.Interval{{2, 3}, {5, 9}}
	list := behind(s, u)
	if len(list) != 2 || list[0] != [2]float64{2, 3} || list[1] != [2]float64{5, float64(u.InFrame[0][1])} {
		t.Errorf("behind somebody %v, in the picture %v", list, u.InFrame)
	}
	marks := 0
	for _, p := range Score(s, sheet.Options{}) {
		plans.CheckPage(t, "behind", p)
		eachGroup(&p.Root, func(g *draw.Group) {
			if g.Name == signs.Blocked {
				marks++
			}
		})
	}
	if marks != len(list)+1 { // and the one of the legend
		t.Errorf("%d marks", marks)
	}
	if behind(s, s.Subject("LETTER")) != nil {
		t.Error("nobody is in the way of the letter")
	}
}

// A placed camera has its findings where there is a row for them, and its pan as the floor
// of the scene has it.
func TestPlacedCamera(t *testing.T) {
	for _, s := range plans.Scene().Shots[:2] {
		s.Flags = []plan.Flag{{Number: 1, Severity: "warning", Code: "sees-camera", Text: "It sees a camera.", Row: "camera", Time: 2}}
		page := Score(s, sheet.Options{})[0]
		plans.CheckPage(t, s.ID, page)
		text := plans.SVGOf(t, page)
		if id := `id="` + draw.ID(s.ID, "flag", "a") + `"`; !strings.Contains(text, id) {
			t.Errorf("%s: the finding has no flag", s.ID)
		}
		for _, want := range []string{">Camera<", ">21°<", ">82 cm, peak 0.8 m/s<"} {
			if strings.Contains(text, want) != (s.ID == "18A") {
				t.Errorf("%s: %s is there: %v", s.ID, want, strings.Contains(text, want))
			}
		}
	}
}
