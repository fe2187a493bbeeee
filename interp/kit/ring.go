// The ring of a lens: how far it turns, how wide it is, and its law.

package kit

import (
	"math"

	"pullscore/interp/names"
	"pullscore/interp/plan"
	"pullscore/lang"
	"pullscore/optics/ring"
)

// ring reads what a lens says of its ring; ok is false where the law of the ring
// cannot be known.
func (k *Reader) ring(l *Lens, s *lang.Ring, r *lensReading) (ok bool) {
	l.RingKind, r.ring, ok = s.Kind, s, true
	angle := s.Angle
	if s.Linear != nil {
		angle, l.RingKind, l.Ends = s.Linear, "", "linear"
	}
	if angle != nil {
		if l.throw, ok = k.Within(angle, names.DimAngle, 1, 3600, "a ring turns between 1 deg and 10 turns"); !ok {
			l.throw = math.NaN()
		}
	}
	if s.Diameter != nil {
		if v, ok := k.Within(s.Diameter, names.DimLength, 0.01, 1, "a ring's diameter lies between 1 cm and 1 m"); ok {
			r.diameter = v
			l.Diameter, l.diameterSaid = v, true
		}
	}
	if s.Girth != nil {
		if v, ok := k.Within(s.Girth, names.DimLength, 0.03, 3.2, "a ring's girth lies between 3 cm and 3.2 m"); ok {
			r.girth = v
			if math.IsNaN(r.diameter) {
				l.Diameter, l.diameterSaid = v/math.Pi, true
			}
		}
	}
	return ok
}

// law builds the ring law, from the marks where there are any, else computed.
// The order of the marks is looked at whatever else is wrong with the lens; a mark
// that could not be read leaves nothing to be said of it.
func (k *Reader) law(l *Lens, r *lensReading, lost bool) {
	switch {
	case len(r.marks) < len(r.said):
		l.Ok = false
		return
	case len(r.said) > 0:
		k.lawOfMarks(l, r, lost)
		return
	}
	if err := ring.RimAgrees(r.girth, r.diameter); err != nil {
		k.markError(l, r, err)
	}
	if !l.Ok {
		return
	}
	throw := l.throw
	if l.Unknown = math.IsNaN(throw); l.Unknown {
		throw = Throws[0] // for its mistakes
	}
	law, err := computed(l.Focal, l.Closest, throw)
	if err != nil {
		l.Ok = false // its focal length or its closest distance has been told
		return
	}
	if !l.Unknown {
		l.Law = law
	}
}

// Throws are how far rings turn, degrees, where nothing says it of one: from a stills
// prime to a lens made for pulling (common practice, no source).
var Throws = [...]float64{60, 90, 150, 220, 320}

// Supposed returns the law of the ring if it turned that far, in degrees, and the lens
// focused as a unit; nil where no law can be.
func (l *Lens) Supposed(throw float64) *ring.Law {
	law, err := computed(l.Focal, l.Closest, throw)
	if err != nil {
		return nil
	}
	return law
}

// computed returns the law of a ring without marks: that of a lens that moves as a unit,
// or of a macro lens.
func computed(f, closest, throw float64) (*ring.Law, error) {
	if closest < 4*f {
		return ring.Macro(f, closest, throw)
	}
	return ring.Unit(f, closest, throw)
}

// RingKnown returns what is known of the ring of the lens; nil for one that has none, or
// one by wire.
func (l *Lens) RingKnown() *plan.Ring {
	if l.RingKind != "" {
		return nil
	}
	none := plan.None()
	r := &plan.Ring{Kind: plan.ByLaw, Throw: none, Diameter: none, Girth: none, Offset: none, Play: none, Ends: l.Ends}
	if l.Slack() > 0 {
		r.Play = plan.Number(l.Slack())
		r.Marked = map[ring.Way]string{ring.ToInf: "inf", ring.ToClosest: "closest", ring.BothWays: "both"}[l.MarkedFrom()]
	}
	if d := l.RingDiameter(); !math.IsNaN(d) {
		r.Diameter, r.Girth = plan.Number(d*1000), plan.Number(math.Pi*d*1000)
	}
	if l.Law == nil {
		r.Kind = plan.UnknownRing
		return r
	}
	if _, known := l.Law.Stops(); known {
		r.Throw = plan.Number(l.Law.Throw())
	}
	if !l.Marked {
		return r
	}
	r.Kind, r.SaidKind, r.Offset = plan.Engraved, l.From != "", plan.Number(l.Law.Origin())
	if l.From == plan.Measured {
		r.Kind = plan.Measured
	}
	for _, m := range l.Law.Marks() {
		r.Marks = append(r.Marks, plan.RingMark{
			Distance: plan.Number(m.Distance), Deg: plan.Number(m.Angle), Default: m.Default, Second: plan.Number(m.Second()),
		})
	}
	return r
}
