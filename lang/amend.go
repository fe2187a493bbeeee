// Amending: the edit that writes one clause of a statement, or a statement beside another.

package lang

import (
	"bytes"
	"reflect"
	"slices"
	"strings"
	"unicode/utf8"

	"github.com/alecthomas/participle/v2/lexer"
)

// A Clause is a clause to be written. Word is the word that begins it, or the first word
// of the statement for all that stands before the clauses. Text is all of it, as in "over
// 1.9 s"; "" takes the clause out.
type Clause struct {
	Word, Text string
}

// Amend returns the edit that writes a clause into a statement of a file: in place of the
// clause that says the same, else behind the last. What the line says otherwise stays as
// it is, with its comments. It returns false if the statement is a Bad one, has no such
// clause, or says so already. Of the file only Source counts.
func Amend(f *File, s Statement, clause, text string) (Edit, bool) {
	return AmendAll(f, s, Clause{clause, text})
}

// AmendAll returns the one edit that writes several clauses, as Amend does each of them.
func AmendAll(f *File, s Statement, clauses ...Clause) (Edit, bool) {
	at := s.Range()
	if _, bad := s.(*Bad); bad || at.End.Offset > len(f.Source) {
		return Edit{}, false
	}
	old := string(f.Source[at.Start.Offset:at.End.Offset])
	made, ok := amendAll(shapeOf(reflect.TypeOf(s).Elem()), old, clauses)
	if !ok || made == old {
		return Edit{}, false
	}
	return difference(at, old, made), true
}

// Amended returns the text of a statement with clauses written as by Amend.
func Amended(f *File, s Statement, clauses ...Clause) (string, bool) {
	at := s.Range()
	if _, bad := s.(*Bad); bad || at.End.Offset > len(f.Source) {
		return "", false
	}
	return amendAll(shapeOf(reflect.TypeOf(s).Elem()), string(f.Source[at.Start.Offset:at.End.Offset]), clauses)
}

func amendAll(s *shape, text string, clauses []Clause) (string, bool) {
	for _, c := range clauses {
		w, ok := s.reads(text)
		if !ok {
			return "", false
		}
		if text, ok = w.amended(s, text, c); !ok {
			return "", false
		}
	}
	_, ok := s.reads(text)
	return text, ok
}

// reads walks over the text of one statement. It returns false if it is none of this
// shape.
func (s *shape) reads(text string) (*walker, bool) {
	source := newGrammarLexer("", text, 0)
	var tokens []lexer.Token
	for {
		t, _ := source.Next() // it returns no errors
		if t.EOF() || t.Type == tokLine {
			break
		}
		tokens = append(tokens, t)
	}
	if len(tokens) == 0 || !source.ahead.EOF() {
		return nil, false
	}
	tokens = append(tokens, lexer.EOFToken(endOf(&tokens[len(tokens)-1])))
	lex, _ := lexer.Upgrade(&tokenList{tokens})
	w := newWalker(lex)
	return w, w.walk(s.form) == fits && w.token(w.here()).EOF()
}

// amended returns the text that the walker has read with a clause written into it.
func (w *walker) amended(s *shape, text string, c Clause) (string, bool) {
	wanted := s.begunBy(c.Word)
	if len(wanted) == 0 {
		return w.head(text, c)
	}
	for i, at := range w.begun {
		clause := w.alternativeAt(s, at)
		if !slices.Contains(wanted, clause) && !slices.Contains(wanted, s.inPlaceOf(clause)) {
			continue
		}
		if c.Text == "" {
			return w.without(text, i), true
		}
		return text[:w.token(at).Pos.Offset] + c.Text + text[w.endOfClause(i):], true
	}
	if c.Text == "" {
		return text, true
	}
	return text + ", " + c.Text, true
}

// head returns the text with another in place of what stands before the clauses.
func (w *walker) head(text string, c Clause) (string, bool) {
	first := int(w.start.RawCursor())
	if w.token(first).Value != c.Word || c.Text == "" {
		return "", false
	}
	return c.Text + text[w.endOfClause(-1):], true
}

// endOfClause returns the offset behind the clause of a number, from 0; -1 is what stands
// before the clauses.
func (w *walker) endOfClause(i int) int {
	last := w.here() - 1
	if i+1 < len(w.begun) {
		last = w.begun[i+1] - 1
		if w.token(last).Value == "," {
			last--
		}
	}
	return endOf(w.token(last)).Offset
}

// without returns the text without a clause. A comment before or behind it stays.
func (w *walker) without(text string, i int) string {
	before, from, to := w.endOfClause(i-1), w.token(w.begun[i]).Pos.Offset, w.endOfClause(i)
	gap := text[before:from] // a comma, blanks, the end of a line, comments
	if i+1 == len(w.begun) {
		return text[:before] + strings.TrimRightFunc(noComma(gap), func(r rune) bool { return isBlank(r) || r == '\n' || r == '\r' }) + text[to:]
	}
	next := w.token(w.begun[i+1]).Pos.Offset
	behind := text[to:next]
	switch {
	case !strings.Contains(gap, "#"):
		return text[:before] + text[to:]
	case !strings.Contains(behind, "#"):
		return text[:from] + text[next:]
	}
	return text[:from] + strings.TrimLeftFunc(noComma(behind), isBlank) + text[next:]
}

// noComma returns what stands between two clauses without its comma.
func noComma(gap string) string {
	before, behind, ok := strings.Cut(gap, ",")
	if !ok || strings.Contains(before, "#") {
		return gap
	}
	return before + behind
}

// inPlaceOf returns the clause that says otherwise what a clause says, as a speed does
// what `over` says; nil for none. Clauses that say more than one thing have none.
func (s *shape) inPlaceOf(clause *form) *form {
	f := clause.onlyField()
	i := slices.Index(s.fields, f)
	if i < 0 {
		return nil
	}
	var other *field
	switch {
	case f.instead:
		other = s.fields[i-1]
	case s.otherwise(f) != nil:
		other = s.fields[i+1]
	}
	for _, a := range s.alternatives {
		if other != nil && a.onlyField() == other {
			return a
		}
	}
	return nil
}

// onlyField returns the field whose value a clause says; nil if it says several.
func (f *form) onlyField() *field {
	var only *field
	for _, leaf := range f.leaves() {
		switch {
		case only == nil:
			only = leaf.field
		case leaf.field != only:
			return nil
		}
	}
	return only
}

// difference returns the edit that turns a text at a place into another: the words that
// differ.
func difference(at Range, old, made string) Edit {
	from := 0
	for n := 0; n < min(len(old), len(made)) && old[n] == made[n]; n++ {
		if isWordEnd(old, n+1) && isWordEnd(made, n+1) {
			from = n + 1
		}
	}
	tail := 0
	for n := 0; n < min(len(old), len(made))-from && old[len(old)-1-n] == made[len(made)-1-n]; n++ {
		if isWordEnd(old, len(old)-1-n) && isWordEnd(made, len(made)-1-n) {
			tail = n + 1
		}
	}
	start := after(at.Start, old[:from])
	return Edit{
		Range: Range{File: at.File, Start: start, End: after(start, old[from:len(old)-tail])},
		Text:  made[from : len(made)-tail],
	}
}

// isWordEnd reports whether words of a text end or begin at an offset.
func isWordEnd(text string, at int) bool {
	const between = " \t\r\n,"
	return at == 0 || at == len(text) || strings.IndexByte(between, text[at]) >= 0 || strings.IndexByte(between, text[at-1]) >= 0
}

// after returns the place behind a text that begins at a place.
func after(p Pos, text string) Pos {
	p.Offset += len(text)
	for text != "" {
		i := strings.IndexAny(text, "\n\r")
		if i < 0 {
			break
		}
		if strings.HasPrefix(text[i:], "\r\n") {
			i++
		}
		p.Line, p.Column, text = p.Line+1, 1, text[i+1:]
	}
	p.Column += utf8.RuneCountInString(text)
	return p
}

// InsertAbove returns the edit that writes a line above a statement of a file, indented
// as that is. Of the file only Source counts.
func InsertAbove(f *File, s Statement, text string) Edit {
	at := s.Range()
	indent := indentOf(f.Source, at.Start.Offset)
	start := Pos{Offset: at.Start.Offset - len(indent), Line: at.Start.Line, Column: 1}
	return Edit{Range: Range{File: at.File, Start: start, End: start}, Text: indent + text + newlineAt(f.Source, at.End.Offset)}
}

// InsertBelow returns the edit that writes a line below a statement of a file, indented
// as that is. Of the file only Source counts.
func InsertBelow(f *File, s Statement, text string) Edit {
	at := s.Range()
	end := len(f.Source)
	if i := bytes.IndexAny(f.Source[at.End.Offset:], "\n\r"); i >= 0 {
		end = at.End.Offset + i
	}
	p := after(at.End, string(f.Source[at.End.Offset:end]))
	return Edit{
		Range: Range{File: at.File, Start: p, End: p},
		Text:  newlineAt(f.Source, at.End.Offset) + indentOf(f.Source, at.Start.Offset) + text,
	}
}

// indentOf returns the blanks before a statement that begins at an offset.
func indentOf(src []byte, at int) string {
	line := string(src[bytes.LastIndexAny(src[:at], "\n\r")+1 : at])
	return strings.TrimPrefix(line, byteOrderMark)
}

// newlineAt returns how a file ends its lines: that of an offset, else its first.
func newlineAt(src []byte, at int) string {
	i := bytes.IndexAny(src[at:], "\n\r")
	if i >= 0 {
		i += at
	} else {
		i = bytes.IndexAny(src, "\n\r")
	}
	switch {
	case i < 0:
		return "\n"
	case bytes.HasPrefix(src[i:], []byte("\r\n")):
		return "\r\n"
	}
	return string(src[i])
}
