// Moves: the statements of a shot with every named move written out.

package interp

import (
	"fmt"

	"pullscore/lang"
)

// Limits on what named moves may come to.
const (
	maxCallDepth = 64
	maxCalls     = 20_000
	maxItems     = 100_000
)

// An item is one statement of a shot, in the environment of the move that it
// stands in; call is the statement in the shot that led to it.
type item struct {
	stmt lang.Statement
	env  *env
	call *lang.Call // nil where it stands in the shot itself
}

// reading notes that item k is being read, so that mistakes in a move tell
// where it is used; the function returned ends that.
func (l *lexicon) reading(k int) (done func()) {
	before := l.caller
	l.caller = l.items[k].call
	return func() { l.caller = before }
}

// An env binds the parameters of a move to the arguments of one use.
type env struct {
	move  *lang.Move
	args  []*lang.Anchor
	outer *env
}

// arg returns what a parameter stands for, and the env to read that in.
func (e *env) arg(name string) (a *lang.Anchor, outer *env, ok bool) {
	if e == nil {
		return nil, nil, false
	}
	for i, p := range e.move.Params {
		if p.Text == name {
			return e.args[i], e.outer, true
		}
	}
	return nil, nil, false
}

// expand writes out the body of a shot.
func (l *lexicon) expand(body []lang.Statement) []item {
	x := expansion{l: l}
	x.add(body, nil, nil, 0)
	if len(x.items) > maxItems || x.calls > maxCalls {
		l.fail(l.head.Range(), "too-long", fmt.Sprintf("a shot has at most %d statements and uses %d moves", maxItems, maxCalls), "")
	}
	return x.items
}

type expansion struct {
	l     *lexicon
	items []item
	calls int
}

// add appends a body, moves written out. It stops for good at the first limit:
// moves that use moves twice each double with every level.
func (x *expansion) add(body []lang.Statement, e *env, from *lang.Call, depth int) {
	for _, s := range body {
		if len(x.items) > maxItems || x.calls > maxCalls {
			return
		}
		call, ok := s.(*lang.Call)
		if !ok {
			x.items = append(x.items, item{s, e, from})
			continue
		}
		x.calls++
		outermost := from
		if outermost == nil {
			outermost = call
		}
		if sec, ok := x.l.resolveCall(call, e, depth); ok {
			inner := &env{move: sec.Head.(*lang.Move), args: call.Args, outer: e}
			x.add(sec.Body, inner, outermost, depth+1)
		}
	}
}

func (l *lexicon) resolveCall(call *lang.Call, e *env, depth int) (*lang.Section, bool) {
	d := l.find(call.Name.Text)
	switch {
	case d == nil:
		l.unknown(call.Name, "move", l.film.namesOf(declMove))
		return nil, false
	case d.kind != declMove:
		l.fail(call.Name.Range(), "wrong-kind", fmt.Sprintf("%s is a %s, not a move", call.Name.Text, d.kind), "")
		return nil, false
	}
	for up := e; up != nil; up = up.outer {
		if up.move == d.stmt {
			return nil, false // a circle, told by checkMoves
		}
	}
	if depth >= maxCallDepth {
		l.fail(call.Range(), "too-deep", fmt.Sprintf("moves use moves more than %d deep", maxCallDepth), "")
		return nil, false
	}
	if d.unread() {
		return nil, false
	}
	params := d.stmt.(*lang.Move).Params
	if len(params) != len(call.Args) {
		l.report(lang.Diagnostic{
			Code: "wrong-arguments", Severity: lang.Error, Range: call.Range(),
			Message: fmt.Sprintf("%s takes %d values, and here are %d", call.Name.Text, len(params), len(call.Args)),
			Detail:  "As in " + signature(d.stmt.(*lang.Move)) + ".",
			Related: []lang.Related{{Message: "the move", Range: d.stmt.Range()}},
		})
		return nil, false
	}
	return d.section, true
}

func signature(m *lang.Move) string {
	s := m.Name.Text + "("
	for i, p := range m.Params {
		if i > 0 {
			s += ", "
		}
		s += p.Text
	}
	return s + ")"
}

// A moveCheck looks at the named moves of a plan as they are declared.
type moveCheck struct {
	*reporter
	scope *scope
}

// checkMoves reports moves that use themselves, whether or not a shot uses
// them.
func (m moveCheck) checkMoves() {
	state := map[*decl]int{} // 1: on the way, 2: done
	var visit func(d *decl)
	visit = func(d *decl) {
		state[d] = 1
		m.checkMoveNames(d)
		for _, s := range d.section.Body {
			call, ok := s.(*lang.Call)
			if !ok {
				continue
			}
			next := m.scope.find(declSubject, call.Name.Text)
			if next == nil || next.kind != declMove || next.unread() {
				continue
			}
			switch state[next] {
			case 0:
				visit(next)
			case 1:
				m.fail(call.Range(), "circle", fmt.Sprintf("the move %s uses itself", next.name.Text), "")
			}
		}
		state[d] = 2
	}
	for _, d := range m.scope.order {
		if d.kind == declMove && !d.unread() && state[d] == 0 {
			visit(d)
		}
	}
}

// checkMoveNames keeps parameters, and cues in a move, apart from all other
// names.
func (m moveCheck) checkMoveNames(d *decl) {
	seen := map[string]*decl{}
	add := func(n *lang.Name, kind declKind, what string) {
		if n == nil {
			return
		}
		if old := m.scope.byFolded[scopeKey{declSubject, fold(n.Text)}]; old != nil {
			m.clash(old, &decl{kind: kind, name: n})
		} else if old := seen[fold(n.Text)]; old != nil {
			m.report(lang.Diagnostic{
				Code: "duplicate-name", Severity: lang.Error, Range: n.Range(),
				Message: fmt.Sprintf("this move has a %s %s already", what, n.Text),
				Related: []lang.Related{{Message: "first here", Range: old.name.Range()}},
			})
		} else {
			seen[fold(n.Text)] = &decl{kind: kind, name: n}
		}
	}
	for _, n := range d.stmt.(*lang.Move).Params {
		add(n, declLet, "parameter")
	}
	for _, s := range d.section.Body {
		if cue, ok := s.(*lang.Cue); ok {
			add(cue.Name, declCue, "cue")
		}
	}
}

// A given is an argument in the environment that it is read in.
type given struct {
	arg *lang.Anchor
	env *env
}

// argument computes what an argument comes to as a value or a place, once: an
// argument made of arguments would double with every move.
func (l *lexicon) argument(a *lang.Anchor, e *env) (quantity, bool) {
	key := given{a, e}
	if v, ok := l.givens[key]; ok {
		return v.q, v.ok
	}
	q, ok := l.evalArgument(a, e)
	l.givens[key] = letValue{q: q, ok: ok}
	return q, ok
}

func (l *lexicon) evalArgument(a *lang.Anchor, e *env) (quantity, bool) {
	ev := l.at(e)
	switch a.Kind {
	case lang.AnchorTime:
		if a.Offset == nil {
			return ev.eval(a.Time)
		}
		return ev.binary(&lang.Expr{Node: a.Node, Kind: lang.ExprBinary, Op: '+', X: a.Time, Y: a.Offset})
	case lang.AnchorName:
		x := nameExpr(a.Name)
		if a.Offset == nil {
			return ev.eval(x)
		}
		return ev.binary(&lang.Expr{Node: a.Node, Kind: lang.ExprBinary, Op: '+', X: x, Y: a.Offset})
	case lang.AnchorWords:
		if a.Name == nil && a.Nth == 0 && a.Offset == nil { // a quoted name
			return ev.eval(&lang.Expr{Node: a.Words.Node, Kind: lang.ExprName, Ref: a.Words.Value, Quoted: true})
		}
	}
	l.fail(a.Range(), "wrong-kind", "a subject or a value is wanted here, and this is a moment", "")
	return quantity{}, false
}

func nameExpr(n *lang.Name) *lang.Expr {
	return &lang.Expr{Node: n.Node, Kind: lang.ExprName, Ref: n.Text, Quoted: n.Quoted}
}

// who resolves a name that may be a parameter to a declared name of one of the
// kinds.
func (l *lexicon) who(n *lang.Name, e *env, kinds ...declKind) (*decl, bool) {
	at, text := n.Range(), n.Text
	for {
		a, outer, ok := e.arg(text)
		if !ok {
			break
		}
		e = outer
		switch {
		case a.Kind == lang.AnchorName && a.Offset == nil:
			text, at = a.Name.Text, a.Range()
		case a.Kind == lang.AnchorWords && a.Name == nil && a.Nth == 0 && a.Offset == nil:
			text, at = a.Words.Value, a.Range()
		default:
			l.fail(a.Range(), "wrong-kind", "a name is wanted here", "")
			return nil, false
		}
	}
	d := l.find(text)
	if d == nil {
		l.unknownAt(at, text, kindWords(kinds), l.names(kinds...))
		return nil, false
	}
	for _, k := range kinds {
		if d.kind == k {
			return d, true
		}
	}
	l.fail(at, "wrong-kind", fmt.Sprintf("%s is a %s, and a %s is wanted here", text, d.kind, kindWords(kinds)), "")
	return nil, false
}

func kindWords(kinds []declKind) string {
	s := ""
	for i, k := range kinds {
		if i > 0 {
			s += " or "
		}
		s += k.String()
	}
	return s
}
