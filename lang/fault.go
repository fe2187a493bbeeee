// Mistakes as the parser meets them, in words of our own: what was found, what
// was expected, and a near miss.

package lang

import (
	"errors"
	"fmt"
	"regexp"
	"strings"
	"sync"

	"github.com/alecthomas/participle/v2"
	"github.com/alecthomas/participle/v2/lexer"
)

// A fault is a mistake at a place. It is an error to participle, which hands
// it through unchanged.
type fault struct {
	Node
	code, message, detail string
	// unit is the word that stands for a unit and is none, until it is known
	// which units may stand there.
	unit string
}

var _ participle.Error = (*fault)(nil)

func (f *fault) Error() string            { return f.message }
func (f *fault) Message() string          { return f.message }
func (f *fault) Position() lexer.Position { return f.Pos }

func (f *fault) diagnostic() Diagnostic {
	return Diagnostic{Code: f.code, Severity: Error, Message: f.message, Detail: f.detail, Range: f.Range()}
}

// faultAt makes a fault that underlines one token.
func faultAt(t *lexer.Token, code, format string, args ...any) *fault {
	return &fault{Node: Node{t.Pos, endOf(t)}, code: code, message: fmt.Sprintf(format, args...)}
}

// faultOn makes a fault that underlines a piece of the tree.
func faultOn(n *Node, code, format string, args ...any) *fault {
	return &fault{Node: *n, code: code, message: fmt.Sprintf(format, args...)}
}

// because adds sentences of explanation.
func (f *fault) because(format string, args ...any) *fault {
	if f.detail != "" {
		f.detail += " "
	}
	f.detail += fmt.Sprintf(format, args...)
	return f
}

// describe names a token in a message.
func describe(t *lexer.Token) string {
	switch {
	case t.Type == lexer.EOF || t.Type == tokLine:
		return "the end of the line"
	case t.Value == ",":
		return "a comma"
	case t.Type == tokText:
		return "the text " + shorten(t.Value)
	}
	return "`" + shorten(t.Value) + "`"
}

// shorten cuts what would not fit a message.
func shorten(s string) string {
	const most = 40
	if r := []rune(s); len(r) > most {
		return string(r[:most-1]) + "…"
	}
	return s
}

// translate turns what participle reports into a fault of our own. An error
// without a token of its own is put at the given one.
func translate(err error, s *spec, at *lexer.Token) *fault {
	var own *fault
	if errors.As(err, &own) {
		return own.withUnits(s.wants)
	}
	var unexpected *participle.UnexpectedTokenError
	if !errors.As(err, &unexpected) {
		return misplaced(at, s, nil, "")
	}
	words, kind := expectation(unexpected.Message())
	return misplaced(&unexpected.Unexpected, s, words, kind)
}

// misplaced tells that token t stands where one of words, or a piece of the
// tree of the given kind, belongs. Neither means the line should have ended.
func misplaced(t *lexer.Token, s *spec, words []string, kind string) *fault {
	found := describe(t)
	switch {
	case kind != "":
		return notA(t, kind, s.wants)
	case len(words) == 0:
		return faultAt(t, "expected-end", "expected the end of the line, found %s", found)
	}
	f := faultAt(t, "expected-word", "expected %s, found %s", choice(words), found)
	if near, ok := Nearest(t.Value, words); ok {
		f.because("Did you mean `%s`?", near)
	}
	return f
}

// withUnits adds to a fault of a unit which one may have been meant.
func (f *fault) withUnits(wants quantity) *fault {
	if f.unit != "" {
		f.because("%s", wants.suggestUnit(f.unit))
		f.unit = ""
	}
	return f
}

// asFault turns what a production returned into a fault. NextMatch means that
// t begins no piece of the tree of the given kind.
func asFault(err error, t *lexer.Token, kind string, wants quantity) *fault {
	if wants.text == "" {
		wants = quantityOf[kind]
	}
	if f, ok := err.(*fault); ok {
		return f.withUnits(wants)
	}
	return notA(t, kind, wants)
}

// noID tells that token t is no ID of a shot.
func noID(t *lexer.Token) *fault {
	return faultAt(t, "expected-name", "expected the shot's ID, found %s", describe(t)).because("An ID is one word, such as 14B.")
}

// notA tells that token t begins no piece of the tree of the given kind, which
// is the name of its type. wants, if it is not zero, says what is taken.
func notA(t *lexer.Token, kind string, wants quantity) *fault {
	found := describe(t)
	isKeyword := t.Type == tokWord && isKeyword(t.Value)
	switch {
	case kind == "Name" || kind == "Target" && isKeyword:
		return noName(t)
	case kind == "Text":
		return faultAt(t, "expected-text", "expected a text in quotes, found %s", found)
	}
	text := quantityOf[kind].text
	if text == "" {
		text = wants.text
	}
	if text == "" {
		text = "a value with its unit"
	}
	f := faultAt(t, "expected-value", "expected %s, found %s", text, found)
	if kind == "Anchor" && isKeyword {
		f.code = "keyword-name"
		f.because(keywordAsName, t.Value)
	}
	return f
}

// expected finds what participle's message asked for, as literals in quotes or
// as the name of a production.
var expected = onUse(`\(expected (.*)\)$`)

var alternative = onUse(`^[( ]*(?:\| *)?(?:"([^"]*)"|<?(\w+)>?)\)?[?*+!]?`)

// expectation reads participle's grammar notation: the words that could stand
// at the place, or the production that begins there.
func expectation(message string) (words []string, kind string) {
	m := expected().FindStringSubmatch(message)
	if m == nil {
		return nil, ""
	}
	rest := m[1]
	for {
		a := alternative().FindStringSubmatch(rest)
		if a == nil {
			return words, kind
		}
		if a[1] == "" {
			return words, strings.ToUpper(a[2][:1]) + a[2][1:]
		}
		words = append(words, a[1])
		rest = strings.TrimLeft(rest[len(a[0]):], " ")
		if !strings.HasPrefix(rest, "|") {
			return words, ""
		}
	}
}

// choice lists words as "`a`, `b` or `c`".
func choice(words []string) string {
	var b strings.Builder
	for i, w := range words {
		switch {
		case i > 0 && i == len(words)-1:
			b.WriteString(" or ")
		case i > 0:
			b.WriteString(", ")
		}
		b.WriteString("`" + w + "`")
	}
	return b.String()
}

// onUse compiles an expression when it is first used: messages need them, and
// most plans need no message.
func onUse(expression string) func() *regexp.Regexp {
	return sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(expression) })
}
