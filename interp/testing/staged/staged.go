package staged

import (
	"math"
	"strings"

	"pullscore/interp/plan"
	"pullscore/interp/viewer"
	"pullscore/lang/timecode"
)

// A Stage is a plan of one scene under construction.
type Stage struct {
	*plan.Plan
	Scene *plan.Scene
}

// New returns a scene that lasts so many seconds, with nobody in it.
func New(title string, lasts float64) *Stage {
	sc := &plan.Scene{Title: title, Duration: plan.Number(lasts), File: "made.pull", Line: 1}
	return &Stage{&plan.Plan{Title: "Made by hand", Rate: "24", Tape: "sensor", Units: "metric", Scenes: []*plan.Scene{sc}, File: "made.pull"}, sc}
}

// Person puts somebody on the floor, with the eyes z metres above it.
func (st *Stage) Person(name string, x, y, z float64) *Stage {
	at := plan.FloorPoint{Right: plan.Number(x), Upstage: plan.Number(y), High: plan.Number(z)}
	st.Scene.Subjects = append(st.Scene.Subjects, plan.Staged{Name: name, Person: true, Eyes: z, Path: []plan.FloorPoint{at}})
	return st
}

// Walk takes somebody to another place between two times.
func (st *Stage) Walk(name string, x, y, z, start, end float64) *Stage {
	for i := range st.Scene.Subjects {
		u := &st.Scene.Subjects[i]
		if u.Name != name {
			continue
		}
		from := u.Path[len(u.Path)-1]
		to := plan.FloorPoint{T: plan.Number(end), Right: plan.Number(x), Upstage: plan.Number(y), High: plan.Number(z)}
		from.T = plan.Number(start)
		u.Path = append(u.Path, from, to)
		u.Legs = append(u.Legs, plan.Leg{Start: start, End: end, From: from, To: to})
	}
	return st
}

// Line has somebody say something between two times; each word lasts as its letters.
func (st *Stage) Line(who, text string, start, end float64) *plan.Line {
	words := strings.Fields(text)
	letters := 0
	for _, w := range words {
		letters += len(w)
	}
	l := plan.Line{Who: who, Text: text, Start: plan.Number(start), End: plan.Number(end)}
	at := start
	for _, w := range words {
		next := at + (end-start)*float64(len(w))/float64(letters)
		l.Words = append(l.Words, plan.Word{Text: w, Start: at, End: next})
		at = next
	}
	st.Scene.Lines = append(st.Scene.Lines, l)
	return &st.Scene.Lines[len(st.Scene.Lines)-1]
}

// Cut has the cut go to a set-up.
func (st *Stage) Cut(to string, t float64) *plan.SceneCut {
	st.Scene.Cuts = append(st.Scene.Cuts, plan.SceneCut{To: to, T: plan.Number(t), At: 1})
	return &st.Scene.Cuts[len(st.Scene.Cuts)-1]
}

// SetUp adds a shot of the scene from one time to another, with a lens of so many
// millimetres at f/4. Everybody and all lines have to be there. The focus starts on the
// first of the people.
func (st *Stage) SetUp(id string, focal float64, home plan.Pose, from, to float64) *plan.Shot {
	const criterion = 0.0217e-3
	rate, _ := timecode.ParseRate("24")
	s := &plan.Shot{
		ID: id, Camera: "A", Lens: "made", FocalMM: plan.Number(focal), Stop: "f/4", FNumber: 4, Rate: rate, Duration: plan.Number(to - from),
		File: "made.pull", Line: 2 + len(st.Shots),
		Optics: plan.Optics{
			SensorW: 24.89e-3, SensorH: 18.66e-3, Focal: plan.Still(focal / 1000), Number: 4, Pupil: 1, Criterion: criterion, ArcminPerBlur: viewer.Sharp / criterion,
			Camera: plan.Still(0), Rig: &plan.Rig{Tilt: home.Tilt},
		},
		Staging: &plan.Staging{Scene: st.Scene.Title, Covers: plan.Interval{plan.Number(from), plan.Number(to)}, Aspect: 1.334, Action: true, Placed: true, Home: home},
	}
	for i := range st.Scene.Subjects {
		s.Subjects = append(s.Subjects, onFloor(s, &st.Scene.Subjects[i]))
	}
	for _, l := range st.Scene.Lines {
		if float64(l.End) > from && float64(l.Start) < to {
			s.Lines = append(s.Lines, shifted(l, -from))
		}
	}
	if len(s.Subjects) > 0 {
		s.Optics.Start = aim(s, s.Subjects[0].Name, 0)
	}
	st.Shots, st.Scene.Setups = append(st.Shots, s), append(st.Scene.Setups, id)
	return s
}

// onFloor returns somebody of the scene on the floor of a shot, in its time.
func onFloor(s *plan.Shot, u *plan.Staged) *plan.Subject {
	at := func(p plan.FloorPoint) [3]float64 {
		x, y, z := s.FromFloor(float64(p.Right), float64(p.Upstage), float64(p.High))
		return [3]float64{x, y, z}
	}
	first := at(u.Path[0])
	tracks := [3]*plan.Track{plan.Still(first[0]), plan.Still(first[1]), plan.Still(first[2])}
	for _, leg := range u.Legs {
		to := at(leg.To)
		for k, tr := range tracks {
			tr.Add(plan.Step{Start: leg.Start - float64(s.Covers[0]), End: leg.End - float64(s.Covers[0]), To: plan.Spot{Offset: to[k]}, Smooth: true})
		}
	}
	return &plan.Subject{Name: u.Name, Across: tracks[0], Along: tracks[1], Up: tracks[2]}
}

// shifted returns a line at a later time.
func shifted(l plan.Line, by float64) plan.Line {
	l.Start, l.End = l.Start+plan.Number(by), l.End+plan.Number(by)
	words := make([]plan.Word, len(l.Words))
	for i, w := range l.Words {
		words[i] = plan.Word{Text: w.Text, Start: w.Start + by, End: w.End + by}
	}
	l.Words = words
	return l
}

// aim returns the target of a pull that reaches somebody at a time of the shot.
func aim(s *plan.Shot, name string, t float64) plan.Target {
	return plan.Target{Name: name, Text: name, Distance: s.LensDistanceAt(s.Subject(name), t)}
}

// Rack adds a rack to somebody to a shot, in the time of the shot.
func Rack(s *plan.Shot, to string, start, land float64) *plan.Pull {
	goal := aim(s, to, land)
	p := &plan.Pull{
		Number: len(s.Pulls) + 1, Kind: "rack", To: to, Target: to, Profile: "smooth", Start: plan.Number(start), Land: plan.Number(land),
		FromDeg: plan.None(), ToDeg: plan.None(), Chance: plan.None(), FromLens: s.FocusAt(start), ToLens: goal.Distance, Goal: goal,
	}
	s.Pulls = append(s.Pulls, p)
	return p
}

// StartOn has the focus of a shot start on somebody.
func StartOn(s *plan.Shot, name string) { s.Optics.Start = aim(s, name, 0) }

// Towards returns the pose of a camera at a place that looks at another.
func Towards(x, y, z, tx, ty, tz float64) plan.Pose {
	p := plan.Pose{X: x, Y: y, Z: z}
	p.Pan, p.Tilt = p.Bearing(tx, ty, tz)
	return p
}

// TwoHander returns a master and two singles of a talk at a ticket window. Its places,
// lines and racks are those of the sample of that name; each word lasts as its letters.
func TwoHander() *Stage {
	st := New("The ticket window", 10.6)
	st.Person("MARRIT", 0, 0, 1.5).Person("OSKEL", 0.4, 1.3, 1.6)
	st.Line("MARRIT", "Last boat. There and back?", 0, 1.8)
	st.Line("OSKEL", "One way.", 3, 3.9)
	st.Line("MARRIT", "You live on this side.", 5.4, 7)
	st.Line("OSKEL", "I did. Until the letter came.", 7.2, 9.6)
	master := plan.Pose{X: 0.8, Y: -2.2, Z: 1.5}
	pan, tilt := master.Bearing(0, 0, 1.5)
	other, up := master.Bearing(0.4, 1.3, 1.6)
	master.Pan, master.Tilt = (pan+other)/2, math.Abs(tilt+up)/2
	a := st.SetUp("12A", 35, master, 0, 10.6)
	Rack(a, "OSKEL", 1.8, 3)
	Rack(a, "MARRIT", 4.5, 5.7)
	Rack(a, "OSKEL", 7.5, 8.7)
	st.SetUp("12B", 75, Towards(1, 1.3, 1.5, 0, 0, 1.5), 0, 10.6)
	StartOn(st.SetUp("12C", 75, Towards(0.5, -0.35, 1.6, 0.4, 1.3, 1.6), 0, 10.6), "OSKEL")
	return st
}
