// Names and texts.

package lang

import (
	"strings"

	"github.com/alecthomas/participle/v2"
	"github.com/alecthomas/participle/v2/lexer"
	"golang.org/x/text/unicode/norm"
)

var (
	_ participle.Parseable = (*Name)(nil)
	_ participle.Parseable = (*Text)(nil)
)

// Parse reads a name, with or without quotes. participle calls it.
func (n *Name) Parse(lex *lexer.PeekingLexer) error {
	t := lex.Peek()
	if !isName(t) {
		return participle.NextMatch
	}
	n.Node = Node{t.Pos, endOf(t)}
	n.Text, n.Quoted = nameOf(t)
	lex.Next()
	return nil
}

// isName reports whether a token can be a name.
func isName(t *lexer.Token) bool {
	switch t.Type {
	case tokWord:
		return !isKeyword(t.Value)
	case tokText:
		return true
	}
	return isNamedStop(t)
}

// isNamedStop reports whether a token is T2, which is a name where a name
// stands.
func isNamedStop(t *lexer.Token) bool {
	return t.Type == tokStop && isTStop(t.Value)
}

// nameOf returns the name that a token spells, in Unicode normal form C.
func nameOf(t *lexer.Token) (text string, quoted bool) {
	if t.Type == tokText {
		return norm.NFC.String(unquote(t.Value)), true
	}
	return norm.NFC.String(strings.ReplaceAll(t.Value, "’", "'")), false
}

// keywordAsName explains why a word is no name.
const keywordAsName = "This word has a meaning of its own. To use it as a name, put it in quotes: \"%s\"."

// noName tells why a token is no name.
func noName(t *lexer.Token) *fault {
	f := faultAt(t, "expected-name", "expected a name, found %s", describe(t))
	switch {
	case t.Type == tokWord && isKeyword(t.Value):
		f.code = "keyword-name"
		f.because(keywordAsName, t.Value).writes(WriteText(t.Value))
	case t.Type == tokNumber:
		f.because("Put a name that begins with a digit in quotes: \"%s\".", t.Value).
			offers(offer{kind: offerName, title: "Put it in quotes", at: Node{t.Pos, endOf(t)}})
	}
	return f
}

// Parse reads a text in quotes. participle calls it.
func (x *Text) Parse(lex *lexer.PeekingLexer) error {
	t := lex.Peek()
	if t.Type != tokText {
		return participle.NextMatch
	}
	x.Node = Node{t.Pos, endOf(t)}
	x.Value = unquote(t.Value)
	lex.Next()
	return nil
}

// unquote takes the quotes off a text, and undoes its escapes: \" and \\.
// Every other backslash stands for itself.
func unquote(s string) string {
	open, closing := `"`, `"`
	if strings.HasPrefix(s, "“") {
		open, closing = "“", "”"
	}
	s = s[len(open) : len(s)-len(closing)]
	if strings.IndexByte(s, '\\') < 0 {
		return s
	}
	return strings.NewReplacer(`\\`, `\`, `\"`, `"`, `\”`, `”`).Replace(s)
}
