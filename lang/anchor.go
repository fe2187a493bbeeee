// Anchors, places, targets and sizes.

package lang

import (
	"strconv"

	"github.com/alecthomas/participle/v2"
	"github.com/alecthomas/participle/v2/lexer"
)

var (
	_ participle.Parseable = (*Anchor)(nil)
	_ participle.Parseable = (*Place)(nil)
	_ participle.Parseable = (*Target)(nil)
	_ participle.Parseable = (*Size)(nil)
)

// lastEnd returns the place right behind the last token read.
func lastEnd(lex *lexer.PeekingLexer) lexer.Position {
	at := lex.RawCursor()
	return endOf(&lex.Range(at-1, at)[0])
}

// Parse reads a moment: words, a speaker, a cue or a time, and an offset.
func (a *Anchor) Parse(lex *lexer.PeekingLexer) error {
	r := &reader{lex: lex}
	t := lex.Peek()
	a.Pos = t.Pos
	switch {
	case t.Type == tokText || t.Type == tokWord && !isKeyword(t.Value) || isNamedStop(t):
		a.named(r)
	case r.is("end"):
		a.Kind = AnchorEnd
		r.words("end")
		r.words("of")
		r.name(&a.Name)
	case beginsExpr(t) && t.Value != "inf":
		a.time(r)
	default:
		return participle.NextMatch
	}
	a.offset(r)
	if r.err == nil {
		a.EndPos = lastEnd(lex)
	}
	return r.result()
}

// named reads what begins with a name or a text.
func (a *Anchor) named(r *reader) {
	start := r.lex.MakeCheckpoint()
	first := r.lex.Next()
	next := r.lex.Peek()
	switch {
	case next.Type == tokText: // SPEAKER "WORDS"
		r.lex.LoadCheckpoint(start)
		r.name(&a.Name)
		r.text(&a.Words)
		a.nth(r)
	case first.Type == tokText:
		r.lex.LoadCheckpoint(start)
		r.text(&a.Words)
		a.nth(r)
	case r.is("*") || r.is("/"): // a let in a product: a time
		r.lex.LoadCheckpoint(start)
		a.time(r)
	default:
		a.Kind = AnchorName
		r.lex.LoadCheckpoint(start)
		r.name(&a.Name)
	}
}

// nth reads the number that says which of equal words is meant.
func (a *Anchor) nth(r *reader) {
	t := r.lex.Peek()
	if r.err != nil || t.Type != tokNumber {
		return
	}
	n, err := strconv.Atoi(t.Value)
	if err != nil || n < 1 {
		r.fail(faultAt(t, "bad-number", "%s counts no words", describe(t)).because("\"word\" 2 is the second of that word in the line."))
		return
	}
	a.Nth = n
	r.lex.Next()
}

// time reads the moment itself, up to its offset.
func (a *Anchor) time(r *reader) {
	a.Kind = AnchorTime
	e := exprReader{lex: r.lex}
	a.Time = e.product()
	if e.err != nil {
		r.fail(e.err)
	}
}

// offset reads + T or - T.
func (a *Anchor) offset(r *reader) {
	if r.err != nil || !isSign(r.lex.Peek()) {
		return
	}
	e := exprReader{lex: r.lex}
	a.Offset = e.sum()
	if e.err != nil {
		r.fail(e.err)
	}
}

// Parse reads a distance or a subject, and a way to the side.
func (p *Place) Parse(lex *lexer.PeekingLexer) error {
	p.At = &Expr{}
	p.Pos = lex.Peek().Pos
	if err := readExpr(lex, p.At, true); err != nil {
		return err
	}
	before := lex.MakeCheckpoint()
	r := &reader{lex: lex}
	r.take(",")
	if !beginsSide(lex) {
		lex.LoadCheckpoint(before)
		p.EndPos = p.At.EndPos
		return nil
	}
	r.value(&p.Side, quantityOf["Place"])
	p.Dir = r.oneOf("left", "right")
	p.EndPos = lastEnd(lex)
	return r.result()
}

// beginsSide reports whether a way to the side comes next: a value, and where
// it begins with a name, one that goes on as such, so that a mistyped clause
// is told of as one.
func beginsSide(lex *lexer.PeekingLexer) bool {
	t := lex.Peek()
	if t.Type != tokWord {
		return beginsExpr(t) && t.Type != tokText
	}
	here := lex.MakeCheckpoint()
	defer lex.LoadCheckpoint(here)
	lex.Next()
	switch next := lex.Peek(); next.Value {
	case "left", "right", "*", "/":
		return beginsExpr(t)
	default:
		return isSign(next) && beginsExpr(t)
	}
}

// Parse reads what the focus goes to.
func (g *Target) Parse(lex *lexer.PeekingLexer) error {
	g.Pos = lex.Peek().Pos
	r := &reader{lex: lex}
	for {
		x := &Expr{}
		if err := readExpr(lex, x, true); err != nil {
			if len(g.Of) == 0 {
				return err
			}
			return asFault(err, lex.Peek(), "Target", quantity{})
		}
		g.Of = append(g.Of, x)
		if !r.take("and") {
			g.EndPos = x.EndPos
			return nil
		}
	}
}

// Parse reads a width, or the diagonal of a screen.
func (s *Size) Parse(lex *lexer.PeekingLexer) error {
	s.Pos = lex.Peek().Pos
	s.Length = &Expr{}
	if err := s.Length.Parse(lex); err != nil {
		return err
	}
	r := &reader{lex: lex}
	s.Diagonal = r.take("diagonal")
	s.EndPos = lastEnd(lex)
	return nil
}
