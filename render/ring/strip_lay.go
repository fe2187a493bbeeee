// Laying a strip out: where each mark lies, where the tape is cut, and in
// which rows the names stand.

package ring

import (
	"math"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/marks"
	"pullscore/render/sheet"
)

// A strip is a shot's tape in the making. Places on it are millimetres from
// the left end of the ring's travel.
type strip struct {
	shot   *plan.Shot
	length float64 // of the travel
	marks  []stripMark
	scale  []scaleMark
	lanes  int // of windows
	pieces []piece
}

// A stripMark is a mark on the tape.
type stripMark struct {
	marks.Mark
	at     float64    // where it lies
	sides  [2]float64 // where it lies come to from far, and from near
	two    bool       // these are far enough apart for a line each
	window [2]float64 // where its window lies, left to right
	lane   int        // of its window
	stem   float64    // where the line to its name comes down
	row    int        // of its name, 0 nearest to the edge that the list stand on; -1 where it has none
	room   float64    // that its name may take
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
	rows        int
	fanned      bool // the lines to the names do not all stand below their list
}

const (
	lead      = 11.0 // tape before the travel, to hold it by
	tail      = 26.0 // and after it, for the names of the last list
	joinRoom  = 9.0  // beside a piece on the page
	markGap   = 0.8  // between the end of a name and the next line down
	flagGap   = 0.7  // between a mark's line and its name
	rowsMost  = 6    // rows of names, as long as shorter names help
	rowsEver  = 14   // and at most: what has no row is in the table
	rowPitch  = 3.2
	nameMost  = 60.0 // the longest name
	nameLeast = 4.4
	cutClear  = 12.0 // no mark stands so near before a cut, where it can be had
)

func newStrip(s *plan.Shot, list []marks.Mark, width float64) *strip {
	st := &strip{shot: s, length: ringLength(s.Optics.Diameter, s.Optics.Ring.Throw())}
	for _, m := range list {
		a, z := st.at(m.Window[0]), st.at(m.Window[1])
		sm := stripMark{Mark: m, at: st.at(m.Deg), window: [2]float64{min(a, z), max(a, z)}}
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
	st.cut(width - 2*joinRoom)
	for i := range st.pieces {
		st.layNames(&st.pieces[i])
	}
	return st
}

// mirrored reports whether infinity lies on the left. Read from behind the
// camera on top of the ring, what comes to the index while the ring turns right
// comes from the left.
func (st *strip) mirrored() bool { return st.shot.Optics.TurnsTo == "right" }

// at returns where an angle of the ring lies.
func (st *strip) at(deg float64) float64 {
	at := ringLength(st.shot.Optics.Diameter, deg)
	if st.mirrored() {
		return st.length - at
	}
	return at
}

// layWindows gives every window the first lane in which it stands clear.
func (st *strip) layWindows() {
	var ends []float64
	for i := range st.marks {
		m := &st.marks[i]
		if !m.Sharp() {
			continue
		}
		for m.lane = 0; m.lane < len(ends) && ends[m.lane] > m.window[0]; m.lane++ {
		}
		if m.lane == len(ends) {
			ends = append(ends, 0)
		}
		ends[m.lane] = m.window[1] + markGap
	}
	st.lanes = len(ends)
}

// cut divides the tape into pieces of at most that length, where that parts
// the fewest names from their marks.
func (st *strip) cut(most float64) {
	from, end := -lead, st.length+tail
	for end-from > most {
		to := st.quietest(from+0.6*most, from+most)
		st.pieces = append(st.pieces, piece{from: from, to: to, first: from == -lead})
		from = to
	}
	st.pieces = append(st.pieces, piece{from: from, to: end, first: from == -lead, last: true})
}

// quietest returns the best place for a cut between lo and hi, the farther of
// two that are alike.
func (st *strip) quietest(lo, hi float64) float64 {
	best, least := hi, math.Inf(1)
	for at := hi; at >= lo; at-- {
		cost := 0.0
		for _, m := range st.marks {
			switch d := at - m.at; {
			case d >= 0 && d < cutClear:
				cost += 20
			case d > 0 && d < st.wish(m):
				cost++
			case d < 0 && d > -1.5:
				cost += 20
			}
			if m.Sharp() && m.window[0] < at && at < m.window[1] {
				cost += 0.1
			}
		}
		if cost < least {
			best, least = at, cost
		}
	}
	return best
}

// wish returns the room that a mark's name would like.
func (st *strip) wish(m stripMark) float64 {
	return numbersWidth(m.Mark) + min(sheet.FontNote.Room(draw.Clean(m.Label)), nameMost) + flagGap + markGap
}

// numbersWidth is the room of a mark's numbers before its name.
func numbersWidth(m marks.Mark) float64 {
	if n := m.Numbers(); n != "" {
		return min(sheet.FontNumber.Room(n), sheet.NumberMost) + 1
	}
	return 0
}

// holds reports whether a place lies on the piece.
func (p *piece) holds(at float64) bool {
	return (at >= p.from || p.first) && (at < p.to || p.last)
}

// layNames puts the names of a piece into rows. Each stands right of a line
// that comes down from its mark; one that reaches over lines right of it stands
// below their names, so that no line crosses a name. Where that takes too many
// rows, the lines fan out; where that is not enough, names are held shorter.
func (st *strip) layNames(p *piece) {
	list := st.on(p)
	for most := nameMost + sheet.NumberMost; ; most *= 0.8 {
		for _, m := range list {
			m.stem = m.at
		}
		p.fanned = false
		if p.rows = st.stack(p, max(most, nameLeast)); p.rows <= rowsMost && !crowded(list) {
			return
		}
		for rows := 2; rows <= rowsMost; rows++ {
			if st.fan(p, list, rows, max(most, nameLeast)) {
				p.rows = st.stack(p, max(most, nameLeast))
				return
			}
		}
		if p.rows <= rowsMost || most < nameLeast {
			return
		}
	}
}

// crowded reports whether two marks stand so near that the lines to their names
// would be one.
func crowded(list []*stripMark) bool {
	for i := 1; i < len(list); i++ {
		if list[i].at-list[i-1].at < 0.9 {
			return true
		}
	}
	return false
}

// on returns the marks that lie on the piece.
func (st *strip) on(p *piece) []*stripMark {
	var list []*stripMark
	for i := range st.marks {
		if p.holds(st.marks[i].at) {
			list = append(list, &st.marks[i])
		}
	}
	return list
}

// stemsApart is how far lines to names of one bundle stand apart.
const stemsApart = 1.3

// fan gives the lines to the names places of their own: in bundles of so many,
// with room for all names of a bundle before the next. Then no name of one
// bundle reaches into the next, and none needs more rows. ok is false where the
// piece is too short for that.
func (st *strip) fan(p *piece, list []*stripMark, rows int, most float64) (ok bool) {
	want, size := make([]float64, len(list)), make([]float64, len(list))
	total := 0.0
	for from := 0; from < len(list); from += rows {
		bundle := list[from:min(from+rows, len(list))]
		reach := 0.0
		for k, m := range bundle {
			size[from+k] = stemsApart
			reach = max(reach, float64(k)*stemsApart+min(st.wish(*m), most))
		}
		last := len(bundle) - 1
		size[from+last] = reach - float64(last)*stemsApart
		total += reach
	}
	lo := p.from + 1
	if p.first {
		lo = 0 // the lead has the arrow
	}
	if total > p.to-lo {
		return false
	}
	for i, m := range list {
		want[i] = m.at + size[i]/2
	}
	// Marks are in order, so the names are too, whatever spread sorts by.
	for i, middle := range sheet.Spread(inOrder(want), size, lo, p.to) {
		list[i].stem = middle - size[i]/2
	}
	p.fanned = true
	return true
}

// inOrder makes values never fall.
func inOrder(values []float64) []float64 {
	for i := 1; i < len(values); i++ {
		values[i] = max(values[i], values[i-1])
	}
	return values
}

// stack lays the names of a piece with at most that room each, and returns how
// many rows they take.
func (st *strip) stack(p *piece, most float64) (rows int) {
	list := st.on(p)
	for i := len(list) - 1; i >= 0; i-- {
		m := list[i]
		m.room = min(st.wish(*m), most, p.to-m.stem)
		m.row = 0
		for _, o := range list[i+1:] {
			if o.stem < m.stem+m.room-1e-6 { // names may meet
				m.row = max(m.row, o.row+1)
			}
		}
		rows = max(rows, m.row+1)
		if m.row >= rowsEver || m.room < nameLeast {
			m.row = -1
		}
	}
	return min(rows, rowsEver)
}
