// Mistakes that a statement's form lets through: numbers that lack their unit,
// and values called f.

package lang

import (
	"fmt"
	"math"
)

// check reports what is wrong in a statement that could be read. It gives a
// number that lacks its unit one of the dimension wanted, so that nothing is
// said of it a second time.
func check(s Statement) []*fault {
	var c checker
	c.statement(s)
	return c.faults
}

type checker struct{ faults []*fault }

// units wanted, by dimension: what to write in the tree and what to tell.
var (
	wantLength = want{UnitM, "A length has one: mm, cm, m, ft or in."}
	wantFocal  = want{UnitMM, "A focal length has one: mm, cm or in."}
	wantTime   = want{UnitS, "A time has one: s, ms or fr (frames)."}
	wantAngle  = want{UnitDeg, "An angle has one: deg or turn."}
	wantShut   = want{UnitDeg, "A shutter is an angle (180 deg) or a time (1/50 s)."}
	wantSharp  = want{UnitMM, "Sharpness is a length (0.025 mm) or an angle (1 arcmin)."}
	wantStop   = want{UnitF, "A stop is written f/2.8 or T2.8."}
	wantShare  = want{UnitPercent, "A share has one: %."}
	wantPace   = want{UnitWPM, "A pace has one: wpm."}
	wantPixels = want{UnitPX, "Pixels have one: px."}
	wantRate   = want{UnitBitS, "A rate has one: bit/s."}
	wantSpeed  = want{UnitDegS, "A turning speed has one: deg/s."}
)

type want struct {
	unit Unit
	tell string
}

func (c *checker) statement(s Statement) {
	switch s := s.(type) {
	case *Let:
		c.notF(s.Name)
	case *Move:
		c.notF(s.Params...)
	case *Pace:
		c.need(wantPace, s.Value)
	case *Watched:
		c.need(wantLength, s.Width.Length, s.From)
	case *Sharp:
		c.need(wantSharp, s.To)
	case *Land:
		c.need(wantShare, s.Chance)
	case *Quickest:
		c.need(wantTime, s.Time)
	case *With:
		c.stops(s.Stop, s.Meter)
		c.need(wantFocal, s.Focal)
		c.need(wantLength, s.Wheel)
	case *Subject:
		c.place(s.Place)
		c.need(wantLength, s.Deep, s.Sways)
	default:
		c.camera(s)
		c.lens(s)
		c.shot(s)
	}
}

// notF reports values called f, since f/2 is a stop.
func (c *checker) notF(names ...*Name) {
	for _, n := range names {
		if n.Text == "f" {
			c.faults = append(c.faults, faultOn(&n.Node, "keyword-name", "no value is called f").
				because("f before / and a digit is a stop, as in f/2.8."))
		}
	}
}

func (c *checker) camera(s Statement) {
	switch s := s.(type) {
	case *Sensor:
		if s.Width.Kind == ExprNumber && s.Width.Unit == UnitNone {
			s.Width.Unit = s.Height.Unit // 24.89 x 18.66 mm
		}
		c.need(wantFocal, s.Width, s.Height)
	case *Records:
		c.need(wantPixels, s.Pixels)
	case *Shutter:
		c.need(wantShut, s.Value)
	case *Monitor:
		c.need(wantLength, s.Width.Length, s.From)
		c.need(wantPixels, s.Pixels)
	}
}

func (c *checker) lens(s Statement) {
	switch s := s.(type) {
	case *Focal:
		c.span(wantFocal, "focal", s.From, s.To)
	case *Stops:
		c.stops(s.Widest, s.Smallest)
		c.need(wantFocal, s.At)
	case *Closest:
		c.need(wantLength, s.Distance)
	case *Ring:
		c.need(wantAngle, s.Angle)
		c.need(wantLength, s.Diameter)
	case *Mark:
		c.need(wantLength, s.Distance)
		c.need(wantAngle, s.Angle)
	case *Breathing:
		c.need(wantShare, s.Percent)
	case *Hand:
		c.need(wantRate, s.Throughput)
	case *Limit:
		c.need(wantSpeed, s.Speed)
	case *Grip:
		c.need(wantAngle, s.Angle)
	case *Spread:
		c.need(wantLength, s.Rim)
	case *Bias:
		c.need(wantAngle, s.Angle)
	}
}

func (c *checker) shot(s Statement) {
	switch s := s.(type) {
	case *Start:
		c.need(wantLength, s.Target.Of...)
	case *Lasts:
		c.need(wantTime, s.Time)
	case *Speech:
		c.anchors(s.On)
		c.need(wantTime, s.Lasting)
		c.span(wantTime, "from", s.From, s.To)
	case *Pause:
		c.need(wantTime, s.Time)
	case *Action:
		c.anchors(s.On)
		c.need(wantTime, s.Lasting)
	case *Cue:
		c.anchors(s.On)
	case *Rack:
		c.need(wantLength, s.Target.Of...)
		c.anchors(s.On, s.Landing)
		c.need(wantTime, s.Over)
	case *Hold:
		c.need(wantTime, s.Time)
	case *Follow:
		c.anchors(s.Until)
	default:
		c.course(s)
	}
}

func (c *checker) course(s Statement) {
	switch s := s.(type) {
	case *Moves:
		c.place(s.To)
		c.anchors(s.On)
		c.need(wantTime, s.Over)
	case *Dolly:
		c.anchors(s.On)
		c.need(wantLength, s.By)
		c.need(wantTime, s.Over)
	case *Zoom:
		c.anchors(s.On)
		c.need(wantFocal, s.To)
		c.need(wantTime, s.Over)
	}
}

func (c *checker) place(p *Place) { c.need(wantLength, p.At, p.Side) }

func (c *checker) anchors(list ...*Anchor) {
	for _, a := range list {
		if a != nil {
			c.need(wantTime, a.Time, a.Offset)
		}
	}
}

// stops reports what is no stop because it is written as elsewhere, or is a
// bare number, and takes it as the stop that was meant.
func (c *checker) stops(list ...*Expr) {
	for _, x := range list {
		if x == nil {
			continue
		}
		if text, stop, ok := stopMeant(asStop(x)); ok {
			c.faults = append(c.faults, faultOn(&x.Node, "bad-number", "a stop is written %s", text))
			stop.Node = x.Node
			*x = stop
			continue
		}
		if split := between(x); split != nil {
			c.faults = append(c.faults, faultOn(&x.Node, "bad-number", "a stop between two is written as one number").
				because("Write: %s%s", split.Unit, plain(split.Value)))
			*x = *split
			continue
		}
		w := wantStop
		if bare(x) == x {
			w.tell = fmt.Sprintf("A stop is written f/%[1]s or T%[1]s.", plain(x.Value))
		}
		c.need(w, x)
	}
}

// between returns the stop half-way between the two of T2.8/4, nil for what is
// not written so.
func between(x *Expr) *Expr {
	if x.Kind != ExprBinary || x.Op != '/' || x.X.Kind != ExprStop {
		return nil
	}
	if to := x.Y; to.Kind == ExprStop && to.Unit == x.X.Unit || to.Kind == ExprNumber && to.Unit == UnitNone {
		half := math.Sqrt(x.X.Value * to.Value) // half-way in light
		return &Expr{Node: x.Node, Kind: ExprStop, Value: round(half, 10), Unit: x.X.Unit}
	}
	return nil
}

// span checks a pair behind a word, and shows how it is written where the first
// number leaves its unit to the second.
func (c *checker) span(w want, word string, from, to *Expr) {
	if from != nil && to != nil && bare(from) == from && to.Kind == ExprNumber && to.Unit.Dimension() == w.unit.Dimension() {
		w.unit = to.Unit
		w.tell += fmt.Sprintf(" Write: %s %s %s to %s %s", word, plain(from.Value), to.Unit, plain(to.Value), to.Unit)
	}
	c.need(w, from, to)
}

// need reports the expressions that are made of bare numbers alone, and those
// sums of which one side is.
func (c *checker) need(w want, list ...*Expr) {
	for _, x := range list {
		if x == nil {
			continue
		}
		if n := bare(x); n != nil {
			c.faults = append(c.faults, faultOn(&x.Node, "missing-unit", "this number has no unit").because("%s", w.tell))
			n.Unit = w.unit
		} else if x.Kind == ExprBinary && (x.Op == '+' || x.Op == '-') {
			c.need(w, x.X, x.Y)
		}
	}
}

// bare returns the first number of an expression that has no units at all, nil
// for any other.
func bare(x *Expr) *Expr {
	switch x.Kind {
	case ExprNumber:
		if x.Unit == UnitNone {
			return x
		}
	case ExprMinus:
		return bare(x.X)
	case ExprBinary:
		if n := bare(x.X); n != nil && bare(x.Y) != nil {
			return n
		}
	}
	return nil
}
