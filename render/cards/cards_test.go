package cards

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pullscore/interp"
	"pullscore/interp/plan"
	"pullscore/lang/testing/cases"
	"pullscore/render/draw"
	"pullscore/render/sheet"
	"pullscore/render/signs"
	"pullscore/render/testing/drawtest"
	"pullscore/render/testing/plans"
)

// papers are both papers of this package.
var papers = map[string]func(*plan.Shot, sheet.Options) []*draw.Page{"tolerance": Tolerance, "log": Log}

// missable fills in how far somebody may miss each mark, plausible and not computed.
func missable(s *plan.Shot, figure func(lo, hi float64) plan.Number) *plan.Shot {
	one := func() *plan.Miss {
		soft, back := figure(0, 0.3), figure(0, 0.4)
		m := &plan.Miss{SoftForward: soft, SoftBack: back, SeenForward: soft + figure(0, 0.5), SeenBack: back + figure(0, 0.5),
			Left: plan.None(), Right: plan.None(), RingNear: -figure(0, 120), RingFar: figure(0, 120)}
		if figure(0, 1) < 0.7 {
			m.Left, m.Right = figure(0, 9), figure(0, 9)
		}
		if figure(0, 1) < 0.1 {
			m.SoftBack, m.SeenBack, m.RingFar = plan.Number(math.Inf(1)), plan.Number(math.Inf(1)), plan.None()
		}
		return m
	}
	if s.Optics.Start.Name != "" {
		s.Start = plan.Start{To: s.Optics.Start.Name, Target: s.Optics.Start.Text, M: s.Subject(s.Optics.Start.Name).Distance, Miss: one()}
	}
	for _, p := range s.Pulls {
		if p.To != "" {
			p.Miss = one()
		}
	}
	return s
}

// checkCard fails for every fault of a page.
func checkCard(t interface {
	Helper()
	Errorf(string, ...any)
}, name string, p *draw.Page) {
	t.Helper()
	for _, list := range [][]string{drawtest.Faults(p), drawtest.Strict(p), drawtest.Signs(p), drawtest.Units(p)} {
		for _, fault := range list {
			t.Errorf("%s: %s", name, fault)
		}
	}
}

// Real plans are drawn without faults in both sizes, and no figure is none.
func TestRealCardsAreClean(t *testing.T) {
	pages := 0
	for name, src := range plans.Real(t) {
		res := interp.Interpret(name, src, interp.Options{})
		for _, s := range res.Plan.Shots {
			for _, paper := range []sheet.Paper{sheet.A4, sheet.Letter} {
				for what, card := range papers {
					drawn := card(s, sheet.Options{Paper: paper})
					for i, p := range drawn {
						pages++
						checkCard(t, fmt.Sprintf("%s, shot %s, %s, page %d", name, s.ID, what, i+1), p)
						for _, bad := range []string{"NaN", "Inf"} {
							if strings.Contains(plans.SVGOf(t, p), bad) {
								t.Errorf("%s, shot %s, %s holds %s", name, s.ID, what, bad)
							}
						}
					}
					for _, fault := range append(drawtest.Links(drawn), drawtest.Order(drawn, sheet.Names(s))...) {
						t.Errorf("%s, shot %s, %s: %s", name, s.ID, what, fault)
					}
				}
			}
		}
	}
	if pages < 200 {
		t.Errorf("only %d pages were drawn", pages)
	}
}

func TestMadeCardsAreClean(t *testing.T) {
	figure := func(lo, hi float64) plan.Number { return plan.Number((lo + 2*hi) / 3) }
	for name, s := range plans.Made() {
		missable(s, figure)
		for _, paper := range []sheet.Paper{sheet.A4, sheet.Letter} {
			for what, card := range papers {
				for i, p := range card(s, sheet.Options{Paper: paper}) {
					checkCard(t, fmt.Sprintf("%s, %s, page %d", name, what, i+1), p)
				}
			}
		}
	}
}

// After a change of the cards try more, -rapid.checks=500.
func TestGeneratedCardsAreClean(t *testing.T) {
	cases.Check(t, 40, func(t *rapid.T) {
		paper := rapid.SampledFrom([]sheet.Paper{sheet.A4, sheet.Letter}).Draw(t, "paper")
		s := missable(plans.Draw(t), func(lo, hi float64) plan.Number { return plan.Number(rapid.Float64Range(lo, hi).Draw(t, "figure")) })
		for what, card := range papers {
			for i, p := range card(s, sheet.Options{Paper: paper}) {
				checkCard(t, fmt.Sprintf("%s, page %d", what, i+1), p)
			}
		}
	})
}

// The columns of a log are the landings and follows of the shot, in their order, each
// once, and every sheet has the same rows.
func TestLogColumns(t *testing.T) {
	for name, src := range plans.Real(t) {
		res := interp.Interpret(name, src, interp.Options{})
		for _, s := range res.Plan.Shots {
			var want, got []int
			for _, p := range s.Pulls {
				if p.Kind == "follow" || p.LandFrame >= p.StartFrame {
					want = append(want, p.Number)
				}
			}
			for _, p := range Log(s, sheet.Options{}) {
				rows := 0
				for it := range p.Root.All() {
					switch it := it.(type) {
					case *draw.Group:
						if it.Name == "column" {
							got = append(got, it.Number)
						}
					case draw.Text:
						if it.String == fmt.Sprint(takeRows) && it.Font == fontFigure {
							rows++
						}
					}
				}
				if rows != 1 {
					t.Errorf("%s, shot %s: %d rows %d", name, s.ID, rows, takeRows)
				}
			}
			if fmt.Sprint(got) != fmt.Sprint(want) {
				t.Errorf("%s, shot %s: columns %v, want %v", name, s.ID, got, want)
			}
		}
	}
}

// A bar times its scale is the limit of the plan, and one that is longer than the card
// has room for is torn.
func TestBarsAreTrue(t *testing.T) {
	bars, torn := 0, 0
	for name, src := range plans.Real(t) {
		res := interp.Interpret(name, src, interp.Options{})
		for _, s := range res.Plan.Shots {
			marks := marksOf(s)
			row := 0
			for _, p := range Tolerance(s, sheet.Options{}) {
				for it := range p.Root.All() {
					g, ok := it.(*draw.Group)
					if !ok || g.Name != signs.Row {
						continue
					}
					for i, side := range sidesDrawn(g) {
						m := marks[row].miss
						soft, seen := [2]plan.Number{m.SoftForward, m.SoftBack}[i], [2]plan.Number{m.SeenForward, m.SeenBack}[i]
						for k, limit := range []float64{float64(soft), float64(max(soft, seen))} {
							bars++
							if want := min(1000*limit/barScale, barMost); math.Abs(side[k]-want)*barScale > 0.5 {
								t.Errorf("%s, shot %s, %s: a bar of %.2f mm, want %.2f", name, s.ID, marks[row].name, side[k], want)
							}
							if 1000*limit/barScale > barMost {
								torn++
							}
						}
					}
					row++
				}
			}
			if row != len(marks) {
				t.Errorf("%s, shot %s: %d rows for %d marks", name, s.ID, row, len(marks))
			}
		}
	}
	if bars < 200 || torn < 20 {
		t.Errorf("only %d bars, %d of them torn", bars, torn)
	}
}

// sidesDrawn returns how long what is sharp and what is at most faint are, towards the
// camera and away from it, in millimetres.
func sidesDrawn(row *draw.Group) (sides [2][2]float64) {
	middle := math.NaN()
	for it := range row.All() {
		if g, ok := it.(*draw.Group); ok && g.Name == "mark" {
			middle = g.Items[1].(draw.Line).From.X
		}
	}
	far := func(xs ...float64) (d float64) {
		for _, x := range xs {
			d = max(d, math.Abs(x-middle))
		}
		return d
	}
	n := 0
	for it := range row.All() {
		g, ok := it.(*draw.Group)
		if !ok || g.Name != signs.Sharp {
			continue
		}
		for _, it := range g.Items {
			reach, ink := 0.0, draw.None
			switch it := it.(type) {
			case draw.Rect:
				reach, ink = far(it.Box.X, it.Box.Right()), it.Fill
			case draw.Path:
				ink = it.Fill
				for _, p := range it.Runs[0] {
					reach = max(reach, far(p.X))
				}
			}
			if ink == draw.Black {
				sides[n][0] = reach
			}
			if ink != draw.None {
				sides[n][1] = reach
			}
		}
		n++
	}
	return sides
}

// Somebody who stands as far off the mark as the card prints is at the limit of what is
// sharp, or of what is seen, by the blur that the plan computes for their nearer or
// farther side.
func TestLimitsAreThoseOfTheBlur(t *testing.T) {
	checked := 0
	for name, src := range plans.Real(t) {
		res := interp.Interpret(name, src, interp.Options{})
		for _, s := range res.Plan.Shots {
			for _, p := range s.Pulls {
				u := s.Subject(p.To)
				if p.Miss == nil || u == nil || len(p.Goal.Names) > 1 || p.Goal.Soft {
					continue
				}
				at := float64(p.Land)
				d, half := s.LensDistanceAt(u, at), known(u.Deep)/2
				x := p.ToLens
				for _, limit := range []struct {
					off  float64
					most float64
				}{
					{-float64(p.Miss.SoftForward), s.Optics.ArcminPerBlur * s.Judged(x, at).Criterion}, {float64(p.Miss.SoftBack), s.Optics.ArcminPerBlur * s.Judged(x, at).Criterion},
					{-float64(p.Miss.SeenForward), float64(p.SeenFrom)}, {float64(p.Miss.SeenBack), float64(p.SeenFrom)},
				} {
					if limit.off == 0 || math.IsInf(limit.off, 0) || math.IsNaN(limit.most) {
						continue
					}
					checked++
					if got := s.Blur(d+limit.off+math.Copysign(half, limit.off), x, at); math.Abs(got-limit.most) > 0.01*limit.most {
						t.Errorf("%s, shot %s, pull %d: %.3f m off the mark the blur is %.3f arcmin, want %.3f", name, s.ID, p.Number, limit.off, got, limit.most)
					}
				}
			}
		}
	}
	if checked < 100 {
		t.Errorf("only %d limits were checked", checked)
	}
}

// Who is wrong on the very mark is named first.
func TestWhoIsToWatch(t *testing.T) {
	s := missable(plans.ThreeRacks(), func(lo, hi float64) plan.Number { return plan.Number(hi) })
	if got := watchWords(s, marksOf(s)); got != "DOOR is the one to watch: soft from 30 cm on, at rack 2." {
		t.Errorf("%q", got)
	}
	s.Pulls[0].Miss.SoftBack = 0.012
	if got := watchWords(s, marksOf(s)); got != "LEDGER is the one to watch: soft from 1.2 cm on, at rack 1." {
		t.Errorf("%q", got)
	}
	s.Pulls[1].Miss.Left = 0
	s.Pulls[1].Miss.Right = 3
	if got := watchWords(s, marksOf(s)); got != "DOOR is the one to watch: out of the frame on the mark, at rack 2." {
		t.Errorf("%q", got)
	}
	s.Pulls[2].Miss.SoftForward = 0
	if got := watchWords(s, marksOf(s)); got != "NADIA is the one to watch: 4 cm deep, which is more than is sharp, at rack 3." {
		t.Errorf("%q", got)
	}
}

func TestGoldenCards(t *testing.T) {
	s := missable(plans.ThreeRacks(), func(lo, hi float64) plan.Number { return plan.Number(lo + 0.07*(hi-lo)) })
	plans.CheckGolden(t, "tolerance-three-racks", Tolerance(s, sheet.Options{}))
	plans.CheckGolden(t, "log-three-racks", Log(s, sheet.Options{Paper: sheet.Letter}))
}
