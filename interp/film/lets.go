// Lets: values by name, in any order.

package film

import (
	"fmt"

	"pullscore/interp/names"
	"pullscore/lang"
)

// let computes a let once; lets may stand in any order.
func (r *reader) let(d *names.Decl) (names.Quantity, bool) {
	if v, ok := r.Lets[d]; ok {
		if v.Busy {
			r.Fail(d.Name.Range(), "circle", fmt.Sprintf("%s is made from itself", d.Name.Text), "")
			v.Busy = false // told once
		}
		return v.Q, v.Ok
	}
	v := &names.LetValue{Busy: true}
	r.Lets[d] = v
	if s, ok := d.Stmt.(*lang.Let); ok {
		v.Q, v.Ok = r.Eval(s.Value)
	}
	if v.Ok && v.Q.On != nil {
		r.Fail(d.Stmt.Range(), "wrong-unit", "a let is a number, and this is a subject", "")
		v.Ok = false
	}
	v.Busy = false
	return v.Q, v.Ok
}

// value is the lookup of names outside shots: lets only.
func (r *reader) value(x *lang.Expr) (names.Quantity, bool) {
	d := r.Scope.Find(names.DeclSubject, x.Ref)
	if d == nil {
		r.UnknownAt(x.Range(), x.Ref, "let", names.DeclLet, r.Scope.NamesOf(names.DeclLet))
		return names.Quantity{}, false
	}
	if d.Kind != names.DeclLet {
		r.Fail(x.Range(), "wrong-kind", fmt.Sprintf("%s is a %s; expected a value", x.Ref, d.Kind), "")
		return names.Quantity{}, false
	}
	return r.let(d)
}

// beat returns the plan's `let beat` in seconds; 0 where it has none that is a
// time.
func (r *reader) beat() float64 {
	if d := r.Scope.Find(names.DeclSubject, "beat"); d != nil && d.Kind == names.DeclLet {
		if q, ok := r.let(d); ok && q.Dim == names.DimTime {
			return q.V
		}
	}
	return 0
}
