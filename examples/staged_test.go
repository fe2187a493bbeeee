// The staged examples: figures by hand, from the places that the plans say.

package examples_test

import (
	"math"
	"slices"
	"testing"

	"pullscore/interp/coverage"
	"pullscore/interp/plan"
)

// shotsOf reads a file and returns its shots by their IDs.
func shotsOf(t *testing.T, file string) map[string]*plan.Shot {
	t.Helper()
	list := map[string]*plan.Shot{}
	for _, s := range read(t, file).Plan.Shots {
		list[s.ID] = s
	}
	return list
}

// subject returns a subject of a shot.
func subject(t *testing.T, s *plan.Shot, name string) *plan.Subject {
	t.Helper()
	at := slices.IndexFunc(s.Subjects, func(u *plan.Subject) bool { return u.Name == name })
	if at < 0 {
		t.Fatalf("shot %s has no %s", s.ID, name)
	}
	return s.Subjects[at]
}

// near compares a figure with that by hand.
func near(t *testing.T, what string, got, want float64) {
	t.Helper()
	if math.Abs(got-want) > 1e-6 {
		t.Errorf("%s is %.7f, by hand %.7f", what, got, want)
	}
}

// away is how far two points lie apart.
func away(a, b [3]float64) float64 {
	return math.Hypot(math.Hypot(a[0]-b[0], a[1]-b[1]), a[2]-b[2])
}

// two-hander: the singles lie within 5 % of each other, which is a match, on one side of
// the line, and look each other in the eye.
func TestTwoHander(t *testing.T) {
	s := shotsOf(t, "staged/two-hander.pull")
	near(t, "the tape of 13B", float64(subject(t, s["13B"], "MARRIT").Tape), math.Hypot(1, 1.3))
	near(t, "the tape of 13C", float64(subject(t, s["13C"], "OSKEL").Tape), math.Hypot(0.1, 1.65))
	her, his := s["13B"].Views[0], s["13C"].Views[1]
	if her.A != "MARRIT" || his.A != "OSKEL" || her.EyeLine*his.EyeLine >= 0 || math.Abs(float64(her.EyeLine+his.EyeLine)) > 5 {
		t.Errorf("%+v does not look back at %+v", her, his)
	}
	if a, b := her.Side, s["13C"].Views[0].Side; a <= 0.2 || b <= 0.2 {
		t.Errorf("13B stands %v m right of the line, 13C %v m", a, b)
	}
	for i, word := range []string{"know.", "And", "letter"} {
		p, found := s["13A"].Pulls[i], false
		for _, l := range s["13A"].Lines {
			for _, w := range l.Words {
				found = found || w.Text == word && math.Abs(w.Start-float64(p.Land)) < 1e-9
			}
		}
		if !found {
			t.Errorf("rack %d lands at %v, and not on %q", i+1, p.Land, word)
		}
	}
}

// insert: the scene of another file, and nothing of its clock.
func TestInsert(t *testing.T) {
	s := shotsOf(t, "staged/insert.pull")["13D"]
	near(t, "the tape of the insert", float64(subject(t, s, "TICKET").Tape), away([3]float64{0.75, 0.15, 0.4}, [3]float64{}))
	near(t, "its length", float64(s.Duration), 2.5)
	if len(s.Lines) > 0 {
		t.Errorf("it has the lines %v", s.Lines)
	}
	for _, sc := range coverage.Of(read(t, "staged/insert.pull").Plan, false) {
		if len(sc.Lines) > 0 {
			t.Errorf("words that it does not shoot are held by nobody: %+v", sc)
		}
	}
}

// door: the pan ends where the chair and the letter are, and so does the focus.
func TestDoor(t *testing.T) {
	s := shotsOf(t, "staged/door.pull")["19A"]
	camera := [3]float64{-0.6, -1.6, 1.4}
	door, chair, letter := [3]float64{1.6, 4.2, 1.7}, [3]float64{0.7, 0.9, 1.7}, [3]float64{0.2, 0.15, 0.78}
	bearing := func(p [3]float64) float64 { return math.Atan2(p[0]-camera[0], p[1]-camera[1]) * 180 / math.Pi }
	near(t, "the pan at the start", s.Heading(), bearing(door))
	near(t, "the pan at the halt", s.Stands(5).Pan, bearing(chair))
	near(t, "the pan at the end", s.Stands(float64(s.Duration)).Pan, bearing(letter))
	near(t, "the focus at the halt", float64(s.Pulls[0].ToM), away(camera, chair))
	near(t, "the focus on the letter", float64(s.Pulls[1].ToM), away(camera, letter))
}

// boom-down: tilt, boom and rack start and land together, level with nobody.
func TestBoomDown(t *testing.T) {
	s := shotsOf(t, "staged/boom-down.pull")["23A"]
	near(t, "the focus on the hands", float64(s.Pulls[0].ToM), math.Hypot(1.52, 0.15))
	near(t, "the height at the end", s.Stands(float64(s.Duration)).Z, 1.2)
	turn := s.Turns[0]
	if p := s.Pulls[0]; len(s.Turns) != 1 || p.Start != turn.Start || p.Land != turn.End {
		t.Errorf("the rack goes from %v to %v, the tilt is %+v", p.Start, p.Land, s.Turns)
	}
}

// table: the camera that pans keeps its tilt, so the focus is measured along an axis that
// goes a little over or under the face.
func TestTable(t *testing.T) {
	s := shotsOf(t, "staged/table.pull")["41B"]
	camera := [3]float64{0.9, -2.2, 1.3}
	sin, cos := math.Sincos(math.Atan2(1.2-1.3, math.Hypot(0.9, 3.3)))
	for i, p := range [][3]float64{{-0.6, 0.5, 1.22}, {-0.6, -0.5, 1.25}} {
		level := math.Hypot(p[0]-camera[0], p[1]-camera[1])
		near(t, "the focus of a face", float64(s.Pulls[i].ToM), level*cos+(p[2]-camera[2])*sin)
	}
	if s.RunsWith != "41A" {
		t.Errorf("it runs with %q", s.RunsWith)
	}
}

// push-in: along the axis that looks past her, and the lamp lies higher.
func TestPushIn(t *testing.T) {
	s := shotsOf(t, "staged/push-in.pull")["32C"]
	pan := math.Atan2(-0.2, 2.8) - 1.5*math.Pi/180
	sin, cos := math.Sincos(pan)
	x, y := 0.2+0.8*sin, -2.8+0.8*cos
	near(t, "the focus on the lamp", float64(s.Pulls[1].ToM), (-0.4-x)*sin+(1.8-y)*cos)
	near(t, "her tape at the start", float64(subject(t, s, "HALDIS").Tape), 2.78)
}
