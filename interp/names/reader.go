// Reading: what stands at one place of a shot, whose names may be parameters of
// the move that it stands in.

package names

import (
	"fmt"
	"slices"
	"strings"

	"pullscore/lang"
)

// A Reader reads what stands at one place of a shot: in the shot itself, or in one
// use of a move, whose parameters it knows. What is wrong it tells with that use.
type Reader struct {
	Evaluator
	Env *Env // nil outside moves
	lex *Lexicon
}

// reader returns the reader of a place, which tells what is wrong to a report.
func (l *Lexicon) reader(e *Env, call *lang.Call, to *Report) Reader {
	r := Reader{Evaluator: Evaluator{Reporter: Reporter{To: to, Call: call}, Speed: l.Speed}, Env: e, lex: l}
	at := r // without itself: the names need no more
	r.Names = func(x *lang.Expr) (Quantity, bool) { return at.name(x) }
	return r
}

// Outside returns the reader of what stands in no move.
func (l *Lexicon) Outside() Reader { return l.reader(nil, nil, l.To) }

// OfMove returns the reader of what stands in a move, whose parameters may stand for
// anything.
func (l *Lexicon) OfMove(move *lang.Move) Reader { return l.reader(&Env{move: move}, nil, l.To) }

// Place gives the statements that stand nowhere in the text the place of those
// that stand in the shot itself.
func (l *Lexicon) Place(items []Item) []Item {
	for i := range items {
		if items[i].In.lex == nil {
			items[i].In = l.Outside()
		}
	}
	return items
}

// Quietly returns the reader of the same place that tells nobody.
func (r Reader) Quietly() Reader { return r.lex.reader(r.Env, r.Call, &Report{}) }

// Arg returns what a parameter stands for, and the reader of where that stands.
// In a move that no shot uses it may stand for anything: the anchor is nil.
func (r Reader) Arg(name string) (a *lang.Anchor, outer Reader, ok bool) {
	a, e, ok := r.Env.Arg(name)
	if !ok {
		return nil, Reader{}, false
	}
	return a, r.lex.reader(e, r.Call, r.To), true
}

// Declared returns what a name stands for at this place: a parameter of the move, or what
// the shot or the film declares; nothing where that is unknown. A let that stands for
// somebody is that let.
func (r Reader) Declared(name string) (param *lang.Name, d *Decl) {
	if _, _, ok := r.Env.Arg(name); ok {
		i := slices.IndexFunc(r.Env.move.Params, func(p *lang.Name) bool { return p.Text == name })
		return r.Env.move.Params[i], nil
	}
	return nil, r.lex.find(name)
}

// Lexicon returns the names that are known at this place.
func (r Reader) Lexicon() *Lexicon { return r.lex }

// SourceText returns what a range covers, on one line.
func (r Reader) SourceText(at lang.Range) string { return SourceText(r.lex.Source(at.File), at) }

// name resolves a name of an expression.
func (r Reader) name(x *lang.Expr) (Quantity, bool) {
	l := r.lex
	if a, outer, ok := r.Arg(x.Ref); ok {
		if a == nil {
			return Quantity{}, false
		}
		return outer.argument(a)
	}
	d := l.Find(x.Ref)
	switch {
	case d == nil:
		r.Undeclared(x.Range(), x.Ref, "subject", DeclSubject, DeclLet)
		return Quantity{}, false
	case l.GroupOf(d) != nil:
		r.Fail(x.Range(), "wrong-kind", fmt.Sprintf("%s is a group; expected a subject or a value", x.Ref),
			"A group stands alone, behind `start on` or `rack to`, or with others behind `and`.")
		return Quantity{}, false
	case d.Kind == DeclLet:
		return l.valueOf(d)
	case d.Kind == DeclSubject:
		return Quantity{Dim: DimLength, On: d.Name}, true
	}
	r.Fail(x.Range(), "wrong-kind", fmt.Sprintf("%s is a %s; expected a subject or a value", x.Ref, d.Kind), "")
	return Quantity{}, false
}

// Group returns the members of the group that an expression names, also through a
// parameter; nil where it names none.
func (r Reader) Group(x *lang.Expr) []*lang.Name {
	if x.Kind != lang.ExprName {
		return nil
	}
	name := x.Ref
	for e := r.Env; ; {
		a, outer, ok := e.Arg(name)
		if !ok {
			break
		}
		if a != nil && a.Kind == lang.AnchorWords && a.Name == nil && a.Nth == 0 && a.Offset == nil { // a quoted name
			r.lex.Film.Record.Name(a.Words.Range())
			name, e = a.Words.Value, outer
			continue
		}
		if a == nil || a.Kind != lang.AnchorName || a.Offset != nil {
			return nil
		}
		name, e = a.Name.Text, outer
	}
	if d := r.lex.Find(name); d != nil {
		return r.lex.GroupOf(d)
	}
	return nil
}

// Undeclared reports a name, in a shot, that nothing of these kinds declares.
func (r Reader) Undeclared(at lang.Range, name, what string, kinds ...DeclKind) {
	l, key := r.lex, [2]string{name, what}
	meant, ok := l.near[key]
	if !ok && l.compared < worthComparing {
		among := l.names(kinds)
		l.compared += len(among)
		meant = didYouMean(name, among)
		l.near[key] = meant
	}
	if slices.Contains(kinds, DeclSubject) && !slices.Contains(kinds, DeclCue) { // a moment is rather a cue
		r.unknown(at, name, what, kinds[0], meant, l.declaring(name)...)
		return
	}
	r.unknown(at, name, what, kinds[0], meant)
}

// declaring returns the fix that declares a name as a subject, below the last subject of
// the plan file. Where it stands is left to be written.
func (l *Lexicon) declaring(name string) []lang.Fix {
	for _, d := range slices.Backward(l.Film.Order) {
		stmt, ok := d.Stmt.(*lang.Subject)
		if path := l.Head.Range().File; ok && stmt.Range().File == path {
			e := lang.InsertBelow(&lang.File{Path: path, Source: l.Source(path)}, stmt, "subject "+lang.WriteName(name)+" at ")
			return []lang.Fix{{Title: "Declare " + lang.WriteName(name) + " as a subject", Edits: []lang.Edit{e}}}
		}
	}
	return nil
}

// Written is an anchor as the plan writes it, a parameter as its argument.
func (r Reader) Written(a *lang.Anchor) string {
	if a.Kind == lang.AnchorName {
		if arg, outer, ok := r.Arg(a.Name.Text); ok && arg != nil {
			rest := a.Range()
			rest.Start = a.Name.Range().End
			return strings.TrimSpace(outer.Written(arg) + " " + r.SourceText(rest))
		}
	}
	text := r.SourceText(a.Range())
	if r.Env != nil && a.Words != nil && strings.Contains(text, "{") {
		return lang.Write(a) // with its words filled in
	}
	return text
}

// AnchorText writes what a rack hangs on, as the plan does.
func (r Reader) AnchorText(on, landing *lang.Anchor) string {
	s := ""
	if on != nil {
		s = "on " + r.Written(on)
	}
	if landing != nil {
		if s != "" {
			s += ", "
		}
		s += "landing on " + r.Written(landing)
	}
	return s
}

// A given is an argument in the environment that it is read in.
type given struct {
	arg *lang.Anchor
	env *Env
}

// argument computes what an argument comes to as a value or a place, once: an
// argument made of arguments would double with every move.
func (r Reader) argument(a *lang.Anchor) (Quantity, bool) {
	l, key := r.lex, given{a, r.Env}
	if v, ok := l.givens[key]; ok {
		return v.Q, v.Ok
	}
	q, ok := r.evalArgument(a)
	l.givens[key] = LetValue{Q: q, Ok: ok}
	return q, ok
}

func (r Reader) evalArgument(a *lang.Anchor) (Quantity, bool) {
	switch a.Kind {
	case lang.AnchorTime:
		if a.Offset == nil {
			return r.Eval(a.Time)
		}
		return r.binary(&lang.Expr{Node: a.Node, Kind: lang.ExprBinary, Op: '+', X: a.Time, Y: a.Offset})
	case lang.AnchorName:
		x := nameExpr(a.Name)
		if a.Offset == nil {
			return r.Eval(x)
		}
		return r.binary(&lang.Expr{Node: a.Node, Kind: lang.ExprBinary, Op: '+', X: x, Y: a.Offset})
	case lang.AnchorWords:
		if a.Name == nil && a.Nth == 0 && a.Offset == nil { // a quoted name
			r.lex.Film.Record.Name(a.Words.Range())
			return r.Eval(&lang.Expr{Node: a.Words.Node, Kind: lang.ExprName, Ref: a.Words.Value, Quoted: true})
		}
	}
	r.Fail(a.Range(), "wrong-kind", "expected a subject or a value, found a moment", "")
	return Quantity{}, false
}

func nameExpr(n *lang.Name) *lang.Expr {
	return &lang.Expr{Node: n.Node, Kind: lang.ExprName, Ref: n.Text, Quoted: n.Quoted}
}

// Who resolves a name that may be a parameter to a declared name of one of the
// kinds.
func (r Reader) Who(n *lang.Name, kinds ...DeclKind) (*Decl, bool) {
	at, text := n.Range(), n.Text
	for e := r.Env; ; {
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
			r.lex.Film.Record.Name(a.Words.Range())
		default:
			r.Fail(a.Range(), "wrong-kind", "expected a name", "")
			return nil, false
		}
	}
	d := r.lex.Find(text)
	if d == nil {
		r.Undeclared(at, text, kindWords(kinds), kinds...)
		return nil, false
	}
	for _, k := range kinds {
		if d.Kind == k {
			return d, true
		}
	}
	if v := r.lex.Lets[d]; d.Kind == DeclLet && (v == nil || !v.Ok && v.Group == nil) {
		return nil, false // whom it may stand for is not known, which has been told
	}
	r.Fail(at, "wrong-kind", fmt.Sprintf("%s is a %s; expected a %s", text, r.lex.WordFor(d), kindWords(kinds)), "")
	return nil, false
}

// Called returns the name that an argument is; nil where it is something else. In quotes
// it may be a text as well, which only the move can tell.
func Called(a *lang.Anchor) *lang.Name {
	switch {
	case a.Nth != 0 || a.Offset != nil:
		return nil
	case a.Kind == lang.AnchorName:
		return a.Name
	case a.Kind == lang.AnchorWords && a.Name == nil && a.Words != nil:
		return &lang.Name{Node: a.Words.Node, Text: a.Words.Value, Quoted: true}
	}
	return nil
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
