// The statements whose clauses come in any order. Their grammar is written by
// hand, behind participle's Parseable: a struct tag cannot say "each once".

package lang

import (
	"strings"

	"github.com/alecthomas/participle/v2"
	"github.com/alecthomas/participle/v2/lexer"
)

var (
	_ participle.Parseable = (*With)(nil)
	_ participle.Parseable = (*Subject)(nil)
	_ participle.Parseable = (*Edit)(nil)
	_ participle.Parseable = (*Script)(nil)
	_ participle.Parseable = (*Speech)(nil)
	_ participle.Parseable = (*Action)(nil)
	_ participle.Parseable = (*Cue)(nil)
	_ participle.Parseable = (*Rack)(nil)
	_ participle.Parseable = (*Follow)(nil)
	_ participle.Parseable = (*Moves)(nil)
	_ participle.Parseable = (*Dolly)(nil)
	_ participle.Parseable = (*Zoom)(nil)
	_ participle.Parseable = (*Call)(nil)
)

// Parse reads a set-up, which has at least one clause.
func (w *With) Parse(lex *lexer.PeekingLexer) error {
	r := newReader(lex, "with")
	r.words("with")
	if lex.Peek().EOF() {
		r.noClause()
	}
	for word := r.next(); word != ""; word = r.next() {
		switch word {
		case "camera":
			r.name(&w.Camera)
		case "lens":
			r.name(&w.Lens)
		case "puller":
			r.name(&w.Puller)
		case "stop":
			r.value(&w.Stop, aStop)
		case "meter":
			r.value(&w.Meter, aStop)
		case "focal":
			r.value(&w.Focal, aFocal)
		case "nd":
			r.value(&w.ND, aDensity)
			r.noStops(w.ND)
		case "gear":
			r.value(&w.Gear, aGear)
		case "wheel":
			r.value(&w.Wheel, aLength)
		}
	}
	return r.result()
}

// noStops reports a density that is given in stops.
func (r *reader) noStops(nd *Expr) {
	if r.err != nil || !r.is("stops") && !r.is("stop") {
		return
	}
	here := r.lex.MakeCheckpoint()
	t := r.lex.Next()
	if next := r.lex.Peek(); t.Value == "stop" && !next.EOF() && next.Value != "," {
		r.lex.LoadCheckpoint(here) // the clause
		return
	}
	f := faultAt(t, "unknown-unit", "an nd is a density, and 0.3 of it is a stop")
	if bare(nd) == nd {
		const perStop = 0.3 // log10 2, as filters are marked
		f.because("Write: nd %s", plain(round(nd.Value*perStop, 100)))
	}
	r.fail(f)
}

// Parse reads who or what can be focused on.
func (s *Subject) Parse(lex *lexer.PeekingLexer) error {
	r := newReader(lex, "subject")
	r.words("subject")
	r.name(&s.Name)
	r.words("at")
	r.place(&s.Place)
	for word := r.next(); word != ""; word = r.next() {
		switch word {
		case "deep":
			r.value(&s.Deep, aLength)
		case "sways":
			r.value(&s.Sways, aLength)
		}
	}
	return r.result()
}

// Parse reads the name of a cut, and where its picture starts.
func (e *Edit) Parse(lex *lexer.PeekingLexer) error {
	r := newReader(lex, "edit")
	r.words("edit")
	r.text(&e.File)
	for r.next() != "" {
		r.value(&e.From, r.spec.wants)
	}
	return r.result()
}

// Parse reads the name of a script page, and which of its scenes is meant.
func (s *Script) Parse(lex *lexer.PeekingLexer) error {
	r := newReader(lex, "script")
	r.words("script")
	r.text(&s.File)
	for r.next() != "" {
		r.text(&s.Scene)
	}
	return r.result()
}

// Parse reads a spoken line.
func (s *Speech) Parse(lex *lexer.PeekingLexer) error {
	r := newReader(lex, speechWord)
	r.name(&s.Who)
	r.words(":")
	r.text(&s.Words)
	for word := r.next(); word != ""; word = r.next() {
		switch word {
		case "on", "at":
			r.moment(&s.On)
		case "lasting":
			r.value(&s.Lasting, aTime)
		case "from":
			r.value(&s.From, aTime)
			r.words("to")
			r.value(&s.To, aTime)
		}
		if s.From != nil && (s.On != nil || s.Lasting != nil) {
			r.fail(faultAt(r.clause, "conflicting-clauses", "`from ... to` already says when this line is spoken"))
		}
	}
	return r.result()
}

// Parse reads a piece of business.
func (a *Action) Parse(lex *lexer.PeekingLexer) error {
	r := newReader(lex, "action")
	r.words("action")
	r.text(&a.What)
	for word := r.next(); word != ""; word = r.next() {
		switch word {
		case "on", "at":
			r.moment(&a.On)
		case "lasting":
			r.value(&a.Lasting, aTime)
		}
	}
	r.need("lasting", a.Lasting != nil)
	return r.result()
}

// Parse reads a named moment.
func (c *Cue) Parse(lex *lexer.PeekingLexer) error {
	r := newReader(lex, "cue")
	r.words("cue")
	r.name(&c.Name)
	for r.next() != "" {
		r.moment(&c.On)
	}
	return r.result()
}

// Parse reads a move of the focus.
func (k *Rack) Parse(lex *lexer.PeekingLexer) error {
	r := newReader(lex, "rack")
	r.words("rack")
	r.noFrom()
	r.words("to")
	r.target(&k.Target)
	for word := r.next(); word != ""; word = r.next() {
		switch word {
		case "on", "at":
			r.moment(&k.On)
		case "landing":
			r.landing(&k.Landing)
		case "over":
			r.value(&k.Over, aTime)
		case "smooth", "even":
			r.profile(&k.Profile)
		case "because":
			r.text(&k.Because)
		}
	}
	return r.result()
}

// noFrom reports a rack that is told where it starts.
func (r *reader) noFrom() {
	if r.err != nil || !r.is("from") {
		return
	}
	f := faultAt(r.lex.Peek(), "expected-word", "a rack starts where the focus is")
	var words []string
	for !r.is("to") && !r.lex.Peek().EOF() {
		words = append(words, r.lex.Next().Value)
	}
	f.EndPos = lastEnd(r.lex)
	r.fail(f.because("Leave out `%s`.", shorten(strings.Join(words, " "))))
}

// landing reads the `on A` of `landing on A`.
func (r *reader) landing(field **Anchor) {
	if !r.once(*field == nil) {
		return
	}
	clause := r.lex.Peek()
	r.oneOf("on", "at")
	r.clause = clause
	r.moment(field)
}

// Parse reads whom the focus keeps to.
func (f *Follow) Parse(lex *lexer.PeekingLexer) error {
	r := newReader(lex, "follow")
	r.words("follow")
	r.name(&f.Who)
	for r.next() != "" {
		r.moment(&f.Until)
	}
	return r.result()
}

// Parse reads a move of a subject.
func (m *Moves) Parse(lex *lexer.PeekingLexer) error {
	r := newReader(lex, movesWord)
	r.name(&m.Who)
	r.words("moves", "to")
	r.place(&m.To)
	r.course(&m.Over, &m.On, &m.Profile)
	return r.result()
}

// Parse reads a move of the camera.
func (d *Dolly) Parse(lex *lexer.PeekingLexer) error {
	r := newReader(lex, "dolly")
	r.words("dolly")
	d.In = r.oneOf("in", "out") == "in"
	r.value(&d.By, aLength)
	r.course(&d.Over, &d.On, &d.Profile)
	return r.result()
}

// Parse reads a zoom.
func (z *Zoom) Parse(lex *lexer.PeekingLexer) error {
	r := newReader(lex, "zoom")
	r.words("zoom", "to")
	r.value(&z.To, aFocal)
	r.course(&z.Over, &z.On, &z.Profile)
	return r.result()
}

// course reads the clauses of a move of people, camera or zoom.
func (r *reader) course(over **Expr, on **Anchor, profile *Profile) {
	for word := r.next(); word != ""; word = r.next() {
		switch word {
		case "over":
			r.value(over, aTime)
		case "on", "at":
			r.moment(on)
		case "smooth", "even":
			r.profile(profile)
		}
	}
	r.need("over", *over != nil)
}

// Parse reads the use of a move.
func (c *Call) Parse(lex *lexer.PeekingLexer) error {
	r := newReader(lex, callWord)
	r.name(&c.Name)
	r.words("(")
	for more := !r.take(")"); more && r.err == nil; {
		var arg *Anchor
		read(r, &arg, anArgument)
		c.Args = append(c.Args, arg)
		more = !r.take(")")
		if more && !r.take(",") {
			r.fail(misplaced(r.lex.Peek(), r.spec, []string{",", ")"}, ""))
		}
	}
	return r.result()
}
