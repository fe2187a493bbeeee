// Explaining: from what a walk came to, to a mistake that is told; and the other
// mistakes of the same line.

package lang

import (
	"slices"
	"strings"

	"github.com/alecthomas/participle/v2/lexer"
)

// A mistake is a fault of a statement's form.
type mistake struct {
	*fault
	token int // the number of the token at fault
	// clause is the number of the token that begins the clause at fault, -1 where
	// the fault stands before the clauses; word is the word of that clause, or what
	// it was meant for.
	clause int
	word   string
}

// explain returns the first mistake of the statement that begins where the
// walker was made, which participle has refused at a token.
func (w *walker) explain(s *spec, refused *lexer.Token) *mistake {
	m := w.mistake(s, w.walk(s.shape().form) == fits)
	if m == nil { // no walk that agrees with participle comes here
		m = w.at(w.find(refused.Pos), notEnd(refused, nil))
	}
	if f := slipOf(s, w, m.token); f != nil {
		m.fault = f
	}
	return m
}

// at makes a mistake of a fault at a token before the clauses.
func (w *walker) at(token int, f *fault) *mistake {
	return &mistake{fault: f, token: token, clause: -1}
}

// find returns the number of the first token of the statement that stands at a
// place or behind it.
func (w *walker) find(place lexer.Position) int {
	at := int(w.start.RawCursor())
	for !w.token(at).EOF() && w.token(at).Pos.Offset < place.Offset {
		at++
	}
	return at
}

// mistake tells what a walk over a statement or clause came to; nil where it
// read everything.
func (w *walker) mistake(s *spec, fit bool) *mistake {
	here, far := w.here(), w.miss
	if fit && w.token(here).EOF() {
		return nil
	}
	if fit && here > far.at || far.at < 0 { // a look ahead that refuses wants nothing
		far = miss{at: here, clause: -1}
	}
	t := w.token(far.at)
	m := &mistake{token: far.at, clause: far.clause}
	if f := w.fault; f != nil && f.Pos.Offset >= t.Pos.Offset {
		m.fault, m.clause, m.token = f.withUnits(w.within), w.faultClause, w.find(f.Pos)
	} else {
		m.fault = w.expectation(s, t, far.wants, fit, fit && far.at == here)
	}
	if m.clause >= 0 {
		m.word = w.clauseWord(s, m.clause)
	}
	return m
}

// clauseWord returns the head that a token is or was meant for, and its text
// where it is near to none.
func (w *walker) clauseWord(s *spec, at int) string {
	written, heads := w.token(at).Value, s.shape().heads
	if near, ok := clauseMeant(written, heads); ok && !slices.Contains(heads, written) {
		return firstWord(near)
	}
	return written
}

// expectation tells what was wanted in the place of token t. fit says that the
// line could have ended, and atEnd that it could have ended right here.
func (w *walker) expectation(s *spec, t *lexer.Token, wants []*form, fit, atEnd bool) *fault {
	var words []string
	var piece *form
	heads := false
	for _, f := range wants {
		switch {
		case f.kind != formLiteral && piece == nil:
			piece = f
		case f.head:
			heads = true
		case f.kind == formLiteral && !slices.Contains(words, f.text):
			words = append(words, f.text)
		}
	}
	switch {
	case heads:
		return noClause(t, s.shape().heads, fit)
	case atEnd:
		return notEnd(t, words)
	case piece != nil:
		return notA(t, piece, words)
	}
	if len(words) == 0 {
		return faultAt(t, "expected-word", "%s cannot stand here", describe(t))
	}
	f := faultAt(t, "expected-word", "expected %s, found %s", choice(words), describe(t))
	if near, ok := Nearest(t.Value, words); ok {
		return f.because("Did you mean `%s`?", near).writes(near)
	}
	if len(words) == len(floorWays) && slices.Contains(words, "downstage") {
		return noWay(faultAt(t, "wrong-unit", noWayText))
	}
	return f.offers(missingWords(t, words)...).offers(otherWords(t, words)...)
}

// missingWords offers words that were wanted before a token, if they are few.
func missingWords(t *lexer.Token, words []string) (list []offer) {
	const few = 3
	if len(words) > few {
		return nil
	}
	for _, word := range words {
		text := word + " "
		if t.EOF() || t.Type == tokLine || t.Value == "," {
			text = " " + word
		}
		list = append(list, inserting(t.Pos, text, "`"+word+"`"))
	}
	return list
}

// otherWords offers words that were wanted in place of another, if they are few.
func otherWords(t *lexer.Token, words []string) (list []offer) {
	const few = 4
	if len(words) > few || t.Type != tokWord {
		return nil
	}
	for _, word := range words {
		list = append(list, writing(onTokens(t, t), word))
	}
	list[0].other = true
	return list
}

// notEnd tells that the line should have ended before token t. words could have
// stood there too.
func notEnd(t *lexer.Token, words []string) *fault {
	f := faultAt(t, "expected-end", "expected the end of the line, found %s", describe(t))
	if near, ok := Nearest(t.Value, words); ok && t.Type == tokWord {
		f.because("Did you mean `%s`?", near).writes(near)
	}
	if t.Value == "," && slices.Contains(words, "and") {
		f.because("Several stand with `and` between them, without commas.").offers(offer{title: "Write `and`", at: f.Node, text: " and"})
	}
	if t.Type == tokWord {
		quotes := inQuotes(t)[0]
		f.offers(quotes.instead())
	}
	return f.offers(withoutClause(t).instead())
}

// noClause tells that token t begins no clause. ends says that the line could
// have ended there.
func noClause(t *lexer.Token, heads []string, ends bool) *fault {
	expected := choice(heads)
	if ends {
		expected = "the end of the line or " + expected
	}
	f := faultAt(t, "unknown-clause", "expected %s, found %s", expected, describe(t))
	if near, ok := clauseMeant(t.Value, heads); ok && t.Type == tokWord {
		f.because("Did you mean `%s`?", near).writes(near)
	}
	if t.EOF() || t.Type == tokLine {
		return f
	}
	return f.offers(withoutClause(t).instead())
}

// clauseMeant returns the beginning of the clause that a word was meant for.
func clauseMeant(word string, heads []string) (string, bool) {
	if meant := clauseElsewhere(word); slices.Contains(heads, firstWord(meant)) {
		return meant, true
	}
	return Nearest(word, heads)
}

// maxFurther is how many mistakes of a line are told behind its first.
const maxFurther = 8

// further returns the mistakes behind the first. Reading goes on at the next
// word that begins a clause, or that looks as if it was meant to, and each clause
// is read alone. One walker serves for the whole line: a new one for each clause
// would make the cost grow with their square.
func (w *walker) further(s *spec, first *mistake) (list []*mistake) {
	shape := s.shape()
	if shape.group == nil {
		return nil
	}
	if first.clause >= 0 && slices.Contains(shape.heads, w.token(first.clause).Value) {
		w.begun = append(w.begun, first.clause)
	}
	for at := first.token; !w.token(at).EOF() && len(list) < maxFurther; {
		t := w.token(at)
		switch {
		case t.Type != tokWord || at == first.token && (first.code == "unknown-clause" || first.code == "unknown-unit"):
		case slices.Contains(shape.heads, t.Value) && at != first.clause && !shape.midClause(w.token, int(w.start.RawCursor()), at):
			w.begun = append(w.begun, at)
			m := w.clauseAlone(s, at)
			if m == nil {
				at = max(w.here(), at+1)
				continue
			}
			list = append(list, m)
			at = max(m.token, at+1)
			continue
		case at == first.token && first.code == "expected-word": // told already
		case looksLikeHead(t, shape.heads):
			m := &mistake{fault: noClause(t, shape.heads, true), token: at, clause: at}
			m.word = w.clauseWord(s, at)
			list = append(list, m)
		}
		at++
	}
	return list
}

// midClause reports whether a word that can begin a clause is within one, as the `to` of
// `from 1 s to 2 s` is. first is the number of the first token of the statement.
func (s *shape) midClause(token func(int) *lexer.Token, first, at int) bool {
	word := token(at).Value
	for i := at - 1; i > first; i-- {
		t := token(i)
		if t.Value == "," || t.Value == word {
			return false
		}
		if slices.Contains(s.heads, t.Value) {
			return slices.ContainsFunc(s.begunBy(t.Value), func(f *form) bool { return f.goesOnWith(word) })
		}
	}
	return false
}

// rest returns the mistakes of a statement behind its first: end is the number
// of the token behind it.
func (w *walker) rest(s *spec, first *mistake, end int) []*mistake {
	list := w.further(s, first)
	known := func(m *mistake) bool {
		same := func(other *mistake) bool { return other.token == m.token }
		return same(first) || slices.ContainsFunc(list, same)
	}
	if m := w.duplicate(s); m != nil && !known(m) {
		list = append(list, m)
	}
	if m := w.lacking(s, end); m != nil && !known(m) {
		list = append(list, m)
	}
	return list
}

// blame has a mistake that begins no clause fall on what stands right before it,
// without a comma: on `over soon` where the line says `over soon 2 s`, and on
// what is in front of the clauses where it says `rack to AUNT VEE`.
func (w *walker) blame(s *spec, m *mistake) {
	if m.clause < 0 || slices.Contains(s.shape().heads, m.word) || w.token(m.clause-1).Value == "," {
		return
	}
	before := -1
	for _, at := range w.begun {
		if at < m.clause {
			before = max(before, at)
		}
	}
	m.clause, m.word = before, ""
	if before >= 0 {
		m.word = w.token(before).Value
	}
}

// looksLikeHead reports whether a word was meant to begin a clause: it is in
// lower case, has three letters, means nothing else, and is near to one.
func looksLikeHead(t *lexer.Token, heads []string) bool {
	if len(t.Value) < 3 || strings.ToLower(t.Value) != t.Value || isWordOf(t.Value) {
		return false
	}
	_, ok := Nearest(t.Value, heads)
	return ok
}

// clauseAlone reads one clause, and returns its mistake.
func (w *walker) clauseAlone(s *spec, at int) *mistake {
	w.seek(at)
	w.clause = at
	if w.walk(w.alternativeAt(s.shape(), at)) == fits {
		return nil
	}
	m := w.mistake(s, false)
	m.clause, m.word = at, w.token(at).Value
	return m
}

// begunBy returns the clauses that a head begins: several where only what follows
// it tells which.
func (s *shape) begunBy(head string) (list []*form) {
	for _, f := range s.alternatives {
		if slices.ContainsFunc(f.heads(), func(leaf *form) bool { return leaf.text == head }) {
			list = append(list, f)
		}
	}
	return list
}

// alternativeAt returns the clause that begins at a token, which is a head.
func (w *walker) alternativeAt(s *shape, at int) *form {
	list := s.begunBy(w.token(at).Value)
	for _, f := range list[:len(list)-1] {
		look := walker{lex: w.lex, start: w.start, silent: 1}
		look.seek(at)
		if f.parts[0].kind != formAhead || look.ahead(f.parts[0]) == fits {
			return f
		}
	}
	return list[len(list)-1]
}

// duplicate returns the clause that stands a second time among those that were
// read; nil where there is none.
func (w *walker) duplicate(s *spec) *mistake {
	var seen []*form
	for _, at := range w.begun {
		t := w.token(at)
		clause := w.alternativeAt(s.shape(), at)
		if slices.Contains(seen, clause) {
			return &mistake{
				fault: faultAt(t, "duplicate-clause", "`%s` is here a second time", t.Value).offers(withoutClause(t)),
				token: at, clause: at, word: t.Value,
			}
		}
		seen = append(seen, clause)
	}
	return nil
}

// withoutClause offers to leave out the clause that begins with a token.
func withoutClause(t *lexer.Token) offer {
	return offer{kind: offerNoTail, at: onTokens(t, t)}
}

// lacking returns the clause that has to be there and of which no token speaks;
// nil where there is none. end is the number of the token behind the statement.
func (w *walker) lacking(s *spec, end int) *mistake {
	for _, f := range s.shape().fields {
		if !f.needed {
			continue
		}
		head := s.shape().headOf(f)
		said := w.saidInstead(s.shape(), f) || w.saidByEnds(s)
		for at := int(w.start.RawCursor()); at < end && !said; at++ {
			t := w.token(at)
			said = t.Value == head || t.Type == tokWord && looksLikeHead(t, []string{head})
		}
		if !said {
			return &mistake{fault: faultAt(w.token(end), "missing-clause", "`%s` is missing here", head), token: end, clause: -1, word: head}
		}
	}
	return nil
}

// saidInstead reports whether a clause was read that can stand in place of that
// of a field.
func (w *walker) saidInstead(s *shape, f *field) bool {
	other := s.otherwise(f)
	return other != nil && slices.ContainsFunc(w.begun, func(at int) bool {
		return slices.ContainsFunc(w.alternativeAt(s, at).leaves(), func(leaf *form) bool { return leaf.field == other })
	})
}

// otherwise returns the field of the clause that can stand in place of that of
// another; nil where there is none.
func (s *shape) otherwise(f *field) *field {
	if i := slices.Index(s.fields, f) + 1; i < len(s.fields) && s.fields[i].instead {
		return s.fields[i]
	}
	return nil
}

// headOf returns the word that begins the clause of a field.
func (s *shape) headOf(f *field) string {
	for _, clause := range s.alternatives {
		if slices.ContainsFunc(clause.leaves(), func(leaf *form) bool { return leaf.field == f }) {
			return clause.leaves()[0].text
		}
	}
	return ""
}
