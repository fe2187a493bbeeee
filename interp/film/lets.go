// Lets: values by name, in any order.

package film

import (
	"fmt"
	"slices"

	"pullscore/interp/names"
	"pullscore/lang"
)

// let computes a let once; lets may stand in any order. One that stands for a subject
// has its place as a value; a voice and a group have none.
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
		r.inLet(v, s)
	}
	v.Busy = false
	return v.Q, v.Ok
}

// inLet computes what a let stands for.
func (r *reader) inLet(v *names.LetValue, s *lang.Let) {
	if len(s.And) > 0 {
		r.group(v, s)
		return
	}
	if s.Value.Kind == lang.ExprName {
		switch d := r.Scope.Find(names.DeclSubject, s.Value.Ref); {
		case d == nil:
		case d.Kind == names.DeclLet:
			v.Q, v.Ok = r.let(d)
			v.Alias, v.Group = r.Lets[d].Alias, r.Lets[d].Group
			return
		case d.Kind == names.DeclVoice:
			v.Alias = d.Name.Text
			return
		case d.Kind == names.DeclSubject:
			v.Alias = d.Name.Text
		}
	}
	e := names.Evaluator{Reporter: r.Reporter, Speed: r.Evaluator.Speed, Names: r.named}
	v.Q, v.Ok = e.Eval(s.Value)
}

// group finds the members of a group, those of the groups in it among them.
func (r *reader) group(v *names.LetValue, s *lang.Let) {
	var list []*lang.Name
	whole := true
	fail := func(x *lang.Expr, message, detail string) {
		r.Fail(x.Range(), "wrong-kind", message, detail)
		whole = false
	}
	for _, x := range append([]*lang.Expr{s.Value}, s.And...) {
		if x.Kind != lang.ExprName {
			fail(x, "a group has subjects only, and this is a value", "As in let BOTH = NORA and OTTO.")
			continue
		}
		d := r.Scope.Find(names.DeclSubject, x.Ref)
		if d == nil {
			r.unknown(x, "subject", names.DeclSubject)
			whole = false
			continue
		}
		members := []*lang.Name{d.Name}
		if d.Kind == names.DeclLet {
			_, _ = r.let(d) // what is wrong with it is told there
			members = r.membersOf(d)
		}
		switch {
		case d.Kind == names.DeclLet && members == nil && !r.Lets[d].Ok && r.Lets[d].Alias == "":
			whole = false
		case members == nil || d.Kind != names.DeclLet && d.Kind != names.DeclSubject:
			word := names.WordFor(d, r.Lets[d])
			if word == names.DeclLet.String() {
				word = "value"
			}
			fail(x, fmt.Sprintf("a group has subjects only, and %s is a %s", x.Ref, word), "")
		}
		for _, m := range members {
			if slices.ContainsFunc(list, func(old *lang.Name) bool { return old.Text == m.Text }) && whole {
				fail(x, fmt.Sprintf("%s is in this group already", m.Text), "")
			}
			list = append(list, m)
		}
	}
	if whole { // else that has been told, and nothing is said of its uses
		v.Group = list
	}
}

// membersOf returns the subjects that a let stands for; nil where it is a value.
func (r *reader) membersOf(d *names.Decl) []*lang.Name {
	v := r.Lets[d]
	if v.Alias != "" && v.Ok {
		return []*lang.Name{r.Scope.Find(names.DeclSubject, v.Alias).Name}
	}
	return v.Group
}

// named is the lookup of names in a let: of subjects, and of other lets.
func (r *reader) named(x *lang.Expr) (names.Quantity, bool) {
	d := r.Scope.Find(names.DeclSubject, x.Ref)
	switch {
	case d == nil:
		r.unknown(x, "value or subject", names.DeclLet, names.DeclSubject, names.DeclVoice)
		return names.Quantity{}, false
	case d.Kind == names.DeclSubject:
		return names.Quantity{Dim: names.DimLength, On: d.Name}, true
	case d.Kind != names.DeclLet:
		r.Fail(x.Range(), "wrong-kind", fmt.Sprintf("%s is a %s; expected a value or a subject", x.Ref, d.Kind), "")
		return names.Quantity{}, false
	}
	q, ok := r.let(d)
	if v := r.Lets[d]; !ok && (v.Group != nil || v.Alias != "") {
		r.Fail(x.Range(), "wrong-kind", fmt.Sprintf("%s is a %s; expected a value or a subject", x.Ref, names.WordFor(d, v)), "")
	}
	return q, ok
}

// unknown reports a name in a let that the file does not declare. Shots have names of
// their own, which it may have been meant for.
func (r *reader) unknown(x *lang.Expr, what string, kinds ...names.DeclKind) {
	for _, sec := range r.Sections {
		for _, stmt := range sec.Body {
			kind, name := names.Declared(stmt)
			switch _, bad := stmt.(*lang.Bad); {
			case name == nil || name.Text != x.Ref || !slices.Contains(kinds, kind):
			case bad:
				return // it has been told that it stands in the wrong place, or is not whole
			default:
				r.Fail(x.Range(), "unknown-name", fmt.Sprintf("%s is no %s of the file", x.Ref, what),
					"It is a name of one shot. Declare it before the first shot, for all of them.")
				return
			}
		}
	}
	r.UnknownAt(x.Range(), x.Ref, what, kinds[0], r.Scope.NamesOf(kinds...))
}

// value is the lookup of names outside shots and lets: lets only.
func (r *reader) value(x *lang.Expr) (names.Quantity, bool) {
	d := r.Scope.Find(names.DeclSubject, x.Ref)
	if d == nil {
		r.UnknownAt(x.Range(), x.Ref, "let", names.DeclLet, r.Scope.NamesOf(names.DeclLet))
		return names.Quantity{}, false
	}
	if d.Kind == names.DeclLet {
		q, ok := r.let(d)
		if v := r.Lets[d]; v.Group == nil && v.Alias == "" && q.On == nil {
			return q, ok
		}
	}
	r.Fail(x.Range(), "wrong-kind", fmt.Sprintf("%s is a %s; expected a value", x.Ref, names.WordFor(d, r.Lets[d])), "")
	return names.Quantity{}, false
}
