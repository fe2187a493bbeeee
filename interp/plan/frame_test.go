// Who is in the picture, against reference values and against what a picture is.

package plan_test

import (
	"math"
	"testing"

	"pullscore/interp/plan"
)

// framed returns a shot with a 75 mm lens that is focused at 3 m, over ten seconds.
func framed(height float64) *plan.Shot {
	s := &plan.Shot{Duration: 10}
	s.Optics = plan.Optics{
		SensorW: 0.02489, SensorH: height, Number: 4, Pupil: 1, Criterion: 2e-5,
		Focal: plan.Still(0.075), Camera: plan.Still(0), Rig: &plan.Rig{},
	}
	x, _ := s.FromSensor(3, 0)
	s.Optics.Start.Distance = x
	return s
}

// The reference values come from a derivation of their own, by bisection of the thin
// lens's equation.
func TestReach(t *testing.T) {
	for _, test := range []struct{ height, side, up float64 }{
		{0.01866, 0.47258227, 0.35429},
		{0.02489 / 2.39, 0.47258227, 0.19773317},
	} {
		s := framed(test.height)
		x := s.FromTape(3, 0)
		side, up := s.Reach(x, x, 0)
		if math.Abs(side-test.side) > 5e-9 || math.Abs(up-test.up) > 5e-6 {
			t.Errorf("height %v: sees %.9f to a side and %.9f up, want %v and %v", test.height, side, up, test.side, test.up)
		}
	}
}

func TestPlace(t *testing.T) {
	s := framed(0.02489 / 2.39)
	x := s.FromTape(3, 0)
	side, up := s.Reach(x, x, 0)
	for _, test := range []struct {
		v    plan.View
		want string
	}{
		{plan.View{Along: 3}, "in"},
		{plan.View{Along: 3, Across: 0.45}, "edge"},
		{plan.View{Along: 3, Above: 0.4}, "out"},
		{plan.View{Along: 3, Across: -0.92 * side}, "in"},
		{plan.View{Along: 3, Across: -0.94 * side}, "edge"},
		{plan.View{Along: 3, Across: -side}, "edge"},
		{plan.View{Along: 3, Across: -1.001 * side}, "out"},
		{plan.View{Along: 3, Above: -0.94 * up}, "edge"},
		{plan.View{Along: 3, Across: 0.5 * side, Above: 1.001 * up}, "out"},
		{plan.View{Along: 0.3}, "out"},
		{plan.View{Along: 0.31}, "in"},
		{plan.View{Along: -3}, "out"},
	} {
		if got := s.Place(test.v, x, 0).String(); got != test.want {
			t.Errorf("%+v is %s, want %s", test.v, got, test.want)
		}
	}
}

// A pan takes somebody out of the picture and back. When is found by the angle alone:
// with the focus as it is, half the picture is an angle.
func TestFramed(t *testing.T) {
	s := framed(0.01866)
	u := &plan.Subject{Name: "ANN", Along: plan.Still(3), Across: plan.Still(0)}
	s.Optics.Rig.Pans = []plan.Sweep{{Start: 1, End: 3, From: 0, To: 20}, {Start: 5, End: 7, From: 20, To: 0}}
	s.Subjects = []*plan.Subject{u}
	list := s.Framed(u)
	if len(list) != 2 || list[0][0] != 0 || list[1][1] != 10 {
		t.Fatalf("in the picture %v", list)
	}
	for k, at := range []float64{list[0][1], list[1][0]} {
		turned := 10 * (at - 1) // degrees
		if k == 1 {
			turned = 20 - 10*(at-5)
		}
		along, across := 3*math.Cos(turned*math.Pi/180), 3*math.Sin(turned*math.Pi/180)
		side, _ := s.Reach(s.FromTape(along, at), s.FocusAt(at), at)
		if rate := 3 * 10 * math.Pi / 180; math.Abs(across-side) > 2*0.001*rate {
			t.Errorf("at %.4f s ANN is %.4f m aside, and the lens sees %.4f m", at, across, side)
		}
	}
	s.Optics.Rig.Tilts = []plan.Sweep{{Start: 8, End: 8.5, From: 0, To: 30, Smooth: true}}
	if list = s.Framed(u); len(list) != 2 || !(list[1][1] > 8 && list[1][1] < 8.5) {
		t.Errorf("a tilt from 8 s leaves ANN in the picture %v", list)
	}
}
