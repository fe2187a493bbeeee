// Marks: where distances lie on the ring, and why written marks cannot be read.

package kit

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"strings"

	"pullscore/interp/names"
	"pullscore/interp/units"
	"pullscore/lang"
	"pullscore/optics/ring"
)

// mark reads a written mark; ok is false where it says nothing that can be used, which
// has been told.
func (k *Reader) mark(l *Lens, s *lang.Mark) (w ring.Written, ok bool) {
	w.Closest, ok = s.Closest, true
	if !s.Closest {
		w.Distance, ok = k.Want(s.Distance, names.DimLength)
	}
	at, okAt := k.position(s, s.At)
	w.At = at
	if s.And != nil {
		second, okAnd := k.position(s, s.And)
		w.Second, okAt = &second, okAt && okAnd
	}
	return w, ok && okAt
}

// position reads where a mark lies, in any of the forms that people have.
func (k *Reader) position(of *lang.Mark, p *lang.Position) (out ring.Position, ok bool) {
	if p == nil {
		return out, false
	}
	if p.Value == nil {
		hours := float64(p.Clock)
		if hours > 12 {
			k.Fail(of.Range(), "not-on-clock", "a clock has 12 hours: this says "+units.Decimal(hours, 2), "")
			return out, false
		}
		return ring.Position{Form: ring.Clock, Value: math.Mod(hours, 12)}, true
	}
	q, ok := k.Eval(p.Value)
	if !ok {
		return out, false
	}
	switch {
	case q.On != nil: // a place, not a length
	case p.Of != nil && q.Dim == names.DimFactor:
		of, ok := k.Positive(p.Of, names.DimFactor)
		return ring.Position{Form: ring.Part, Value: q.V, Of: of, Step: k.lastDigit(p.Value)}, ok && k.inThrow(p, q.V/of)
	case p.Of != nil:
	case q.Dim == names.DimAngle:
		return ring.Position{Form: ring.Degrees, Value: q.V}, true
	case q.Dim == names.DimLength && !math.IsInf(q.V, 0):
		return ring.Position{Form: ring.Along, Value: q.V}, true
	case q.Dim == names.DimPercent:
		return ring.Position{Form: ring.Part, Value: q.V * 100, Of: 100, Step: k.lastDigit(p.Value)}, k.inThrow(p, q.V)
	}
	k.Fail(p.Range(), "bad-mark", "expected an angle, a length along the rim, a part of the throw or a clock position",
		"As in: 118 deg, 3.1 in, 32 %, 3.2 of 10, 4:30 o'clock.")
	return out, false
}

// inThrow reports whether a part of the throw lies in it, and tells of one that does not.
func (k *Reader) inThrow(p *lang.Position, part float64) bool {
	if part >= 0 && part <= 1 {
		return true
	}
	k.Fail(p.Range(), "out-of-range", "a part of the throw lies between nothing and the whole of it", "As in: 64 %, 3.2 of 10.")
	return false
}

// lastDigit returns what the last written digit of a number counts; 0 where it is not
// written as one.
func (k *Reader) lastDigit(x *lang.Expr) float64 {
	if x.Kind != lang.ExprNumber {
		return 0
	}
	text := names.SourceText(k.Source(x.Range().File), x.Range())
	number := strings.TrimLeft(text, "0123456789")
	if !strings.HasPrefix(number, ".") && !strings.HasPrefix(number, ",") {
		return 1
	}
	decimals := len(number[1:]) - len(strings.TrimLeft(number[1:], "0123456789"))
	return math.Pow10(-decimals)
}

// lawOfMarks builds the law through the marks. Of marks that alone say too little it says
// nothing where a line of the ring was lost.
func (k *Reader) lawOfMarks(l *Lens, r *lensReading, lost bool) {
	read, err := ring.Complete(r.marks, ring.Said{
		Focal: l.Focal, Closest: l.Closest, Throw: l.throw, Girth: r.girth, Diameter: r.diameter, Within: r.within, Turns: l.Turns,
	})
	if err != nil {
		l.Ok = false
		if form := new(ring.FormError); !errors.As(err, &form) || !r.mayBeSaid(form.Reason, lost) {
			k.markError(l, r, err)
		}
		return
	}
	if !(l.Focal > 0) {
		return // said already
	}
	law, err := ring.FromMarks(read.Marks, read.Shape(l.Focal))
	if err != nil {
		k.markError(l, r, err)
		return
	}
	for i := range read.Marks {
		l.Engraved = append(l.Engraved, k.written(r, read, i))
	}
	l.Law, l.Marked, l.throw, l.Read = law, true, read.Throw, read
	if !math.IsNaN(read.Diameter) {
		l.Diameter, l.diameterSaid = read.Diameter, true
	}
	if stops, _ := law.Stops(); math.IsNaN(l.Closest) && stops {
		l.Closest = law.Closest() // nearer than a first mark elsewhere nothing is known
	}
	l.byDefault(read)
}

// mayBeSaid reports whether what marks lack for that reason may stand in a line that could
// not be read: lost is set where one of the ring was.
func (r *lensReading) mayBeSaid(reason ring.Reason, lost bool) bool {
	switch reason {
	case ring.Lone, ring.NoRim, ring.NoThrow, ring.NoEnd, ring.NoDistance:
		return lost || !r.good
	case ring.WhichWay:
		return r.lost.Any("turns")
	}
	return false
}

// written returns the distance of a mark as the section writes it, "" where it does not.
func (k *Reader) written(r *lensReading, read *ring.Read, i int) string {
	at := read.Order[i]
	switch {
	case at < 0 && math.IsInf(read.Marks[i].Distance, 1):
		return "inf"
	case at < 0 || r.said[at].Distance == nil:
		return k.source(r.closest)
	}
	return k.source(r.said[at].Distance)
}

// source returns an expression as it is written; "" where there is none.
func (k *Reader) source(x *lang.Expr) string {
	if x == nil {
		return ""
	}
	return names.SourceText(k.Source(x.Range().File), x.Range())
}

// byDefault lists the marks that nobody wrote.
func (l *Lens) byDefault(read *ring.Read) {
	near := read.Marks[0].Default
	far := read.Marks[len(read.Marks)-1].Default
	const why = "the lens has no marks of its own there"
	switch {
	case near && far:
		l.Defaults = append(l.Defaults, Missing{l.Name, "closest and inf taken from closest and ring", why})
	case near:
		l.Defaults = append(l.Defaults, Missing{l.Name, "closest taken from closest", why})
	case far:
		l.Defaults = append(l.Defaults, Missing{l.Name, "inf taken from ring", why})
	}
}

// markError tells why the marks say no law, at the mark or the ring that is to blame.
func (k *Reader) markError(l *Lens, r *lensReading, err error) {
	l.Ok = false
	var order *ring.MarkError
	var form *ring.FormError
	switch {
	case errors.As(err, &form):
		at := l.at
		switch {
		case form.Index >= 0:
			at = r.said[form.Index].Range()
		case r.ring != nil:
			at = r.ring.Range()
		}
		code, message, detail := k.formError(r, form)
		k.Fail(at, code, message, detail)
	case errors.As(err, &order) && order.Index < len(r.said):
		u := units.Style{}
		k.Fail(r.said[order.Index].Range(), "marks-out-of-order", "the marks of a ring go from near to far, each angle beyond the one before",
			names.Sentence(fmt.Sprintf("mark %d, %s at %s: %v", order.Index+1, u.Tape(order.Mark.Distance), u.Angle(order.Mark.Angle), order.Fault)))
	default:
		k.Fail(l.at, "marks-out-of-order", "the marks of this lens say no law of its ring", names.Sentence(err.Error()))
	}
}

// formError returns code, message and detail of what is wrong with written marks.
func (k *Reader) formError(r *lensReading, e *ring.FormError) (code, message, detail string) {
	u := units.Style{}
	far := func(d float64) string { return k.distance(r, d) }
	switch e.Reason {
	case ring.NoRim:
		return "no-rim", "a mark along the rim needs the way round it",
			"Wrap a strip of paper round the ring and measure it: ring 300 deg, girth 346 mm. Or say where closest and inf lie on the same strip."
	case ring.NoThrow:
		return "no-throw", "these marks are parts of the throw, and nothing says the throw", "As in: ring 300 deg. pullscore help throw tells how it is found."
	case ring.NoEnd:
		return "no-throw", "these clock positions do not say where an end of the ring lies", "As in: mark closest at 7 o'clock."
	case ring.MixedForms:
		return "mixed-marks", fmt.Sprintf("the marks of a lens are all of one kind: this one is %s, the others are %s", oneOf[e.Form], manyOf[e.Others]), ""
	case ring.WhichWay:
		return "which-way", "clock positions need the way that the ring turns", "As in: turns left. Look from behind the camera, and turn towards infinity."
	case ring.WholeTurn:
		return "whole-turn", fmt.Sprintf("from %s to %s the tape has gone nowhere, or a whole turn", far(e.Other), far(e.Distance)), "Set a mark between them."
	case ring.OutOfOrder:
		return "marks-out-of-order", fmt.Sprintf("marks go from near to far in angle too: %s lies at %s, %s at %s", far(e.Distance), u.Angle(e.Degrees), far(e.Other), u.Angle(e.OtherDegrees)),
			"All rise, or all fall where they are counted from infinity."
	case ring.NoDistance:
		return "out-of-range", "a mark lies a millimetre or more from the sensor", "Where it is the closest focus, the lens has to say closest too."
	case ring.SameDistance:
		return "marks-disagree", fmt.Sprintf("two marks say where %s lies", far(e.Distance)), "One mark has one place: mark 1 m at 118 deg and 115 deg, where it was come to from both sides."
	case ring.BeyondClosest:
		return "mark-beyond-closest", fmt.Sprintf("mark %s is nearer than closest %s", far(e.Distance), k.closest(r, e.Other)), "One of them is misread, or the lens focuses nearer than its engraving."
	case ring.Lone:
		return "lone-mark", "one mark alone says nothing of the ring", "Say closest and ring ANGLE too: they are marks of their own."
	}
	return k.disagreement(r, e)
}

// disagreement is formError for values that contradict each other.
func (k *Reader) disagreement(r *lensReading, e *ring.FormError) (code, message, detail string) {
	u, code := units.Style{}, "marks-disagree"
	mm := func(v float64) string { return u.Millimetres(math.Round(v*1000) / 1000) }
	deg := func(v float64) string { return u.AngleTo(v, 0) }
	switch e.Reason {
	case ring.PastThrow:
		return code, fmt.Sprintf("the marks reach %s, and the ring turns %s", deg(e.Measured), deg(e.Said)), ""
	case ring.ThrowDisagrees:
		return code, fmt.Sprintf("%s along a rim of %s is %s, and the ring says %s", mm(e.Length), mm(e.Girth), deg(e.Measured), deg(e.Said)),
			"One of the three is misread: the lengths, the girth or the throw."
	case ring.GirthDisagrees:
		return code, fmt.Sprintf("a girth of %s is a diameter of %s, and the ring says %s", mm(e.Girth), mm(e.Measured), mm(e.Said)), ""
	}
	other := k.distance(r, e.Other)
	switch {
	case e.OtherDefault && math.IsInf(e.Other, 1):
		detail = "A mark at the far stop says inf itself."
	case e.OtherDefault:
		other, detail = "closest "+k.closest(r, e.Other), "A mark at the closest stop says closest itself."
	}
	return code, fmt.Sprintf("mark %s lies at %s, and so does %s", k.distance(r, e.Distance), u.Angle(e.Degrees), other), detail
}

// distance returns a distance as a mark writes it, else in metres.
func (k *Reader) distance(r *lensReading, d float64) string {
	for i, w := range r.marks {
		if s := r.said[i]; w.Distance == d && s.Distance != nil {
			return k.source(s.Distance)
		}
	}
	if math.IsInf(d, 1) {
		return "inf"
	}
	return k.closest(r, d)
}

// closest returns the closest distance as it is written, else in metres.
func (k *Reader) closest(r *lensReading, d float64) string {
	if text := k.source(r.closest); text != "" {
		return text
	}
	return units.Style{}.Tape(d)
}

// The forms of marks, one and several.
var (
	oneOf  = map[ring.Form]string{ring.Degrees: "an angle", ring.Along: "a length", ring.Part: "a part of the throw", ring.Clock: "a clock position"}
	manyOf = map[ring.Form]string{ring.Degrees: "angles", ring.Along: "lengths", ring.Part: "parts of the throw", ring.Clock: "clock positions"}
)

// imperial reports whether the distances of a lens are written in feet or inches. Of
// those that are written with a unit the first counts, closest before any mark.
func (r *lensReading) imperial() bool {
	if system := systemOf(r.closest); system != "" {
		return system == "imperial"
	}
	for _, m := range r.said {
		if system := systemOf(m.Distance); system != "" {
			return system == "imperial"
		}
	}
	return false
}

// systemOf returns the system of units that a length is written in, metric or imperial;
// "" where it has no unit, as inf and a name have none.
func systemOf(e *lang.Expr) string {
	if e == nil {
		return ""
	}
	switch e.Unit {
	case lang.UnitFoot, lang.UnitInch:
		return "imperial"
	case lang.UnitMM, lang.UnitCM, lang.UnitM:
		return "metric"
	}
	return cmp.Or(systemOf(e.X), systemOf(e.Y))
}
