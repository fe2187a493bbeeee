// The rig: how turns and moves of the camera off its axis are laid.
//
// What is hard. A track and a push go by where the camera looks as they start. Where it
// looks may hang on a pan to somebody that is still under way, and so on where they and
// the camera are as that pan lands, which may be behind the push. And whoever goes to
// a distance goes there from where the camera then is. So the web may close.
//
// What is done. The moves are laid with a guess of where the camera looks as each
// begins. Then it is seen where it does look, and the moves are laid again with that,
// until it stays. A push moves a bearing far less than it is long, so a few rounds
// settle it.

package stage

import (
	"math"
	"slices"

	"pullscore/interp/plan"
)

// settleRounds is how often moves are laid at most until the headings stay, to so
// many degrees.
const (
	settleRounds = 100
	settled      = 1e-12
)

// heads returns where the camera looks as each of some moves starts, degrees to the
// right, as it lies now; 0 for moves that do not go by it.
func (st *Stage) heads(moves []*Move) []float64 {
	heads := make([]float64, len(moves))
	for i, m := range moves {
		if m.Kind == "dolly" || m.Kind == "track" {
			heads[i] = st.optics.Pose(m.Start).Pan
		}
	}
	return heads
}

// settle lays moves that have been laid just now again, until those of the camera go
// the way in which it looks.
func (st *Stage) settle(moves []*Move) {
	before := make([]float64, len(moves)) // the first guess knew no turn of theirs
	for i, m := range moves {
		before[i] = m.head
	}
	for range settleRounds {
		heads, stays := st.heads(moves), true
		for i, m := range moves {
			stays = stays && math.Abs(heads[i]-before[i]) <= settled && st.leadsThere(m)
		}
		if stays {
			return
		}
		for i := len(moves) - 1; i >= 0; i-- {
			st.lift(moves[i])
		}
		st.layAt(moves, heads)
		before = heads
	}
}

// slide lays a move of the camera that leaves the axis of the start; the camera looks
// m.head degrees to the right of it.
func (st *Stage) slide(m *Move) {
	s := plan.Slide{Start: m.Start, End: m.End, Smooth: m.Smooth}
	s.X, s.Y, s.Z = m.goes()
	st.rig().Slide(s)
	m.onAxis = false
}

// goes returns how far a move takes the camera: to the right, forth and up, metres.
func (m *Move) goes() (x, y, z float64) {
	sin, cos := math.Sincos(m.head * math.Pi / 180)
	switch m.Kind {
	case "dolly":
		return m.By * sin, m.By * cos, 0
	case "track":
		return m.By * cos, -m.By * sin, 0
	case "boom":
		return 0, 0, m.By
	case "camera":
		return m.shift[0], m.shift[1], m.shift[2]
	}
	return 0, 0, 0
}

// Far returns how far a move takes the camera, in metres.
func (m *Move) Far() float64 {
	x, y, z := m.goes()
	return math.Hypot(math.Hypot(x, y), z)
}

// liftSlide takes the latest move of the camera off the rig or the track of its axis.
func (st *Stage) liftSlide(m *Move) {
	if m.onAxis {
		steps := &st.optics.Camera.Steps
		*steps = (*steps)[:len(*steps)-1]
		return
	}
	slides := &st.optics.Rig.Slides
	*slides = (*slides)[:len(*slides)-1]
}

// rig returns the rig of the camera, which a camera has that leaves its axis or turns.
func (st *Stage) rig() *plan.Rig {
	if st.optics.Rig == nil {
		st.optics.Rig = &plan.Rig{}
	}
	return st.optics.Rig
}

// sweeps returns where the turns of a kind lie.
func (st *Stage) sweeps(kind string) *[]plan.Sweep {
	if kind == "tilt" {
		return &st.rig().Tilts
	}
	return &st.rig().Pans
}

// turn lays the turns of a kind among some moves.
func (st *Stage) turn(moves []*Move, kind string) {
	for i, m := range moves {
		if m.Kind != kind {
			continue
		}
		end := m.End
		for _, next := range moves[i+1:] {
			if m.Keeps && next.Kind == kind {
				end = min(end, next.Start)
				break
			}
		}
		list := st.sweeps(kind)
		parts := st.swept(m, end)
		m.parts, m.From, m.To = len(parts), parts[0].From, parts[len(parts)-1].To
		*list = append(*list, parts...)
	}
}

// swept returns the sweeps of a turn that ends at a time.
func (st *Stage) swept(m *Move, end float64) []plan.Sweep {
	from := AngleOf(m.Kind, st.optics.Pose(m.Start))
	s := plan.Sweep{Start: m.Start, End: end, From: from, To: from + m.By, Smooth: m.Smooth}
	switch {
	case m.Keeps:
		return st.kept(m, s)
	case m.Aim != nil:
		s.To = from + plan.Wrapped(st.bearing(m, m.End)-from)
	}
	return []plan.Sweep{s}
}

// AngleOf returns where a camera looks by its turns of a kind, degrees.
func AngleOf(kind string, p plan.Pose) float64 {
	if kind == "tilt" {
		return p.Tilt
	}
	return p.Pan
}

// bearing is where whom a turn is about has to be looked for at t, degrees.
func (st *Stage) bearing(m *Move, t float64) float64 {
	pan, tilt := st.optics.Place(t).Bearing(m.Aim.Across.At(t), m.Aim.Along.At(t), m.Aim.Height(t))
	if m.Kind == "tilt" {
		return tilt
	}
	return pan
}

// A sweep that stays with somebody knows its angle as the shortest way from its start.
// One who goes round the camera is followed in parts, none of which is so long that the
// shortest way could be the other one.
const (
	longestPart = 120 // degrees
	partSteps   = 16  // between two times at which somebody or the camera starts or stops
)

// kept returns the sweeps of a turn that stays with somebody.
func (st *Stage) kept(m *Move, s plan.Sweep) (parts []plan.Sweep) {
	s.With = m.Aim.Subject
	at, turned := st.bearing(m, s.Start), 0.0
	from := s.Start
	until := append(st.keysOf(m.Aim, s.Start, s.End), s.End)
	for _, next := range until {
		if math.IsInf(next, 0) {
			break // nobody moves any more
		}
		for k := 1; k <= partSteps; k++ {
			t := from + (next-from)*float64(k)/partSteps
			b := st.bearing(m, t)
			turned += plan.Wrapped(b - at)
			at = b
			if math.Abs(turned) > longestPart {
				part := s
				part.End, part.To = t, s.From+turned
				parts = append(parts, part)
				s.Start, s.From, turned = t, part.To, 0
			}
		}
		from = next
	}
	s.To = s.From + turned
	if s.Start < s.End || parts == nil {
		parts = append(parts, s)
	}
	return parts
}

// keysOf returns when somebody or the place of the camera starts or stops changing
// between two times.
func (st *Stage) keysOf(u *Subject, from, to float64) (keys []float64) {
	all := slices.Concat(u.Along.Keys(), u.Across.Keys(), u.HeightKeys(), st.optics.Camera.Keys())
	for _, s := range st.optics.Rig.Slides {
		all = append(all, s.Start, s.End)
	}
	for _, t := range plan.Sorted(all) {
		if t > from && t < to {
			keys = append(keys, t)
		}
	}
	return keys
}

// EndTurns ends every turn that stays with somebody at the next turn of its kind, at
// its `until` or with the shot, whichever comes first.
func (st *Stage) EndTurns(end float64) {
	again := false
	for i := range st.laid {
		m := st.laid[i].move
		if !m.Keeps {
			continue
		}
		until := min(m.End, end)
		for _, next := range st.laid[i+1:] {
			if next.move.Kind == m.Kind {
				until = min(until, next.move.Start)
				break
			}
		}
		m.End, again = max(m.Start, until), true
	}
	if !again {
		return
	}
	moves := make([]*Move, len(st.laid))
	for i := len(st.laid) - 1; i >= 0; i-- {
		moves[i] = st.laid[i].move
		st.lift(moves[i])
	}
	st.laid = st.laid[:0]
	st.lay(moves)
}
