// Ways: how the distance of somebody goes as people really go.
//
// A plan says when somebody sets off and when they stand. With `even` the plan's
// track has a corner at either end, which nobody walks: there the way is the mean
// over half a second. The drawn curves and the exported ones keep the corner.

package stage

import (
	"cmp"
	"math"
	"slices"
	"sort"
)

// PickUp is how long someone who goes at an even pace takes to get to it, and to
// stop: seconds. Common practice, no source.
const PickUp = 0.5

// A Way is how the distance of a goal goes in time.
type Way struct {
	sight  Sight
	goal   *Goal
	shifts []shift
	under  underWay
	even   underWay // of the shifts that have corners to be rounded
}

// A shift is a move that changes the distance of someone, by d metres away from
// the camera.
type shift struct {
	number        int // in the order in which the moves were timed
	start, end, d float64
	smooth        bool
	marks         [2]float64 // where they stand as it starts and ends, as the tape reads it
	rigged        *rigged    // where the camera turns or leaves its axis, in place of d
}

// Way returns how the distance of a goal goes in a shot on this stage, right between two
// times.
func (st *Stage) Way(sight Sight, g *Goal, from, until float64) Way {
	w := Way{sight: sight, goal: g}
	var hangs map[*Subject]bool
	for _, u := range g.Members() {
		for a := range st.Ancestors(u) {
			if hangs == nil {
				hangs = map[*Subject]bool{}
			}
			hangs[a] = true
		}
	}
	for _, m := range st.MovesIn(from-PickUp, until+PickUp) {
		s := shift{number: len(w.shifts), start: m.Start, end: m.End, smooth: m.Smooth}
		switch {
		case st.optics.Rig != nil:
			if s.rigged = st.rigged(m, hangs); s.rigged == nil {
				continue
			}
		case m.Kind == "dolly":
			s.d = -m.By
		case m.Kind == "moves" && hangs[m.Who]:
			s.d = m.Who.Along.At(m.End) - m.Who.Along.At(m.Start)
		case m.Kind == "zoom": // moves nobody, and changes what is sharp
		default:
			continue
		}
		s.marks = [2]float64{sight.Tape(g, m.Start), sight.Tape(g, m.End)}
		w.shifts = append(w.shifts, s)
	}
	w.under = newUnderWay(w.shifts)
	w.even = newUnderWay(slices.DeleteFunc(slices.Clone(w.shifts), func(s shift) bool { return s.smooth || s.d == 0 && !s.rigged.felt() || !(s.end > s.start) }))
	return w
}

// Tape returns the distance at t, metres, as the tape reads it.
func (w *Way) Tape(t float64) float64 {
	d := w.sight.Tape(w.goal, t)
	var room [4]shift
	for _, s := range w.even.at(t, room[:0]) {
		d += w.by(&s, t) * (s.evened(t) - min(max((t-s.start)/(s.end-s.start), 0), 1))
	}
	return d
}

// evened returns the mean share of an even move that is done, over half a second
// round t.
func (s *shift) evened(t float64) float64 {
	long := s.end - s.start
	done := func(t float64) float64 { // the share that is done, summed up to t
		switch {
		case t <= s.start:
			return 0
		case t >= s.end:
			return long/2 + t - s.end
		}
		return (t - s.start) * (t - s.start) / (2 * long)
	}
	return (done(t+PickUp/2) - done(t-PickUp/2)) / PickUp
}

// Lens returns the distance at t from the lens, metres.
func (w *Way) Lens(t float64) float64 { return w.sight.Shot.FromTape(w.Tape(t), t) }

// ToMark returns how far they are at t from the nearest place where they stand:
// where a move begins or ends that they are in. Metres; 0 for one who stands.
func (w *Way) ToMark(t float64) float64 {
	var room [4]shift
	list := w.under.at(t, room[:0])
	if len(list) == 0 {
		return 0
	}
	d, least := w.Tape(t), math.Inf(1)
	for _, s := range list {
		least = min(least, math.Abs(d-s.marks[0]), math.Abs(d-s.marks[1]))
	}
	return least
}

// Speed returns how fast the distance changes at t, metres a second.
func (w *Way) Speed(t float64) float64 {
	const h = 1.0 / 96
	return (w.Lens(t+h) - w.Lens(t-h)) / (2 * h)
}

// Still tells whether nothing moves between two times.
func (w *Way) Still(from, to float64) bool { return !w.under.any(from, to) }

// underWay finds the moves that are felt at a moment, without a look at all.
type underWay struct {
	byStart []shift
	latest  []float64 // until when one of the moves up to here is felt
}

func newUnderWay(shifts []shift) underWay {
	u := underWay{byStart: slices.Clone(shifts), latest: make([]float64, len(shifts))}
	slices.SortStableFunc(u.byStart, func(a, b shift) int { return cmp.Compare(a.start, b.start) })
	for i, s := range u.byStart {
		u.latest[i] = s.end + PickUp/2
		if i > 0 {
			u.latest[i] = max(u.latest[i], u.latest[i-1])
		}
	}
	return u
}

// at puts the moves that are felt at t into a list, which is empty before, in the
// order in which they were timed, so that their sum is always the same.
func (u *underWay) at(t float64, list []shift) []shift {
	for i := u.begun(t) - 1; i >= 0 && u.latest[i] > t; i-- {
		if u.byStart[i].end+PickUp/2 > t {
			list = append(list, u.byStart[i])
		}
	}
	if len(list) > 1 {
		slices.SortFunc(list, func(a, b shift) int { return cmp.Compare(a.number, b.number) })
	}
	return list
}

// any tells whether a move is felt between two times.
func (u *underWay) any(from, to float64) bool {
	n := u.begun(to)
	return n > 0 && u.latest[n-1] > from
}

// begun returns how many moves are felt before t or have been.
func (u *underWay) begun(t float64) int {
	return sort.Search(len(u.byStart), func(i int) bool { return u.byStart[i].start-PickUp/2 >= t })
}
