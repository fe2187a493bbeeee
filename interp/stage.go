// The stage: where everyone and everything stands, and how they, the camera
// and the zoom move.

package interp

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"pullscore/interp/plan"
	"pullscore/lang"
	"pullscore/optics"
)

// maxDistance is beyond any focus mark; farther is infinity.
const maxDistance = 1e6 // m

// maxRelative is how many others a subject's place may hang on.
const maxRelative = 12

// A stage holds the subjects of a shot and the moves resolved so far.
type stage struct {
	*lexicon
	ch     *change
	optics *plan.Optics
	focal  float64 // m, before any zoom

	subjects map[string]*subject
	order    []*subject
	moves    []*move
	dirty    bool // moves have come since the tracks were laid
}

// A subject is a plan.Subject with what only the interpreter needs.
type subject struct {
	*plan.Subject
	decl   *decl
	along  spot // where it stands at first
	across spot
	busy   bool // being placed
	placed bool // or tried to be
	ok     bool
}

// A spot is a place by its distance, or relative to another subject.
type spot struct {
	on *subject
	v  float64
}

// back moves a spot that is measured from the camera farther from it, in metres.
func (s *spot) back(by float64) {
	if s.on == nil {
		s.v += by
	}
}

// A move is a piece of blocking with its times.
type move struct {
	item       int
	stmt       lang.Statement
	kind       string // moves, dolly or zoom
	who        *subject
	along      spot // of a person
	across     spot
	keepsSide  bool
	by         float64 // dolly: towards the subjects positive; zoom: the focal length
	start, end float64
	smooth     bool
}

// newStage places the subjects of the shot: its own, then the file's.
func newStage(l *lexicon, ch *change, optics *plan.Optics, focal float64) *stage {
	st := &stage{lexicon: l, ch: ch, optics: optics, focal: focal, subjects: map[string]*subject{}}
	for _, s := range []*scope{l.film, l.local} {
		for _, d := range s.order {
			if d.kind == declSubject && l.find(d.name.Text) == d {
				u := &subject{decl: d, Subject: &plan.Subject{Name: d.name.Text}}
				st.subjects[u.Name] = u
				st.order = append(st.order, u)
			}
		}
	}
	for _, u := range st.order {
		st.place(u)
	}
	st.order = slices.DeleteFunc(st.order, func(u *subject) bool { return !u.ok })
	for _, u := range st.order {
		u.Along, u.Across = &plan.Track{}, &plan.Track{}
	}
	st.lay()
	return st
}

// place resolves where a subject stands at the start; a circle of subjects
// that stand relative to one another is an error.
func (st *stage) place(u *subject) {
	if u.busy || u.placed {
		return
	}
	u.placed = true
	s, ok := u.decl.stmt.(*lang.Subject)
	if !ok {
		return // it could not be read, and stands nowhere
	}
	u.busy = true
	u.Deep, u.Sways = 0, plan.None()
	if s.Deep != nil {
		if v, ok := st.within(s.Deep, dimLength, 0, 1000, "a subject is 0 to 1000 m deep"); ok {
			u.Deep = plan.Number(v)
		}
	}
	if s.Sways != nil {
		if v, ok := st.within(s.Sways, dimLength, 0, 10, "a subject sways 0 to 10 m"); ok {
			u.Sways = plan.Number(v)
		}
	}
	u.along, u.across, u.ok = st.spots(s.Place, nil, u)
	u.along.back(st.ch.Back)
	if st.ch.Subject == u.Name {
		u.across.v = st.ch.Side
	}
	u.busy = false
}

// spots resolves a place. For a subject's first place, self is that subject,
// and its slant is noted.
func (st *stage) spots(pl *lang.Place, e *env, self *subject) (along, across spot, ok bool) {
	if pl == nil {
		return along, across, false
	}
	ev := st.at(e)
	q, ok := ev.eval(pl.At)
	if !ok {
		return along, across, false
	}
	if q.dim != dimLength {
		st.fail(pl.At.Range(), "wrong-unit", fmt.Sprintf("a distance is wanted here, and this is %s", q.what()), "As in 1.7 m, or NAME - 35 cm.")
		return along, across, false
	}
	if q.on != nil {
		on := st.subjects[q.on.Text]
		if self != nil {
			st.place(on)
		}
		if on.busy || self != nil && on == self {
			st.fail(pl.Range(), "circle", fmt.Sprintf("%s stands relative to itself", q.on.Text), "Give one of them a distance.")
			return along, across, false
		}
		if !on.ok {
			return along, across, false
		}
		if len(st.ancestors(on)) > maxRelative {
			st.fail(pl.Range(), "too-deep", fmt.Sprintf("subjects stand relative to subjects more than %d deep", maxRelative), "Give one of them a distance.")
			return along, across, false
		}
		along, across = spot{on, q.v}, spot{on, 0}
	} else {
		if math.IsInf(q.v, 1) {
			st.fail(pl.At.Range(), "out-of-range", "nobody stands at infinity", "A rack goes there by itself: rack to inf.")
			return along, across, false
		}
		if q.v < 0.005 || q.v > maxDistance {
			st.fail(pl.At.Range(), "out-of-range", "a subject stands 5 mm to 1000 km away", "")
			return along, across, false
		}
		along = spot{v: q.v}
	}
	if pl.Side == nil {
		return along, across, true
	}
	return st.toTheSide(pl, ev, along, across, self)
}

// toTheSide adds what a place says of the side: a length across, or the angle
// of a slant tape.
func (st *stage) toTheSide(pl *lang.Place, ev *evaluator, along, across spot, self *subject) (spot, spot, bool) {
	side, ok := ev.eval(pl.Side)
	if !ok {
		return along, across, false
	}
	sign := 1.0
	if pl.Dir == "left" {
		sign = -1
	}
	switch {
	case side.on == nil && side.dim == dimLength && math.Abs(side.v) <= maxDistance:
		across.v += sign * side.v
	case side.on == nil && side.dim == dimAngle && side.v >= 0 && side.v < 89 && along.on == nil:
		tape := along.v
		along.v = optics.PlaneDistance(tape, side.v)
		across.v = sign * tape * math.Sin(side.v*math.Pi/180)
		if self != nil {
			self.Slant, self.SlantDeg = plan.Number(tape), side.v
		}
	default:
		st.fail(pl.Side.Range(), "wrong-unit", "the way to the side is a length, or the angle of the tape under 89 deg",
			"As in 1.7 m, 20 cm left, or 1.7 m, 15 deg left.")
		return along, across, false
	}
	return along, across, true
}

// add takes a resolved move of a person, the camera or the zoom.
func (st *stage) add(m *move) {
	st.moves = append(st.moves, m)
	st.dirty = true
}

// lay builds the tracks anew from the moves resolved so far: the camera's
// first, since people's places are measured from where it then stands.
func (st *stage) lay() {
	st.dirty = false
	moves := slices.Clone(st.moves)
	slices.SortStableFunc(moves, func(a, b *move) int { return cmp.Compare(a.start, b.start) })
	o := st.optics
	*o.Camera, *o.Focal = *plan.Still(0), *plan.Still(st.focal)
	at := 0.0
	for _, m := range moves {
		switch m.kind {
		case "dolly":
			at += m.by
			o.Camera.Steps = append(o.Camera.Steps, plan.Step{Start: m.start, End: m.end, To: plan.Spot{Offset: at}, Smooth: m.smooth})
		case "zoom":
			o.Focal.Steps = append(o.Focal.Steps, plan.Step{Start: m.start, End: m.end, To: plan.Spot{Offset: m.by}, Smooth: m.smooth})
		}
	}
	for _, u := range st.order {
		*u.Along = plan.Track{From: onTrack(u.along, false)}
		*u.Across = plan.Track{From: onTrack(u.across, true)}
	}
	for _, m := range moves {
		if m.kind != "moves" {
			continue
		}
		along := onTrack(m.along, false)
		if along.Parent == nil {
			along.Offset += o.Camera.At(m.end)
		}
		m.who.Along.Steps = append(m.who.Along.Steps, plan.Step{Start: m.start, End: m.end, To: along, Smooth: m.smooth})
		if !m.keepsSide {
			m.who.Across.Steps = append(m.who.Across.Steps, plan.Step{Start: m.start, End: m.end, To: onTrack(m.across, true), Smooth: m.smooth})
		}
	}
}

func onTrack(s spot, across bool) plan.Spot {
	switch {
	case s.on == nil:
		return plan.Spot{Offset: s.v}
	case across:
		return plan.Spot{Parent: s.on.Across, Offset: s.v}
	}
	return plan.Spot{Parent: s.on.Along, Offset: s.v}
}

// tracks returns once the tracks hold every move resolved so far.
func (st *stage) tracks() {
	if st.dirty {
		st.lay()
	}
}

// hangsOn tells whether a subject's place is, or ever becomes, relative to
// another: a move to such a place would close a circle.
func (st *stage) hangsOn(u, on *subject) bool {
	_, found := st.ancestors(u)[on]
	return found
}

// ancestors returns a subject with all that it ever stands relative to, each
// with the number of steps to it.
func (st *stage) ancestors(u *subject) map[*subject]int {
	depth := map[*subject]int{u: 0}
	for queue := []*subject{u}; len(queue) > 0; queue = queue[1:] {
		v := queue[0]
		add := func(on *subject) {
			if _, seen := depth[on]; on != nil && !seen {
				depth[on] = depth[v] + 1
				queue = append(queue, on)
			}
		}
		add(v.along.on)
		for _, m := range st.moves {
			if m.who == v {
				add(m.along.on)
			}
		}
	}
	return depth
}
