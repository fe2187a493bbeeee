// Moves: the statements of a shot with every named move written out.

package names

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

// An Item is one statement of a shot, in the environment of the move that it
// stands in; call is the statement in the shot that led to it.
type Item struct {
	Stmt lang.Statement
	Env  *Env
	Call *lang.Call // nil where it stands in the shot itself
}

// Reading notes that item k is being read, so that mistakes in a move tell
// where it is used; the function returned ends that.
func (l *Lexicon) Reading(k int) (done func()) {
	before := l.caller
	l.caller = l.Items[k].Call
	return func() { l.caller = before }
}

// An Env binds the parameters of a move to the arguments of one use.
type Env struct {
	move  *lang.Move
	args  []*lang.Anchor
	outer *Env
}

// Arg returns what a parameter stands for, and the env to read that in. In a move
// that no shot uses it may stand for anything: the anchor is nil.
func (e *Env) Arg(name string) (a *lang.Anchor, outer *Env, ok bool) {
	if e == nil {
		return nil, nil, false
	}
	for i, p := range e.move.Params {
		switch {
		case p.Text != name:
		case i < len(e.args):
			return e.args[i], e.outer, true
		default:
			return nil, nil, true
		}
	}
	return nil, nil, false
}

// Move returns the move that the env binds the parameters of; nil for none.
func (e *Env) Move() *lang.Move {
	if e == nil {
		return nil
	}
	return e.move
}

// Alone returns the body of a move whose parameters may stand for anything. The
// moves that it uses are looked up, and not written out.
func (l *Lexicon) Alone(body []lang.Statement, of *lang.Move) (items []Item) {
	e := &Env{move: of}
	for _, s := range body {
		if call, ok := s.(*lang.Call); ok {
			l.resolveCall(call, e, 0)
			continue
		}
		items = append(items, Item{s, e, nil})
	}
	return items
}

// Expand writes out the body of a shot.
func (l *Lexicon) Expand(body []lang.Statement) []Item {
	x := expansion{l: l}
	x.add(body, nil, nil, 0)
	if len(x.items) > maxItems || x.calls > maxCalls {
		l.Fail(l.Head.Range(), "too-long", fmt.Sprintf("a shot has at most %d statements and uses %d moves", maxItems, maxCalls), "")
	}
	return x.items
}

type expansion struct {
	l     *Lexicon
	items []Item
	calls int
}

// add appends a body, moves written out. It stops for good at the first limit:
// moves that use moves twice each double with every level.
func (x *expansion) add(body []lang.Statement, e *Env, from *lang.Call, depth int) {
	for _, s := range body {
		if len(x.items) > maxItems || x.calls > maxCalls {
			return
		}
		call, ok := s.(*lang.Call)
		if !ok {
			x.items = append(x.items, Item{s, e, from})
			continue
		}
		x.calls++
		outermost := from
		if outermost == nil {
			outermost = call
		}
		if sec, ok := x.l.resolveCall(call, e, depth); ok {
			inner := &Env{move: sec.Head.(*lang.Move), args: call.Args, outer: e}
			x.add(sec.Body, inner, outermost, depth+1)
		}
	}
}

func (l *Lexicon) resolveCall(call *lang.Call, e *Env, depth int) (*lang.Section, bool) {
	d := l.Find(call.Name.Text)
	switch {
	case d == nil:
		l.Undeclared(call.Name.Range(), call.Name.Text, "move", declMove)
		return nil, false
	case d.Kind != declMove:
		l.Fail(call.Name.Range(), "wrong-kind", fmt.Sprintf("%s is a %s, not a move", call.Name.Text, d.Kind), "")
		return nil, false
	}
	for up := e; up != nil; up = up.outer {
		if up.move == d.Stmt {
			return nil, false // a circle, told by CheckMoves
		}
	}
	if depth >= maxCallDepth {
		l.Fail(call.Range(), "nested-too-deep", fmt.Sprintf("moves use moves more than %d deep", maxCallDepth), "")
		return nil, false
	}
	if d.Unread() {
		return nil, false
	}
	params := d.Stmt.(*lang.Move).Params
	if len(params) != len(call.Args) {
		l.Report(lang.Diagnostic{
			Code: "wrong-arguments", Severity: lang.Error, Range: call.Range(),
			Message: fmt.Sprintf("%s takes %d values, and here are %d", call.Name.Text, len(params), len(call.Args)),
			Detail:  "As in " + signature(d.Stmt.(*lang.Move)) + ".",
			Related: []lang.Related{{Message: "the move", Range: d.Stmt.Range()}},
		})
		return nil, false
	}
	return d.Section, true
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

// A MoveCheck looks at the named moves of a plan as they are declared.
type MoveCheck struct {
	*Reporter
	Scope *Scope
}

// CheckMoves reports moves that use themselves, whether or not a shot uses
// them.
func (m MoveCheck) CheckMoves() {
	state := map[*Decl]int{} // 1: on the way, 2: done
	var visit func(d *Decl)
	visit = func(d *Decl) {
		state[d] = 1
		m.checkMoveNames(d)
		for _, s := range d.Section.Body {
			call, ok := s.(*lang.Call)
			if !ok {
				continue
			}
			next := m.Scope.Find(DeclSubject, call.Name.Text)
			if next == nil || next.Kind != declMove || next.Unread() {
				continue
			}
			switch state[next] {
			case 0:
				visit(next)
			case 1:
				m.Fail(call.Range(), "circle", fmt.Sprintf("the move %s uses itself", next.Name.Text), "")
			}
		}
		state[d] = 2
	}
	for _, d := range m.Scope.Order {
		if d.Kind == declMove && !d.Unread() && state[d] == 0 {
			visit(d)
		}
	}
}

// checkMoveNames keeps parameters, and cues in a move, apart from all other
// names.
func (m MoveCheck) checkMoveNames(d *Decl) {
	seen := map[string]*Decl{}
	add := func(n *lang.Name, kind DeclKind, what string) {
		if n == nil {
			return
		}
		if old := m.Scope.ByFolded[ScopeKey{DeclSubject, Fold(n.Text)}]; old != nil {
			m.Clash(old, &Decl{Kind: kind, Name: n})
		} else if old := seen[Fold(n.Text)]; old != nil {
			m.Report(lang.Diagnostic{
				Code: "duplicate-name", Severity: lang.Error, Range: n.Range(),
				Message: fmt.Sprintf("this move has a %s %s already", what, n.Text),
				Related: []lang.Related{{Message: "first here", Range: old.Name.Range()}},
			})
		} else {
			seen[Fold(n.Text)] = &Decl{Kind: kind, Name: n}
		}
	}
	for _, n := range d.Stmt.(*lang.Move).Params {
		add(n, DeclLet, "parameter")
	}
	for _, s := range d.Section.Body {
		if cue, ok := s.(*lang.Cue); ok {
			add(cue.Name, DeclCue, "cue")
		}
	}
}

// A given is an argument in the environment that it is read in.
type given struct {
	arg *lang.Anchor
	env *Env
}

// argument computes what an argument comes to as a value or a place, once: an
// argument made of arguments would double with every move.
func (l *Lexicon) argument(a *lang.Anchor, e *Env) (Quantity, bool) {
	key := given{a, e}
	if v, ok := l.givens[key]; ok {
		return v.Q, v.Ok
	}
	q, ok := l.evalArgument(a, e)
	l.givens[key] = LetValue{Q: q, Ok: ok}
	return q, ok
}

func (l *Lexicon) evalArgument(a *lang.Anchor, e *Env) (Quantity, bool) {
	ev := l.At(e)
	switch a.Kind {
	case lang.AnchorTime:
		if a.Offset == nil {
			return ev.Eval(a.Time)
		}
		return ev.binary(&lang.Expr{Node: a.Node, Kind: lang.ExprBinary, Op: '+', X: a.Time, Y: a.Offset})
	case lang.AnchorName:
		x := nameExpr(a.Name)
		if a.Offset == nil {
			return ev.Eval(x)
		}
		return ev.binary(&lang.Expr{Node: a.Node, Kind: lang.ExprBinary, Op: '+', X: x, Y: a.Offset})
	case lang.AnchorWords:
		if a.Name == nil && a.Nth == 0 && a.Offset == nil { // a quoted name
			return ev.Eval(&lang.Expr{Node: a.Words.Node, Kind: lang.ExprName, Ref: a.Words.Value, Quoted: true})
		}
	}
	l.Fail(a.Range(), "wrong-kind", "a subject or a value is wanted here, and this is a moment", "")
	return Quantity{}, false
}

func nameExpr(n *lang.Name) *lang.Expr {
	return &lang.Expr{Node: n.Node, Kind: lang.ExprName, Ref: n.Text, Quoted: n.Quoted}
}

// Who resolves a name that may be a parameter to a declared name of one of the
// kinds.
func (l *Lexicon) Who(n *lang.Name, e *Env, kinds ...DeclKind) (*Decl, bool) {
	at, text := n.Range(), n.Text
	for {
		a, outer, ok := e.Arg(text)
		if !ok {
			break
		}
		e = outer
		switch {
		case a == nil:
			return nil, false
		case a.Kind == lang.AnchorName && a.Offset == nil:
			text, at = a.Name.Text, a.Range()
		case a.Kind == lang.AnchorWords && a.Name == nil && a.Nth == 0 && a.Offset == nil:
			text, at = a.Words.Value, a.Range()
		default:
			l.Fail(a.Range(), "wrong-kind", "a name is wanted here", "")
			return nil, false
		}
	}
	d := l.Find(text)
	if d == nil {
		l.Undeclared(at, text, kindWords(kinds), kinds...)
		return nil, false
	}
	for _, k := range kinds {
		if d.Kind == k {
			return d, true
		}
	}
	l.Fail(at, "wrong-kind", fmt.Sprintf("%s is a %s, and a %s is wanted here", text, d.Kind, kindWords(kinds)), "")
	return nil, false
}

func kindWords(kinds []DeclKind) string {
	s := ""
	for i, k := range kinds {
		if i > 0 {
			s += " or "
		}
		s += k.String()
	}
	return s
}
