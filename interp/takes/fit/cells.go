// Takes summed up for the fit. As long as there are few, each keeps a cell of
// its own; of a long log those of like travel, time and error lie together, so
// that a million takes fit in the memory of some thousands.

package fit

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
// sorted into coarser ones. The robust fit needs every error, so its cells keep
// those apart too, and it has more of them. A fit of so many takes about a
// second, and is one per cent of throughput off where there are a million takes.
const (
	maxCells       = 4096 // exact ones: of a log, one a take
	maxCoarseCells = 8192 // of a longer log, with errors apart
	maxDayCells    = 128  // of a session, without
)

// errorSteps is how many steps of error make a degree near the mark. Farther
// out a step grows with the error, since there the likelihood goes with its
// logarithm: a step is asinh(error) / 16.
const errorSteps = 16

// A cell holds the takes of like travel, time and rim.
type cell struct {
	n, travel, moving float64 // how many, and the sums of their travels and moving times
	rim               float64 // ReferenceRim over their rim: what degrees grow by
	sum, squares      float64 // of the errors
	atEnd             bool    // the end of the ring held them: they would have gone on
}

// A key says which takes a cell holds: with width 0 those of one travel and
// time, else those within a share of it.
type key struct {
	travel, moving, rim, landing uint64
	atEnd                        bool
}

// cells sort takes by travel and time, and where apart is set by error too.
type cells struct {
	most, coarse int // how many exact cells there may be, and how many of a width
	apart        bool
	width        float64 // of a cell, in natural logarithms; 0: exact
	held         map[key]*cell
}

// newCells returns cells in which sums of errors are enough.
func newCells(most int) *cells { return &cells{most: most, coarse: most, held: map[key]*cell{}} }

// newFitCells returns cells for the robust fit, which needs the errors apart.
func newFitCells() *cells {
	return &cells{most: maxCells, coarse: maxCoarseCells, apart: true, held: map[key]*cell{}}
}

// add adds cells.
func (cs *cells) add(list ...cell) {
	for _, c := range list {
		cs.merge(c)
	}
	cs.shrink()
}

// shrink sorts into coarser cells until there are few enough.
func (cs *cells) shrink() {
	for cs.width == 0 && len(cs.held) > cs.most || len(cs.held) > cs.coarse {
		cs.coarsen()
	}
}

func (cs *cells) merge(c cell) {
	k := cs.key(&c)
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

func (cs *cells) key(c *cell) key {
	travel, moving := c.travel/c.n, c.moving/c.n
	if cs.width == 0 {
		k := key{math.Float64bits(travel), math.Float64bits(moving), math.Float64bits(c.rim), 0, c.atEnd}
		if cs.apart {
			k.landing = math.Float64bits(c.sum / c.n)
		}
		return k
	}
	bin := func(v float64) uint64 { return uint64(int64(math.Floor(math.Log(max(v, 1e-3)) / cs.width))) }
	k := key{bin(travel), bin(moving), bin(c.rim), 0, c.atEnd}
	if cs.apart {
		k.landing = uint64(int64(math.Round(errorSteps * math.Asinh(c.sum/c.n))))
	}
	return k
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
		return cmp.Or(cmp.Compare(a.travel, b.travel), cmp.Compare(a.moving, b.moving), cmp.Compare(a.rim, b.rim),
			cmp.Compare(a.sum, b.sum), cmp.Compare(a.squares, b.squares), cmp.Compare(a.n, b.n))
	})
	return list
}
