// The reader: what hand-written productions share. It keeps the first fault,
// and does nothing once it has one, so that productions read straight down.

package lang

import (
	"reflect"
	"slices"

	"github.com/alecthomas/participle/v2/lexer"
)

type reader struct {
	lex  *lexer.PeekingLexer
	spec *spec
	err  *fault
	// The word of the clause being read.
	clause *lexer.Token
}

func newReader(lex *lexer.PeekingLexer, word string) *reader {
	return &reader{lex: lex, spec: specOf[word]}
}

// result returns the fault as an error, nil where there is none.
func (r *reader) result() error {
	if r.err == nil {
		return nil
	}
	return r.err
}

func (r *reader) fail(f *fault) {
	if r.err == nil {
		r.err = f
	}
}

// is reports whether the next token is the given word or sign.
func (r *reader) is(word string) bool {
	t := r.lex.Peek()
	return t.Value == word && !t.EOF()
}

// take consumes the next token where it is the given word or sign.
func (r *reader) take(word string) bool {
	if r.err != nil || !r.is(word) {
		return false
	}
	r.lex.Next()
	return true
}

// words consumes the given words, which have to come next.
func (r *reader) words(words ...string) {
	for _, w := range words {
		if r.err == nil && !r.take(w) {
			r.fail(misplaced(r.lex.Peek(), r.spec, []string{w}, ""))
		}
	}
}

// oneOf consumes the next token, which has to be one of the given words.
func (r *reader) oneOf(words ...string) string {
	for _, w := range words {
		if r.take(w) {
			return w
		}
	}
	r.fail(misplaced(r.lex.Peek(), r.spec, words, ""))
	return ""
}

// next moves to the next clause and returns its word; "" at the line's end and
// at a fault.
func (r *reader) next() string {
	if r.err != nil || r.lex.Peek().EOF() {
		return ""
	}
	r.take(",")
	r.clause = r.lex.Peek()
	if r.clause.Type != tokWord || !slices.Contains(r.spec.clauses, r.clause.Value) {
		r.noClause()
		return ""
	}
	return r.lex.Next().Value
}

// noClause reports that the next token begins no clause.
func (r *reader) noClause() {
	t := r.lex.Peek()
	f := faultAt(t, "unknown-clause", "expected the end of the line or %s, found %s", choice(r.spec.clauses), describe(t))
	near, ok := Nearest(t.Value, r.spec.clauses)
	if meant := clauseElsewhere(t.Value); slices.Contains(r.spec.clauses, firstWord(meant)) {
		near, ok = meant, true
	}
	if ok && t.Type == tokWord {
		f.because("Did you mean `%s`?", near)
	}
	r.fail(f)
}

// once reports a clause that comes a second time.
func (r *reader) once(unset bool) bool {
	if !unset && r.err == nil {
		r.fail(faultAt(r.clause, "duplicate-clause", "`%s` stands here a second time", r.clause.Value))
	}
	return r.err == nil
}

// need reports a clause that has to be there and is not.
func (r *reader) need(word string, present bool) {
	if !present && r.err == nil {
		r.fail(faultAt(r.lex.Peek(), "missing-clause", "`%s` is missing here", word))
	}
}

// production is a hand-written piece of the grammar.
type production[T any] interface {
	*T
	Parse(*lexer.PeekingLexer) error
}

// read parses a piece of the tree into field, which nothing may have filled
// before. wants says which value has to stand there; it is the zero quantity
// where the type tells.
func read[T any, P production[T]](r *reader, field **T, wants quantity) {
	if r.err != nil || *field != nil && !r.once(false) {
		return
	}
	v := new(T)
	if err := P(v).Parse(r.lex); err != nil {
		r.fail(asFault(err, r.lex.Peek(), reflect.TypeFor[T]().Name(), wants))
		return
	}
	*field = v
}

func (r *reader) name(field **Name)     { read(r, field, quantity{}) }
func (r *reader) text(field **Text)     { read(r, field, quantity{}) }
func (r *reader) target(field **Target) { read(r, field, quantity{}) }
func (r *reader) place(field **Place)   { read(r, field, quantity{}) }

// value reads an expression; wants says which.
func (r *reader) value(field **Expr, wants quantity) { read(r, field, wants) }

// moment reads the anchor behind `on` or `at`.
func (r *reader) moment(field **Anchor) {
	read(r, field, quantity{})
	if r.err != nil || r.clause == nil || r.clause.Value != "at" {
		return
	}
	if a := *field; a.Kind == AnchorWords || a.Kind == AnchorEnd || a.Words != nil {
		r.fail(faultAt(r.clause, "expected-word", "`at` stands before a time; words take `on`"))
	}
}

// profile reads `smooth` or `even`.
func (r *reader) profile(field *Profile) {
	if !r.once(*field == ProfileUnset) {
		return
	}
	*field = ProfileSmooth
	if r.clause.Value == "even" {
		*field = ProfileEven
	}
}
