// Forms: the grammar in the struct tags as data. participle builds its parsers
// from the tags and keeps what it has built to itself; a second reading of the
// same tags tells why a line cannot be read, which words begin a clause, how a
// statement is written, and what may come next.

package lang

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
	"sync"

	"github.com/alecthomas/participle/v2"
	"github.com/alecthomas/participle/v2/lexer"
)

type formKind uint8

const (
	formSequence formKind = iota // parts in their order
	formChoice                   // the first of parts that fits
	formLiteral                  // a word or sign
	formToken                    // a token of a kind
	formPiece                    // a piece of the tree
	formRepeat                   // parts[0], as often as mode says: ? * or +
	formAhead                    // parts[0] comes next, or must not where mode is !
)

// A form is a tag, or a part of one.
type form struct {
	kind     formKind
	text     string          // the word or sign, or the name of a kind of token
	token    lexer.TokenType // the kind of token
	mode     byte
	parts    []*form
	piece    reflect.Type // the type of the piece
	field    *field       // the field in whose tag it stands
	captured bool         // the field takes what stands here
	// head tells that the word begins a clause, first that it begins a statement.
	head, first bool
	// clauses tells that the repeated parts are clauses: any order, each once.
	clauses bool
}

// A field is a field of a struct and what its tag says beside the form.
type field struct {
	name     string
	index    int
	is       string // the name of its quantity, "" for none
	quantity quantity
	needed   bool   // the clause has to be there
	say      string // what stands for it in usage lines
	instead  bool   // the clause takes the place of the one before it
}

// A shape is what the tags of one type say together.
type shape struct {
	name   string
	form   *form
	fields []*field
	// group is the form of the clauses, nil where there are none, and
	// alternatives are the clauses.
	group        *form
	alternatives []*form
	heads        []string // the words that clauses begin with
	clauseOf     []int    // which of the alternatives each of them begins, the last of several
	// marked are the words that the formatter writes a comma before: heads, and
	// a word behind a comma that may be left out.
	marked []string
	slots  []slot
}

var shapes sync.Map // of *shape by reflect.Type

// shapeOf returns the shape of a struct with tags. It is made at the first call.
func shapeOf(of reflect.Type) *shape {
	if made, ok := shapes.Load(of); ok {
		return made.(*shape)
	}
	made, _ := shapes.LoadOrStore(of, newShape(of))
	return made.(*shape)
}

func newShape(of reflect.Type) *shape {
	s := &shape{name: of.Name()}
	var r tagReader
	for i := range of.NumField() {
		if tag := of.Field(i).Tag.Get("parser"); tag != "" {
			f := newField(of.Field(i), i)
			s.fields = append(s.fields, f)
			r.scan(tag, f, indirect(of.Field(i).Type))
		}
	}
	s.form = r.choice()
	if r.at < len(r.tokens) {
		panic(fmt.Sprintf("the tags of %v go on behind their end", of))
	}
	s.findClauses(s.form)
	if reflect.PointerTo(of).Implements(reflect.TypeFor[Statement]()) {
		s.form.markFirst()
	}
	s.slots = slotsOf(of, s)
	return s
}

func newField(f reflect.StructField, index int) *field {
	name, rest, _ := strings.Cut(f.Tag.Get("is"), ",")
	return &field{
		name: f.Name, index: index, is: name, quantity: quantityNamed(name),
		needed: rest == "needed", say: f.Tag.Get("say"), instead: rest == "instead",
	}
}

// indirect returns the type that a pointer or slice leads to.
func indirect(t reflect.Type) reflect.Type {
	for t.Kind() == reflect.Pointer || t.Kind() == reflect.Slice {
		t = t.Elem()
	}
	return t
}

// A tagToken is a sign of a tag: ' for a literal, a for the name of a kind of
// token, D for @@, = and ~ for the two looks ahead, or the sign itself.
type tagToken struct {
	kind  byte
	text  string
	field *field
	of    reflect.Type
}

// A tagReader reads tags by descent. What participle takes and this does not is
// told by a test, which compares what both have read.
type tagReader struct {
	tokens []tagToken
	at     int
}

// scan cuts the tag of a field into tokens.
func (r *tagReader) scan(tag string, f *field, of reflect.Type) {
	for i := 0; i < len(tag); {
		rest, t, n := tag[i:], tagToken{kind: tag[i], field: f, of: of}, 1
		switch {
		case rest[0] == ' ':
			i++
			continue
		case rest[0] == '\'':
			t.text, _, _ = strings.Cut(rest[1:], "'")
			n = len(t.text) + 2
		case strings.HasPrefix(rest, "@@"):
			t.kind, n = 'D', 2
		case strings.HasPrefix(rest, "(?="):
			t.kind, n = '=', 3
		case strings.HasPrefix(rest, "(?!"):
			t.kind, n = '~', 3
		case isWordByte(rest[0]):
			for n < len(rest) && isWordByte(rest[n]) {
				n++
			}
			t.kind, t.text = 'a', rest[:n]
		}
		r.tokens = append(r.tokens, t)
		i += n
	}
}

func (r *tagReader) is(kind byte) bool { return r.at < len(r.tokens) && r.tokens[r.at].kind == kind }

func (r *tagReader) choice() *form {
	parts := []*form{r.sequence()}
	for r.is('|') {
		r.at++
		parts = append(parts, r.sequence())
	}
	if len(parts) == 1 {
		return parts[0]
	}
	return &form{kind: formChoice, parts: parts}
}

func (r *tagReader) sequence() *form {
	var parts []*form
	for r.at < len(r.tokens) && !r.is('|') && !r.is(')') {
		parts = append(parts, r.term())
	}
	if len(parts) == 1 {
		return parts[0]
	}
	return &form{kind: formSequence, parts: parts}
}

// term reads a form and the sign behind it that says how often it comes.
func (r *tagReader) term() *form {
	f := r.atom()
	if r.is('?') || r.is('*') || r.is('+') {
		f = &form{kind: formRepeat, mode: r.tokens[r.at].kind, parts: []*form{f}}
		r.at++
	}
	return f
}

func (r *tagReader) atom() *form {
	t := r.tokens[r.at]
	r.at++
	switch t.kind {
	case '\'':
		return &form{kind: formLiteral, text: t.text, field: t.field}
	case 'a':
		return &form{kind: formToken, text: t.text, token: definition{}.Symbols()[t.text], field: t.field}
	case 'D':
		return &form{kind: formPiece, piece: t.of, field: t.field, captured: true}
	case '@':
		return capture(r.atom())
	case '(', '=', '~':
		f := r.choice()
		r.at++ // the closing bracket
		if t.kind == '(' {
			return f
		}
		ahead := &form{kind: formAhead, mode: '=', parts: []*form{f}}
		if t.kind == '~' {
			ahead.mode = '!'
		}
		return ahead
	}
	panic(fmt.Sprintf("a tag has %q where a form begins", t.kind))
}

// capture marks the words and tokens of a form as taken by their field.
func capture(f *form) *form {
	f.captured = true
	for _, part := range f.parts {
		capture(part)
	}
	return f
}

// findClauses finds the group of clauses by its first item, (?! EOF ), and the
// words that clauses begin with.
func (s *shape) findClauses(f *form) {
	for i, part := range f.parts {
		if f.kind == formSequence && i > 0 && part.kind == formLiteral && f.parts[i-1].isComma() {
			s.marked = append(s.marked, part.text)
		}
		s.findClauses(part)
	}
	if f.kind != formRepeat || f.parts[0].kind != formSequence {
		return
	}
	items := f.parts[0].parts
	if first := items[0]; first.kind != formAhead || first.mode != '!' || first.parts[0].text != "EOF" {
		return
	}
	f.clauses, s.group = true, f
	s.alternatives = []*form{{kind: formSequence, parts: items[2:]}} // behind (?! EOF ) ','?
	if items[2].kind == formChoice && len(items) == 3 {
		s.alternatives = items[2].parts
	}
	for i, clause := range s.alternatives {
		s.addHeads(clause, i)
	}
}

// addHeads marks the words that a clause can begin with.
func (s *shape) addHeads(f *form, clause int) {
	switch f.kind {
	case formSequence:
		i := 0
		for f.parts[i].kind == formAhead {
			i++
		}
		s.addHeads(f.parts[i], clause)
	case formChoice:
		for _, part := range f.parts {
			s.addHeads(part, clause)
		}
	case formLiteral:
		f.head = true
		if i := slices.Index(s.heads, f.text); i >= 0 { // only what follows tells which
			s.clauseOf[i] = clause
			return
		}
		s.heads, s.clauseOf = append(s.heads, f.text), append(s.clauseOf, clause)
		if !slices.Contains(s.marked, f.text) {
			s.marked = append(s.marked, f.text)
		}
	}
}

// markFirst marks the words that the form can begin with.
func (f *form) markFirst() {
	switch f.kind {
	case formLiteral:
		f.first = true
	case formSequence:
		f.parts[0].markFirst()
	case formChoice:
		for _, part := range f.parts {
			part.markFirst()
		}
	}
}

// isComma reports whether the form is a comma that may be left out.
func (f *form) isComma() bool {
	return f.kind == formRepeat && f.mode == '?' && f.parts[0].kind == formLiteral && f.parts[0].text == ","
}

// leaves returns the words, tokens and pieces of a form in their order.
func (f *form) leaves() (list []*form) {
	switch f.kind {
	case formLiteral, formToken, formPiece:
		return []*form{f}
	case formAhead:
		return nil
	}
	for _, part := range f.parts {
		list = append(list, part.leaves()...)
	}
	return list
}

// isProduction reports whether a piece is read by hand.
func isProduction(of reflect.Type) bool {
	return reflect.PointerTo(of).Implements(reflect.TypeFor[participle.Parseable]())
}
