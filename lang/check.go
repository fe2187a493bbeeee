// Mistakes that a statement's form lets through: numbers that lack their unit,
// and values called f.

package lang

import (
	"fmt"
	"math"
)

type checker struct{ faults []*fault }

// notF reports values called f, since f/2 is a stop.
func (c *checker) notF(names ...*Name) {
	for _, n := range names {
		if n.Text == "f" {
			c.faults = append(c.faults, faultOn(&n.Node, "keyword-name", "no value is called f").
				because("f before / and a digit is a stop, as in f/2.8."))
		}
	}
}

// anchor checks the times of a moment.
func (c *checker) anchor(a *Anchor) {
	q := quantity{unit: UnitS, tell: timesHave}
	c.need(q, a.Time)
	c.need(q, a.Offset)
}

// stop reports what is no stop because it is written as elsewhere, or is a
// bare number, and takes it as the stop that was meant.
func (c *checker) stop(q quantity, x *Expr) {
	if text, stop, ok := stopMeant(asStop(x)); ok {
		c.faults = append(c.faults, faultOn(&x.Node, "bad-number", "a stop is written %s", text).writes(text))
		stop.Node = x.Node
		*x = stop
		return
	}
	if split := between(x); split != nil {
		c.faults = append(c.faults, faultOn(&x.Node, "bad-number", "a stop between two is written as one number").
			because("Write: %s%s", split.Unit, plain(split.Value)).writes(split.Unit.String()+plain(split.Value)))
		*x = *split
		return
	}
	if bare(x) == x {
		q.tell = fmt.Sprintf("A stop is written f/%[1]s or T%[1]s.", plain(x.Value))
	}
	c.need(q, x)
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
func (c *checker) span(q quantity, word string, from, to *Expr) {
	if from != nil && to != nil && bare(from) == from && to.Kind == ExprNumber && to.Unit.Dimension() == q.unit.Dimension() {
		q.unit = to.Unit
		q.tell += fmt.Sprintf(" Write: %s %s %s to %s %s", word, plain(from.Value), to.Unit, plain(to.Value), to.Unit)
	}
	c.need(q, from)
	c.need(q, to)
}

// need reports an expression that is made of bare numbers alone, and a sum of
// which one side is, where the quantity has a unit.
func (c *checker) need(q quantity, x *Expr) {
	if x == nil || q.unit == UnitNone {
		return
	}
	if n := bare(x); n != nil {
		f := faultOn(&x.Node, "missing-unit", "this number has no unit").because("%s", q.tell)
		c.faults = append(c.faults, f.offers(withUnit(q, n)...))
		n.Unit, n.Guessed = q.unit, q.unsure()
	} else if x.Kind == ExprBinary && (x.Op == '+' || x.Op == '-') {
		c.need(q, x.X)
		c.need(q, x.Y)
	}
}

// withUnit offers units for a number that has none, or the stops that it may be.
func withUnit(q quantity, n *Expr) (list []offer) {
	if q.unit == UnitF {
		return []offer{writing(n.Node, "f/"+plain(n.Value)), writing(n.Node, "T"+plain(n.Value))}
	}
	for _, unit := range q.offered(n.Value) {
		list = append(list, offer{title: "Add the unit `" + unit + "`", at: Node{n.EndPos, n.EndPos}, text: " " + unit})
	}
	return list
}

// position checks where a mark lies: a bare number counts only as a part of another.
func (c *checker) position(p *Position) {
	switch {
	case p.Value == nil:
		return
	case p.Of == nil:
		n := bare(p.Value)
		if n == nil {
			return
		}
		n.Unit, n.Guessed = UnitDeg, true
	case bare(p.Value) != nil || p.Value.Kind == ExprName:
		return
	}
	f := noPosition(&p.Node)
	if p.Of == nil {
		f.offers(withUnit(quantity{unit: UnitDeg}, &Expr{Node: p.Value.Node})...)
	}
	c.faults = append(c.faults, f)
}

// unsure reports whether the unit that stands in for one that is not written is no
// more than a guess: those of lengths, and of angles, lie far apart. Such a number is
// not reckoned with.
func (q quantity) unsure() bool { return q.unit == UnitM || q.unit == UnitDeg }

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
