// Logs and days: takes, as the fit knows them, in memory that does not grow.

package fit

import (
	"math"
	"slices"

	"pullscore/interp/hand"
)

// A Landing is a take as the fit knows it.
type Landing struct {
	Travel float64 // degrees at the hand
	Moving float64 // seconds of it, without re-grips; positive
	Error  float64 // degrees past the mark
	Rim    float64 // diameter under the hand, metres; 0: ReferenceRim
	AtEnd  bool    // the end of the ring held it past the mark: it would have gone on
	Name   Slip    // by which it is named should it be a slip
}

func (x *Landing) cell() cell {
	rim := 1.0
	if x.Rim > 0 {
		rim = ReferenceRim / x.Rim
	}
	return cell{1, x.Travel, x.Moving, rim, x.Error, x.Error * x.Error, x.AtEnd}
}

// A Log is the takes that a hand is fitted to.
type Log struct {
	cells *cells
	named roll
}

// NewLog returns a log without takes.
func NewLog() *Log { return &Log{cells: newFitCells()} }

// Add adds a take.
func (l *Log) Add(x Landing) {
	c := x.cell()
	l.cells.add(c)
	l.named.add(x.Name, c)
}

// Empty tells whether there are no takes.
func (l *Log) Empty() bool { return len(l.cells.held) == 0 }

// Fit fits a hand to the takes, robustly and with what is known of hands
// beforehand: once to all, and where some are slips once more to the others.
// With no takes the fit is that knowledge alone.
func (l *Log) Fit() Fit { return l.robustly(true) }

// Hand fits a hand as Fit does, without its ranges.
func (l *Log) Hand() Fit { return l.robustly(false) }

func (l *Log) robustly(ranges bool) Fit {
	list := l.cells.sorted()
	all := newLikelihood(list, true)
	best := all.global()
	first := all.fit(best, false)
	kept, slipped := withoutSlips(list, &first, int(all.total))
	fitted := all
	if slipped > 0 {
		fitted = newLikelihood(kept, true)
		best = fitted.global()
	}
	f := fitted.fit(best, ranges)
	f.Takes, f.Slipped = int(all.total), slipped
	f.Slips, f.SlipShare = l.named.names(&first, slipped), slipShare(slipped, f.Takes)
	return f
}

// Likeliest fits a hand to the takes alone, by maximum likelihood of normal
// landings. Where they leave something open, an end of its interval is infinite
// or 0.
func (l *Log) Likeliest() Fit { return l.likeliest(true) }

// LikeliestHand fits a hand as Likeliest does, without its ranges.
func (l *Log) LikeliestHand() Fit { return l.likeliest(false) }

func (l *Log) likeliest(ranges bool) Fit {
	all := newLikelihood(l.cells.sorted(), false)
	f := all.fit(all.global(), ranges)
	f.Takes = int(all.total)
	return f
}

// A Day is takes whose spread is compared with that of others. It needs no more
// of them than sums.
type Day struct {
	N     int
	cells *cells
}

// NewDay returns a day without takes.
func NewDay() *Day { return &Day{cells: newCells(maxDayCells)} }

// Days returns several days as one.
func Days(list ...*Day) *Day {
	all := &Day{cells: newCells(maxCells)}
	for _, d := range list {
		all.cells.add(d.cells.sorted()...)
		all.N += d.N
	}
	return all
}

// Add adds a take.
func (d *Day) Add(x Landing) {
	d.cells.add(x.cell())
	d.N++
}

// withoutSlips returns the cells of a day without those that are slips by a fit.
// In a long day, where takes share their cells, a slip may stay.
func (d *Day) withoutSlips(f *Fit) []cell {
	list := d.cells.sorted()
	kept := slices.DeleteFunc(slices.Clone(list), func(c cell) bool { return f.spreads(&c) > slipSpreads })
	if f.Slipped == 0 || len(kept) == 0 {
		return list
	}
	return kept
}

// Deviation returns how far the takes of a day spread about a fit, as a share of
// what it expects, and their mean error with its standard error, degrees. Slips
// are left out.
func (d *Day) Deviation(f *Fit) (share, mean, se float64) {
	n, z, weight, weighted := 0.0, 0.0, 0.0, 0.0
	l := newLikelihood(d.withoutSlips(f), false)
	variance := func(c *cell) float64 {
		return math.Pow(hand.MotorSpread(c.travel, c.moving, f.Throughput.Value), 2) + math.Pow(f.Rim.Value*c.rim, 2)
	}
	for i := range l.cells {
		c := &l.cells[i]
		weight += c.n / variance(c)
		weighted += c.sum / variance(c)
	}
	mean, se = weighted/weight, 1/math.Sqrt(weight)
	for i := range l.cells {
		c := &l.cells[i]
		n += c.n
		z += (c.squares - 2*mean*c.sum + c.n*mean*mean) / variance(c)
	}
	return math.Sqrt(z / max(n-1, 1)), mean, se
}
