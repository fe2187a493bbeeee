// Slips: takes that lie so far outside that they are no part of the spread. A
// hand that forgot the mark, or was called off, says nothing of how well it
// lands; how often that happens is told by itself.

package fit

import (
	"cmp"
	"math"
	"slices"

	"pullscore/interp/plan"
)

// What counts as a slip: our own choice, no source.
const (
	slipSpreads = 4 // farther from the mean landing, in standard deviations
	slipsFrom   = 8 // takes; of fewer none is one
	slipsMost   = 5 // at most one take in so many

	// slipsBeforehand is how many takes without a slip stand in for what is
	// known of slips before any take.
	slipsBeforehand = 20
)

// slipShare returns the share of pulls that slip, by the slips among so many
// takes.
func slipShare(slips, takes int) float64 { return float64(slips) / float64(takes+slipsBeforehand) }

// A Slip is a take that the fit leaves out.
type Slip struct {
	Line    int         `json:"line"` // of the log
	Date    string      `json:"date,omitempty"`
	Plan    string      `json:"plan,omitempty"`
	Shot    string      `json:"shot,omitempty"`
	Pull    int         `json:"pull,omitempty"`
	Error   plan.Number `json:"error_deg"`
	Spreads plan.Number `json:"spreads"` // from the mean landing
}

// spreads returns how far a cell lies from the mean landing of a fit, in its
// spreads.
func (f *Fit) spreads(c *cell) float64 {
	return math.Abs(c.sum/c.n-f.Bias.Value) / f.spread(c.travel/c.n, c.moving/c.n, c.rim)
}

// withoutSlips returns the cells without the takes that are slips by a fit, the
// farthest first, and how many these are.
func withoutSlips(list []cell, f *Fit, takes int) (kept []cell, slipped int) {
	if takes < slipsFrom {
		return list, 0
	}
	kept = slices.Clone(list)
	order := make([]int, len(kept))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(f.spreads(&kept[b]), f.spreads(&kept[a])) })
	left := takes / slipsMost
	for _, i := range order {
		if left == 0 || !(f.spreads(&kept[i]) > slipSpreads) {
			break
		}
		out := min(int(kept[i].n), left)
		share := 1 - float64(out)/kept[i].n
		kept[i].n, kept[i].travel, kept[i].moving = kept[i].n*share, kept[i].travel*share, kept[i].moving*share
		kept[i].sum, kept[i].squares = kept[i].sum*share, kept[i].squares*share
		left, slipped = left-out, slipped+out
	}
	return slices.DeleteFunc(kept, func(c cell) bool { return c.n < 0.5 }), slipped
}

// A fitted is a take that is in the fit, as it is named should it be a slip.
type fitted struct {
	name  Slip // without its spreads
	cell  cell
	about float64 // how far out it is by what is known of hands beforehand
}

// maxNamed is how many takes are kept to be named: of a longer log those that
// lie the farthest out.
const maxNamed = maxCells

// A roll holds the takes that may have to be named.
type roll struct{ list []fitted }

func (r *roll) add(name Slip, c cell) {
	known := Fit{Throughput: Estimate{Value: math.Exp(priors[throughput].mean)}, Rim: Estimate{Value: math.Exp(priors[rim].mean)}}
	r.list = append(r.list, fitted{name: name, cell: c, about: known.spreads(&c)})
	if len(r.list) >= 2*maxNamed {
		slices.SortStableFunc(r.list, func(a, b fitted) int {
			return cmp.Or(cmp.Compare(b.about, a.about), cmp.Compare(a.name.Line, b.name.Line))
		})
		r.list = slices.Delete(r.list, maxNamed, len(r.list))
	}
}

// name returns the slips of a first fit, the farthest first, at most so many.
func (r *roll) names(f *Fit, most int) []Slip {
	var list []Slip
	for i := range r.list {
		s := r.list[i].name
		if z := f.spreads(&r.list[i].cell); z > slipSpreads {
			s.Spreads = plan.Number(z)
			list = append(list, s)
		}
	}
	slices.SortStableFunc(list, func(a, b Slip) int {
		return cmp.Or(cmp.Compare(b.Spreads, a.Spreads), cmp.Compare(a.Line, b.Line))
	})
	return list[:min(len(list), most)]
}
