// Lenses: what their sections say, and what they can do at a focal length.

package kit

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"pullscore/interp/hand"
	"pullscore/interp/names"
	"pullscore/interp/plan"
	"pullscore/interp/units"
	"pullscore/lang"
	"pullscore/optics/ring"
)

// A Lens is what the section of a lens says.
type Lens struct {
	Name            string
	at              lang.Range
	Focal, Longest  float64 // m; equal for a prime
	stops           []stopRange
	Closest         float64 // m from the sensor; NaN where not said
	Imperial        bool    // its distances are written in feet or inches
	RingKind        string  // "", "wire" or "none"
	throw, Diameter float64 // degrees and m
	diameterSaid    bool
	Turns           string
	Law             *ring.Law
	Unknown         bool // the lens has a ring of which nothing says how far it turns
	Marked          bool
	Engraved        []string   // the marks as written, in the order of the law's
	From            string     // where the marks come from: engraved, measured or "", which counts as engraved
	Read            *ring.Read // what the marks say of the ring; nil without marks
	Ends            string     // of the ring: hard, slip, linear, or "" where not said
	Breathing       float64    // percent over the whole ring; NaN where not said
	Glass           Glass
	KeepsFocus      bool
	Pupil           float64
	Ok              bool
	Defaults        []Missing
}

// RingDiameter returns the diameter of the ring in metres, NaN where the kit
// does not say it: the hand is reckoned with a usual one then, but nothing may
// be drawn to size.
func (l *Lens) RingDiameter() float64 {
	if l.diameterSaid {
		return l.Diameter
	}
	return math.NaN()
}

// A stopRange is the stops that a lens has, at a focal length.
type stopRange struct {
	widest, smallest float64
	t                bool    // T-numbers
	at               float64 // m; NaN: at all
}

// Zoom reports whether the focal length can be changed.
func (l *Lens) Zoom() bool { return l.Longest > l.Focal }

// Lens reads the section of a lens. One whose header could not be read has its
// mistakes told too, and is not ok.
func (k *Reader) Lens(sec *lang.Section) Lens {
	l := &Lens{
		at: sec.Head.Range(), Name: nameOf(sec.Head),
		Closest: math.NaN(), throw: math.NaN(), Diameter: hand.Wheel, Breathing: math.NaN(), Pupil: 1, Glass: Glass{Play: math.NaN()},
	}
	r := lensReading{lost: lostIn(sec), good: true, girth: math.NaN(), diameter: math.NaN(), within: math.NaN()}
	k.section(sec, func(s lang.Statement) { k.lensLine(l, s, &r) })
	k.finishLens(l, sec, &r)
	l.Imperial = r.imperial()
	l.Ok = l.Ok && l.Name != "" && k.whole(sec)
	return *l
}

// A lensReading is what the lines of a lens come to on the way.
type lensReading struct {
	lost     names.Losses
	said     []*lang.Mark
	marks    []ring.Written // of those that could be read
	closest  *lang.Expr     // as written
	ring     *lang.Ring
	zoomSaid bool
	good     bool // all values of the ring could be read

	girth, diameter float64 // of the ring, metres, as written; NaN where not said
	within          float64 // how well marks were read, degrees, nineteen times in twenty
}

// lensLine reads one line of a lens.
func (k *Reader) lensLine(l *Lens, s lang.Statement, r *lensReading) {
	switch s := s.(type) {
	case *lang.Focal:
		k.focal(l, s)
	case *lang.Stops:
		k.stops(l, s)
	case *lang.Closest:
		v, ok := k.Within(s.Distance, names.DimLength, 0.01, 1000, "the closest focus lies between 1 cm and 1 km")
		if r.good = r.good && ok; ok {
			l.Closest, r.closest = v, s.Distance
		}
	case *lang.Ring:
		r.good = k.ring(l, s, r) && r.good
	case *lang.Turns:
		l.Turns = s.Dir
	case *lang.Mark:
		w, ok := k.mark(l, s)
		if r.said = append(r.said, s); ok {
			r.marks = append(r.marks, w)
		}
	case *lang.Marks:
		l.From = s.From
		if s.Within != nil {
			k.set(&r.within, s.Within, names.DimAngle, 0.001, 90, "marks are read to within 0.001 to 90 deg")
		}
	case *lang.Ends:
		if l.Ends == "" {
			l.Ends = s.How
		}
	case *lang.Breathing:
		if s.At != nil {
			k.glassLine(l, s)
			return
		}
		if v, ok := k.Within(s.Percent, names.DimPercent, 0, 0.5, "breathing lies between 0 and 50 %"); ok {
			l.Breathing = v * 100
		}
	case *lang.Squeeze, *lang.Ratio, *lang.Darkens, *lang.Play, *lang.Planes:
		k.glassLine(l, s)
	case *lang.ThroughZoom:
		l.KeepsFocus, r.zoomSaid = s.Keeps, true
	case *lang.Pupil:
		if v, ok := k.Within(s.Ratio, names.DimFactor, 0.1, 10, "a pupil ratio lies between 0.1 and 10"); ok {
			l.Pupil = v
		}
	}
}

func (k *Reader) focal(l *Lens, s *lang.Focal) {
	const why = "a focal length lies between 1 mm and 5 m"
	from, okF := k.Within(s.From, names.DimLength, 1e-3, 5, why)
	to, okT := from, okF
	if s.To != nil {
		to, okT = k.Within(s.To, names.DimLength, 1e-3, 5, why)
	}
	if okF && okT {
		l.Focal, l.Longest, l.Ok = min(from, to), max(from, to), true
	}
}

func (k *Reader) stops(l *Lens, s *lang.Stops) {
	a, okA := k.Eval(s.Widest)
	b, okB := k.Eval(s.Smallest)
	r := stopRange{at: math.NaN()}
	okAt := true
	if s.At != nil {
		r.at, okAt = k.Positive(s.At, names.DimLength)
	}
	if !okA || !okB {
		return
	}
	if a.Dim != b.Dim || a.Dim != names.DimStop && a.Dim != names.DimTStop {
		k.Fail(s.Range(), "wrong-unit", "a lens's stops are both f-stops or both T-stops", "As in: stops f/1.8 to f/22.")
		return
	}
	r.widest, r.smallest, r.t = min(a.V, b.V), max(a.V, b.V), a.Dim == names.DimTStop
	if r.widest < 0.5 || r.smallest > 512 {
		k.Fail(s.Range(), "out-of-range", "a lens's stops lie between 0.5 and 512", "")
		return
	}
	if !okAt {
		return
	}
	same := func(o stopRange) bool { return o.t == r.t && (o.at == r.at || math.IsNaN(o.at) && math.IsNaN(r.at)) }
	if slices.ContainsFunc(l.stops, same) {
		k.saidTwice(s, "these stops are said twice", "Once for f, once for T, once for each focal length.", nil)
		return
	}
	l.stops = append(l.stops, r)
}

// finishLens checks what the statements come to together, and builds the ring
// law.
func (k *Reader) finishLens(l *Lens, sec *lang.Section, r *lensReading) {
	if !names.Has[*lang.Focal](sec) && !r.lost.Any("focal") {
		k.Fail(l.at, "no-focal", fmt.Sprintf("lens %q has no focal length", l.Name), "As in: focal 75 mm.")
	}
	if !names.Has[*lang.Stops](sec) && !r.lost.Any("stops") {
		k.Fail(l.at, "no-stops", fmt.Sprintf("lens %q has no stops", l.Name), "As in: stops f/1.8 to f/22.")
	}
	l.Ok = l.Ok && len(l.stops) > 0 && r.good && len(r.marks) == len(r.said)
	slices.SortStableFunc(l.stops, func(a, b stopRange) int { return cmp.Compare(a.at, b.at) })
	if l.Zoom() && !r.zoomSaid {
		l.Defaults = append(l.Defaults, Missing{l.Name, "loses focus through zoom", "the lens does not say that it keeps it"})
	}
	ringLost := r.lost.Any("closest") || r.lost.Any("mark") || r.lost.Any("ring")
	if math.IsNaN(l.Closest) && len(r.said) < 1 {
		if !names.Has[*lang.Closest](sec) && !ringLost {
			k.Fail(l.at, "no-closest", fmt.Sprintf("lens %q says neither how close it focuses nor a mark", l.Name),
				"As in: closest 75 cm.")
		}
		l.Ok = false
	}
	if l.RingKind != "" {
		return
	}
	k.law(l, r, ringLost)
	l.Ok = l.Ok && !ringLost // the rest says another ring than the one that was meant
	if l.Ok && !l.diameterSaid {
		l.Defaults = append(l.Defaults, Missing{l.Name, "ring diameter 80 mm", "the lens does not say its ring's diameter"})
	}
}

// FocalText writes the focal lengths of the lens.
func (l *Lens) FocalText() string {
	if !l.Zoom() {
		return units.Style{}.Millimetres(l.Focal)
	}
	return units.Decimal(l.Focal*1000, 1) + " to " + units.Style{}.Millimetres(l.Longest)
}

// Spoken returns the scale of a shot that writes its stop as a T-number, or as an
// f-number, with the lens at a focal length in metres.
func (l *Lens) Spoken(focal float64, t bool) plan.Spoken {
	s := plan.Spoken{T: t, PerT: l.transmission()}
	s.Widest, s.Smallest = l.Scale(t).At(focal)
	return s
}

// transmission is the T-number over the f-number, from the widest of both
// scales; NaN where the lens has one scale alone.
func (l *Lens) transmission() float64 {
	f, t := math.NaN(), math.NaN()
	for _, r := range l.stops {
		if r.t && math.IsNaN(t) {
			t = r.widest
		} else if !r.t && math.IsNaN(f) {
			f = r.widest
		}
	}
	return t / f
}

// StopsAt returns the widest and the smallest f-number at a focal length,
// linear in stops between the focal lengths that the lens gives.
func (l *Lens) StopsAt(focal float64) (widest, smallest float64) { return l.Scale(false).At(focal) }

// Scale returns the stops of the lens as T-numbers, or as f-numbers; a lens with
// one scale has it for both. Stops said without a focal length are those at the
// short end.
func (l *Lens) Scale(t bool) plan.Scale {
	var scale plan.Scale
	for _, r := range l.stops {
		if r.t != t && l.HasScale(t) {
			continue
		}
		at := r.at
		if math.IsNaN(at) {
			at = l.Focal
		}
		scale = append(scale, plan.StopsAt{Focal: at, Widest: r.widest, Smallest: r.smallest})
	}
	return scale
}

// HasScale tells whether a lens has T-numbers, or f-numbers.
func (l *Lens) HasScale(t bool) bool {
	return slices.ContainsFunc(l.stops, func(r stopRange) bool { return r.t == t })
}

// Scaled returns the lens with focal lengths multiplied by k. Its ring keeps
// its throw and its closest distance, or its marks. It is not ok where such a
// ring cannot focus that close.
func (l Lens) Scaled(k float64) Lens {
	c := l
	c.Focal, c.Longest, c.stops = l.Focal*k, l.Longest*k, slices.Clone(l.stops)
	for i := range c.stops {
		c.stops[i].at *= k
	}
	if l.Law == nil {
		return c
	}
	law, err := computed(c.Focal, c.Closest, c.throw)
	if l.Marked {
		law, err = ring.FromMarks(l.Law.Marks(), ring.Shape{Focal: c.Focal, Throw: c.throw, Reading: l.Law.Reading()})
	}
	c.Law, c.Ok = law, c.Ok && err == nil
	return c
}
