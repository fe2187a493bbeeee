// What is derived from the forms: usage lines, and the grammar in EBNF.

package lang

//go:generate env PULLSCORE_UPDATE=1 go test -count=1 -run "ReferenceIsDerived|GrammarsAreDerived" .

import (
	"reflect"
	"slices"
	"strconv"
	"strings"
)

// Usage returns the usage line of the statement with a keyword, or "" if there is no
// such statement. The keyword of a spoken line is ":", that of the use of a move "(".
func Usage(keyword string) string {
	if s := specOf[keyword]; s != nil {
		return s.usage()
	}
	return ""
}

// Pieces are the parts of a statement that have their own help.
var Pieces = []string{"moment", "place", "floor", "aim", "target", "value"}

// UsagesUnder returns the usage lines of the statements that a keyword begins under a
// header, such as `scene`; of the file for "".
func UsagesUnder(keyword, header string) (list []string) {
	in := inFile
	if header != "" {
		in = headers[header]
	}
	for s := specOf[keyword]; s != nil; s = s.other {
		if s.under&in != 0 {
			list = append(list, s.usage())
		}
	}
	return list
}

// Usages returns the usage lines for a word: of the statements that it begins, of one of
// Pieces, or else of every statement that can contain the word. That of Usage is the first.
func Usages(word string) (list []string) {
	for s := specOf[word]; s != nil; s = s.other {
		list = append(list, s.usage())
	}
	if len(list) > 0 {
		return list
	}
	switch word {
	case "moment":
		return pieceUsages(momentShape())
	case "place":
		return pieceUsages(shapeOf(reflect.TypeFor[Place]()))
	case "floor":
		return []string{"NAME", "LENGTH left | right | upstage | downstage", "LENGTH towards NAME", "LENGTH up | down | high", "FLOOR, LENGTH left | ..."}
	case "aim":
		return []string{"NAME [and NAME] ...", "AIM, ANGLE left | right", "AIM, ANGLE up | down"}
	case "target":
		return pieceUsages(shapeOf(reflect.TypeFor[Target]()))
	case "value":
		return []string{"NUMBER UNIT", "STOP", "TIMECODE", "inf", "NAME", "VALUE + VALUE", "VALUE - VALUE", "VALUE * VALUE", "VALUE / VALUE", "-VALUE", "(VALUE)"}
	}
	for _, s := range specs {
		has := func(leaf *form) bool { return leaf.kind == formLiteral && leaf.text == word }
		if slices.ContainsFunc(s.shape().form.leaves(), has) {
			list = append(list, s.usage())
		}
	}
	return list
}

// pieceUsages returns how a piece is written, a line for each of the forms that
// it begins with.
func pieceUsages(s *shape) (list []string) {
	first, rest := s.form, []*form(nil)
	if s.form.kind == formSequence {
		first, rest = s.form.parts[0], s.form.parts[1:]
	}
	forms := []*form{first}
	if first.kind == formChoice {
		forms = first.parts
	}
	for _, f := range forms {
		var u usageWriter
		u.form(s, f)
		for _, part := range rest {
			u.form(s, part)
		}
		list = append(list, u.text.String())
	}
	return list
}

// usage returns the one line that shows how the statement is written.
func (s *spec) usage() string {
	if s.says != "" {
		return s.says
	}
	u := usageWriter{word: s.word, apart: s.apart}
	u.form(s.shape(), s.shape().form)
	return u.text.String()
}

// A usageWriter writes a usage line.
type usageWriter struct {
	word  string // of the statement, for a form that has several
	apart bool
	text  strings.Builder
}

// put writes a word with the blank before it that it needs.
func (u *usageWriter) put(word string) {
	before := u.text.String()
	if before != "" && !strings.HasSuffix(before, "(") && !strings.HasSuffix(before, "[") && !strings.Contains(",:()]", word) {
		u.text.WriteByte(' ')
	}
	u.text.WriteString(word)
}

func (u *usageWriter) form(s *shape, f *form) {
	switch f.kind {
	case formLiteral:
		u.put(f.text)
	case formToken, formPiece:
		u.put(f.placeholder())
	case formSequence:
		for _, part := range f.parts {
			u.form(s, part)
		}
	case formChoice:
		u.choice(s, f)
	case formRepeat:
		u.repeat(s, f)
	}
}

// choice writes alternatives: the word of this statement alone where it is one
// of them; all where the tree keeps which it was, and otherwise the first, of
// which the others are other spellings.
func (u *usageWriter) choice(s *shape, f *form) {
	if say := f.parts[0].field; f.captured && say != nil && say.say != "" {
		u.put(say.say)
		return
	}
	for _, part := range f.parts {
		if u.word != "" && part.leaves()[0].text == u.word {
			u.form(s, part)
			return
		}
	}
	kept := func(part *form) bool {
		return slices.ContainsFunc(part.leaves(), func(leaf *form) bool { return leaf.captured })
	}
	for i, part := range f.parts {
		if i > 0 && !slices.ContainsFunc(f.parts, kept) {
			return
		}
		if i > 0 {
			u.put("|")
		}
		u.form(s, part)
	}
}

func (u *usageWriter) repeat(s *shape, f *form) {
	part := f.parts[0]
	switch {
	case f.clauses:
		u.clauses(s)
	case f.isComma():
		u.put(",")
	case f.mode == '?' && !part.isList():
		if part.kind == formLiteral && part.text == "df" {
			return // a spelling of the value before it
		}
		u.put("[")
		u.form(s, part)
		u.text.WriteString("]")
	case f.mode == '?':
		u.form(s, part)
	case part.parts[0].text == ",":
		u.put(",")
		u.put("...")
	default:
		u.put("[")
		u.form(s, part)
		u.text.WriteString("] ...")
	}
}

// isList reports whether a form is a list: X and more behind commas.
func (f *form) isList() bool {
	return f.kind == formSequence && len(f.parts) == 2 && f.parts[1].kind == formRepeat && f.parts[1].mode == '*'
}

// clauses writes the clauses, a comma before each and before the first only where
// they stand apart. A single one that may be left out stands in brackets.
func (u *usageWriter) clauses(s *shape) {
	single := len(s.alternatives) == 1 && !u.apart
	for i, clause := range s.alternatives {
		switch {
		case single:
			u.put("[")
		case u.separates(s, i):
			u.put("|")
		case i > 0 || u.apart:
			u.put(",")
		}
		u.form(s, clause)
	}
	if single {
		u.text.WriteString("]")
	}
}

// separates reports whether a clause takes the place of the one before it.
func (u *usageWriter) separates(s *shape, i int) bool {
	return slices.ContainsFunc(s.alternatives[i].leaves(), func(leaf *form) bool { return leaf.field.instead })
}

// placeholder returns what stands for a piece or token in a usage line.
func (f *form) placeholder() string {
	isText := f.kind == formPiece && f.piece == textType
	switch say := f.field.say; {
	case isText && say != "":
		return `"` + say + `"`
	case isText:
		return `"TEXT"`
	case say != "":
		return say
	case f.field.quantity.usage != "":
		return f.field.quantity.usage
	case f.kind == formToken:
		return strings.ToUpper(f.text)
	}
	return strings.ToUpper(f.piece.Name())
}

// Grammar returns the whole grammar in EBNF, as participle writes it. It has one
// production for each statement and each piece of the tree, with the names of tokens in
// <angle brackets>. (?= X ) and (?! X ) look ahead: X must come next, or must not. The
// productions with parsers written by hand are at the end.
func Grammar() string {
	var b strings.Builder
	b.WriteString("Statement = ")
	for i, s := range distinct() {
		if i > 0 {
			b.WriteString(" | ")
		}
		b.WriteString(s.shape().name)
	}
	b.WriteString(" .\n")
	seen := map[reflect.Type]bool{}
	for _, s := range distinct() {
		writeProductions(&b, reflect.TypeOf(s.of).Elem(), seen)
	}
	writeProductions(&b, reflect.TypeFor[moment](), seen)
	b.WriteString(byHand)
	return b.String()
}

// distinct returns the statements, each type once.
func distinct() []*spec {
	var list []*spec
	for _, s := range specs {
		if !slices.ContainsFunc(list, func(other *spec) bool { return reflect.TypeOf(other.of) == reflect.TypeOf(s.of) }) {
			list = append(list, s)
		}
	}
	return list
}

// byHand are the productions without tags, as their code reads them. A name of a
// word is no word of the language. FloorOnly is looked for and takes nothing.
const byHand = `Anchor = Moment .
Expr = Product (("+" | "-" | "−") Product)* .
Product = Signed (("*" | "/") Signed)* .
Signed = ("+" | "-" | "−")* Operand .
Operand = (<number> <number>? Unit?) | (<number> <number>? "ft" Inches) | (<feet> Inches?) | <stop> | <timecode> | "inf" | Name | ("(" Expr ")") .
Inches = (<number> <number>? "in") | <feet> .
Unit = "mm" | "cm" | "m" | "ft" | "in" | "deg" | "°" | "turn" | "arcmin" | "s" | "ms" | "fr" | "%" | "wpm" | "px" | ("bit" "/" "s") | ("deg" "/" "s") | ("m" "/" "s") | ("ft" "/" "s") .
Name = <word> | <text> | <stop> .
FloorOnly = Way | (Name ","? Expr ("upstage" | "downstage" | "up" | "down" | "high" | "towards")) | (Name ","? Way ","? Way) .
ShotRef = <id> .
Text = <text> .
`

// writeProductions writes the production of a type, and of the pieces in it that
// have tags and were not written yet.
func writeProductions(b *strings.Builder, of reflect.Type, seen map[reflect.Type]bool) {
	if seen[of] || isProduction(of) {
		return
	}
	seen[of] = true
	s := shapeOf(of)
	b.WriteString(capital(s.name) + " = " + s.form.ebnf(true) + " .\n")
	for _, leaf := range s.form.leaves() {
		if leaf.kind == formPiece {
			writeProductions(b, leaf.piece, seen)
		}
	}
}

func capital(name string) string { return strings.ToUpper(name[:1]) + name[1:] }

// ebnf writes a form; outer is set where nothing stands beside it.
func (f *form) ebnf(outer bool) string {
	var parts []string
	for _, part := range f.parts {
		parts = append(parts, part.ebnf(false))
	}
	between := " "
	switch f.kind {
	case formLiteral:
		return strconv.Quote(f.text)
	case formToken:
		return "<" + strings.ToLower(f.text) + ">"
	case formPiece:
		return capital(f.piece.Name())
	case formRepeat:
		return parts[0] + string(f.mode)
	case formAhead:
		return "(?" + string(f.mode) + " " + f.parts[0].ebnf(true) + ")"
	case formChoice:
		between = " | "
	}
	if outer {
		return strings.Join(parts, between)
	}
	return "(" + strings.Join(parts, between) + ")"
}
