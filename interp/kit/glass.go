// What a lens is beside its ring: squeeze, play, light near, breathing.

package kit

import (
	"fmt"
	"math"

	"pullscore/interp/names"
	"pullscore/lang"
	"pullscore/optics"
	"pullscore/optics/ring"
)

// Glass is what the section of a lens says of its glass and its gear. Distances are in
// metres from the sensor; NaN is the closest focus.
type Glass struct {
	Squeeze []ring.Value // factors; none is 1
	Rear    bool         // the squeeze is behind the pupil
	Grows   []ring.Value // breathing at distances: percent larger than at infinity
	Ratio   []ring.Value // magnification
	Darkens []ring.Value // stops that it passes less than at infinity
	Play    float64      // degrees of the ring; NaN where not said
	Marked  ring.Way
	Planes  float64 // metres between the principal planes
}

// glassLine reads one line about the glass of a lens.
func (k *Reader) glassLine(l *Lens, s lang.Statement) {
	g := &l.Glass
	switch s := s.(type) {
	case *lang.Squeeze:
		k.value(&g.Squeeze, s, s.Ratio, s.At, limits{names.DimFactor, 1, 3, "a squeeze lies between 1 and 3"}, math.Inf(1))
		g.Rear = g.Rear || s.Rear
	case *lang.Ratio:
		k.value(&g.Ratio, s, s.Value, s.At, limits{names.DimFactor, 0.001, 5, "a ratio lies between 1/1000 and 5/1"}, math.NaN())
	case *lang.Breathing:
		if s.At != nil {
			n := len(g.Grows)
			k.value(&g.Grows, s, s.Percent, s.At, limits{names.DimPercent, -0.5, 0.5, "breathing lies between -50 and 50 %"}, math.NaN())
			for i := range g.Grows[n:] {
				g.Grows[n+i].Value *= 100
			}
		}
	case *lang.Darkens:
		k.darkens(g, s)
	case *lang.Play:
		if v, ok := k.Within(s.Angle, names.DimAngle, 0, 90, "play lies between 0 and 90 deg of the ring"); ok {
			g.Play = v
		}
		g.Marked = map[string]ring.Way{"inf": ring.ToInf, "closest": ring.ToClosest, "both": ring.BothWays}[s.Marked]
	case *lang.Planes:
		if v, ok := k.Within(s.Apart, names.DimLength, -0.5, 0.5, "principal planes lie less than 50 cm apart"); ok {
			g.Planes = v
		}
	}
}

// limits are what a value may be.
type limits struct {
	dim    names.Dimension
	lo, hi float64
	what   string
}

// value reads a figure at a distance; where none is said it is at that place.
func (k *Reader) value(list *[]ring.Value, s lang.Statement, x, at *lang.Expr, in limits, place float64) {
	v, ok := k.Within(x, in.dim, in.lo, in.hi, in.what)
	if at != nil {
		d, okAt := k.Want(at, names.DimLength)
		if ok = ok && okAt; okAt {
			place = d
		}
	}
	if !ok {
		return
	}
	for _, o := range *list {
		if o.Distance == place || math.IsNaN(o.Distance) && math.IsNaN(place) {
			k.saidTwice(s, "this is said twice of one distance", "Once for each distance.", nil)
			return
		}
	}
	*list = append(*list, ring.Value{Distance: place, Value: v})
}

// darkens reads what a lens passes near.
func (k *Reader) darkens(g *Glass, s *lang.Darkens) {
	a, okA := k.Eval(s.Stop)
	b, okB := k.Eval(s.To)
	at, okAt := k.Positive(s.At, names.DimLength)
	if !okA || !okB || !okAt {
		return
	}
	if a.Dim != b.Dim || a.Dim != names.DimStop && a.Dim != names.DimTStop {
		k.Fail(s.Range(), "wrong-unit", "both are f-stops or both are T-stops", "As in: darkens f/2.8 to f/5.6 at 30 cm.")
		return
	}
	lost := optics.StopsBetween(optics.ExactStop(b.V), optics.ExactStop(a.V))
	if lost < 0 || lost > 10 {
		k.Fail(s.Range(), "out-of-range", fmt.Sprintf("a lens passes less light near, and not more than 10 stops less: this says %.1f", lost),
			"As in: darkens f/2.8 to f/5.6 at 30 cm.")
		return
	}
	g.Darkens = append(g.Darkens, ring.Value{Distance: at, Value: lost})
}

// Slack returns the play of the ring in degrees: as said, else the mean by which marks that
// were come to from both sides differ, else 0.
func (l *Lens) Slack() float64 {
	switch {
	case !math.IsNaN(l.Glass.Play):
		return l.Glass.Play
	case l.Read != nil && l.Read.Play > 0:
		return l.Read.Play
	}
	return 0
}

// MarkedFrom returns from which side the marks were come to. Marks that were read from both
// sides say so themselves, unless the lens says its play and how it was marked.
func (l *Lens) MarkedFrom() ring.Way {
	if math.IsNaN(l.Glass.Play) && l.Glass.Marked == ring.WayUnknown && l.Slack() > 0 {
		return ring.BothWays
	}
	return l.Glass.Marked
}

// Origin returns the distance from the sensor, in metres, from which figures of the lens
// count along its ring.
func (l *Lens) Origin() float64 { return optics.Origin(l.Focal, l.Closest) }

// Along returns a figure of the lens along its ring, with a value at infinity where none
// is said of it; NaN says that there is none. A value without a distance is that at the
// closest focus.
func (l *Lens) Along(list []ring.Value, atInf float64) ring.Figure {
	if len(list) == 0 {
		return ring.Figure{}
	}
	var values []ring.Value
	far := false
	for _, v := range list {
		if math.IsNaN(v.Distance) {
			v.Distance = l.Closest
		}
		if v.Distance > l.Origin() {
			values = append(values, v)
		}
		far = far || math.IsInf(v.Distance, 1)
	}
	if !far && !math.IsNaN(atInf) {
		values = append(values, ring.Value{Distance: math.Inf(1), Value: atInf})
	}
	return ring.Smooth(values, l.Origin())
}

// Squeezed returns the squeeze of the lens along its ring; the zero figure where it has
// none.
func (l *Lens) Squeezed() ring.Figure {
	if len(l.Glass.Squeeze) == 0 {
		return ring.Figure{}
	}
	return ring.Straight(l.Glass.Squeeze, l.Origin())
}

// SqueezeFar returns by how much the picture is stretched across when it is shown: the
// squeeze at infinity, 1 for a lens without one.
func (l *Lens) SqueezeFar() float64 {
	if s := l.Squeezed(); s.Known() {
		return s.At(math.Inf(1))
	}
	return 1
}

// MacroNear returns the focal length in metres of a lens that focuses nearer than four of
// its focal lengths at its closest focus, or NaN for other lenses. said is false where
// nothing says the magnification there, and life size is taken.
func (l *Lens) MacroNear() (near float64, said bool) {
	if !(l.Closest < 4*l.Focal) {
		return math.NaN(), true
	}
	m := 1.0
	if said = len(l.Glass.Ratio) > 0; said {
		m = l.Along(l.Glass.Ratio, 0).At(l.Closest)
	}
	return optics.MacroFocalAt(l.Closest, l.Focal, l.Closest, m), said
}
