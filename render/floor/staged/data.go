// The floor of a scene as plain data: nothing here knows the page.

package staged

import (
	"cmp"
	"math"
	"slices"

	"pullscore/interp/plan"
	"pullscore/interp/units"
	"pullscore/render/sheet"
)

// A Floor is the floor of a scene, with the cameras that stand on it.
type Floor struct {
	Title, Origin string
	PlanName      string
	Style         units.Style
	Places        []Place
	Marks         []Mark
	Ways          []Way
	Lines         []Line
	Setups        []Setup
	Cautions      []string

	number int // of the scene in its plan, from 1
}

// A Spot is a point of the floor: metres to the right, upstage and up.
type Spot struct{ X, Y, Z float64 }

// A Place is where somebody or something is, at first or later.
type Place struct {
	Letter string
	Name   string
	At     Spot    // of the focus point
	Mark   string  // the mark that they stand on; "" for none
	Eyes   float64 // of a person: over what they stand on
	Person bool
	Level  bool // a thing whose height nobody says
	Later  bool
	From   float64 // when somebody comes there, seconds
	Only   string  // the set-up in which alone it is; "" for all
}

// A Mark is a mark on the floor.
type Mark struct {
	Name string
	At   Spot
}

// A Way is a walk of somebody, with the word that starts it.
type Way struct {
	Who      string
	From, To Spot
	Word     string
}

// A Line is a line of action.
type Line struct {
	Names    string
	From, To Spot
}

// sameSpot is how near two points of the floor are one, in metres.
const sameSpot = 0.01

func apart(a, b Spot) float64 { return math.Hypot(a.X-b.X, a.Y-b.Y) }

// Of returns the floor of a scene of a plan, by its index.
func Of(p *plan.Plan, scene int) *Floor {
	sc := p.Scenes[scene]
	shots := ShotsOf(p, scene)
	f := &Floor{Title: sc.Title, Origin: sc.Origin, PlanName: p.Title, Style: units.ForTable(p.Units == "imperial"), number: scene + 1}
	if f.Title == "" {
		f.Title = "Scene"
	}
	for _, m := range sc.Marks {
		f.Marks = append(f.Marks, Mark{m.Name, Spot{float64(m.Right), float64(m.Upstage), float64(m.High)}})
	}
	for i := range sc.Subjects {
		f.follow(&sc.Subjects[i])
	}
	f.addOwn(sc, shots)
	f.letter()
	for _, a := range sc.Axes {
		f.addLine(sc, a)
	}
	for _, s := range shots {
		f.Setups = append(f.Setups, f.setup(s))
	}
	f.Cautions = sheet.Cautions(shots...)
	if len(f.Ways) > 0 && len(sheet.MotionCautions(shots...)) == 0 {
		f.Cautions = slices.Insert(f.Cautions, 0, sheet.WalkingCaution)
	}
	return f
}

// On reports whether the camera of a shot stands on the floor of a scene.
func On(s *plan.Shot) bool { return s.Staging != nil && s.Placed }

// ShotsOf returns the shots whose cameras stand on the floor of a scene, in their order.
func ShotsOf(p *plan.Plan, scene int) (shots []*plan.Shot) {
	for _, s := range p.Shots {
		if On(s) && s.Of == scene {
			shots = append(shots, s)
		}
	}
	return shots
}

func spotOf(p plan.FloorPoint) Spot {
	return Spot{float64(p.Right), float64(p.Upstage), float64(p.High)}
}

// follow adds the places of somebody of the scene, and the ways between them.
func (f *Floor) follow(u *plan.Staged) {
	first := Place{Name: u.Name, At: spotOf(u.Path[0]), Eyes: u.Eyes, Person: u.Person, Level: u.Unknown}
	first.Mark = f.markAt(first.At)
	f.Places = append(f.Places, first)
	mine := len(f.Places) - 1
	for _, l := range legsOf(u) {
		from, to := spotOf(l.From), spotOf(l.To)
		if apart(from, to) >= sameSpot {
			f.Ways = append(f.Ways, Way{u.Name, from, to, wordOf(l, f.Style)})
		}
		known := slices.ContainsFunc(f.Places[mine:], func(p Place) bool { return apart(p.At, to) < sameSpot && math.Abs(p.At.Z-to.Z) < sameSpot })
		if known {
			continue
		}
		later := first
		later.At, later.Later, later.From, later.Mark = to, true, l.End, f.markAt(to)
		later.Eyes = first.Eyes + to.Z - first.At.Z - f.groundAt(later.Mark) + f.groundAt(first.Mark)
		f.Places = append(f.Places, later)
	}
}

// legsOf returns the walks of somebody; what goes with somebody else has them from its path.
func legsOf(u *plan.Staged) []plan.Leg {
	if len(u.Legs) > 0 {
		return u.Legs
	}
	var legs []plan.Leg
	for i := 1; i < len(u.Path); i++ {
		a, b := u.Path[i-1], u.Path[i]
		if apart(spotOf(a), spotOf(b)) < sameSpot && math.Abs(float64(a.High-b.High)) < sameSpot {
			continue
		}
		if n := len(legs); n > 0 && legs[n-1].End == float64(a.T) { // one walk, told in pieces
			legs[n-1].End, legs[n-1].To = float64(b.T), b
			continue
		}
		legs = append(legs, plan.Leg{Start: float64(a.T), End: float64(b.T), From: a, To: b})
	}
	return legs
}

func (f *Floor) markAt(at Spot) string {
	for _, m := range f.Marks {
		if apart(m.At, at) < sameSpot {
			return m.Name
		}
	}
	return ""
}

// groundAt returns how high a mark is; what nobody marks is on the floor.
func (f *Floor) groundAt(mark string) float64 {
	for _, m := range f.Marks {
		if m.Name == mark {
			return m.At.Z
		}
	}
	return 0
}

// addOwn adds those who are in one set-up alone.
func (f *Floor) addOwn(sc *plan.Scene, shots []*plan.Shot) {
	for _, s := range shots {
		for _, u := range s.Subjects {
			if slices.ContainsFunc(sc.Subjects, func(o plan.Staged) bool { return o.Name == u.Name }) {
				continue
			}
			x, y, z := s.OnFloor(u, 0)
			f.Places = append(f.Places, Place{Name: u.Name, At: Spot{x, y, z}, Level: true, Mark: f.markAt(Spot{x, y, z}), Only: s.ID})
		}
	}
}

// letter orders the places, far from the front to near, and letters them. The later places
// of somebody come after the first.
func (f *Floor) letter() {
	firsts := map[string]Spot{}
	key := func(p Place) string { return p.Name + "\x00" + p.Only }
	for _, p := range f.Places {
		if _, ok := firsts[key(p)]; !ok {
			firsts[key(p)] = p.At
		}
	}
	slices.SortStableFunc(f.Places, func(a, b Place) int {
		p, q := firsts[key(a)], firsts[key(b)]
		return cmp.Or(cmp.Compare(q.Y, p.Y), cmp.Compare(p.X, q.X), cmp.Compare(key(a), key(b)))
	})
	for i := range f.Places {
		f.Places[i].Letter = plan.LetterOf(i)
	}
}

// addLine adds a line of action, each pair once.
func (f *Floor) addLine(sc *plan.Scene, a plan.LineOfAction) {
	at := func(name string) (Spot, bool) {
		for i := range sc.Subjects {
			if u := &sc.Subjects[i]; u.Name == name {
				return along(u, float64(a.Start)), true
			}
		}
		return Spot{}, false
	}
	from, known := at(a.From)
	to, also := at(a.To)
	line := Line{"line of action " + a.From + " to " + a.To, from, to}
	same := func(o Line) bool {
		return apart(o.From, from)+apart(o.To, to) < sameSpot || apart(o.From, to)+apart(o.To, from) < sameSpot
	}
	if known && also && apart(from, to) >= sameSpot && !slices.ContainsFunc(f.Lines, same) {
		f.Lines = append(f.Lines, line)
	}
}

// along returns where somebody of the scene is at a time.
func along(u *plan.Staged, t float64) Spot {
	path := u.Path
	for i := 1; i < len(path); i++ {
		a, b := path[i-1], path[i]
		if t >= float64(b.T) {
			continue
		}
		p, q, share := spotOf(a), spotOf(b), 0.0
		if b.T > a.T {
			share = min(max((t-float64(a.T))/float64(b.T-a.T), 0), 1)
		}
		return Spot{p.X + share*(q.X-p.X), p.Y + share*(q.Y-p.Y), p.Z + share*(q.Z-p.Z)}
	}
	return spotOf(path[len(path)-1])
}
