// What may come next, for an editor: read off the forms by a walk up to the
// place.

package lang

import (
	"slices"
	"strings"

	"github.com/alecthomas/participle/v2/lexer"
)

// A Role is what a word of the language does.
type Role uint8

// The roles.
const (
	RoleStatement Role = iota // begins a statement
	RoleClause                // begins a clause
	RoleWord                  // any other word of a statement
	RoleUnit                  // stands behind a number
	RoleValue                 // no word: a value, name, text or moment belongs there
)

// String returns the name of the role.
func (r Role) String() string {
	return [...]string{"statement", "clause", "word", "unit", "value"}[r]
}

// A Choice is a word or a value that can come next at a place.
type Choice struct {
	Role Role
	Word string // as the plan writes it; "" if Role is RoleValue
	// Text is the kind of value, as in messages, or the usage line of a statement.
	Text string
}

// Choices returns everything that can come next at an offset in bytes of a source. It
// ignores a word that ends at the offset, because the user is still writing it, and
// everything after the offset. It does not sort the words by likeness to that word.
func Choices(src []byte, offset int) []Choice { return At(src, offset).Choices }

// A Writing is a place in a source at which somebody writes.
type Writing struct {
	// From is where the word or the text in quotes begins that is being written; the
	// place itself if there is none.
	From   int
	Quoted bool // it is a text in quotes; From is the opening one

	Statement string // the keyword of the statement; "" at its start, and where none is known
	Clause    string // the word that begins the clause; "" before the first one
	Before    string // what stands before From in the same statement; "" at its start

	Choices []Choice // what can come next at From, in no order that means anything
}

// At returns what somebody writes at an offset in bytes of a source. It ignores everything
// after the offset.
func At(src []byte, offset int) Writing {
	offset = min(max(offset, 0), len(src))
	w := Writing{From: wordBefore(src, offset)}
	switch open, comment := textBefore(src, offset); {
	case comment:
		return Writing{From: offset}
	case open >= 0:
		w.From, w.Quoted = open, true
	}
	before, in := lineBefore(string(src[:w.From]))
	if len(before) == 0 {
		w.Choices = statementsIn(in)
		return w
	}
	w.Before = before[len(before)-1].Value
	second, third := &cursor, &cursor
	if len(before) > 1 {
		second = &before[1]
	}
	if len(before) > 2 {
		third = &before[2]
	}
	s := identify(&before[0], second, third, in)
	if in&inShots != 0 && len(before) == 2 && before[0].Value == "camera" && second.Value == "as" {
		s = cameraSpec(second)
	}
	if s == nil || isSoft(before[0].Value) && !s.mayStand(in) {
		w.Choices = behindName(before)
		return w
	}
	w.Statement, w.Clause = s.word, s.clauseOf(before)
	w.Choices = s.choices(before)
	if len(before) == 1 && in&inAction != 0 && isSoft(before[0].Value) {
		w.Choices = append(w.Choices, behindName(before)...) // it may be a name
	}
	if len(before) == 1 && in&inShots != 0 && s.word == "camera" { // it may be no header
		w.Choices = append(w.Choices, Choice{RoleWord, movesWord, ""})
		if in == inShot {
			w.Choices = append(w.Choices, Choice{RoleWord, "at", ""}, Choice{RoleWord, "as", ""})
		}
	}
	return w
}

// wordBefore returns where the word begins that ends at an offset. A number is none, since
// a unit may follow it.
func wordBefore(src []byte, offset int) int {
	from := offset
	for from > 0 && isWordByte(src[from-1]) {
		from--
	}
	if from < offset && isDigit(src[from]) {
		return offset
	}
	return from
}

// textBefore returns where the text in quotes begins that an offset is in; -1 if it is in
// none. comment is true in a comment.
func textBefore(src []byte, offset int) (open int, comment bool) {
	line := offset
	for line > 0 && src[line-1] != '\n' && src[line-1] != '\r' {
		line--
	}
	s := newScanner("", string(src[line:offset]))
	s.prev = tokWord // so that nothing is taken for the ID of a shot
	for {
		t := s.scan()
		switch {
		case t.EOF():
			return -1, false
		case t.Type == tokComment:
			return -1, true
		case t.Type == tokInvalid && (strings.HasPrefix(t.Value, `"`) || strings.HasPrefix(t.Value, "“")):
			return line + t.Pos.Offset, false
		}
	}
}

// clauseOf returns the word that the last clause begins with; "" before the first one.
func (s *spec) clauseOf(before []lexer.Token) string {
	begins := func(i int) []*form {
		if before[i].Type != tokWord {
			return nil
		}
		return s.shape().begunBy(before[i].Value)
	}
	for i := len(before) - 1; i > 0; i-- {
		if len(begins(i)) == 0 {
			continue
		}
		if i > 1 && slices.ContainsFunc(begins(i-1), func(f *form) bool { return f.goesOnWith(before[i].Value) }) {
			i-- // the `on` of `landing on`
		}
		return before[i].Value
	}
	return ""
}

// goesOnWith reports whether a clause has a word behind its first.
func (f *form) goesOnWith(word string) bool {
	return slices.ContainsFunc(f.leaves(), func(leaf *form) bool { return leaf.kind == formLiteral && !leaf.head && leaf.text == word })
}

// cursor stands for what is not written yet.
var cursor = lexer.Token{Type: tokWord, Value: "_"}

// lineBefore returns the tokens of the line that a source ends in, and the
// section that it stands in.
func lineBefore(src string) (line []lexer.Token, in section) {
	in = inFile
	source := newGrammarLexer("", src+" "+cursor.Value, 0)
	for {
		t, _ := source.Next()
		switch {
		case t.EOF():
			return nil, in
		case t.Type != tokLine:
			line = append(line, t)
			continue
		}
		if source.ahead.EOF() {
			return line[:max(len(line)-1, 0)], in
		}
		if len(line) > 1 {
			in = sectionBehind(line, in)
		}
		line = nil
	}
}

// sectionBehind returns the section behind a line.
func sectionBehind(line []lexer.Token, in section) section {
	s := identify(&line[0], &line[1], &line[min(2, len(line)-1)], in)
	switch {
	case s == nil:
		return in
	case s.under == 0:
		return headers[s.word]
	}
	in, _ = in.place(s.under)
	return in
}

// statementsIn lists what a line of a section can begin with.
func statementsIn(in section) (list []Choice) {
	for _, s := range specs {
		if isWordByte(s.word[0]) && s.word != movesWord && s.mayStand(in) {
			list = append(list, Choice{RoleStatement, s.word, s.usage()})
		}
	}
	if in&inAction != 0 {
		list = append(list, Choice{RoleValue, "", "a name"})
	}
	return list
}

// behindName lists what can follow the name that a line begins with.
func behindName(before []lexer.Token) []Choice {
	if len(before) > 1 || !isName(&before[0]) {
		return nil
	}
	return []Choice{
		{RoleWord, speechWord, Usage(speechWord)}, {RoleWord, callWord, Usage(callWord)}, {RoleWord, movesWord, Usage(movesWord)},
	}
}

// tokenList is a lexer over tokens that were read already.
type tokenList struct{ rest []lexer.Token }

// Next returns the next token, and an EOF behind the last.
func (l *tokenList) Next() (lexer.Token, error) {
	if len(l.rest) == 0 {
		return lexer.EOFToken(lexer.Position{}), nil
	}
	t := l.rest[0]
	l.rest = l.rest[1:]
	return t, nil
}

// choices lists what can follow the tokens of an unfinished statement.
func (s *spec) choices(before []lexer.Token) []Choice {
	before = unmarkedFeet(before)
	list := s.choicesOf(before, false)
	if s.shape().hasFloor() {
		for _, c := range s.choicesOf(before, true) {
			if !slices.Contains(list, c) {
				list = append(list, c)
			}
		}
	}
	return list
}

// choicesOf lists what can follow tokens. onFloor is that of the walker.
func (s *spec) choicesOf(before []lexer.Token, onFloor bool) []Choice {
	lex, _ := lexer.Upgrade(&tokenList{before}) // it returns no errors
	w := newWalker(lex)
	w.keep, w.onFloor = true, onFloor
	w.walk(s.shape().form)
	if w.miss.at != len(before) && w.endsAt != len(before) && !feetBefore(before) {
		return nil
	}
	var list []Choice
	add := func(c Choice) {
		if !slices.Contains(list, c) {
			list = append(list, c)
		}
	}
	if w.endsAt == len(before) && before[len(before)-1].Type == tokNumber && w.ends != nil {
		for _, unit := range w.unitsAtEnd(s.shape()) {
			add(Choice{RoleUnit, unit, ""})
		}
	}
	if feetBefore(before) {
		add(Choice{RoleUnit, UnitInch.String(), ""})
	}
	for _, word := range append(s.sidesBehind(before), s.wordsOfNumber(before)...) {
		add(Choice{RoleWord, word, ""})
	}
	for _, f := range w.miss.wants {
		if w.miss.at == len(before) && !(f.head && w.said(s, f.text)) && !w.excludes(s, f) {
			add(f.asChoice())
		}
	}
	return list
}

// sidesBehind returns left and right where the tokens end in inches that are
// those of the feet before them, or a side once such a word follows.
func (s *spec) sidesBehind(before []lexer.Token) []string {
	last := len(before) - 1
	if t := &before[last]; t.Value != UnitInch.String() && !isInches(t) {
		return nil
	}
	var list []string
	for _, side := range []string{"left", "right"} {
		lex, _ := lexer.Upgrade(&tokenList{append(slices.Clone(before), lexer.Token{Type: tokWord, Value: side})})
		w := newWalker(lex)
		if w.walk(s.shape().form); w.here() > len(before) {
			list = append(list, side)
		}
	}
	return list
}

// wordsOfNumber returns the words that make a number something else, which the walk
// takes for a value: a clock position, or the inches of a format.
func (s *spec) wordsOfNumber(before []lexer.Token) []string {
	last := len(before) - 1
	value := func(back int) string { return before[max(last-back, 0)].Value }
	switch {
	case s.word == "covers" && value(0) == "end" && (last == 1 || value(1) == "to"):
		return []string{"of"} // it may be the end of words
	case s.word == "mark" && before[last].Type == tokNumber && isInteger(value(0)) && (value(1) == "at" || value(1) == "and"):
		return []string{"o'clock"}
	case s.word == "sensor" && last == 2 && before[1].Type == tokNumber && value(0) == UnitInch.String():
		return []string{"type"}
	}
	return nil
}

// unitsAtEnd returns the units that the number may have which was read last: also
// those of another clause that begins with the same word.
func (w *walker) unitsAtEnd(s *shape) []string {
	list := w.ends.quantity.units()
	if len(w.begun) == 0 {
		return list
	}
	for _, clause := range s.begunBy(w.token(w.begun[len(w.begun)-1]).Value) {
		if fields := clause.leaves(); fields[len(fields)-1].field.instead {
			list = append(list, fields[len(fields)-1].field.quantity.units()...)
		}
	}
	return list
}

// said reports whether every clause that a head begins was read.
func (w *walker) said(s *spec, head string) bool {
	return !slices.ContainsFunc(s.shape().begunBy(head), func(clause *form) bool {
		return !slices.ContainsFunc(w.begun, func(at int) bool { return w.alternativeAt(s.shape(), at) == clause })
	})
}

// asChoice returns the choice that a form is.
func (f *form) asChoice() Choice {
	switch {
	case f.kind == formLiteral && f.head:
		return Choice{RoleClause, f.text, ""}
	case f.kind == formLiteral:
		return Choice{RoleWord, f.text, ""}
	case f.kind == formToken && f.token == tokID, f.piece == refType:
		return Choice{RoleValue, "", "the shot's ID, such as 14B"}
	case f.piece == nameType:
		return Choice{RoleValue, "", "a name"}
	case f.piece == textType:
		return Choice{RoleValue, "", "a text in quotes"}
	case f.field.quantity.text == "":
		return Choice{RoleValue, "", anyValue}
	}
	return Choice{RoleValue, "", f.field.quantity.text}
}

// Words returns the words of the language that have a role, sorted, including soft
// words. A word may have several roles.
func Words(role Role) (list []string) {
	if role == RoleUnit {
		for _, u := range unitFacts {
			if u.text != "" && u.dim != DimStop {
				list = append(list, u.text)
			}
		}
		slices.Sort(list)
		return list
	}
	for _, s := range specs {
		if role == RoleStatement && isWordByte(s.word[0]) {
			list = append(list, s.word)
		}
		for _, f := range allLeaves(s.shape().form) {
			if f.kind != formLiteral || !isWordByte(f.text[0]) || f.first {
				continue
			}
			if f.head && role == RoleClause || !f.head && role == RoleWord {
				list = append(list, f.text)
			}
		}
	}
	slices.Sort(list)
	return slices.Compact(list)
}

// allLeaves returns the leaves of a form and of the pieces in it that have forms.
func allLeaves(f *form) (list []*form) {
	for _, leaf := range f.leaves() {
		switch {
		case leaf.kind != formPiece:
			list = append(list, leaf)
		case leaf.piece == anchorType:
			list = append(list, allLeaves(momentShape().form)...)
		case !isProduction(leaf.piece):
			list = append(list, allLeaves(shapeOf(leaf.piece).form)...)
		}
	}
	return list
}
