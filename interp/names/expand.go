// Moves: the statements of a shot with every named move written out.

package names

import (
	"cmp"
	"fmt"

	"pullscore/lang"
)

// Limits on what named moves may come to.
const (
	maxCallDepth = 64
	maxCalls     = 20_000
	maxItems     = 100_000
)

// An Item is one statement of a shot, with the place that it is read at: in the
// shot, or in one use of a move.
type Item struct {
	Stmt lang.Statement
	In   Reader
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
	in := l.OfMove(of)
	for _, s := range body {
		if call, ok := s.(*lang.Call); ok {
			l.resolveCall(call, in, 0)
			continue
		}
		items = append(items, Item{in.filled(s), in})
	}
	return items
}

// Expand writes out the body of a shot.
func (l *Lexicon) Expand(body []lang.Statement) []Item {
	x := expansion{l: l}
	x.add(body, l.Outside(), 0)
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
func (x *expansion) add(body []lang.Statement, in Reader, depth int) {
	for _, s := range body {
		if len(x.items) > maxItems || x.calls > maxCalls {
			return
		}
		s = in.filled(s)
		call, ok := s.(*lang.Call)
		if !ok {
			x.items = append(x.items, Item{s, in})
			continue
		}
		x.calls++
		if sec, ok := x.l.resolveCall(call, in, depth); ok {
			inner := &Env{move: sec.Head.(*lang.Move), args: call.Args, outer: in.Env}
			x.add(sec.Body, x.l.reader(inner, cmp.Or(in.Call, call), in.To), depth+1)
		}
	}
}

func (l *Lexicon) resolveCall(call *lang.Call, in Reader, depth int) (*lang.Section, bool) {
	d, told := l.Find(call.Name.Text), Reporter{To: in.To}
	switch {
	case d == nil:
		l.Tells(in.To).Undeclared(call.Name.Range(), call.Name.Text, "move", DeclMove)
		return nil, false
	case d.Kind != DeclMove:
		told.Fail(call.Name.Range(), "wrong-kind", fmt.Sprintf("%s is a %s, not a move", call.Name.Text, d.Kind), "")
		return nil, false
	}
	for up := in.Env; up != nil; up = up.outer {
		if up.move == d.Stmt {
			return nil, false // a circle, told by CheckMoves
		}
	}
	if depth >= maxCallDepth {
		told.Fail(call.Range(), "nested-too-deep", fmt.Sprintf("moves use moves more than %d deep", maxCallDepth), "")
		return nil, false
	}
	if d.Unread() {
		return nil, false
	}
	params := d.Stmt.(*lang.Move).Params
	if len(params) != len(call.Args) {
		told.Report(lang.Diagnostic{
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
	Reporter
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
			if next == nil || next.Kind != DeclMove || next.Unread() {
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
		if d.Kind == DeclMove && !d.Unread() && state[d] == 0 {
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
