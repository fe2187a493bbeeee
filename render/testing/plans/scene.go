// Scenes made by hand, with the set-ups that shoot them.

package plans

import (
	"fmt"
	"math"

	"pgregory.net/rapid"

	"pullscore/interp/plan"
)

// A Stager builds a plan with one scene step by step: first the floor, then its set-ups.
type Stager struct {
	*plan.Plan
	Scene *plan.Scene
}

// Stage starts a plan with a scene that lasts so many seconds.
func Stage(title, origin string, duration float64) Stager {
	sc := &plan.Scene{Title: title, Origin: origin, Duration: plan.Number(duration)}
	return Stager{&plan.Plan{Title: "Harbour office", Rate: "24", Units: "metric", Scenes: []*plan.Scene{sc}}, sc}
}

// Mark adds a mark on the floor.
func (g Stager) Mark(name string, right, upstage float64) Stager {
	g.Scene.Marks = append(g.Scene.Marks, plan.FloorMark{Name: name, Right: plan.Number(right), Upstage: plan.Number(upstage)})
	return g
}

// Person adds somebody who stands on the floor, with their eyes that high.
func (g Stager) Person(name string, right, upstage, eyes float64) Stager {
	return g.add(plan.Staged{Name: name, Person: true, Eyes: eyes}, right, upstage, eyes)
}

// Thing adds something.
func (g Stager) Thing(name string, right, upstage, high float64) Stager {
	return g.add(plan.Staged{Name: name}, right, upstage, high)
}

func (g Stager) add(u plan.Staged, right, upstage, high float64) Stager {
	u.Path = []plan.FloorPoint{{Right: plan.Number(right), Upstage: plan.Number(upstage), High: plan.Number(high)}}
	g.Scene.Subjects = append(g.Scene.Subjects, u)
	return g
}

// Walk takes somebody straight to another place, at one speed.
func (g Stager) Walk(name string, right, upstage, start, end float64, anchor string) Stager {
	for i := range g.Scene.Subjects {
		u := &g.Scene.Subjects[i]
		if u.Name != name {
			continue
		}
		from := u.Path[len(u.Path)-1]
		from.T = plan.Number(start)
		to := plan.FloorPoint{T: plan.Number(end), Right: plan.Number(right), Upstage: plan.Number(upstage), High: from.High}
		u.Path = append(u.Path, from, to)
		u.Legs = append(u.Legs, plan.Leg{Start: start, End: end, From: from, To: to, Anchor: anchor})
	}
	return g
}

// Axis adds a line of action.
func (g Stager) Axis(from, to string) Stager {
	g.Scene.Axes = append(g.Scene.Axes, plan.LineOfAction{From: from, To: to, End: g.Scene.Duration})
	return g
}

// at returns where somebody is on the floor of the scene at a time.
func (g Stager) at(name string, t float64) (right, upstage, high float64) {
	for _, u := range g.Scene.Subjects {
		if u.Name != name {
			continue
		}
		p := u.Path[0]
		for _, l := range u.Legs {
			switch share := plan.Number(plan.Ease((t-l.Start)/(l.End-l.Start), false)); {
			case t >= l.End:
				p = l.To
			case t > l.Start:
				return float64(l.From.Right + (l.To.Right-l.From.Right)*share), float64(l.From.Upstage + (l.To.Upstage-l.From.Upstage)*share), float64(p.High)
			}
		}
		return float64(p.Right), float64(p.Upstage), float64(p.High)
	}
	panic("nobody is called " + name)
}

// Setup adds a set-up that covers the scene: a lens of so many millimetres at a place, that
// aims between the outermost of some people and has its focus on the first.
func (g Stager) Setup(id string, focal, right, upstage, high float64, aims ...string) Maker {
	m := New(id, "", float64(g.Scene.Duration))
	home := plan.Pose{X: right, Y: upstage, Z: high}
	var first, lo, hi, low, top float64
	for i, name := range aims {
		pan, tilt := home.Bearing(g.at(name, 0))
		if i == 0 {
			first, low, top = pan, tilt, tilt
		}
		off := plan.Wrapped(pan - first)
		lo, hi, low, top = min(lo, off), max(hi, off), min(low, tilt), max(top, tilt)
	}
	home.Pan, home.Tilt = plan.Wrapped(first+(lo+hi)/2), (low+top)/2
	m.FocalMM, m.Lens = plan.Number(focal), fmt.Sprint(focal)
	m.Optics.Focal, m.Optics.Rig = plan.Still(focal/1000), &plan.Rig{Tilt: home.Tilt}
	m.Staging = &plan.Staging{Scene: g.Scene.Title, Covers: plan.Interval{0, g.Scene.Duration}, Action: true, Placed: true, Home: home}
	for i := range g.Scene.Subjects {
		m.onto(&g.Scene.Subjects[i])
	}
	m.Start(aims[0]).FillSeen()
	g.Shots, g.Scene.Setups = append(g.Shots, m.Shot), append(g.Scene.Setups, id)
	return m
}

// onto puts somebody of the scene onto the floor of the shot.
func (m Maker) onto(u *plan.Staged) {
	spot := func(p plan.FloorPoint) (x, y, z float64) {
		return m.FromFloor(float64(p.Right), float64(p.Upstage), float64(p.High))
	}
	x, y, z := spot(u.Path[0])
	m.Put(u.Name, y, 0)
	s := m.Subject(u.Name)
	s.Across, s.Along, s.Up = plan.Still(x), plan.Still(y), plan.Still(z)
	for _, l := range u.Legs {
		x, y, z := spot(l.To)
		for track, to := range map[*plan.Track]float64{s.Across: x, s.Along: y, s.Up: z} {
			track.Add(plan.Step{Start: l.Start, End: l.End, To: plan.Spot{Offset: to}})
		}
		m.Blocking = append(m.Blocking, plan.Blocking{Who: u.Name, Kind: "moves", Start: plan.Number(l.Start), End: plan.Number(l.End),
			From: plan.None(), To: plan.None(), FromMM: plan.None(), ToMM: plan.None(), Profile: "even"})
	}
}

// Measured gives the tape to somebody as it was read.
func (m Maker) Measured(name string, tape float64) Maker {
	u := m.Subject(name)
	u.Seen.Measured, u.Seen.Tape = plan.Number(tape), plan.Number(tape)
	return m
}

// TicketWindow has two people at a counter, a master and two singles.
func TicketWindow() *plan.Plan {
	g := Stage("The ticket window", "the near corner of the counter", 13).Mark("GATE", 0.4, 1.3).
		Person("MARRIT", 0, 0, 1.5).Person("OSKEL", 0.4, 1.3, 1.6).Thing("TICKET", -0.1, 0.25, 1.1).Axis("MARRIT", "OSKEL")
	g.Setup("12A", 35, 0.8, -2.2, 1.5, "MARRIT", "OSKEL").Measured("MARRIT", 2.36)
	g.Setup("12B", 75, 1, 1.3, 1.5, "MARRIT")
	g.Setup("12C", 75, 0.5, -0.35, 1.6, "OSKEL")
	return g.Plan
}

// MessTable has five people at a table, and two cameras at once, of which one pans.
func MessTable() *plan.Plan {
	g := Stage("The mess table", "the middle of the table", 12).
		Person("HALDIS", 0, 1.1, 1.2).Person("PEVIN", -0.6, 0.5, 1.22).Person("MARRIT", 0.6, 0.5, 1.18).
		Person("OSKEL", -0.6, -0.5, 1.25).Person("YSOLT", 0.6, -0.5, 1.2).Axis("HALDIS", "OSKEL")
	g.Setup("40A", 35, 0.4, -4, 1.5, "HALDIS")
	b := g.Setup("40B", 75, 0.9, -3, 1.3, "HALDIS")
	b.RunsWith, b.Camera = "40A", "B"
	b.PanTo("PEVIN", 3.2, 4.1).PanTo("OSKEL", 6.6, 7.6)
	return g.Plan
}

// Office has somebody who comes in at a door, and a camera that pans and tilts.
func Office() *plan.Plan {
	g := Stage("The office", "the left front corner of the desk", 9).Mark("DOOR", 1.6, 4.2).Mark("CHAIR", 0.7, 0.9).
		Person("PEVIN", 1.6, 4.2, 1.7).Thing("LETTER", 0.2, 0.15, 0.78).Walk("PEVIN", 0.7, 0.9, 1, 5, `on "late"`)
	m := g.Setup("18A", 35, -0.6, -1.6, 1.4, "PEVIN")
	m.PanWith("PEVIN", 0, 5).PanTo("LETTER", 5.2, 6.4).Tilt(-14, 5.2, 6.4)
	return g.Plan
}

// Bridge has a camera that is pushed in.
func Bridge() *plan.Plan {
	g := Stage("The bridge", "", 9).Person("HALDIS", 0, 0, 1.6).Thing("LAMP", -0.4, 1.8, 1.7)
	g.Setup("31C", 75, 0.2, -2.8, 1.6, "HALDIS").Measured("HALDIS", 2.78).Slide("dolly", 0.8, 0.5, 3.5)
	return g.Plan
}

// Knot has a camera that booms down and tilts.
func Knot() *plan.Plan {
	g := Stage("The knot", "", 7).Person("YSOLT", 0, 0, 1.55).Thing("HANDS", 0, -0.28, 1.05)
	g.Setup("22A", 75, 0, -1.8, 1.55, "YSOLT").Slide("boom", -0.35, 1, 2.8).Tilt(-5.6, 1, 2.8)
	return g.Plan
}

// MadeScenes returns the scenes made by hand, by name.
func MadeScenes() map[string]*plan.Plan {
	return map[string]*plan.Plan{
		"ticket-window": TicketWindow(), "mess-table": MessTable(), "office": Office(), "bridge": Bridge(), "knot": Knot(),
	}
}

// DrawScene draws a scene with 1 to 14 people and 1 to 9 set-ups.
func DrawScene(t *rapid.T) *plan.Plan {
	g := Stage("A crowd", rapid.SampledFrom([]string{"", "the foot of the stairs"}).Draw(t, "origin"), 20)
	wide := rapid.SampledFrom([]float64{0.5, 2, 6, 30}).Draw(t, "wide")
	place := func(name string) (right, upstage float64) {
		return rapid.Float64Range(-wide, wide).Draw(t, name+" right"), rapid.Float64Range(-wide, wide).Draw(t, name+" upstage")
	}
	var names []string
	for i := range rapid.IntRange(1, 14).Draw(t, "people") {
		name := rapid.SampledFrom([]string{"ADA", "BO", "MARRIT", "WILHELMINA OF THE FERRY"}).Draw(t, "name") + fmt.Sprint(i)
		right, upstage := place(name)
		if rapid.Bool().Draw(t, "marked") {
			g.Mark(fmt.Sprint("M", i), right, upstage)
		}
		if rapid.IntRange(0, 3).Draw(t, "kind") == 0 {
			g.Thing(name, right, upstage, 0.8)
		} else {
			g.Person(name, right, upstage, 1.6)
		}
		if names = append(names, name); rapid.IntRange(0, 3).Draw(t, "walks") == 0 {
			right, upstage := place(name)
			g.Walk(name, right, upstage, 2, 6, `on "late"`)
		}
		if i > 0 && rapid.Bool().Draw(t, "speaks") {
			g.Axis(names[i-1], name)
		}
	}
	for i := range rapid.IntRange(1, 9).Draw(t, "set-ups") {
		right, upstage := place("camera")
		far := rapid.SampledFrom([]float64{1, 2, 20}).Draw(t, "far")
		m := g.Setup(fmt.Sprintf("%d%c", 7+i/3, 'A'+i), rapid.SampledFrom([]float64{18, 35, 75}).Draw(t, "focal"), far*right+0.01, far*(upstage-wide), 1.5, rapid.SampledFrom(names).Draw(t, "aims"))
		if rapid.Bool().Draw(t, "pans") {
			m.Pan("", rapid.Float64Range(-200, 200).Draw(t, "to"), 1, 2)
		}
		if rapid.IntRange(0, 2).Draw(t, "pushes") == 0 {
			m.Slide("dolly", math.Min(wide, 1), 3, 5)
		}
	}
	return g.Plan
}
