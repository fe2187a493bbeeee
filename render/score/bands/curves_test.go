package bands

import (
	"math"
	"testing"

	"pullscore/render/sheet"
	"pullscore/render/testing/plans"
)

// Nobody is drawn from whom a camera has turned away, and they squeeze nobody else; a
// camera on its axis shows all.
func TestNobodyFarOffTheAxis(t *testing.T) {
	s := plans.New("1", "", 10).Put("ADA", 3, 0.1).Put("BO", 2, 0.1).Aside("BO", -2).Start("ADA").Pan("", 100, 1, 4).Pan("", 0, 6, 9).Shot
	w := NewChart(s, sheet.A4).Windows[0]
	gone := 0
	for i, at := range w.Curves.T {
		v := s.ViewOf(s.Subjects[0], at)
		far := v.OffAxis() > 60
		if far != math.IsNaN(w.Curves.Distance[0][i]) {
			t.Errorf("at %g s ADA is %g degrees off, and at %g m", at, v.OffAxis(), w.Curves.Distance[0][i])
		}
		if far {
			gone++
		}
	}
	if gone == 0 {
		t.Error("the camera never turns away")
	}
	if near := 1 / w.Depth.Near; near < 0.9 {
		t.Errorf("the scale begins at %g m", near)
	}
	if plain := plans.WalkAndDolly(); math.IsNaN(NewChart(plain, sheet.A4).Windows[0].Curves.Distance[0][0]) {
		t.Error("a camera on its axis does not show BRAM")
	}
}
