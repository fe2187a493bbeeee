// The ring of a lens: what is known of it, and how well.

package plan

import (
	"math"
)

// What the angles of a ring rest on: the kinds of a Ring.
const (
	Measured    = "measured" // marks that somebody measured
	Engraved    = "engraved" // the lens's own marks
	ByLaw       = "law"      // no marks: the law of a lens that focuses as a unit
	UnknownRing = "unknown"  // nothing says how far it turns
)

// A Ring is what is known of the ring of a lens. A lens that has none, or whose ring
// works by wire, has no Ring.
type Ring struct {
	Kind     string     `json:"kind"`
	Throw    Number     `json:"throw_deg,omitzero"`
	Diameter Number     `json:"diameter_mm,omitzero"`
	Girth    Number     `json:"girth_mm,omitzero"` // the way round
	Offset   Number     `json:"c_m,omitzero"`      // c of the law, which is even in 1/(D - c)
	Play     Number     `json:"play_deg,omitzero"` // backlash, degrees of the ring
	Marked   string     `json:"marked,omitempty"`  // which way the marks were come to: inf, closest or both
	Ends     string     `json:"ends,omitempty"`    // hard, slip or linear
	Marks    []RingMark `json:"marks,omitempty"`   // from near to far
	SaidKind bool       `json:"-"`                 // the kit says where the marks come from
}

// A RingMark is a distance on the ring.
type RingMark struct {
	Distance Number `json:"distance_m"` // from the sensor; null: infinity
	Deg      Number `json:"deg"`        // from the closest stop
	Default  bool   `json:"default,omitempty"`
	Second   Number `json:"second_deg,omitzero"` // where it lies when it is come to from the far side
}

// RingUnknown reports whether the lens has a ring of which nothing says how far it
// turns. Its chances are a range, and it has no angles.
func (s *Shot) RingUnknown() bool { return s.Ring != nil && s.Ring.Kind == UnknownRing }

// RingKind returns what the angles of the ring rest on, one of the kinds of a Ring; "" for
// a lens that has none.
func (s *Shot) RingKind() string {
	if s.Ring == nil {
		return ""
	}
	return s.Ring.Kind
}

// LawSigma returns how well the marks of the lens tell the angle that focuses at x metres
// from the lens at t: one standard deviation, in degrees of the ring. It returns NaN for a
// ring without marks, and where the angle is not known.
func (s *Shot) LawSigma(x, t float64) float64 {
	r := s.Optics.Ring
	if r == nil || !r.Measured() || !(x > s.Focal(t)) {
		return math.NaN()
	}
	return r.Sigma(s.RingTape(x, t))
}
