// The tape: where its marks lie, how much of the ring it covers, and where it is cut.
// Every mark lies where diameter x pi x angle / 360 says.

package ring

import (
	"math"
	"slices"

	"pullscore/interp/plan"
	"pullscore/render/marks"
	"pullscore/render/ring/beside"
)

// A strip is a shot's tape in the making. Places on it are millimetres from the left end
// of the ring's travel.
type strip struct {
	shot       *plan.Shot
	length     float64 // of the travel
	begin, end float64 // what of it is printed
	marks      []stripMark
	scale      []scaleMark
	lanes      int // of windows
	pieces     []piece
}

// A stripMark is a mark on the tape.
type stripMark struct {
	marks.Mark
	index  int        // in the list of marks
	at     float64    // where it lies
	sides  [2]float64 // where it lies come to from far, and from near
	two    bool       // these are far enough apart for a line each
	window [2]float64 // where its window lies, left to right
	lane   int        // of its window; -1 where it has none, or no room
}

// crowdedOut reports whether a mark has a window, and no lane for it.
func (m *stripMark) crowdedOut() bool { return m.Sharp() && m.lane < 0 }

// ends returns the first and the last line of a mark.
func (m *stripMark) ends() (first, last float64) {
	if m.two {
		return min(m.sides[0], m.sides[1]), max(m.sides[0], m.sides[1])
	}
	return m.at, m.at
}

// A scaleMark is a distance that the lens itself has, to lay the tape by.
type scaleMark struct {
	marks.LensMark
	at float64
}

// A piece is what of the tape is printed in one.
type piece struct {
	from, to    float64
	first, last bool
	labels      []label
}

const (
	endRoom    = 6.0  // of tape beyond its first and its last mark of the lens
	stripLeast = 60.0 // the shortest tape
	joinRoom   = 9.0  // beside a piece on the page
	cutClear   = 14.0 // no mark stands so near before a cut, where it can be had
	lanesMost  = 4
	laneGap    = 0.8 // between two windows in one lane
)

// ringLength returns the length in millimetres of an arc of so many degrees on a ring of a
// diameter in metres.
func ringLength(diameter, deg float64) float64 { return diameter * 1000 * math.Pi * deg / 360 }

// newStrip lays out a tape for a page of that width between its margins.
func newStrip(s *plan.Shot, named *lettered, width float64) *strip {
	st := &strip{shot: s, length: ringLength(s.Optics.Diameter, s.Optics.Ring.Throw())}
	for i, m := range named.list {
		a, z := st.at(m.Window[0]), st.at(m.Window[1])
		sm := stripMark{Mark: m, index: i, at: st.at(m.Deg), window: [2]float64{min(a, z), max(a, z)}}
		sm.sides, sm.two = st.sides(m)
		st.marks = append(st.marks, sm)
	}
	if st.mirrored() {
		for i, j := 0, len(st.marks)-1; i < j; i, j = i+1, j-1 {
			st.marks[i], st.marks[j] = st.marks[j], st.marks[i]
		}
	}
	for _, d := range marks.OfLens(s) {
		st.scale = append(st.scale, scaleMark{d, st.at(d.Deg)})
	}
	st.layWindows()
	st.cover()
	st.lay(width, named)
	if st.spelled() > 0 { // with more tape at its ends more names may have room
		longer := *st
		longer.makeRoom()
		longer.lay(width, named)
		if len(longer.pieces) == len(st.pieces) && longer.spelled() < st.spelled() {
			st = &longer
		}
	}
	st.useLetters(named)
	return st
}

// lay cuts the tape for a page of that width, and finds places for its labels.
func (st *strip) lay(width float64, named *lettered) {
	st.cut(width)
	for i := range st.pieces {
		st.layLabels(&st.pieces[i], named)
	}
}

// mirrored reports whether infinity lies on the left. Read from behind the camera on top
// of the ring, what comes to the index while the ring turns right comes from the left.
func (st *strip) mirrored() bool { return st.shot.Optics.TurnsTo == "right" }

// at returns where an angle of the ring lies.
func (st *strip) at(deg float64) float64 {
	at := ringLength(st.shot.Optics.Diameter, deg)
	if st.mirrored() {
		return st.length - at
	}
	return at
}

// layWindows gives every window the first lane in which it stands clear, none where all
// are taken.
func (st *strip) layWindows() {
	var ends []float64
	for i := range st.marks {
		m := &st.marks[i]
		m.lane = -1
		if !m.Sharp() {
			continue
		}
		lane := 0
		for lane < len(ends) && ends[lane] > m.window[0] {
			lane++
		}
		if lane == lanesMost {
			continue
		}
		if lane == len(ends) {
			ends = append(ends, 0)
		}
		m.lane, ends[lane] = lane, m.window[1]+laneGap
	}
	st.lanes = len(ends)
}

// cover chooses how much of the ring the tape covers: from the lens's mark before the
// first thing on it to the one after the last, and a little more.
func (st *strip) cover() {
	lo, hi := math.Inf(1), math.Inf(-1)
	for i := range st.marks {
		m := &st.marks[i]
		first, last := m.ends()
		if m.lane >= 0 {
			first, last = min(first, m.window[0]), max(last, m.window[1])
		}
		lo, hi = min(lo, first), max(hi, last)
	}
	if lo > hi { // no marks: the whole ring
		lo, hi = 0, st.length
	}
	before, after := math.Inf(-1), math.Inf(1)
	for _, m := range st.scale {
		if m.at <= lo+1e-9 {
			before = max(before, m.at)
		}
		if m.at >= hi-1e-9 {
			after = min(after, m.at)
		}
	}
	if math.IsInf(before, 0) {
		before = lo
	}
	if math.IsInf(after, 0) {
		after = hi
	}
	st.begin, st.end = before-endRoom, after+endRoom
	if short := stripLeast - (st.end - st.begin); short > 0 {
		st.begin, st.end = st.begin-short/2, st.end+short/2
	}
}

// makeRoom makes the tape longer at both ends by what the names of its first and its last
// mark take, unless a stop of the ring is in their way.
func (st *strip) makeRoom() {
	n := len(st.marks)
	if n == 0 {
		return
	}
	wish := func(m *stripMark) float64 { return beside.Gap + widthOf(st.wordings(m.Mark)[0], false) + 1.2 }
	stopped := func(from, to float64) bool {
		return slices.ContainsFunc(st.scale, func(m scaleMark) bool { return m.Stop && m.at > from && m.at < to })
	}
	first, _ := st.marks[0].ends()
	_, last := st.marks[n-1].ends()
	if begin := first - wish(&st.marks[0]); !stopped(begin, first) {
		st.begin = min(st.begin, begin)
	}
	if end := last + wish(&st.marks[n-1]); !stopped(last, end) {
		st.end = max(st.end, end)
	}
}

// cut divides the tape into pieces that a page of that width holds, where that parts the
// fewest names from their marks.
func (st *strip) cut(width float64) {
	st.pieces = nil
	from, most := st.begin, width
	if st.end-st.begin > width {
		most = width - 2*joinRoom
	}
	for st.end-from > most {
		to := st.quietest(from+0.6*most, from+most)
		st.pieces = append(st.pieces, piece{from: from, to: to, first: from == st.begin})
		from = to
	}
	st.pieces = append(st.pieces, piece{from: from, to: st.end, first: from == st.begin, last: true})
}

// quietest returns the best place for a cut between lo and hi, the farther of two that are
// alike.
func (st *strip) quietest(lo, hi float64) float64 {
	best, least := hi, math.Inf(1)
	for at := hi; at >= lo; at-- {
		cost := 0.0
		for i := range st.marks {
			m := &st.marks[i]
			first, last := m.ends()
			switch {
			case at > first-2 && at < last+2:
				cost += 50
			case at >= last && at < last+cutClear:
				cost += 5
			case at >= last && at < last+3*cutClear, at > first-3*cutClear && at <= first:
				cost++
			}
			if m.lane >= 0 && m.window[0] < at && at < m.window[1] {
				cost += 0.1
			}
		}
		for _, m := range st.scale {
			switch d := at - m.at; {
			case math.Abs(d) < 2:
				cost += 20
			case d > 0 && d < cutClear:
				cost += 0.5
			}
		}
		if cost < least {
			best, least = at, cost
		}
	}
	return best
}

// holds reports whether a place lies on the piece.
func (p *piece) holds(at float64) bool {
	return (at >= p.from || p.first) && (at < p.to || p.last)
}
