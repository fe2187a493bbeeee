package staging

import (
	"math"
	"testing"

	"pullscore/interp/plan"
)

func TestBlockedBy(t *testing.T) {
	at := func(name string, along, across float64) *plan.Subject {
		return &plan.Subject{Name: name, Along: plan.Still(along), Across: plan.Still(across), SideSaid: true}
	}
	behind := at("OSKEL", 3, 0.6)
	for _, c := range []struct {
		name string
		by   *plan.Subject
		says bool
		want string
	}{
		{"on the line", at("MARRIT", 1.5, 0.3), true, "MARRIT"},
		{"14 cm beside it", at("MARRIT", 1.5, 0.3+0.142), true, "MARRIT"},
		{"16 cm beside it", at("MARRIT", 1.5, 0.3+0.164), true, ""},
		{"farther", at("MARRIT", 3.2, 0.64), true, ""},
		{"at the lens", at("MARRIT", 0.29, 0.058), true, ""},
		{"a thing", at("LAMP", 1.5, 0.3), false, ""},
	} {
		s := &plan.Shot{Subjects: []*plan.Subject{behind, c.by}, Optics: plan.Optics{Camera: plan.Still(0)}}
		if c.says {
			s.Lines = []plan.Line{{Who: c.by.Name}}
		}
		got := ""
		if by := InTheWay(s, People(s), behind, 0).By; by != nil {
			got = by.Name
		}
		if got != c.want {
			t.Errorf("%s: blocked by %q, want %q", c.name, got, c.want)
		}
		if InTheWay(s, People(s), c.by, 0).By != nil && c.by.Along.At(0) < 3 {
			t.Errorf("%s: who stands nearer is blocked", c.name)
		}
		c.by.SideSaid = false
		if InTheWay(s, People(s), behind, 0).By != nil {
			t.Errorf("%s: nobody says to which side, and it is in the way", c.name)
		}
	}
}

// A camera that looks down from above sees over a head, and one at the height of the eyes
// does not.
func TestSightOverAHead(t *testing.T) {
	still := func(v float64) *plan.Track { return plan.Still(v) }
	front := &plan.Subject{Name: "MARRIT", Along: still(1.5), Across: still(0)}
	back := &plan.Subject{Name: "OSKEL", Along: still(3), Across: still(0)}
	for up, want := range map[float64]bool{0: true, 0.2: true, 0.26: false, 1: false, -1: true} {
		s := &plan.Shot{Subjects: []*plan.Subject{front, back}, Lines: []plan.Line{{Who: "MARRIT"}}}
		s.Optics.Camera = still(0)
		s.Optics.Rig = &plan.Rig{}
		s.Optics.Rig.Slide(plan.Slide{Start: -2, End: -1, Z: up})
		if got := InTheWay(s, People(s), back, 0).By == front; got != want {
			t.Errorf("%g m above the eyes: blocked %v", up, got)
		}
	}
}

// In a staged shot heights count, whoever is a person in the scene is one, and times are
// from when to when.
func TestBlockedFromWhenToWhen(t *testing.T) {
	s := aShot(plan.Pose{Y: -2, Z: 1.5}, map[string]Point{"MARRIT": {0, 2}, "OSKEL": {0, 0}})
	marrit, oskel := s.Subjects[0], s.Subjects[1]
	if got := Blocked(s, marrit); got != nil {
		t.Errorf("a thing is in the way: %v", got)
	}
	oskel.Person = true
	oskel.Across.Add(plan.Step{Start: 1, End: 3, To: plan.Spot{Offset: 1}})
	// 15 cm from the line at 1.3 s, at half a metre a second.
	if got := Blocked(s, marrit); len(got) != 1 || got[0][0] != 0 || math.Abs(got[0][1]-1.3) > 0.002 {
		t.Errorf("%v", got)
	}
	b := InTheWay(s, People(s), marrit, 1.2)
	if b.By != oskel || math.Abs(b.Aside-0.1) > 1e-9 || math.Abs(b.Nearer-2) > 1e-9 {
		t.Errorf("%+v", b)
	}
	oskel.Up = plan.Still(-0.13)
	if got := Blocked(s, marrit); got != nil {
		t.Errorf("seen over the head of one who sits: %v", got)
	}
	oskel.Up = plan.Still(-0.11)
	if FillBlocked(s); len(marrit.Blocked) != 1 || oskel.Blocked != nil {
		t.Errorf("%v %v", marrit.Blocked, oskel.Blocked)
	}
}
