// Takes summed up for the fit: those of like travel and time together. The
// likelihood needs no more of them than their number and the sums of their
// errors, so that a million takes fit as fast as a thousand.

package takes

import (
	"cmp"
	"math"
	"slices"

	"pullscore/interp/hand"
)

// ReferenceRim is the diameter, in metres, of the wheel whose degrees the rim
// spread of a fit is told in, and of the rim of takes that do not say theirs.
const ReferenceRim = hand.Wheel

// Limits on the number of cells; where there would be more, travel and time are
// sorted into coarser ones.
const (
	maxCells    = 4096 // of a log
	maxDayCells = 128  // of a session
)

// A cell holds the takes of like travel, time and rim.
type cell struct {
	n, travel, moving float64 // how many, and the sums of their travels and moving times
	rim               float64 // ReferenceRim over their rim: what degrees grow by
	sum, squares      float64 // of the errors
}

// A key says which takes a cell holds: with width 0 those of one travel and
// time, else those within a share of it.
type key struct{ travel, moving, rim uint64 }

// cells sort takes by travel and time.
type cells struct {
	most  int
	width float64 // of a cell, in natural logarithms; 0: exact
	held  map[key]*cell
}

func newCells(most int) *cells { return &cells{most: most, held: map[key]*cell{}} }

// add adds a take that moved for so many seconds.
func (cs *cells) add(t *Take, moving float64) {
	rim := 1.0
	if t.Rim > 0 {
		rim = ReferenceRim / t.Rim
	}
	cs.merge(cell{1, t.Travel, moving, rim, t.Error, t.Error * t.Error})
	cs.shrink()
}

// shrink sorts into coarser cells until there are few enough.
func (cs *cells) shrink() {
	for len(cs.held) > cs.most {
		cs.coarsen()
	}
}

func (cs *cells) merge(c cell) {
	k := cs.key(c.travel/c.n, c.moving/c.n, c.rim)
	old := cs.held[k]
	if old == nil {
		cs.held[k] = &c
		return
	}
	// Two rims in one cell weigh by their spread, which goes with the square.
	old.rim = math.Sqrt((old.n*old.rim*old.rim + c.n*c.rim*c.rim) / (old.n + c.n))
	old.n += c.n
	old.travel += c.travel
	old.moving += c.moving
	old.sum += c.sum
	old.squares += c.squares
}

func (cs *cells) key(travel, moving, rim float64) key {
	if cs.width == 0 {
		return key{math.Float64bits(travel), math.Float64bits(moving), math.Float64bits(rim)}
	}
	bin := func(v float64) uint64 { return uint64(int64(math.Floor(math.Log(max(v, 1e-3)) / cs.width))) }
	return key{bin(travel), bin(moving), bin(rim)}
}

// firstWidth is that of the first cells that are not exact: one percent. The
// spread of a cell's middle then is that of its takes to a part in ten
// thousand.
const firstWidth = 0.01

// coarsen sorts all cells into others twice as wide.
func (cs *cells) coarsen() {
	cs.width = max(firstWidth, 2*cs.width)
	old := cs.sorted()
	cs.held = map[key]*cell{}
	for _, c := range old {
		cs.merge(c)
	}
}

// sorted returns the cells in an order that is always the same: a map has none,
// and sums depend on it in their last digits.
func (cs *cells) sorted() []cell {
	list := make([]cell, 0, len(cs.held))
	for _, c := range cs.held {
		list = append(list, *c)
	}
	slices.SortFunc(list, func(a, b cell) int {
		return cmp.Or(cmp.Compare(a.travel, b.travel), cmp.Compare(a.moving, b.moving), cmp.Compare(a.rim, b.rim), cmp.Compare(a.sum, b.sum), cmp.Compare(a.squares, b.squares))
	})
	return list
}
