// The camera and two people, against an independent model: testdata/model-lines.tsv at
// the top holds what a program of its own, in another language, computes from coordinates.
// A second derivation of its own agrees: sides by division of complex numbers, angles by
// the law of cosines.

package staging

import (
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pullscore/interp/plan"
	"pullscore/lang/testing/cases"
)

func TestLinesOfTheModel(t *testing.T) {
	data, err := os.ReadFile("../../testdata/model-lines.tsv")
	if err != nil {
		t.Fatal(err)
	}
	number := func(text string) float64 {
		v, err := strconv.ParseFloat(text, 64)
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
	counts := map[string]int{}
	for _, line := range strings.Split(strings.TrimSpace(string(data)), "\n")[1:] {
		c := strings.Split(line, "\t")
		in := map[string]float64{}
		for pair := range strings.SplitSeq(c[2], ";") {
			name, value, _ := strings.Cut(pair, "=")
			in[name] = number(value)
		}
		a, b, camera := Point{in["ax"], in["ay"]}, Point{in["bx"], in["by"]}, Point{in["x"], in["y"]}
		off := LineSide(a, b, camera) - number(c[3])
		if c[1] == "eye" {
			off = plan.Wrapped(EyeLine(a, b, camera) - number(c[3]))
		}
		if !(math.Abs(off) <= number(c[5])) {
			t.Errorf("%s: off by %g", c[0], off)
		}
		counts[c[1]]++
	}
	if counts["side"] != 18 || counts["eye"] != 18 {
		t.Errorf("%v rows", counts)
	}
}

// aShot is a shot whose camera stands at a place of a scene, with people there.
func aShot(home plan.Pose, people map[string]Point) *plan.Shot {
	s := &plan.Shot{ID: "12A", Duration: 4, Staging: &plan.Staging{Placed: true, Action: true, Home: home, Covers: plan.Interval{0, 4}}}
	s.Optics.Camera, s.Optics.Rig = plan.Still(0), &plan.Rig{Tilt: home.Tilt}
	for _, name := range []string{"MARRIT", "OSKEL", "YSOLT"} {
		p, ok := people[name]
		if !ok {
			continue
		}
		x, y, z := s.Staging.FromFloor(p.X, p.Y, 1.5)
		s.Subjects = append(s.Subjects, &plan.Subject{
			Name: name, Across: plan.Still(x), Along: plan.Still(y), Up: plan.Still(z), SideSaid: true, Seen: &plan.Seen{},
		})
	}
	return s
}

// ticket is two people who talk.
func ticket(a, b Point) *plan.Scene {
	return &plan.Scene{
		Title: "The ticket window", Duration: 4,
		Subjects: []plan.Staged{{Name: "MARRIT", Path: []plan.FloorPoint{{Right: plan.Number(a.X), Upstage: plan.Number(a.Y)}}}, {Name: "OSKEL"}},
		Lines:    []plan.Line{{Who: "MARRIT", End: 1}, {Who: "OSKEL", Start: 2, End: 3}},
	}
}

func TestViewsOfTheTicketWindow(t *testing.T) {
	a, b := Point{0, 0}, Point{0.4, 1.3}
	people := map[string]Point{"MARRIT": a, "OSKEL": b}
	views := Views(ticket(a, b), aShot(plan.Pose{X: 0.8, Y: -2.2, Z: 1.5, Pan: -13.2514541, Tilt: 0.8}, people))
	if len(views) != 2 || views[0].A != "MARRIT" || views[0].B != "OSKEL" || views[1].A != "OSKEL" {
		t.Fatalf("%+v", views)
	}
	if v := views[0]; math.Abs(float64(v.Side)-1.41161207) > 1e-8 || math.Abs(float64(v.EyeLine)-142.9141645) > 1e-7 {
		t.Errorf("%+v", v)
	}
	single := Views(ticket(a, b), aShot(plan.Pose{X: 1, Y: 1.3, Z: 1.5, Pan: -142, Tilt: -3}, people))
	if math.Abs(float64(single[0].EyeLine)-20.4658631) > 1e-7 {
		t.Errorf("%+v", single)
	}
	if s := aShot(plan.Pose{}, people); Views(ticket(a, b), &plan.Shot{Subjects: s.Subjects}) != nil {
		t.Error("a shot that is not staged has views")
	}
}

// Turning and shifting the floor changes nothing, and a mirror changes sides alone.
func TestTurnedShiftedAndMirrored(t *testing.T) {
	cases.Check(t, 300, func(t *rapid.T) {
		at := rapid.Custom(func(t *rapid.T) Point {
			return Point{rapid.Float64Range(-9, 9).Draw(t, "x"), rapid.Float64Range(-9, 9).Draw(t, "y")}
		})
		a, b, c := at.Draw(t, "a"), at.Draw(t, "b"), at.Draw(t, "c")
		if math.Hypot(a.X-b.X, a.Y-b.Y) < 0.05 || math.Hypot(a.X-c.X, a.Y-c.Y) < 0.05 {
			return
		}
		by, shift := rapid.Float64Range(-400, 400).Draw(t, "turn"), at.Draw(t, "shift")
		side, eye := LineSide(a, b, c), EyeLine(a, b, c)
		sin, cos := math.Sincos(by * math.Pi / 180)
		turn := func(p Point) Point {
			return Point{p.X*cos + p.Y*sin + shift.X, p.Y*cos - p.X*sin + shift.Y}
		}
		same := func(what string, side2, eye2 float64) {
			if math.Abs(side2-side) > 1e-9 || math.Abs(plan.Wrapped(eye2-eye)) > 1e-9 {
				t.Fatalf("%s: side %g and eye-line %g, before %g and %g", what, side2, eye2, side, eye)
			}
		}
		same("turned", LineSide(turn(a), turn(b), turn(c)), EyeLine(turn(a), turn(b), turn(c)))
		mirror := func(p Point) Point { return Point{-p.X, p.Y} }
		same("mirrored", -LineSide(mirror(a), mirror(b), mirror(c)), -EyeLine(mirror(a), mirror(b), mirror(c)))
		same("from the other end", -LineSide(b, a, c), eye)
		if math.Abs(side) > 1e-6 && (side > 0) != (eye > 0) {
			t.Fatalf("%g m from the line, and the eye-line is %g", side, eye)
		}
	})
}

func TestWhomALineIsSaidTo(t *testing.T) {
	line := func(who, to string) plan.Line { return plan.Line{Who: who, To: to} }
	for _, c := range []struct {
		name  string
		lines []plan.Line
		want  string
	}{
		{"one answers the other", []plan.Line{line("A", ""), line("B", ""), line("A", "")}, "AB BA AB"},
		{"it is said", []plan.Line{line("A", ""), line("B", ""), line("C", "A")}, "AB BA CA"},
		{"one goes on", []plan.Line{line("A", ""), line("A", ""), line("B", ""), line("B", "")}, "AB AB BA BA"},
		{"one goes on to another", []plan.Line{line("A", ""), line("B", "C"), line("B", "")}, "BC BC"},
		{"a voice between", []plan.Line{line("A", ""), line("V", ""), line("B", "")}, ""},
		{"who answers a voice", []plan.Line{line("V", ""), line("B", ""), line("A", "")}, "AB"},
		{"one alone", []plan.Line{line("A", ""), line("A", "")}, ""},
		{"to oneself", []plan.Line{line("A", "A"), line("B", "A")}, "BA"},
	} {
		sc := &plan.Scene{Lines: c.lines, Subjects: []plan.Staged{{Name: "A"}, {Name: "B"}, {Name: "C"}}}
		for i := range sc.Lines {
			sc.Lines[i].Start = plan.Number(i)
		}
		got := ""
		for _, l := range Spoken(sc) {
			got += " " + l.From + l.To
		}
		if strings.TrimSpace(got) != c.want {
			t.Errorf("%s: %s, want %s", c.name, got, c.want)
		}
	}
}

// A line that the plan says holds for all of the scene, and no other does.
func TestASaidLineReplacesTheOthers(t *testing.T) {
	sc := ticket(Point{}, Point{1, 1})
	if got := LinesOfAction(sc, nil); len(got) != 2 || got[1].Start != 2 || got[1].From != "OSKEL" || got[0].Said {
		t.Errorf("%+v", got)
	}
	got := LinesOfAction(sc, []plan.LineOfAction{{From: "OSKEL", To: "MARRIT"}})
	if len(got) != 1 || got[0].Start != 0 || got[0].End != 4 || !got[0].Said {
		t.Errorf("%+v", got)
	}
}

func TestWhatRunsTogether(t *testing.T) {
	shot := func(id, with string) *plan.Shot {
		return &plan.Shot{ID: id, Staging: &plan.Staging{RunsWith: with}}
	}
	a, b, c, d := shot("40A", ""), shot("40B", "40A"), shot("40C", "40B"), shot("40D", "")
	all := []*plan.Shot{a, b, c, d, shot("40E", "40F"), shot("40F", "40E")}
	if !Together(all, a, c) || !Together(all, c, b) || Together(all, a, d) || Together(all, a, a) {
		t.Error("runs with does not join what it should")
	}
	Together(all, all[4], all[5]) // a circle comes to an end
}
