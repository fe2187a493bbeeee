// The formatter: the canonical layout of a plan.

package lang

import (
	"slices"

	"github.com/alecthomas/participle/v2/lexer"
)

// Format returns a plan in the canonical layout. It indents statements under a header by
// two spaces, and continued lines by two more. It puts an empty line before a header,
// keeps at most one empty line elsewhere, and writes one blank between words. It adds
// missing commas between clauses, changes no other token, and keeps comments in their
// place. Line ends become line feeds. It works on files with mistakes too. Formatting a
// second time changes nothing. If a file is too large for Parse, in UTF-16, or in the
// middle of a merge, Format returns it unchanged.
func Format(src []byte) []byte {
	if len(src) > maxBytes || isWide(src) || len(conflicts("", src)) > 0 {
		return src
	}
	f := &formatter{
		scan: newScanner("", string(src)),
		out:  make([]byte, 0, len(src)+len(src)/8),
		in:   inFile,
	}
	for f.row() {
		f.print()
	}
	if f.total > maxTokens {
		return src
	}
	f.comments(len(f.waiting), f.indent())
	if isWide(f.out) || len(conflicts("", f.out)) > 0 { // zeros or signs that would be taken for what they are not
		return src
	}
	return f.out
}

// A formatter reads a source row by row. A row is the content of one line.
type formatter struct {
	scan *scanner
	out  []byte
	in   section

	total   int           // tokens so far
	tokens  []lexer.Token // the row's, comments and line end left out
	comment string
	gap     bool // an empty line stands before the row
	joined  bool // the row goes on with the statement above
	joins   bool // the next row goes on with this one
	clauses int  // of the statement so far
	open    int  // brackets of it that are not closed yet
	spec    *spec

	waiting []commentRow // comments whose indentation the next row tells
}

// A commentRow is a comment on a line of its own.
type commentRow struct {
	text string
	gap  bool
}

// row reads the next row that is not empty. It returns false at the end.
func (f *formatter) row() bool {
	f.tokens, f.comment, f.gap = f.tokens[:0], "", false
	f.joined, f.joins = f.joins, false
	for {
		t := f.scan.scan()
		if f.total++; f.total > maxTokens {
			return false
		}
		switch t.Type {
		case tokComment:
			f.comment = t.Value
		case tokJoin:
			f.joins = true
			return true
		case lexer.EOF, tokLine:
			if len(f.tokens) > 0 || f.comment != "" {
				return true
			}
			if f.gap = true; t.Type == lexer.EOF {
				return false
			}
		default:
			f.tokens = append(f.tokens, t)
		}
	}
}

// print writes the row. If the row is a comment between statements, it keeps it for later.
func (f *formatter) print() {
	stray := f.joined && f.standsAlone() // the comma above is one too many
	f.joined = f.joined && !stray
	switch {
	case len(f.tokens) == 0 && !f.joined:
		f.waiting = append(f.waiting, commentRow{f.comment, f.gap})
		return
	case f.joined:
		f.line(f.indent()+2, f.tokens, f.comment)
		return
	}
	before := f.indent()
	header := f.enter()
	indent := f.indent()
	if header {
		indent = 0
	}
	// An empty line behind a comma would join nothing any more.
	f.above(before, indent, (header || indent < before) && !stray)
	f.line(indent, f.tokens, f.comment)
}

// enter finds the statement and the section of the row, and reports whether it is a
// header.
func (f *formatter) enter() bool {
	f.clauses, f.open = 0, 0
	f.spec = f.identify()
	switch {
	case f.spec == nil:
		return false
	case f.spec.under == 0:
		f.in = headers[f.spec.word]
		return true
	}
	f.in, _ = f.in.place(f.spec.under)
	return false
}

// identify returns the statement that the row begins, or nil.
func (f *formatter) identify() *spec {
	second, third := &endOfRow, &endOfRow
	if len(f.tokens) > 1 {
		second = &f.tokens[1]
	}
	if len(f.tokens) > 2 {
		third = &f.tokens[2]
	}
	return identify(&f.tokens[0], second, third, f.in)
}

// standsAlone reports whether a row after a comma begins a statement of its own. The
// parser reads it in the same way, and reports the comma.
func (f *formatter) standsAlone() bool {
	if len(f.tokens) == 0 || f.spec == nil || f.open > 0 {
		return false
	}
	return f.identify() != nil && !slices.Contains(f.spec.shape().marked, f.tokens[0].Value)
}

var endOfRow = lexer.Token{Type: tokLine}

// indent returns how far a statement of the open section is indented.
func (f *formatter) indent() int {
	if f.in == inFile {
		return 0
	}
	return 2
}

// above writes the comments between the last row and this one. It indents comments right
// above this row like this row, and the others like the last one. It writes an empty
// line if there was one, or if apart is true.
func (f *formatter) above(before, indent int, apart bool) {
	own := len(f.waiting)
	for gap := f.gap; own > 0 && !gap; own-- {
		gap = f.waiting[own-1].gap
	}
	mine := f.waiting[own:]
	if apart {
		f.separate(mine)
	}
	f.comments(own, before)
	f.comments(len(f.waiting), indent)
	if f.gap {
		f.emptyLine()
	}
}

// separate puts an empty line before the row and the comments that belong to it.
func (f *formatter) separate(mine []commentRow) {
	if len(mine) > 0 {
		mine[0].gap = true
	} else {
		f.gap = true
	}
}

// comments writes the first n waiting comments.
func (f *formatter) comments(n, indent int) {
	for _, c := range f.waiting[:n] {
		if c.gap {
			f.emptyLine()
		}
		f.line(indent, nil, c.text)
	}
	f.waiting = f.waiting[n:]
	if len(f.waiting) == 0 {
		f.waiting = nil
	}
}

func (f *formatter) emptyLine() {
	if len(f.out) > 0 {
		f.out = append(f.out, '\n')
	}
}

const spaces = "        "

// line writes tokens and a comment as one line.
func (f *formatter) line(indent int, tokens []lexer.Token, comment string) {
	f.out = append(f.out, spaces[:indent]...)
	row := row{tokens, f.joined, f.spec}
	for i := range tokens {
		if f.clauseBegins(tokens, i) {
			f.out = append(f.out, ',')
		}
		if i > 0 && row.blankBefore(i) {
			f.out = append(f.out, ' ')
		}
		if value := tokens[i].Value; tokens[i].Type == tokClock {
			f.out = append(f.out, writeClock(value)...)
		} else {
			f.out = append(f.out, value...)
		}
		f.count(&tokens[i])
	}
	if comment != "" {
		if len(tokens) > 0 {
			f.out = append(f.out, "  "...)
		}
		f.out = append(f.out, comment...)
	}
	f.out = append(f.out, '\n')
}

// count counts the open brackets.
func (f *formatter) count(t *lexer.Token) {
	switch {
	case t.Type != tokPunct:
	case t.Value == "(":
		f.open++
	case t.Value == ")":
		f.open--
	}
}

// clauseBegins reports whether token i begins a clause or a second number, and lacks the
// comma before it.
func (f *formatter) clauseBegins(tokens []lexer.Token, i int) bool {
	if f.spec == nil || i == 0 && !f.joined {
		return false
	}
	t := &tokens[i]
	if (t.Type == tokNumber || isInches(t)) && i > 1 && !f.wayBegins(tokens, i) {
		return f.spec.numbers && !f.pastPlace() && endsQuantity(tokens[:i]) && !continuesFeet(tokens, i)
	}
	if i > 1 && f.wayBegins(tokens, i) {
		return true
	}
	if t.Type != tokWord || !slices.Contains(f.spec.shape().marked, t.Value) {
		return false
	}
	if i > 0 && isSoft(t.Value) && slices.Contains(f.spec.shape().marked, tokens[i-1].Value) {
		return false // what the clause before it is given
	}
	if f.spec.shape().midClause(func(i int) *lexer.Token { return &tokens[i] }, 0, i) {
		return false
	}
	if f.spec.word == "sensor" && i == behindBy(tokens) {
		return false // the height
	}
	if t.Value == "with" && !f.joined && f.spec.turns() && i == behindTurn(tokens) {
		return false // whom the camera turns with
	}
	f.clauses++
	// With another move, or landing on a moment, is apart from what the move is.
	apart := f.spec.apart || f.clauses > 1 || t.Value == "with" || t.Value == "landing"
	return i > 0 && apart && endsClause(tokens[:i])
}

// wayBegins reports whether token i, which is a number, begins another way of a place on
// the floor or an angle of an aim, and lacks the comma before it. Behind a name it does in a
// statement whose places are all on the floor.
func (f *formatter) wayBegins(tokens []lexer.Token, i int) bool {
	before := &tokens[i-1]
	switch t := &tokens[i]; {
	case t.Type != tokNumber && t.Type != tokFeet:
		return false
	case before.Type == tokWord && isFloorWay(before.Value) && before.Value != "towards":
		return i > 2 && endsOperand(tokens[:i-1]) && f.spec.shape().hasFloor()
	}
	return f.spec.floors && isName(before) && !slices.Contains(f.spec.shape().marked, before.Value) && tokens[i-2].Value != ","
}

// hasFloor reports whether a statement may have a place on the floor.
func (s *shape) hasFloor() bool {
	return slices.ContainsFunc(s.slots, func(slot slot) bool { return slot.kind == slotFloor })
}

// pastPlace reports whether a clause has begun behind the place that somebody moves to. A
// number there is none of the place.
func (f *formatter) pastPlace() bool { return f.spec.word == movesWord && f.clauses > 0 }

// behindBy returns the number of the token behind the x of two lengths, 0 where there is
// none.
func behindBy(tokens []lexer.Token) int {
	for i := 2; i < len(tokens); i++ {
		if tokens[i].Value == "x" {
			return i + 1
		}
	}
	return 0
}

// turns reports whether the statement turns the camera.
func (s *spec) turns() bool { return s.word == "pan" || s.word == "tilt" }

// behindTurn returns the number of the token behind `pan`, `tilt` or `pan and tilt`.
func behindTurn(tokens []lexer.Token) int {
	if len(tokens) > 2 && tokens[1].Value == "and" {
		return 3
	}
	return 1
}

// endsClause reports whether a clause can end with these tokens.
func endsClause(tokens []lexer.Token) bool {
	t := &tokens[len(tokens)-1]
	switch t.Value {
	case "smooth", "even", "left", "right", "wire":
		return t.Type == tokWord
	}
	return endsOperand(tokens)
}

// endsQuantity reports whether the tokens end with a number and its unit, or
// with the diagonal of a screen.
func endsQuantity(tokens []lexer.Token) bool {
	t := &tokens[len(tokens)-1]
	return t.Type == tokWord && (t.Value == "diagonal" || isKeyword(t.Value) && endsOperand(tokens))
}

// endsOperand reports whether the tokens end with a value. A sign after them is then an
// operator.
func endsOperand(tokens []lexer.Token) bool {
	n := len(tokens)
	t := &tokens[n-1]
	switch t.Type {
	case tokNumber, tokFeet, tokStop, tokTimecode, tokText, tokPerf, tokClock:
		return true
	case tokPunct:
		return t.Value == ")" || t.Value == "%" || t.Value == "°"
	case tokWord:
		if n == 1 && specOf[t.Value] != nil { // it begins the statement
			return false
		}
		if !isKeyword(t.Value) || t.Value == "inf" || n > 2 && tokens[n-2].Value == "of" && tokens[n-3].Value == "end" {
			return true
		}
		_, unit := unitOf(t.Value)
		return unit && n > 1 && (tokens[n-2].Type == tokNumber || tokens[n-2].Value == "/")
	}
	return false
}

// A row holds what decides the spacing of a token.
type row struct {
	tokens []lexer.Token
	joined bool
	spec   *spec // the statement; nil: none
}

// blankBefore reports whether Format writes a blank before token i.
func (r row) blankBefore(i int) bool {
	before, t := &r.tokens[i-1], &r.tokens[i]
	switch {
	case before.Type == tokID && r.tokens[0].Value == "shot":
		return true // whatever touches an ID belongs to it
	case t.Type == tokInvalid && t.Value[0] != '#' && r.followsNumber(i-1):
		return true // a sign behind a unit would be part of a word that stands alone
	case before.Type == tokInvalid || t.Type == tokInvalid || r.startsShot(i):
		return endOf(before).Offset != t.Pos.Offset
	case t.Type == tokPunct && r.touchesLeft(i):
		return false
	case before.Type == tokPunct && r.touchesRight(i-1):
		return false
	case before.Type == tokNumber && t.Value == "df":
		return false // the rate 29.97df
	}
	return true
}

// followsNumber reports whether token i is a word after a number. It is a unit, which
// people may write without a blank, as in 5cm; the formatter adds the blank.
func (r row) followsNumber(i int) bool {
	return i > 0 && r.tokens[i].Type == tokWord && r.tokens[i-1].Type == tokNumber
}

// startsShot reports whether token i follows the word shot. There, a blank would turn the
// token into an ID.
func (r row) startsShot(i int) bool {
	return i == 1 && !r.joined && r.tokens[0].Value == "shot" && r.tokens[1].Type != tokID
}

// touchesLeft reports whether sign i has no blank before it.
func (r row) touchesLeft(i int) bool {
	switch r.tokens[i].Value {
	case ",", ":", ")", "°":
		return true
	case "(":
		begins := r.spec != nil && r.spec.word == r.tokens[i-1].Value // with a soft word
		list := i == 1 && !begins || i == 2 && r.tokens[0].Value == "move"
		return list && isName(&r.tokens[i-1])
	case "/":
		return r.perSecond(i)
	}
	return false
}

// touchesRight reports whether sign i has no blank after it.
func (r row) touchesRight(i int) bool {
	switch t := &r.tokens[i]; {
	case t.Value == "(":
		return true
	case t.Value == "/":
		return r.perSecond(i)
	case isSign(t):
		return i == 0 || !endsOperand(r.tokens[:i]) && !r.startsShot(i)
	}
	return false
}

// perSecond reports whether sign i is the slash of deg/s, bit/s or m/s.
func (r row) perSecond(i int) bool {
	if i < 2 || i+1 >= len(r.tokens) || r.tokens[i+1].Value != "s" || r.tokens[i-2].Type != tokNumber {
		return false
	}
	switch r.tokens[i-1].Value {
	case "deg", "bit", "m", "ft":
		return true
	}
	return false
}
