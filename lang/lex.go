// The scanner: from characters to tokens, with the mistakes that are seen in
// the characters alone. It cannot fail and cannot stand still.

package lang

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/alecthomas/participle/v2/lexer"
)

// A scanner cuts a source into tokens, white space left out. Every token's
// Value is the stretch of the source that it stands on.
type scanner struct {
	src  string
	pos  int            // the next character
	mark lexer.Position // the place of the last token's start
	eol  int            // the end of the line, where it is at pos or behind it

	blank bool            // a blank or a line's start stands before pos
	prev  lexer.TokenType // kind and value of the last token but comments
	value string
	first bool   // the last token began its statement
	lead  string // the first token of the statement, and how many there are of it
	nth   int

	faults []*fault
}

const byteOrderMark = "\uFEFF"

func newScanner(filename, src string) *scanner {
	s := &scanner{src: src, eol: -1, blank: true, prev: tokLine}
	if strings.HasPrefix(src, byteOrderMark) { // it is no character of the first line
		s.pos = len(byteOrderMark)
	}
	s.mark = lexer.Position{Filename: filename, Offset: s.pos, Line: 1, Column: 1}
	return s
}

// scan returns the next token, an EOF after the last.
func (s *scanner) scan() lexer.Token {
	s.skipBlanks()
	s.mark.Column += utf8.RuneCountInString(s.src[s.mark.Offset:s.pos])
	s.mark.Offset = s.pos
	t := lexer.Token{Pos: s.mark}
	if s.pos == len(s.src) {
		t.Type = lexer.EOF
		return t
	}
	t.Type = s.token()
	t.Value = s.src[t.Pos.Offset:s.pos]
	s.blank = false
	switch t.Type {
	case tokLine, tokJoin:
		s.mark.Line++
		s.mark.Column = 1
		s.mark.Offset = s.pos
		s.blank = true
	case tokComment:
		return t
	}
	if t.Type != tokJoin {
		s.first = s.prev == tokLine
		if s.nth++; s.first {
			s.lead, s.nth = t.Value, 1
		}
		s.prev, s.value = t.Type, t.Value
	}
	return t
}

// token moves past the token at pos, which is no blank, and tells its kind.
func (s *scanner) token() lexer.TokenType {
	c := s.src[s.pos]
	switch {
	case c == '\n' || c == '\r':
		return s.lineEnd()
	case c == '#' && s.blank:
		return s.comment()
	case s.shotID():
		return tokID
	case c == '"':
		return s.text(`"`, `"`)
	case isDigit(c) || c == '.' && isDigit(s.byteAt(s.pos+1)):
		return s.number()
	case isWordByte(c):
		return s.word()
	case strings.IndexByte(",:()+-*/=%;", c) >= 0:
		s.pos++
		return tokPunct
	}
	return s.wide()
}

// wide reads words, and what begins with a character beyond ASCII.
func (s *scanner) wide() lexer.TokenType {
	r, size := utf8.DecodeRuneInString(s.src[s.pos:])
	switch {
	case r == '_' || unicode.IsLetter(r):
		return s.word()
	case r == '“':
		return s.text("“", "”")
	case r == '×' || r == '−' || r == '°':
		s.pos += size
		return tokPunct
	}
	return s.invalid()
}

// lineEnd reads a line's end, and tells whether the statement goes on.
func (s *scanner) lineEnd() lexer.TokenType {
	if s.src[s.pos] == '\r' && s.byteAt(s.pos+1) == '\n' {
		s.pos++
	}
	s.pos++
	if s.prev != tokPunct || s.value != "," {
		return tokLine
	}
	rest := s.pos + blanks(s.src[s.pos:])
	if c := s.byteAt(rest); rest == len(s.src) || c == '\n' || c == '\r' {
		return tokLine // a comma before an empty line joins nothing
	}
	if id, isShot := strings.CutPrefix(s.src[rest:], "shot"); isShot && blanks(id) > 0 {
		return tokLine // no clause begins so, and what follows has to be read as an ID
	}
	return tokJoin
}

func (s *scanner) comment() lexer.TokenType {
	s.pos += len(trimBlanks(s.restOfLine()))
	return tokComment
}

// shotID moves past a shot's ID: what stands, after a blank, behind the word
// shot that begins a statement, up to the next blank or quote.
func (s *scanner) shotID() bool {
	if s.prev != tokWord || !s.blank {
		return false
	}
	if !s.first || s.value != "shot" {
		return s.shotRef()
	}
	id := strings.TrimRight(s.restOfLine()[:s.idLength()], ",")
	s.pos += len(id)
	return id != ""
}

// shotRef moves past the ID of another shot, behind the words of a statement that speaks of
// one, up to the next blank, quote or comma.
func (s *scanner) shotRef() bool {
	switch rest := s.restOfLine(); {
	case s.first && s.value == "matches":
		if word := rest[:wordLength(rest)]; word == movesWord || strings.HasPrefix(rest, ":") || strings.HasPrefix(rest, "(") {
			return false
		}
	case s.nth == 2 && (s.lead == "runs" && s.value == "with" || s.lead == "cut" && s.value == "to"):
	case s.nth == 3 && s.lead == "camera" && s.value == "in":
	default:
		return false
	}
	id, _, _ := strings.Cut(s.restOfLine()[:s.idLength()], ",")
	s.pos += len(id)
	return id != ""
}

// idLength measures what stands up to the next blank or quote.
func (s *scanner) idLength() int {
	n := 0
	for _, r := range s.restOfLine() {
		if isBlank(r) || r == '"' || r == '“' || unicode.IsControl(r) || r == utf8.RuneError {
			break
		}
		n += utf8.RuneLen(r)
	}
	return n
}

// text reads a quoted text with the given quotes.
func (s *scanner) text(open, closing string) lexer.TokenType {
	rest := s.restOfLine()
	for i := len(open); i < len(rest); i++ {
		switch {
		case rest[i] == '\\':
			i++
		case strings.HasPrefix(rest[i:], closing):
			s.pos += i + len(closing)
			return tokText
		}
	}
	start := s.pos
	s.pos += len(trimBlanks(rest))
	s.report("unfinished-text", start, "this text has no closing quote",
		"A text ends on its line, with %s. A quote inside it is written \\\".", closing).
		offers(s.closed(start, closing))
	return tokInvalid
}

// word reads a name or keyword, or a stop.
func (s *scanner) word() lexer.TokenType {
	if (s.prev == tokNumber || s.prev == tokFeet) && s.src[s.pos] == 'x' && isDigit(s.byteAt(s.pos+1)) {
		s.pos++ // the x of 24.89x18.66
		return tokWord
	}
	start := s.pos
	s.pos += s.nameLength()
	word := s.src[start:s.pos]
	switch {
	case word == "f" && s.byteAt(s.pos) == '/' && isDigit(s.byteAt(s.pos+1)):
		s.pos++
	case !isTStop(word) && s.byteAt(s.pos) == '.' && isDigit(s.byteAt(s.pos+1)):
		return s.stopElsewhere(start)
	case !isTStop(word):
		return tokWord
	case s.byteAt(s.pos) != '.' && s.byteAt(s.pos) != ',' || !isDigit(s.byteAt(s.pos+1)):
		return tokStop
	}
	s.decimals(start)
	return tokStop
}

// stopElsewhere reads the rest of a word that a point and a digit follow, and
// reports it where it is a stop in a spelling of elsewhere, such as f2.8.
func (s *scanner) stopElsewhere(start int) lexer.TokenType {
	end := s.pos
	s.pos++
	s.digits()
	written, _, ok := stopMeant(s.src[start:s.pos])
	if !ok {
		s.pos = end
		return tokWord
	}
	s.report("bad-number", start, "a stop is written "+shorten(written), "").writes(written)
	return tokStop
}

// nameLength measures the word at pos. Behind a number stands a unit, which has
// nothing inside: 2 m-beat is a difference.
func (s *scanner) nameLength() int {
	n := wordLength(s.src[s.pos:])
	if s.prev == tokNumber {
		if i := strings.IndexAny(s.src[s.pos:s.pos+n], "-'.’"); i >= 0 {
			return i
		}
	}
	return n
}

// isTStop reports whether a word is T and digits: a stop or a name.
func isTStop(word string) bool {
	return len(word) > 1 && word[0] == 'T' && strings.Trim(word[1:], "0123456789") == ""
}

// wordLength measures the name at the start of src.
func wordLength(src string) int {
	for i := 0; i < len(src); {
		if c := src[i]; c < utf8.RuneSelf {
			if !isWordByte(c) && !joinsLetters(rune(c), src[i+1:]) {
				return i
			}
			i++
			continue
		}
		r, size := utf8.DecodeRuneInString(src[i:])
		if !unicode.In(r, unicode.L, unicode.M, unicode.Nd) && !joinsLetters(r, src[i+size:]) {
			return i
		}
		i += size
	}
	return len(src)
}

// joinsLetters reports whether r may stand inside a name before rest: an
// apostrophe, a hyphen or a dot before a letter, and the two joiners that
// Persian and the scripts of India need.
func joinsLetters(r rune, rest string) bool {
	switch r {
	case '-', '\'', '.', '’', '\u200C', '\u200D':
		next, _ := utf8.DecodeRuneInString(rest)
		return unicode.IsLetter(next)
	}
	return false
}

// invalid reads a run of characters that no token begins with.
func (s *scanner) invalid() lexer.TokenType {
	start := s.pos
	bad, size := utf8.DecodeRuneInString(s.src[s.pos:])
	for s.pos += size; s.pos < len(s.src); s.pos += size {
		r, n := utf8.DecodeRuneInString(s.src[s.pos:])
		if size = n; r != bad {
			break
		}
	}
	switch {
	case bad == utf8.RuneError && s.pos-start > 0 && !strings.HasPrefix(s.src[start:], "\uFFFD"):
		s.report("bad-character", start, "these bytes are no UTF-8 text", "Save the file as UTF-8.")
	case bad == '#':
		f := s.report("bad-character", start, "a comment needs a blank before its #", "")
		if f != nil {
			f.offers(inserting(f.Pos, " ", "a blank"))
		}
	case bad == '’' || bad == '\'' || bad == '”' || bad == '′' || bad == '″':
		s.report("bad-character", start, fmt.Sprintf("%c stands alone", bad),
			"Write a text between two \" or between “ and ”; feet and inches follow digits, as in 5'6\".").
			offers(s.otherQuotes(start)...)
	case unicode.IsPrint(bad):
		f := s.report("bad-character", start, fmt.Sprintf("%c has no meaning here", bad), "Put names with such characters in quotes.")
		if bad == '‘' {
			f.offers(s.otherQuotes(start)...)
		}
		if f != nil {
			f.offers(offer{kind: offerName, title: "Put it in quotes", at: f.Node}.instead())
		}
	default:
		f := s.report("bad-character", start, fmt.Sprintf("the file holds the invisible character U+%04X", bad), "Delete it.")
		if f != nil {
			f.offers(offer{title: "Delete it", at: f.Node})
		}
	}
	return tokInvalid
}

// report notes a mistake between start and pos.
// It returns nil where there are too many.
func (s *scanner) report(code string, start int, message, detail string, args ...any) *fault {
	if len(s.faults) > maxDiagnostics {
		return nil
	}
	if len(args) > 0 {
		detail = fmt.Sprintf(detail, args...)
	}
	f := &fault{Node: s.placeFrom(start), code: code, message: message, detail: detail}
	s.faults = append(s.faults, f)
	return f
}

// placeFrom returns the place between start and pos.
func (s *scanner) placeFrom(start int) Node {
	from := s.mark
	from.Column += utf8.RuneCountInString(s.src[from.Offset:start])
	from.Offset = start
	to := from
	to.Column += utf8.RuneCountInString(s.src[start:s.pos])
	to.Offset = s.pos
	return Node{from, to}
}

// closed offers the quote that a text from start to pos lacks.
func (s *scanner) closed(start int, closing string) offer {
	at := s.placeFrom(start)
	text, ok := strings.CutSuffix(s.src[start:s.pos], `"`)
	if !ok || closing == `"` {
		text = s.src[start:s.pos]
	}
	return offer{title: "Add the closing quote", at: at, text: text + closing}
}

// otherQuotes offers the quotes of the language for those of elsewhere: ‘ and ’, or two ',
// around what begins before start or at it and ends on the same line.
func (s *scanner) otherQuotes(start int) []offer {
	const longest = 200 // bytes before or behind
	line := s.src[max(0, start-longest):start]
	line = line[strings.LastIndexAny(line, "\n\r")+1:]
	begin := start - len(line)
	rest := upTo(s.src[start:], longest)
	if i := strings.IndexAny(rest, "\n\r"); i >= 0 {
		rest = rest[:i]
	}
	m := singleQuotes().FindStringSubmatchIndex(line + rest)
	if m == nil || begin+m[0] > start || begin+m[1] <= start {
		return nil
	}
	from := s.placeFrom(start).Pos
	from.Column -= utf8.RuneCountInString(s.src[begin+m[0] : start])
	from.Offset = begin + m[0]
	whole := s.src[begin+m[0] : begin+m[1]]
	to := from
	to.Column += utf8.RuneCountInString(whole)
	to.Offset += len(whole)
	return []offer{writing(Node{from, to}, WriteText(s.src[begin+m[2]:begin+m[3]]))}
}

// singleQuotes matches a text in single quotes.
var singleQuotes = onUse("[‘']([^‘’']+)[’']")

func (s *scanner) skipBlanks() {
	n := blanks(s.src[s.pos:])
	s.pos += n
	s.blank = s.blank || n > 0
}

// restOfLine returns the source from pos to the end of its line.
func (s *scanner) restOfLine() string {
	if s.eol < s.pos {
		s.eol = len(s.src)
		if i := strings.IndexAny(s.src[s.pos:], "\n\r"); i >= 0 {
			s.eol = s.pos + i
		}
	}
	return s.src[s.pos:s.eol]
}

// byteAt returns a byte of the source, 0 past its end.
func (s *scanner) byteAt(i int) byte {
	if i < len(s.src) {
		return s.src[i]
	}
	return 0
}

// blanks measures the blanks at the start of src; line ends are none.
func blanks(src string) int {
	for i := 0; i < len(src); {
		switch c := src[i]; {
		case c == ' ' || c == '\t':
			i++
		case c < utf8.RuneSelf && c != '\v' && c != '\f':
			return i
		default:
			r, size := utf8.DecodeRuneInString(src[i:])
			if !isBlank(r) {
				return i
			}
			i += size
		}
	}
	return len(src)
}

// trimBlanks returns s without the blanks at its end.
func trimBlanks(s string) string { return strings.TrimRightFunc(s, isBlank) }

// isBlank reports whether r is white space; no-break and thin spaces are, and
// so is a byte order mark.
func isBlank(r rune) bool {
	return unicode.IsSpace(r) && r != '\n' && r != '\r' || r == '\uFEFF'
}

func isDigit(c byte) bool { return '0' <= c && c <= '9' }

func isWordByte(c byte) bool {
	return 'a' <= c && c <= 'z' || 'A' <= c && c <= 'Z' || c == '_' || isDigit(c)
}
