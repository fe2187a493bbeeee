package score

import (
	"strings"
	"testing"

	"pullscore/interp/plan"
	"pullscore/render/sheet"
	"pullscore/render/testing/plans"
)

// What the cut leaves out of a shot stands under the ruler with the record times beside
// it, in order and legible for a cut at any place.
func TestTheRecordStandsUnderTheRuler(t *testing.T) {
	shot := func(leaves, comes float64) *plan.Shot {
		m := plans.New("8", "The ladder", 12).Put("EDDA", 2, 0.1).Put("RUNE", 3, 0.1).Start("EDDA")
		m.Rack("RUNE", "", "", 1, 2).Rack("EDDA", "", "", 9, 10)
		s := m.Shot
		s.BeginsAt = "01:00:00:00"
		n := s.Rate.Frames(leaves)
		s.Pieces = []plan.Piece{
			{Number: 1, In: 0, Out: n, RecordIn: "01:00:00:00", RecordOut: "01:00:05:11", Speed: 1, From: 0, To: plan.Number(leaves), Main: true},
			{Number: 2, In: n, Out: n + 48, RecordIn: "01:00:05:11", RecordOut: "01:00:07:11", Speed: 1, From: plan.Number(comes), To: 12, Begins: comes, Main: true},
		}
		return s
	}
	for _, c := range []struct {
		leaves, comes float64
		says          bool // there is room to say how long it is
	}{{4, 8.5, true}, {4, 4.2, false}, {0.1, 11.9, true}, {5, 7, true}} {
		text := ""
		for _, p := range Score(shot(c.leaves, c.comes), sheet.Options{}) {
			plans.CheckPage(t, "record", p)
			text += plans.SVGOf(t, p)
		}
		if strings.Contains(text, ">removed") != c.says || !strings.Contains(text, ">01:00:05:11<") {
			t.Errorf("from %v to %v: removed is said: %v", c.leaves, c.comes, strings.Contains(text, ">removed"))
		}
	}
}
