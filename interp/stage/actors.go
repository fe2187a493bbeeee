// People and things on a floor: how high they are, and where they walk.

package stage

import (
	"math"

	"pullscore/interp/names"
	"pullscore/interp/plan"
	"pullscore/lang"
)

// HasEyes reports whether a subject has eyes, whose height over the floor is known.
func (st *Stage) HasEyes(u *Subject) bool { return u.eyes > 0 }

// raise gives everyone on the floor of a scene a height, and the camera the tilt of its
// start.
func (st *Stage) raise() {
	if st.ground == nil {
		return
	}
	if st.ground.Placed && !st.ground.Scene {
		st.rig().Tilt = st.ground.Home.Tilt
	}
	for _, u := range st.Order {
		u.Up, u.ground = &plan.Track{}, plan.Still(u.firstGround)
	}
	for _, u := range st.Order {
		u.Up.From = onTrack(u.firstUp, up)
	}
}

// alongTilted places a subject that stands by its distance where the tape of a camera
// that tilts at the start finds it: along the axis.
func (st *Stage) alongTilted(u *Subject) {
	if st.ground == nil {
		return
	}
	sin, cos := math.Sincos(st.ground.Home.Tilt * math.Pi / 180)
	u.firstUp = spot{u.FirstAlong.On, u.FirstAlong.V * sin}
	u.FirstAlong.V *= cos
	u.eyes = Eyes
	u.firstGround = u.firstUp.V - Eyes
	if on := u.FirstAlong.On; on != nil {
		u.Level, u.eyes, u.firstGround = on.Level, on.eyes, on.firstGround
	}
}

// walk lays a move of a person to a place on the floor.
func (st *Stage) walk(m *Move) {
	m.to = st.arrives(m)
	step := func(tr *plan.Track, to float64) {
		tr.Add(plan.Step{Start: m.Start, End: m.End, To: plan.Spot{Offset: to}, Smooth: m.Smooth})
	}
	step(m.Who.Along, m.to.y)
	step(m.Who.Across, m.to.x)
	step(m.Who.Up, m.to.focus)
	step(m.Who.ground, m.to.ground)
}

// arrives returns where a move to a place on the floor leads, as everything lies now.
func (st *Stage) arrives(m *Move) (s site) {
	g, ok := st.floor(m.Floor, m.In.Quietly(), st.at(m.End))
	if !ok {
		return m.to // which has been told
	}
	s = site{x: g.from.x + g.dx, y: g.from.y + g.dy, ground: st.stands(&g)}
	if m.Kind == "camera" {
		if s.focus = s.ground; g.says == "" {
			s.focus = st.optics.Place(m.Start).Z // it keeps its height
		}
		return s
	}
	eyes := m.Eyes
	if math.IsNaN(eyes) {
		eyes = m.Who.Height(m.Start) - m.Who.ground.At(m.Start)
	}
	s.focus = s.ground + eyes
	return s
}

// leadsThere reports whether a move leads where it was laid to, as everything lies now.
func (st *Stage) leadsThere(m *Move) bool {
	if m.Floor == nil {
		return true
	}
	s := st.arrives(m)
	return math.Hypot(s.x-m.to.x, s.y-m.to.y)+math.Abs(s.focus-m.to.focus) <= settled
}

// slideTo lays a move of the camera to a place on the floor. Moves of the camera add up,
// so it goes by what is left to that place.
func (st *Stage) slideTo(m *Move) {
	m.to = st.arrives(m)
	p := st.optics.Place(m.End)
	m.shift = [3]float64{m.to.x - p.X, m.to.y - p.Y, m.to.focus - p.Z}
	st.slide(m)
}

// CheckFloor tells what is wrong with a place on the floor that somebody goes to.
func (st *Stage) CheckFloor(f *lang.Floor, who string, in names.Reader) (ok bool) {
	if !st.onFloor(f.Range(), who, in) {
		return false
	}
	somewhere := func(u *Subject) (site, bool) { return site{x: math.Pi * float64(len(u.Name)+1)}, u.Ok } // where is not known yet
	_, ok = st.floor(f, in, somewhere)
	return ok
}

// ReadEyes reads how high somebody's eyes are as they arrive; NaN where nothing is said.
func (st *Stage) ReadEyes(x *lang.Expr, in names.Reader) (high float64, ok bool) {
	if x == nil {
		return math.NaN(), true
	}
	return st.eyes(x, in)
}

// takesOnFloor returns how long a move to a place on the floor takes at its speed from a
// time on, in seconds.
func (st *Stage) takesOnFloor(m *Move, start float64) (long float64) {
	for range 100 {
		try := *m
		try.Start, try.End = start, start+long
		to, before := st.arrives(&try), long
		if m.Kind == "camera" {
			p := st.optics.Place(start)
			long = math.Hypot(math.Hypot(to.x-p.X, to.y-p.Y), to.focus-p.Z) / m.Speed
		} else {
			long = math.Hypot(to.x-m.Who.Across.At(start), to.y-m.Who.Along.At(start)) / m.Speed
		}
		if math.Abs(long-before) < 1e-9 {
			break
		}
	}
	return long
}

// frozen places somebody who moves in the scene where they stand as the shot starts, if it
// does not have their moves.
func (st *Stage) frozen(u *Subject) {
	if !u.Ok || st.ground.First == nil {
		return
	}
	s, ok := st.ground.First(u.Name)
	if !ok {
		return
	}
	x, y, z := st.on(s.Right, s.Upstage, s.High)
	u.FirstAcross, u.FirstAlong, u.firstUp = spot{V: x}, spot{V: y}, spot{V: z}
	u.firstGround = s.Ground - st.ground.Home.Z
	u.eyes = s.High - s.Ground
}
