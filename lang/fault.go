// Mistakes in words of our own: what was found, what was expected, and a near
// miss.

package lang

import (
	"fmt"
	"reflect"
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
	offered               []offer // what may mend it
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

// withUnits adds to a fault of a unit which one may have been meant in a field.
func (f *fault) withUnits(in *field) *fault {
	if f.unit != "" {
		var q quantity
		if in != nil {
			q = in.quantity
		}
		f.because("%s", q.suggestUnit(f.unit))
		if unit, ok := q.unitMeant(f.unit); ok {
			f.writes(unit)
		} else if len(q.units()) == 0 {
			f.offers(deleting(f.Node, f.unit))
		}
		f.unit = ""
	}
	return f
}

// noID tells that token t is no ID of a shot.
func noID(t *lexer.Token) *fault {
	return faultAt(t, "expected-name", "expected the shot's ID, found %s", describe(t)).because("An ID is one word, such as 14B.")
}

// anyValue is what an expression is where nothing says more.
const anyValue = "a value with its unit"

// notA tells that token t begins no piece of the tree, or is no token, of the
// form that is wanted there. words could stand there too.
func notA(t *lexer.Token, f *form, words []string) *fault {
	found := describe(t)
	isKeyword := t.Type == tokWord && isKeyword(t.Value)
	switch {
	case f.kind == formToken && f.token == tokID:
		return noID(t)
	case f.kind == formPiece && f.piece == nameType || (f.field.is == "target" || f.field.is == "end") && isKeyword:
		return noName(t)
	case f.kind == formPiece && f.piece == textType:
		return faultAt(t, "expected-text", "expected a text in quotes, found %s", found).offers(inQuotes(t)...)
	}
	if f.field.is == "position" {
		return noPosition(&Node{t.Pos, endOf(t)})
	}
	text := f.field.quantity.text
	if text == "" {
		text = anyValue
	}
	if len(words) > 0 {
		text += ", or " + choice(words)
	}
	fault := faultAt(t, "expected-value", "expected %s, found %s", text, found)
	if f.piece == anchorType && isKeyword {
		fault.code = "keyword-name"
		fault.because(keywordAsName, t.Value).writes(WriteText(t.Value))
	}
	return fault
}

// inQuotes offers quotes around what begins with a token: around all up to the next comma,
// else around a word.
func inQuotes(t *lexer.Token) []offer {
	if t.EOF() || t.Type == tokLine {
		return nil
	}
	o := offer{kind: offerQuotes, title: "Put it in quotes", at: Node{t.Pos, endOf(t)}}
	word := o
	word.kind = offerName
	return []offer{o, word.instead()}
}

// noPosition tells that what stands where a mark lies is none of the forms of that.
func noPosition(n *Node) *fault {
	return faultOn(n, "bad-mark", "expected %s", aPosition).because("As in: 118 deg, 3.1 in, 32 %%, 3.2 of 10, 4:30 o'clock.")
}

var (
	nameType   = reflect.TypeFor[Name]()
	refType    = reflect.TypeFor[ShotRef]()
	textType   = reflect.TypeFor[Text]()
	anchorType = reflect.TypeFor[Anchor]()
)

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
