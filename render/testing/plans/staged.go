// A scene made by hand, which two cameras shoot at once.

package plans

import (
	"math"

	"pullscore/interp/plan"
)

// Scene returns a plan of one scene, staged: PEVIN walks in at the door and speaks of the
// letter. 18A pans and tilts with him and then to it, and is taken straight to another
// place; 18B runs with it and only stands there. 18C stands under no scene.
func Scene() *plan.Plan {
	sc := &plan.Scene{Title: "The office", Origin: "the left front corner of the desk", Duration: 10, File: "office.pull", Line: 3,
		Marks: []plan.FloorMark{{Name: "DOOR", Right: 1.6, Upstage: 4.2}, {Name: "CHAIR", Right: 0.7, Upstage: 0.9}},
		Subjects: []plan.Staged{
			{Name: "PEVIN", Person: true, Eyes: 1.7, At: "DOOR", Path: []plan.FloorPoint{{T: 0, Right: 1.6, Upstage: 4.2, High: 1.7}, {T: 1, Right: 1.6, Upstage: 4.2, High: 1.7}, {T: 5, Right: 0.7, Upstage: 0.9, High: 1.7}}},
			{Name: "LETTER", At: "20 cm right, 15 cm upstage, 78 cm high", Path: []plan.FloorPoint{{T: 0, Right: 0.2, Upstage: 0.15, High: 0.78}}},
		},
		Cuts:   []plan.SceneCut{{To: "18B", T: 5.5}},
		Axes:   []plan.LineOfAction{{From: "PEVIN", To: "YSOLT", Start: 5.5, End: 7.5}},
		Setups: []string{"18A", "18B"},
	}
	p := sc.Subjects[0].Path
	sc.Subjects[0].Legs = []plan.Leg{{Start: 1, End: 5, From: p[1], To: p[2], Anchor: "on 1 s"}}
	a := setUp("18A", "In at the door", sc, plan.Pose{X: -0.6, Y: -1.6, Z: 1.4, Pan: 20.8, Tilt: 2.8})
	a.Optics.Focal, a.FocalMM = plan.Still(0.035), 35
	a.PanWith("PEVIN", 1, 5).tiltTo("LETTER", 5.2, 6.4).PanTo("LETTER", 5.2, 6.4)
	a.free(0.5, 0.6, 0.25, 7, 9)
	a.Follow("PEVIN", 1, 5).Rack("LETTER", "with pan", "he has seen it", 5.2, 6.4)
	b := setUp("18B", "", sc, plan.Pose{X: 2.2, Y: -0.9, Z: 1.5, Pan: -38, Tilt: 1})
	b.Optics.Focal, b.FocalMM = plan.Still(0.05), 50
	b.RunsWith = "18A"
	b.Rack("PEVIN", "5 s", "", 4, 5)
	sc.Lines = a.Lines
	for _, m := range []Maker{a, b} {
		m.finish()
	}
	return &plan.Plan{Title: "The Last Boat, scene 18", Rate: "24", Tape: "sensor", Units: "metric", Scenes: []*plan.Scene{sc},
		Shots: []*plan.Shot{a.Shot, b.Shot, New("18C", "The boat", 4).Put("BOAT", 30, 3).Start("BOAT").Shot}}
}

// setUp returns a shot that covers all of a scene, with the camera at home as it starts.
func setUp(id, title string, sc *plan.Scene, home plan.Pose) Maker {
	m := New(id, title, float64(sc.Duration))
	m.Staging = &plan.Staging{Scene: sc.Title, Covers: plan.Interval{0, sc.Duration}, Aspect: 1.334, Action: true, Placed: true, Home: home}
	m.Optics.Rig = &plan.Rig{Tilt: home.Tilt}
	for _, u := range sc.Subjects {
		m.stand(u)
	}
	m.Line("PEVIN", "So was the *letter.", 5.5, 7.5)
	return m.Start(sc.Subjects[0].Name)
}

// stand puts somebody of the scene on the floor of the shot.
func (m Maker) stand(u plan.Staged) {
	at := func(p plan.FloorPoint) (x, y, z float64) {
		return m.FromFloor(float64(p.Right), float64(p.Upstage), float64(p.High))
	}
	x, y, z := at(u.Path[0])
	m.Put(u.Name, 1, 0.08)
	own := m.Subject(u.Name)
	own.Along, own.Across, own.Up = plan.Still(y), plan.Still(x), plan.Still(z)
	for _, leg := range u.Legs {
		x, y, z := at(leg.To)
		for _, to := range []struct {
			track *plan.Track
			v     float64
		}{{own.Across, x}, {own.Along, y}, {own.Up, z}} {
			to.track.Add(plan.Step{Start: leg.Start, End: leg.End, To: plan.Spot{Offset: to.v}})
		}
		m.Blocking = append(m.Blocking, plan.Blocking{Who: u.Name, Kind: "moves", Start: plan.Number(leg.Start), End: plan.Number(leg.End),
			From: plan.None(), To: plan.None(), FromMM: plan.None(), ToMM: plan.None(), Profile: "even"})
	}
	own.Distance, own.Side = plan.Number(m.DistanceAt(own, 0)), plan.Number(m.SideAt(own, 0))
}

// tiltTo turns the camera until somebody is in the middle of its picture, up and down.
func (m Maker) tiltTo(name string, start, end float64) Maker {
	u := m.Subject(name)
	_, tilt := m.Optics.Pose(end).Bearing(u.Across.At(end), u.Along.At(end), u.Up.At(end))
	m.Tilt(tilt, start, end)
	m.Turns[len(m.Turns)-1].Target = name
	return m
}

// free takes the camera straight to another place: so far to the right, forth and up.
func (m Maker) free(x, y, z, start, end float64) {
	m.Optics.Rig.Slide(plan.Slide{Start: start, End: end, X: x, Y: y, Z: z, Smooth: true})
	m.Blocking = append(m.Blocking, plan.Blocking{Kind: "camera", Start: plan.Number(start), End: plan.Number(end),
		To: plan.Number(math.Hypot(math.Hypot(x, y), z)), FromMM: plan.None(), ToMM: plan.None(), Profile: "smooth"})
}

// finish has the turns tell degrees of the scene's floor, and fills in what is seen.
func (m Maker) finish() {
	for i := range m.Turns {
		if t := &m.Turns[i]; t.Kind == "pan" {
			t.From, t.To = t.From+plan.Number(m.Home.Pan), t.To+plan.Number(m.Home.Pan)
		}
	}
	m.FillSeen()
}
