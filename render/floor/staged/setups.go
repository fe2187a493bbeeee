// Where the cameras of a scene stand, what they see, and their tapes.

package staged

import (
	"cmp"
	"math"
	"slices"

	"pullscore/interp/moments"
	"pullscore/interp/plan"
	"pullscore/render/sheet"
)

// A Setup is a camera on the floor of a scene, as its shot starts.
type Setup struct {
	ID      string
	Camera  string
	FocalMM float64
	Pose    plan.Pose
	Lens    float64 // metres ahead of the sensor mark where its field of view begins
	PerSide float64 // how far it sees to either side for each metre ahead of there
	Reach   float64 // metres along its axis to the farthest that it sees
	Path    []Spot  // where it goes; nothing if it stays
	End     plan.Pose
	Pans    []Pan
	Moves   []string // in words
	Tapes   []Tape   // far to near
	Focus   string   // whom its focus is on, with their tape
}

// A Pan turns a camera at a place.
type Pan struct {
	At       Spot
	From, By float64 // degrees
}

// A Tape is what there is to measure from a camera to somebody.
type Tape struct {
	Letter   string // of their place; "" where they are on their way
	Name     string
	Tape     float64 // straight from the sensor mark
	ByFloor  float64 // the same as the floor has it
	Focus    float64 // the part along the axis
	OffAxis  float64 // degrees
	Measured bool
	Out      bool // of the picture
}

// setup returns the camera of a shot.
func (f *Floor) setup(s *plan.Shot) Setup {
	c := Setup{ID: s.ID, Camera: s.Camera, FocalMM: float64(s.FocalMM), Pose: s.Stands(0), End: s.Stands(float64(s.Duration))}
	x := s.FocusAt(0)
	if !(x > s.FocalTo(x, 0)) {
		x = math.Inf(1)
	}
	side, _ := s.Reach(1, x, 0)
	if sheet.Finite(side) {
		c.PerSide = side
	}
	const ahead = 10.0 // metres, at which a tape surely reaches beyond any lens
	if lens := ahead - s.FromTape(ahead, 0); lens > 0 {
		c.Lens = lens
	}
	for _, u := range s.Subjects {
		c.Tapes = append(c.Tapes, f.tape(s, u))
	}
	slices.SortStableFunc(c.Tapes, func(a, b Tape) int { return cmp.Compare(b.Focus, a.Focus) })
	c.Reach = c.farthest(s.Optics.Start.Name)
	for _, t := range c.Tapes {
		if t.Name == s.Optics.Start.Name {
			c.Focus = f.Style.Tape(t.Tape) + " to " + t.Name
		}
	}
	c.Path, c.Pans = pathOf(s), pansOf(s)
	c.Moves = movesOf(s)
	return c
}

// tape returns the tape to somebody as a shot starts.
func (f *Floor) tape(s *plan.Shot, u *plan.Subject) Tape {
	x, y, z := s.OnFloor(u, 0)
	at, from, v := Spot{x, y, z}, s.Stands(0), s.ViewOf(u, 0)
	t := Tape{Name: u.Name, Focus: s.DistanceAt(u, 0), OffAxis: v.OffAxis(), Out: s.FrameAt(u, 0) == plan.OutOfFrame}
	t.ByFloor = math.Hypot(math.Hypot(x-from.X, y-from.Y), z-from.Z)
	t.Tape = t.ByFloor
	if u.Seen != nil {
		if u.Seen.Tape.Known() {
			t.Tape = float64(u.Seen.Tape)
		}
		if u.Measured.Known() {
			t.Tape, t.Measured = float64(u.Measured), true
		}
	}
	for _, p := range f.Places {
		if p.Name == u.Name && (p.Only == "" || p.Only == s.ID) && apart(p.At, at) < sameSpot && (p.Level || math.Abs(p.At.Z-at.Z) < sameSpot) {
			t.Letter = p.Letter
			break
		}
	}
	return t
}

// farthest returns how far along the axis the farthest is that a camera sees, or whom its
// focus is on; of those out of the picture the farthest ahead where there is nobody else.
func (c *Setup) farthest(focus string) float64 {
	in, any := 0.0, 0.0
	for _, t := range c.Tapes {
		if any = max(any, t.Focus); !t.Out || t.Name == focus {
			in = max(in, t.Focus)
		}
	}
	return cmp.Or(in, any, 3)
}

// pathOf returns where the camera of a shot goes on the floor.
func pathOf(s *plan.Shot) []Spot {
	const steps = 120
	var run []Spot
	far := 0.0
	for i := range steps + 1 {
		p := s.Stands(float64(s.Duration) * float64(i) / steps)
		run = append(run, Spot{p.X, p.Y, p.Z})
		far = max(far, apart(run[0], run[i]))
	}
	if far < sameSpot {
		return nil
	}
	return run
}

const arcLeast = 1.0 // degrees

// pansOf returns the pans of a shot, on the floor of its scene.
func pansOf(s *plan.Shot) (list []Pan) {
	if s.Optics.Rig == nil {
		return nil
	}
	for _, w := range s.Optics.Rig.Pans {
		if math.Abs(w.To-w.From) >= arcLeast {
			p := s.Stands(w.End)
			list = append(list, Pan{Spot{p.X, p.Y, p.Z}, w.From + s.Home.Pan, w.To - w.From})
		}
	}
	return list
}

// movesOf says what the camera of a shot does, in the order of time.
func movesOf(s *plan.Shot) (words []string) {
	type move struct {
		start float64
		words string
	}
	var list []move
	for _, t := range s.Turns {
		name := t.Kind
		switch {
		case t.Target != "" && t.Profile == "with":
			name += " with " + t.Target
		case t.Target != "":
			name += " to " + t.Target
		}
		list = append(list, move{float64(t.Start), name + ", " + moments.Heading(t.Kind, float64(t.To-t.From), sheet.Figures)})
	}
	for i := range s.Blocking {
		b := &s.Blocking[i]
		if goes := moments.Goes(b, sheet.Style(s)); goes != "" {
			list = append(list, move{float64(b.Start), goes})
		}
	}
	slices.SortStableFunc(list, func(a, b move) int { return cmp.Compare(a.start, b.start) })
	for _, m := range list {
		words = append(words, m.words+", from "+sheet.When(s, m.start))
	}
	return words
}
