// Package beside places labels beside lines: each right or left of its own line, whole, and
// never under the line of another.
//
// The lines of the marks come down from the upper edge of a tape, and the names stand at
// their feet in one row. A name may reach as far as the next line, or as the name that
// stands left of that. Each label has forms, from whole to a single letter, with a cost
// each. Dynamic programming over the lines from left to right finds the cheapest choice of
// forms and sides: what is free right of a line depends on nothing but the choice made
// there. Lines that stand too close for letters of their own are joined, and have one label
// for all, at the end of the row of them.

package beside

import "math"

// Gap is from a line to its label, in millimetres. LetterCost is what a letter costs in
// place of a name.
const (
	Gap        = 0.9
	LetterCost = 10.0
)

const (
	lineClear = 0.9 // from a label to the line of another
	labelsGap = 1.6 // from one label to the next
	leftCost  = 0.1 // right is better
	noneCost  = 100.0
)

// A Form is one way to write a label.
type Form struct {
	Width float64 // with slack
	Cost  float64
}

// An Upright is a line, or some that stand close, with the forms of their label; none for
// a line that has no label.
type Upright struct {
	First, Last float64
	Forms       []Form
}

// A Seat is where a label stands: which form it has, and on which side.
type Seat struct {
	Form  int // -1: none
	Right bool
}

// A state is the cheapest way to choose as far as a line, with one choice there.
type state struct {
	seat Seat
	end  float64 // of what stands at the line, and what is kept free after it
	cost float64
	from int // the state of the line before
}

// Seats chooses the forms and the sides of all labels between lo and hi. The lines go from
// left to right.
func Seats(list []Upright, lo, hi float64) []Seat {
	columns := make([][]state, len(list))
	before := []state{{end: lo}}
	for i, u := range list {
		next := hi
		if i+1 < len(list) {
			next = min(hi, list[i+1].First-lineClear)
		}
		add := func(s Seat, from, end, cost float64) {
			best := state{cost: math.Inf(1)}
			for k, b := range before {
				if from >= b.end-1e-9 && b.cost+cost < best.cost {
					best = state{s, max(end, lo), b.cost + cost, k}
				}
			}
			if !math.IsInf(best.cost, 1) {
				columns[i] = append(columns[i], best)
			}
		}
		none := 0.0
		if len(u.Forms) > 0 {
			none = noneCost
		}
		add(Seat{Form: -1}, math.Inf(1), u.Last+lineClear, none)
		for k, f := range u.Forms {
			if to := u.Last + Gap + f.Width; to <= next+1e-9 && u.Last+Gap >= lo {
				add(Seat{k, true}, math.Inf(1), to+labelsGap, f.Cost)
			}
			if u.First-Gap <= hi {
				add(Seat{k, false}, u.First-Gap-f.Width, u.Last+lineClear, f.Cost+leftCost)
			}
		}
		before = columns[i]
	}
	return trace(columns, before)
}

// trace returns the choices that lead to the cheapest of the last states.
func trace(columns [][]state, last []state) []Seat {
	chosen := make([]Seat, len(columns))
	at := 0
	for k, s := range last {
		if s.cost < last[at].cost {
			at = k
		}
	}
	for i := len(columns) - 1; i >= 0; i-- {
		chosen[i], at = columns[i][at].seat, columns[i][at].from
	}
	return chosen
}
