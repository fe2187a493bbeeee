// Where the angles of a ring come from, in words.

package moments

import (
	"fmt"
	"math"

	"pullscore/interp/plan"
	"pullscore/interp/units"
)

// What follows a chance that no measured ring stands behind.
const (
	ByTheLaw     = "by the law"
	RingNotKnown = "ring not known"
)

// Provenance says in one line where the angles of a shot's ring come from and how far they
// can be trusted; "" for a lens whose ring is not pulled by angle. Lists, papers, the page
// and exports have the same words.
func Provenance(s *plan.Shot) string {
	r := s.Ring
	if r == nil {
		return ""
	}
	text := fmt.Sprintf("Ring of %q: ", s.Lens)
	switch r.Kind {
	case plan.UnknownRing:
		return text + "not known"
	case plan.ByLaw:
		return text + "by the law of unit focusing: not measured"
	}
	written, near, far := 0, false, false
	for _, m := range r.Marks {
		switch {
		case !m.Default:
			written++
		case m.Distance.IsInf():
			far = true
		default:
			near = true
		}
	}
	switch {
	case r.Kind == plan.Measured:
		text += "measured, " + units.Count(written, "mark")
	case r.SaidKind:
		text += fmt.Sprintf("by its engraved marks, %d", written)
	default:
		text += fmt.Sprintf("by its marks, %d", written)
	}
	if sigma := worstSigma(s); sigma >= 0 {
		in := units.Style{}
		text += ", ±" + in.Angle(2*sigma)
		if d := s.Optics.Diameter; d > 0 {
			text += " (" + in.Millimetres(2*sigma*math.Pi*d/360) + ")"
		}
		text += " at the marks used"
	}
	switch {
	case near && far:
		text += ", closest and inf taken from closest and ring"
	case near:
		text += ", closest taken from closest"
	case far:
		text += ", inf taken from ring"
	}
	return text
}

// worstSigma returns how well the least known of the marks that a shot uses is known, one
// standard deviation in degrees of the ring; below 0 where none is.
func worstSigma(s *plan.Shot) float64 {
	worst := -1.0
	if start := s.Optics.Start; start.Text != "" {
		worst = max(worst, known(s.LawSigma(start.Distance, 0)))
	}
	for _, p := range s.Pulls {
		worst = max(worst, known(float64(p.LawSigma)))
	}
	return worst
}

// known returns v, and -1 for NaN.
func known(v float64) float64 {
	if math.IsNaN(v) {
		return -1
	}
	return v
}

// RestsOn returns what the chances of a shot rest on where its ring has no marks, "" where
// it has some.
func RestsOn(s *plan.Shot) string {
	switch {
	case s.RingUnknown():
		return RingNotKnown
	case s.Ring != nil && s.Ring.Kind == plan.ByLaw:
		return ByTheLaw
	}
	return ""
}
