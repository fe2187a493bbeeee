// The kit: cameras, lenses and pullers as their sections say.

package interp

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"

	"pullscore/interp/hand"
	"pullscore/lang"
	"pullscore/optics"
	"pullscore/optics/ring"
)

// defaultThrow is the turn of a ring whose section does not say it, degrees: a
// current stills prime has 70 to 90 (common practice, no source).
const defaultThrow = 90.0

// A missing is what a section leaves out, told once a shot uses it.
type missing struct{ name, value, why string }

type camera struct {
	name            string
	at              lang.Range
	sensorW, height float64 // m
	pixels          float64 // recorded across; 0 where not said
	support         string
	iso, shutter    float64 // shutter in degrees; 0 where not said
	shutterTime     float64 // where it was written as a time, seconds
	monitor         *monitor
	ok              bool
	defaults        []missing
}

// A monitor is what the operator judges focus on.
type monitor struct{ width, viewer, pixels float64 }

type lens struct {
	name            string
	at              lang.Range
	focal, longest  float64 // m; equal for a prime
	stops           []stopRange
	closest         float64 // m from the sensor; NaN where not said
	ringKind        string  // "", "wire" or "none"
	throw, diameter float64 // degrees and m
	diameterSaid    bool
	turns           string
	law             *ring.Law
	marked          bool
	engraved        []string // the marks as written
	breathing       float64  // percent over the whole ring; NaN where not said
	keepsFocus      bool
	pupil           float64
	ok              bool
	defaults        []missing
}

// ringDiameter returns the diameter of the ring in metres, NaN where the kit
// does not say it: the hand is reckoned with a usual one then, but nothing may
// be drawn to size.
func (l *lens) ringDiameter() float64 {
	if l.diameterSaid {
		return l.diameter
	}
	return math.NaN()
}

// A stopRange is the stops that a lens has, at a focal length.
type stopRange struct {
	widest, smallest float64
	t                bool    // T-numbers
	at               float64 // m; NaN: at all
}

func (l *lens) zoom() bool { return l.longest > l.focal }

type puller struct {
	name     string
	log      string // the path of the log of takes that it names; may be empty
	hand     hand.Hand
	defaults []missing
}

// A kitReader reads the sections of the kit.
type kitReader struct {
	evaluator
	source func(file string) []byte
	// learn fits a puller's hand to the log of takes that a section names.
	learn func(u *puller, said *lang.Takes, sec *lang.Section)
}

// section walks the statements of a section: each kind once, but for those
// that may be repeated.
func (k *kitReader) section(sec *lang.Section, each func(lang.Statement)) {
	seen := map[string]lang.Statement{}
	for _, s := range sec.Body {
		switch s.(type) {
		case *lang.Mark, *lang.Stops, *lang.Bad:
		default:
			key := fmt.Sprintf("%T", s)
			if old, ok := seen[key]; ok {
				k.report(lang.Diagnostic{
					Code: "said-twice", Severity: lang.Error, Range: s.Range(),
					Message: "this is said twice here",
					Related: []lang.Related{{Message: "first here", Range: old.Range()}},
				})
				continue
			}
			seen[key] = s
		}
		each(s)
	}
}

func (k *kitReader) camera(sec *lang.Section) *camera {
	c := &camera{at: sec.Head.Range(), name: sec.Head.(*lang.Camera).Name.Text}
	k.section(sec, func(s lang.Statement) {
		switch s := s.(type) {
		case *lang.Sensor:
			w, okW := k.within(s.Width, dimLength, 1e-3, 0.3, "a sensor is 1 to 300 mm wide")
			h, okH := k.within(s.Height, dimLength, 1e-3, 0.3, "a sensor is 1 to 300 mm high")
			if okW && okH {
				c.sensorW, c.height, c.ok = w, h, true
			}
		case *lang.Records:
			c.pixels, _ = k.within(s.Pixels, dimPixels, 16, 1e6, "a recording is 16 to 1 000 000 px wide")
		case *lang.Support:
			c.support = s.Kind
		case *lang.ISO:
			c.iso, _ = k.within(s.Value, dimFactor, 1, 1e7, "an iso lies between 1 and 10 000 000")
		case *lang.Shutter:
			k.shutter(c, s)
		case *lang.Monitor:
			w, okW := k.size(s.Width)
			v, okV := k.positive(s.From, dimLength)
			px, okP := k.within(s.Pixels, dimPixels, 16, 1e6, "a monitor is 16 to 1 000 000 px wide")
			if okW && okV && okP {
				c.monitor = &monitor{w, v, px}
			}
		}
	})
	if !c.ok && !has[*lang.Bad](sec) && !has[*lang.Sensor](sec) {
		k.fail(c.at, "no-sensor", fmt.Sprintf("camera %s has no sensor", c.name), "As in: sensor 24.89 x 18.66 mm.")
	}
	if c.support == "" {
		c.support = "tripod"
		c.defaults = append(c.defaults, missing{"camera " + c.name, "on tripod", "the camera does not say what it is on"})
	}
	return c
}

func (k *kitReader) shutter(c *camera, s *lang.Shutter) {
	q, ok := k.eval(s.Value)
	if !ok {
		return
	}
	num, den := k.rate.Exact()
	switch {
	case q.dim == dimAngle && q.v > 0 && q.v <= 360:
		c.shutter = q.v
	case q.dim == dimTime && q.v > 0 && q.v <= float64(den)/float64(num):
		c.shutter, c.shutterTime = optics.ShutterAngle(float64(num)/float64(den), q.v), q.v
	default:
		k.fail(s.Value.Range(), "wrong-unit", "a shutter is an angle up to 360 deg or a time no longer than a frame",
			"As in 180 deg, or 1/50 s.")
	}
}

// has tells whether a section has a statement of a kind.
func has[S lang.Statement](sec *lang.Section) bool {
	return slices.ContainsFunc(sec.Body, func(s lang.Statement) bool { _, ok := s.(S); return ok })
}

func (k *kitReader) lens(sec *lang.Section) *lens {
	l := &lens{
		at: sec.Head.Range(), name: sec.Head.(*lang.Lens).Name.Text,
		closest: math.NaN(), throw: math.NaN(), diameter: hand.Wheel, breathing: math.NaN(), pupil: 1,
	}
	var marks []*lang.Mark
	var zoomSaid bool
	k.section(sec, func(s lang.Statement) {
		switch s := s.(type) {
		case *lang.Focal:
			k.focal(l, s)
		case *lang.Stops:
			k.stops(l, s)
		case *lang.Closest:
			if v, ok := k.within(s.Distance, dimLength, 0.01, 1000, "the closest focus lies between 1 cm and 1 km"); ok {
				l.closest = v
			}
		case *lang.Ring:
			k.ring(l, s)
		case *lang.Turns:
			l.turns = s.Dir
		case *lang.Mark:
			marks = append(marks, s)
		case *lang.Breathing:
			if v, ok := k.within(s.Percent, dimPercent, 0, 0.5, "breathing lies between 0 and 50 %"); ok {
				l.breathing = v * 100
			}
		case *lang.ThroughZoom:
			l.keepsFocus, zoomSaid = s.Keeps, true
		case *lang.Pupil:
			if v, ok := k.within(s.Ratio, dimFactor, 0.1, 10, "a pupil ratio lies between 0.1 and 10"); ok {
				l.pupil = v
			}
		}
	})
	k.finishLens(l, sec, marks, zoomSaid)
	return l
}

func (k *kitReader) focal(l *lens, s *lang.Focal) {
	const why = "a focal length lies between 1 mm and 5 m"
	from, ok := k.within(s.From, dimLength, 1e-3, 5, why)
	if !ok {
		return
	}
	to := from
	if s.To != nil {
		if to, ok = k.within(s.To, dimLength, 1e-3, 5, why); !ok {
			return
		}
	}
	l.focal, l.longest, l.ok = min(from, to), max(from, to), true
}

func (k *kitReader) stops(l *lens, s *lang.Stops) {
	a, okA := k.eval(s.Widest)
	b, okB := k.eval(s.Smallest)
	if !okA || !okB {
		return
	}
	if a.dim != b.dim || a.dim != dimStop && a.dim != dimTStop {
		k.fail(s.Range(), "wrong-unit", "a lens's stops are both f-stops or both T-stops", "As in: stops f/1.8 to f/22.")
		return
	}
	r := stopRange{widest: min(a.v, b.v), smallest: max(a.v, b.v), t: a.dim == dimTStop, at: math.NaN()}
	if r.widest < 0.5 || r.smallest > 512 {
		k.fail(s.Range(), "out-of-range", "a lens's stops lie between 0.5 and 512", "")
		return
	}
	if s.At != nil {
		v, ok := k.positive(s.At, dimLength)
		if !ok {
			return
		}
		r.at = v
	}
	same := func(o stopRange) bool { return o.t == r.t && (o.at == r.at || math.IsNaN(o.at) && math.IsNaN(r.at)) }
	if slices.ContainsFunc(l.stops, same) {
		k.fail(s.Range(), "said-twice", "these stops are said twice", "Once for f, once for T, once for each focal length.")
		return
	}
	l.stops = append(l.stops, r)
}

func (k *kitReader) ring(l *lens, s *lang.Ring) {
	l.ringKind = s.Kind
	if s.Angle != nil {
		if v, ok := k.within(s.Angle, dimAngle, 1, 3600, "a ring turns between 1 deg and 10 turns"); ok {
			l.throw = v
		}
	}
	if s.Diameter != nil {
		if v, ok := k.within(s.Diameter, dimLength, 0.01, 1, "a ring's diameter lies between 1 cm and 1 m"); ok {
			l.diameter, l.diameterSaid = v, true
		}
	}
}

// finishLens checks what the statements come to together, and builds the ring
// law.
func (k *kitReader) finishLens(l *lens, sec *lang.Section, marks []*lang.Mark, zoomSaid bool) {
	whole := !has[*lang.Bad](sec)
	if l.focal == 0 && whole && !has[*lang.Focal](sec) {
		k.fail(l.at, "no-focal", fmt.Sprintf("lens %q has no focal length", l.name), "As in: focal 75 mm.")
	}
	if len(l.stops) == 0 && whole && !has[*lang.Stops](sec) {
		k.fail(l.at, "no-stops", fmt.Sprintf("lens %q has no stops", l.name), "As in: stops f/1.8 to f/22.")
	}
	l.ok = l.ok && len(l.stops) > 0
	slices.SortStableFunc(l.stops, func(a, b stopRange) int { return cmp.Compare(a.at, b.at) })
	if l.zoom() && !zoomSaid {
		l.defaults = append(l.defaults, missing{l.name, "loses focus through zoom", "the lens does not say that it keeps it"})
	}
	if math.IsNaN(l.closest) && len(marks) < 2 && whole {
		k.fail(l.at, "no-closest", fmt.Sprintf("lens %q says neither how close it focuses nor two marks", l.name),
			"As in: closest 75 cm.")
		l.ok = false
	}
	if l.ringKind != "" || !l.ok {
		return
	}
	if !l.diameterSaid {
		l.defaults = append(l.defaults, missing{l.name, "ring diameter 80 mm", "the lens does not say its ring's diameter"})
	}
	k.law(l, marks)
}

// law builds the ring law, from the marks where there are two, else computed.
func (k *kitReader) law(l *lens, marks []*lang.Mark) {
	if len(marks) >= 2 {
		list := make([]ring.Mark, len(marks))
		for i, m := range marks {
			d, okD := k.want(m.Distance, dimLength)
			a, okA := k.want(m.Angle, dimAngle)
			if !okD || !okA {
				l.ok = false
				return
			}
			list[i] = ring.Mark{Distance: d, Angle: a}
			l.engraved = append(l.engraved, sourceText(k.source(m.Distance.Range().File), m.Distance.Range()))
		}
		law, err := ring.FromMarks(list, l.throw)
		if err != nil {
			k.markError(l, marks, err)
			return
		}
		l.law, l.marked = law, true
		l.throw = law.Throw()
		if math.IsNaN(l.closest) {
			l.closest = list[0].Distance
		}
		return
	}
	if len(marks) == 1 {
		k.fail(marks[0].Range(), "lone-mark", "one mark alone says nothing of the ring", "Give two or more, or none.")
		l.ok = false
		return
	}
	if math.IsNaN(l.closest) { // told, here or by the parser
		l.ok = false
		return
	}
	if math.IsNaN(l.throw) {
		l.throw = defaultThrow
		l.defaults = append(l.defaults, missing{l.name, "ring 90 deg", "the lens does not say how far its ring turns"})
	}
	law, err := ring.Unit(l.focal, l.closest, l.throw)
	if err != nil {
		k.fail(l.at, "closest-too-close", fmt.Sprintf("lens %q cannot focus that close", l.name), sentence(err.Error()))
		l.ok = false
		return
	}
	l.law = law
}

func (k *kitReader) markError(l *lens, marks []*lang.Mark, err error) {
	l.ok = false
	at := l.at
	var order *ring.MarkError
	if errors.As(err, &order) && order.Index < len(marks) {
		at = marks[order.Index].Range()
	}
	k.fail(at, "marks-out-of-order", "the marks of a ring go from near to far, each angle beyond the one before", sentence(err.Error()))
}

func (k *kitReader) puller(sec *lang.Section) *puller {
	u := &puller{name: sec.Head.(*lang.Puller).Name.Text, hand: hand.Default()}
	var log *lang.Takes
	k.section(sec, func(s lang.Statement) {
		switch s := s.(type) {
		case *lang.Takes:
			log = s
		case *lang.Hand:
			k.set(&u.hand.Throughput, s.Throughput, dimBits, 0.2, 20, "a throughput lies between 0.2 and 20 bit/s")
		case *lang.Limit:
			k.set(&u.hand.Limit, s.Speed, dimSpeed, 10, 1e4, "a limit lies between 10 and 10 000 deg/s")
		case *lang.Grip:
			k.set(&u.hand.Grip, s.Angle, dimAngle, 10, 720, "a grip lies between 10 and 720 deg")
		case *lang.Spread:
			k.set(&u.hand.RimSpread, s.Rim, dimLength, 1e-5, 0.02, "a spread at the rim lies between 0.01 and 20 mm")
		case *lang.Bias:
			k.set(&u.hand.Bias, s.Angle, dimAngle, -30, 30, "a bias lies between -30 and 30 deg")
		}
	})
	if log != nil {
		k.learn(u, log, sec)
	}
	return u
}

func (k *kitReader) set(to *float64, x *lang.Expr, dim dimension, lo, hi float64, what string) {
	if v, ok := k.within(x, dim, lo, hi, what); ok {
		*to = v
	}
}

// scaled returns the lens with focal lengths multiplied by k. Its ring keeps
// its throw and its closest distance, or its marks. It is not ok where such a
// ring cannot focus that close.
func (l *lens) scaled(k float64) *lens {
	c := *l
	c.focal, c.longest, c.stops = l.focal*k, l.longest*k, slices.Clone(l.stops)
	for i := range c.stops {
		c.stops[i].at *= k
	}
	if l.law != nil && !l.marked {
		law, err := ring.Unit(c.focal, c.closest, c.throw)
		c.law, c.ok = law, c.ok && err == nil
	}
	return &c
}
