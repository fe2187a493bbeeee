// The worst moment of a shot.

package moments

import (
	"math"
	"strconv"

	"pullscore/interp/plan"
	"pullscore/interp/units"
)

// A Moment is a landing, the worst half second of a follow or a rest.
type Moment struct {
	Chance float64    // of being sharp
	Pull   *plan.Pull // that lands, or follows
	Rest   *plan.Rest // where it is one
	During bool       // of a follow: not at its end
}

// Worst returns the moment of a shot at which the focus is where it should be least
// often: the first of those; ok is false where nothing in it can be judged.
func Worst(s *plan.Shot) (worst Moment, ok bool) {
	worst.Chance = math.Inf(1)
	take := func(m Moment) {
		if m.Chance < worst.Chance { // never where it is NaN
			worst, ok = m, true
		}
	}
	for _, p := range s.Pulls {
		if p.WorstShare.Known() {
			take(Moment{Chance: float64(p.WorstShare), Pull: p, During: true})
		}
		chance := p.Chance
		if s.RingUnknown() {
			chance = p.ChanceBand[0]
		}
		take(Moment{Chance: float64(chance), Pull: p})
	}
	for i := range s.Rests {
		take(Moment{Chance: float64(s.Rests[i].Share), Rest: &s.Rests[i]})
	}
	return worst, ok
}

// Says names a moment of a shot and its chance, for a table: "rack 3 lands 84 %
// (64–91)".
func (m Moment) Says(s *plan.Shot, in units.Style) string {
	share := in.Chance(m.Chance, float64(s.Wanted))
	switch {
	case m.Rest != nil:
		return "rest on " + m.Rest.Subject + " at " + in.Time(float64(m.Rest.Start)) + ": sharp " + share
	case m.During:
		return "follow " + strconv.Itoa(m.Pull.Number) + " at " + in.Time(float64(m.Pull.WorstAt)) + ": sharp " + share
	case m.Pull.Kind == "follow":
		return "follow " + strconv.Itoa(m.Pull.Number) + " ends " + Lands(s, m.Pull, in)
	}
	return "pull " + strconv.Itoa(m.Pull.Number) + " lands " + Lands(s, m.Pull, in)
}
