// Recommendations: three stops, always in the same order, each with what it costs,
// and the one that costs the least.

package stops

import (
	"math"

	"pullscore/interp/plan"
)

// A Role is what a stop is recommended as.
type Role string

// The roles, in the order in which they are told.
const (
	AsSet    Role = "set"    // the stop of the plan
	Widest   Role = "widest" // the widest marked stop that meets all but light
	ForLight Role = "light"  // the marked stop nearest to the meter, with nd, iso and shutter as set
)

// A Recommendation is a stop with what it costs; Fails is what fails first where it
// does not hold. A role that no stop has leaves Stop empty.
type Recommendation struct {
	Role   Role        `json:"role"`
	Stop   string      `json:"stop"`
	Number plan.Number `json:"f_number"`
	Holds  bool        `json:"holds"`
	Unsure bool        `json:"ring_not_known,omitempty"` // the ring decides, of which nothing is known
	Fails  *End        `json:"fails,omitempty"`
	Price  *Price      `json:"price"` // without a meter: none
}

// A Price is what has to be changed for the light: what is then on the lens and set
// in the camera, none where it stays as it is.
type Price struct {
	ND      plan.Number `json:"nd"`
	ISO     plan.Number `json:"iso"`
	Shutter plan.Number `json:"shutter_deg"`
}

// Nothing reports whether nothing has to be changed.
func (p Price) Nothing() bool { return !p.ND.Known() && !p.ISO.Known() && !p.Shutter.Known() }

func priceOf(e *Exposure) *Price {
	if e == nil {
		return nil
	}
	p := &Price{ND: plan.None(), ISO: e.ISO, Shutter: e.Shutter}
	if e.filter {
		p.ND = e.ND
	}
	return p
}

// recommended returns the three, in their order.
func (s *search) recommended() []Recommendation {
	return []Recommendation{s.role(AsSet, &s.set, s.set.Exposure), s.widestButLight(), s.nearestToMeter()}
}

// role describes a stop with what is done about its light.
func (s *search) role(as Role, v *Verdict, e *Exposure) Recommendation {
	r := Recommendation{Role: as, Stop: v.Stop, Number: v.Number, Price: priceOf(e), Holds: true}
	for k, d := range s.demands {
		ok := v.met[k]
		if d.kind == Light && e != nil {
			ok = e.Enough
		}
		if !ok {
			end := figuresOf(d, v)
			if d.kind == Light {
				end.Left = e.Left
			}
			r.Holds, r.Fails = false, &end
			return r
		}
	}
	r.Unsure = s.shot.RingUnknown() && !v.pullsHold()
	r.Holds = !r.Unsure
	return r
}

func none(as Role) Recommendation { return Recommendation{Role: as, Number: plan.None()} }

func (s *search) widestButLight() Recommendation {
	for i := range s.tried {
		v := &s.tried[i]
		if s.holds(v.met, func(d demand) bool { return d.kind == Light }) {
			return s.role(Widest, v, v.Exposure)
		}
	}
	return none(Widest)
}

// nearestToMeter finds the marked stop at which the light is least off as all is set.
func (s *search) nearestToMeter() Recommendation {
	l := s.shot.Optics.Light
	if math.IsNaN(l.Meter) {
		return none(ForLight)
	}
	var at *Verdict
	off := math.Inf(1)
	for i := range s.tried {
		if left := math.Abs(l.Over(float64(s.tried[i].Number), l.ND)); left < off-slack {
			at, off = &s.tried[i], left
		}
	}
	return s.role(ForLight, at, exposed(l, float64(at.Number), l.ND, false, false))
}

// stopCost is what a stop away from the one set costs, in stops of iso raised.
const stopCost = 0.05

// cost is what a stop costs against the one that is set: stops of iso raised or
// lowered, a filter, and how far it is. The set stop costs nothing where nothing has to be
// changed.
func (s *search) cost(v *Verdict) float64 {
	c := stopCost * math.Abs(between(float64(s.set.Number), float64(v.Number)))
	if v.Exposure != nil {
		c += v.Exposure.cost()
	}
	return c
}

// best returns the verdict at the stop of a stretch that costs the least, of the
// marked ones and the one that is set, of those alike the wider, with its cost; or
// where none lies in it at its middle, at an infinite cost.
func (s *search) best(x stretch) (Verdict, float64) {
	const slightly = 1 + 1e-3
	var found *Verdict
	least := math.Inf(1)
	for _, list := range [][]Verdict{{s.set}, s.tried} {
		for i := range list {
			v := &list[i]
			if n := float64(v.Number); !v.open || n*slightly < x.from || n > x.to*slightly {
				continue
			}
			c := s.cost(v)
			if c < least-slack || c < least+slack && v.Number < found.Number {
				found, least = v, min(c, least)
			}
		}
	}
	if found == nil {
		return s.at(middle(x.from, x.to)), least
	}
	return *found, least
}

// cheapest returns the index of the window whose best stop costs the least, of those
// alike the widest one.
func cheapest(list []Window) int {
	at := 0
	for i := range list {
		a, b := &list[i], &list[at]
		if a.cost < b.cost || a.cost == b.cost && a.Width > b.Width {
			at = i
		}
	}
	return at
}
