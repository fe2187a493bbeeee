// Values: expressions with their dimensions.

package interp

import (
	"fmt"
	"math"

	"pullscore/lang"
	"pullscore/lang/timecode"
)

type dimension uint8

const (
	dimFactor dimension = iota
	dimLength           // metres
	dimAngle            // degrees
	dimTime             // seconds
	dimStop             // an f-number
	dimTStop            // a T-number
	dimPercent
	dimPace  // words a minute
	dimBits  // bit/s
	dimSpeed // degrees a second
	dimPixels
	dimTimecode // frames
)

func (d dimension) String() string {
	return [...]string{
		"a bare number", "a length", "an angle", "a time", "an f-stop", "a T-stop", "a percentage",
		"a pace", "a throughput", "a turning speed", "a number of pixels", "a timecode",
	}[d]
}

// example shows how a value of the dimension is written.
func (d dimension) example() string {
	return [...]string{
		"2", "1.7 m", "90 deg", "1.2 s", "f/2.8", "T2.9", "90 %", "150 wpm", "4.1 bit/s", "900 deg/s",
		"3840 px", "01:00:10:12",
	}[d]
}

// A quantity is an evaluated expression. Where on is set it is a place: the
// subject's, moved away from the camera by v metres.
type quantity struct {
	v   float64
	dim dimension
	on  *lang.Name
}

// dimensions are what the language's dimensions are here.
var dimensions = [...]dimension{
	lang.DimNone: dimFactor, lang.DimLength: dimLength, lang.DimAngle: dimAngle, lang.DimTime: dimTime,
	lang.DimStop: dimStop, lang.DimRatio: dimPercent, lang.DimPixels: dimPixels, lang.DimPace: dimPace,
	lang.DimThroughput: dimBits, lang.DimSpeed: dimSpeed,
}

// dimensionOf is what a unit measures; f-numbers and T-numbers are kept apart.
func dimensionOf(u lang.Unit) dimension {
	if u == lang.UnitT {
		return dimTStop
	}
	return dimensions[u.Dimension()]
}

// A letValue is a let that has been computed, or is about to be.
type letValue struct {
	q    quantity
	ok   bool
	busy bool
}

// A lookup resolves the names of expressions: a let or a parameter to its
// value, a subject to its place. ok is false where it has reported why not.
type lookup func(at *lang.Expr) (q quantity, ok bool)

// An evaluator computes expressions and reports what is wrong with them.
type evaluator struct {
	*reporter
	rate  timecode.Rate
	names lookup
}

// eval computes an expression; ok is false once a reason has been reported.
func (e *evaluator) eval(x *lang.Expr) (q quantity, ok bool) {
	if x == nil {
		return q, false
	}
	switch x.Kind {
	case lang.ExprNumber, lang.ExprStop:
		q = quantity{v: x.Value * x.Unit.SI(), dim: dimensionOf(x.Unit)}
		if x.Unit == lang.UnitFrame {
			num, den := e.rate.Exact()
			q.v = x.Value * float64(den) / float64(num)
		}
		return e.finite(x, q)
	case lang.ExprInf:
		return quantity{v: math.Inf(1), dim: dimLength}, true
	case lang.ExprTimecode:
		n, err := e.rate.Parse(x.Ref)
		if err != nil {
			e.fail(x.Range(), "bad-timecode", fmt.Sprintf("%s is no timecode at %s", x.Ref, e.rate), sentence(err.Error()))
			return q, false
		}
		return quantity{v: float64(n), dim: dimTimecode}, true
	case lang.ExprName:
		return e.names(x)
	case lang.ExprMinus:
		if q, ok = e.eval(x.X); !ok {
			return q, false
		}
		if q.on != nil || q.dim == dimTimecode {
			e.fail(x.Range(), "wrong-unit", "this cannot be negative", "")
			return q, false
		}
		q.v = -q.v
		return q, true
	}
	return e.binary(x)
}

func (e *evaluator) binary(x *lang.Expr) (quantity, bool) {
	a, okA := e.eval(x.X)
	b, okB := e.eval(x.Y)
	if !okA || !okB {
		return quantity{}, false
	}
	switch x.Op {
	case '+', '-':
		return e.sum(x, a, b)
	case '*':
		if a.on == nil && b.on == nil && a.dim != dimTimecode && b.dim != dimTimecode {
			if a.dim == dimFactor {
				return e.finite(x, quantity{v: a.v * b.v, dim: b.dim})
			}
			if b.dim == dimFactor {
				return e.finite(x, quantity{v: a.v * b.v, dim: a.dim})
			}
		}
	case '/':
		if a.on == nil && b.on == nil && (b.dim == dimFactor || a.dim == b.dim) && a.dim != dimTimecode {
			if b.v == 0 {
				e.fail(x.Y.Range(), "bad-number", "this divides by zero", "")
				return quantity{}, false
			}
			if a.dim == b.dim {
				a.dim = dimFactor
			}
			return e.finite(x, quantity{v: a.v / b.v, dim: a.dim})
		}
	}
	verb := map[byte]string{'*': "multiplied by", '/': "divided by"}[x.Op]
	e.fail(x.Range(), "wrong-unit", fmt.Sprintf("%s cannot be %s %s", a.what(), verb, b.what()), "")
	return quantity{}, false
}

func (e *evaluator) sum(x *lang.Expr, a, b quantity) (quantity, bool) {
	sign := 1.0
	if x.Op == '-' {
		sign = -1
	}
	switch {
	case b.on != nil:
		e.fail(x.Y.Range(), "wrong-unit", fmt.Sprintf("%s is a subject: it stands first, as in %s + 10 cm", b.on.Text, b.on.Text), "")
		return quantity{}, false
	case a.dim == dimTimecode && b.dim == dimTime:
		return quantity{v: a.v + sign*float64(e.rate.Frames(b.v)), dim: dimTimecode}, true
	case a.dim != b.dim || a.dim == dimTimecode:
		e.fail(x.Range(), "wrong-unit",
			fmt.Sprintf("%s and %s cannot be added up", a.what(), b.what()),
			fmt.Sprintf("Both sides are of one kind, as in %s + %s.", a.dim.example(), a.dim.example()))
		return quantity{}, false
	}
	a.v += sign * b.v
	return e.finite(x, a)
}

func (q quantity) what() string {
	if q.on != nil {
		return "a subject"
	}
	return q.dim.String()
}

func (e *evaluator) finite(x *lang.Expr, q quantity) (quantity, bool) {
	if math.IsNaN(q.v) || math.Abs(q.v) > 1e12 && !math.IsInf(q.v, 0) || math.IsInf(q.v, 0) && q.dim != dimLength {
		e.fail(x.Range(), "bad-number", "this number is too large to mean anything", "")
		return q, false
	}
	return q, true
}

// want computes an expression that has to be of one dimension.
func (e *evaluator) want(x *lang.Expr, dim dimension) (float64, bool) {
	q, ok := e.eval(x)
	if !ok {
		return 0, false
	}
	if q.dim == dim && q.on == nil {
		return q.v, true
	}
	if q.dim == dimFactor && q.on == nil && x.Kind == lang.ExprNumber {
		e.fail(x.Range(), "missing-unit", fmt.Sprintf("%v has no unit", x.Value),
			fmt.Sprintf("%s is wanted here, as in %s.", dim, dim.example()))
		return 0, false
	}
	e.fail(x.Range(), "wrong-unit", fmt.Sprintf("%s is wanted here, and this is %s", dim, q.what()),
		fmt.Sprintf("As in %s.", dim.example()))
	return 0, false
}

// within is want with bounds, both included; unit words the bounds.
func (e *evaluator) within(x *lang.Expr, dim dimension, lo, hi float64, what string) (float64, bool) {
	v, ok := e.want(x, dim)
	if !ok {
		return 0, false
	}
	if v < lo || v > hi {
		e.fail(x.Range(), "out-of-range", what, "")
		return 0, false
	}
	return v, true
}

// positive is want for what must be above zero, and finite.
func (e *evaluator) positive(x *lang.Expr, dim dimension) (float64, bool) {
	v, ok := e.want(x, dim)
	if ok && (v <= 0 || math.IsInf(v, 0)) {
		e.fail(x.Range(), "out-of-range", fmt.Sprintf("%s above zero is wanted here", dim), "")
		return 0, false
	}
	return v, ok
}

// notNegative is want for what may be zero.
func (e *evaluator) notNegative(x *lang.Expr, dim dimension) (float64, bool) {
	v, ok := e.want(x, dim)
	if ok && (v < 0 || math.IsInf(v, 0)) {
		e.fail(x.Range(), "out-of-range", fmt.Sprintf("%s cannot be negative or infinite here", dim), "")
		return 0, false
	}
	return v, ok
}

// size is the width of a screen; a diagonal is that of a 16:9 one.
func (e *evaluator) size(s *lang.Size) (float64, bool) {
	if s == nil {
		return 0, false
	}
	w, ok := e.positive(s.Length, dimLength)
	if ok && s.Diagonal {
		w *= 16 / math.Hypot(16, 9)
	}
	return w, ok
}
