// The ring of the shot's lens: what is known of it, and how well.

package shot

import (
	"math"

	"pullscore/interp/kit"
	"pullscore/interp/plan"
)

// ringOf returns what is known of a lens's ring; nil for a lens that has none, or one
// by wire.
func ringOf(l *kit.Lens) *plan.Ring {
	if l.RingKind != "" {
		return nil
	}
	none := plan.None()
	r := &plan.Ring{Kind: plan.ByLaw, Throw: none, Diameter: none, Girth: none, Offset: none, Play: none, Reading: none}
	if d := l.RingDiameter(); !math.IsNaN(d) {
		r.Diameter, r.Girth = plan.Number(d*1000), plan.Number(math.Pi*d*1000)
	}
	if l.Law == nil {
		r.Kind = plan.UnknownRing
		return r
	}
	r.Throw = plan.Number(l.Law.Throw())
	if !l.Marked {
		return r
	}
	r.Kind = plan.Engraved
	for _, m := range l.Law.Marks() {
		r.Marks = append(r.Marks, plan.RingMark{Distance: plan.Number(m.Distance), Deg: plan.Number(m.Angle), Second: none})
	}
	return r
}
