// Obstacles: what stands in the way of a window.

package stops

import (
	"math"

	"pullscore/interp/plan"
)

// An Obstacle is a demand that, alone or with another, leaves no window. From
// and To are the f-numbers over which it is met; a demand that no stop meets
// has neither.
type Obstacle struct {
	Kind        Kind        `json:"kind"`
	Pull        int         `json:"pull,omitempty"`
	From        plan.Number `json:"from_f,omitzero"`
	To          plan.Number `json:"to_f,omitzero"`
	Probability plan.Number `json:"probability,omitzero"`      // the best of all stops, of a rack that never lands
	LeftBlur    plan.Number `json:"left_blur_arcmin,omitzero"` // the most, of one that is never seen
	Share       plan.Number `json:"sharp_share,omitzero"`      // the best, of a rest or of the worst half second of a follow
}

// obstacles returns the demands that no stop meets, or where each is met by
// some, the one that begins last and the one that ends first.
func (s *search) obstacles() []Obstacle {
	var never []Obstacle
	var last, first *Obstacle
	for _, d := range s.demands {
		list := s.stretches(func(o demand) bool { return o != d })
		o := Obstacle{Kind: d.kind, Pull: d.pull, From: plan.None(), To: plan.None(), Probability: plan.None(), LeftBlur: plan.None(), Share: plan.None()}
		if len(list) == 0 {
			s.bestOf(&o)
			never = append(never, o)
			continue
		}
		o.From, o.To = plan.Number(list[0].from), plan.Number(list[len(list)-1].to)
		if last == nil || o.From > last.From {
			last = &o
		}
		if first == nil || o.To < first.To {
			first = &o
		}
	}
	switch {
	case len(never) > 0:
		return never
	case last == nil:
		return nil
	}
	return []Obstacle{*last, *first}
}

// bestOf fills in the best figures of a demand that is never met.
func (s *search) bestOf(o *Obstacle) {
	for i := range s.tried {
		at := figuresOf(demand{o.Kind, o.Pull}, &s.tried[i])
		o.Probability, o.LeftBlur = better(o.Probability, at.Probability), better(o.LeftBlur, at.LeftBlur)
		o.Share = better(o.Share, at.Share)
	}
}

func better(a, b plan.Number) plan.Number {
	if !a.Known() || b.Known() && float64(b) > float64(a) {
		return b
	}
	return a
}

// WorstShare returns how often somebody is sharp in the worst rest or follow of a
// verdict, and tells whether there is one.
func (v *Verdict) WorstShare() (share plan.Number, ok bool) {
	share = plan.Number(math.Inf(1))
	for _, f := range v.Follows {
		for _, n := range []plan.Number{f.Worst, f.Probability} {
			if n < share {
				share = n
			}
		}
	}
	for _, r := range v.Rests {
		share = min(share, r.Share)
	}
	return share, !math.IsInf(float64(share), 1)
}

// known returns a number, and infinity for one that is none.
func known(n plan.Number) float64 {
	if !n.Known() {
		return math.Inf(1)
	}
	return float64(n)
}

// Worst returns the rack that lands least surely, and the one that shows
// least, of a verdict; nil where no rack has the figure.
func (v *Verdict) Worst() (lands, shows *RackAt) {
	least, faintest := math.Inf(1), math.Inf(1)
	for i := range v.Racks {
		r := &v.Racks[i]
		if p := min(known(r.Probability), known(r.Band[0])); p < least {
			lands, least = r, p
		}
		if b := float64(r.LeftBlur); b < faintest {
			shows, faintest = r, b
		}
	}
	return lands, shows
}
