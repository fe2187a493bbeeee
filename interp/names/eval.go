// Values: expressions with their dimensions.

package names

import (
	"fmt"
	"math"

	"pullscore/lang"
	"pullscore/lang/timecode"
)

// A Dimension is what a value measures.
type Dimension uint8

const (
	DimFactor Dimension = iota
	DimLength           // metres
	DimAngle            // degrees
	DimTime             // seconds
	DimStop             // an f-number
	DimTStop            // a T-number
	DimPercent
	DimPace  // words a minute
	DimBits  // bit/s
	DimSpeed // degrees a second
	DimPixels
	DimTimecode // frames
	DimVelocity // metres a second
)

// String says what is measured, as messages do.
func (d Dimension) String() string {
	return [...]string{
		"a bare number", "a length", "an angle", "a time", "an f-stop", "a T-stop", "a percentage",
		"a pace", "a throughput", "a turning speed", "a number of pixels", "a timecode", "a speed",
	}[d]
}

// example shows how a value of the dimension is written.
func (d Dimension) example() string {
	return [...]string{
		"2", "1.7 m", "90 deg", "1.2 s", "f/2.8", "T2.9", "90 %", "150 wpm", "4.1 bit/s", "900 deg/s",
		"3840 px", "01:00:10:12", "1.2 m/s",
	}[d]
}

// A Quantity is an evaluated expression. Where on is set it is a place: the
// subject's, moved away from the camera by v metres.
type Quantity struct {
	V   float64
	Dim Dimension
	On  *lang.Name
}

// dimensions are what the language's dimensions are here.
var dimensions = [...]Dimension{
	lang.DimNone: DimFactor, lang.DimLength: DimLength, lang.DimAngle: DimAngle, lang.DimTime: DimTime,
	lang.DimStop: DimStop, lang.DimRatio: DimPercent, lang.DimPixels: DimPixels, lang.DimPace: DimPace,
	lang.DimThroughput: DimBits, lang.DimSpeed: DimSpeed, lang.DimVelocity: DimVelocity,
}

// dimensionOf is what a unit measures; f-numbers and T-numbers are kept apart.
func dimensionOf(u lang.Unit) Dimension {
	if u == lang.UnitT {
		return DimTStop
	}
	return dimensions[u.Dimension()]
}

// A LetValue is a let that has been computed, or is about to be. One that stands for
// a subject or a voice has its name as Alias, one that stands for several subjects
// has theirs as Group.
type LetValue struct {
	Q     Quantity
	Ok    bool
	Busy  bool
	Alias string
	Group []*lang.Name
}

// A lookup resolves the names of expressions: a let or a parameter to its
// value, a subject to its place. ok is false where it has reported why not.
type lookup func(at *lang.Expr) (q Quantity, ok bool)

// An Evaluator computes expressions and reports what is wrong with them.
type Evaluator struct {
	Reporter
	Speed timecode.Speed // of the camera; outside shots that of the film's rate
	Names lookup
}

// Eval computes an expression; ok is false once a reason has been reported.
func (e *Evaluator) Eval(x *lang.Expr) (q Quantity, ok bool) {
	if x == nil {
		return q, false
	}
	switch x.Kind {
	case lang.ExprNumber, lang.ExprStop:
		if x.Guessed {
			return q, false
		}
		q = Quantity{V: x.Value * x.Unit.SI(), Dim: dimensionOf(x.Unit)}
		if x.Unit == lang.UnitFrame {
			q.V = e.Speed.Of(x.Value)
		}
		return e.finite(x, q)
	case lang.ExprInf:
		return Quantity{V: math.Inf(1), Dim: DimLength}, true
	case lang.ExprTimecode:
		n, err := e.Speed.Rate.Parse(x.Ref)
		if err != nil && (e.To.Lost["rate"] || !lang.IsTimecode(x.Ref)) {
			return q, false // told as it was read, or of another rate
		}
		if err != nil {
			e.Fail(x.Range(), "bad-timecode", fmt.Sprintf("%s is no timecode at %s", x.Ref, e.Speed.Rate), Sentence(err.Error()))
			return q, false
		}
		return Quantity{V: float64(n), Dim: DimTimecode}, true
	case lang.ExprName:
		return e.Names(x)
	case lang.ExprMinus:
		if q, ok = e.Eval(x.X); !ok {
			return q, false
		}
		if q.On != nil || q.Dim == DimTimecode {
			e.Fail(x.Range(), "wrong-unit", "this cannot be negative", "")
			return q, false
		}
		q.V = -q.V
		return q, true
	}
	return e.binary(x)
}

func (e *Evaluator) binary(x *lang.Expr) (Quantity, bool) {
	a, okA := e.Eval(x.X)
	b, okB := e.Eval(x.Y)
	if !okA || !okB {
		return Quantity{}, false
	}
	switch x.Op {
	case '+', '-':
		return e.sum(x, a, b)
	case '*':
		if a.On == nil && b.On == nil && a.Dim != DimTimecode && b.Dim != DimTimecode {
			if a.Dim == DimFactor {
				return e.finite(x, Quantity{V: a.V * b.V, Dim: b.Dim})
			}
			if b.Dim == DimFactor {
				return e.finite(x, Quantity{V: a.V * b.V, Dim: a.Dim})
			}
		}
	case '/':
		if a.On == nil && b.On == nil && (b.Dim == DimFactor || a.Dim == b.Dim) && a.Dim != DimTimecode {
			if b.V == 0 {
				e.Fail(x.Y.Range(), "bad-number", "this divides by zero", "")
				return Quantity{}, false
			}
			if a.Dim == b.Dim {
				a.Dim = DimFactor
			}
			return e.finite(x, Quantity{V: a.V / b.V, Dim: a.Dim})
		}
	}
	verb := map[byte]string{'*': "multiplied by", '/': "divided by"}[x.Op]
	e.Fail(x.Range(), "wrong-unit", fmt.Sprintf("%s cannot be %s %s", a.What(), verb, b.What()), "")
	return Quantity{}, false
}

func (e *Evaluator) sum(x *lang.Expr, a, b Quantity) (Quantity, bool) {
	sign := 1.0
	if x.Op == '-' {
		sign = -1
	}
	switch {
	case b.On != nil:
		e.Fail(x.Y.Range(), "wrong-unit", fmt.Sprintf("%s is a subject: it stands first, as in %s + 10 cm", b.On.Text, b.On.Text), "")
		return Quantity{}, false
	case a.Dim == DimTimecode && b.Dim == DimTime:
		return Quantity{V: a.V + sign*float64(e.Speed.Frames(b.V)), Dim: DimTimecode}, true
	case a.Dim != b.Dim || a.Dim == DimTimecode:
		e.Fail(x.Range(), "wrong-unit",
			fmt.Sprintf("%s and %s cannot be added", a.What(), b.What()),
			fmt.Sprintf("Both sides must be of one kind, as in %s + %s.", a.Dim.example(), a.Dim.example()))
		return Quantity{}, false
	}
	a.V += sign * b.V
	return e.finite(x, a)
}

// What says what a quantity is, as messages do.
func (q Quantity) What() string {
	if q.On != nil {
		return "a subject"
	}
	return q.Dim.String()
}

func (e *Evaluator) finite(x *lang.Expr, q Quantity) (Quantity, bool) {
	if math.IsNaN(q.V) || math.Abs(q.V) > 1e12 && !math.IsInf(q.V, 0) || math.IsInf(q.V, 0) && q.Dim != DimLength {
		e.Fail(x.Range(), "bad-number", "this number is too large to mean anything", "")
		return q, false
	}
	return q, true
}

// Want computes an expression that has to be of one dimension.
func (e *Evaluator) Want(x *lang.Expr, dim Dimension) (float64, bool) {
	q, ok := e.Eval(x)
	if !ok {
		return 0, false
	}
	if q.Dim == dim && q.On == nil {
		return q.V, true
	}
	if q.Dim == DimFactor && q.On == nil && x.Kind == lang.ExprNumber {
		e.Fail(x.Range(), "missing-unit", fmt.Sprintf("%v has no unit", x.Value),
			fmt.Sprintf("expected %s, as in %s.", dim, dim.example()))
		return 0, false
	}
	e.Fail(x.Range(), "wrong-unit", fmt.Sprintf("expected %s, found %s", dim, q.What()),
		fmt.Sprintf("As in %s.", dim.example()))
	return 0, false
}

// Within is want with bounds, both included; unit words the bounds.
func (e *Evaluator) Within(x *lang.Expr, dim Dimension, lo, hi float64, what string) (float64, bool) {
	v, ok := e.Want(x, dim)
	if !ok {
		return 0, false
	}
	if v < lo || v > hi {
		e.Fail(x.Range(), "out-of-range", what, "")
		return 0, false
	}
	return v, true
}

// Positive is want for what must be above zero, and finite.
func (e *Evaluator) Positive(x *lang.Expr, dim Dimension) (float64, bool) {
	v, ok := e.Want(x, dim)
	if ok && (v <= 0 || math.IsInf(v, 0)) {
		e.Fail(x.Range(), "out-of-range", fmt.Sprintf("expected %s above zero", dim), "")
		return 0, false
	}
	return v, ok
}

// NotNegative is want for what may be zero.
func (e *Evaluator) NotNegative(x *lang.Expr, dim Dimension) (float64, bool) {
	v, ok := e.Want(x, dim)
	if ok && (v < 0 || math.IsInf(v, 0)) {
		e.Fail(x.Range(), "out-of-range", fmt.Sprintf("%s cannot be negative or infinite here", dim), "")
		return 0, false
	}
	return v, ok
}

// Size is the width of a screen; a diagonal is that of a 16:9 one.
func (e *Evaluator) Size(s *lang.Size) (float64, bool) {
	if s == nil {
		return 0, false
	}
	w, ok := e.Positive(s.Length, DimLength)
	if ok && s.Diagonal {
		w *= 16 / math.Hypot(16, 9)
	}
	return w, ok
}
