// Moments: what the tags say of them, and the one parser of it.

package lang

import (
	"cmp"
	"reflect"
	"strconv"
	"sync"

	"github.com/alecthomas/participle/v2"
	"github.com/alecthomas/participle/v2/lexer"
)

var (
	_ participle.Parseable = (*Anchor)(nil)
	_ participle.Parseable = (*product)(nil)
)

// A moment is how an Anchor is written. Its words come first, then a name, and
// last a time: a value that is worked out begins with a name too, and is told
// by the sign behind it.
type moment struct {
	End    *ending  `parser:"( 'end' 'of' @@ |" is:"end" say:"NAME | end of [NAME] \"WORDS\" [N] | end of KEYWORD"`
	Who    *Name    `parser:"( (?= ( Word | Text | Stop ) Text ) @@ )?"`
	Words  *Text    `parser:"@@" say:"WORDS"`
	Count  string   `parser:"@Number? |" say:"N"`
	Name   *Name    `parser:"(?! ( Word | Text | Stop ) ( '*' | '/' ) ) @@ |"`
	Time   *product `parser:"(?! 'inf' ) @@ )" is:"time"`
	Offset *Expr    `parser:"( (?= '+' | '-' | '−' ) @@ )?" is:"time" say:"+ TIME | - TIME"`
}

// An ending is what a moment is the end of: the statement beside it that begins
// with a keyword, words, or what a name stands for. One text alone is taken for
// words; it may be a name in quotes.
type ending struct {
	Of    string `parser:"@( 'moves' | 'dolly' | 'zoom' | 'rack' | 'action' ) |"`
	Who   *Name  `parser:"( (?= ( Word | Text | Stop ) Text ) @@ )?"`
	Words *Text  `parser:"@@"`
	Count string `parser:"@Number? |" say:"N"`
	Name  *Name  `parser:"@@"`
}

// A product is an Expr up to the first sign of a sum: in a moment a sum is what
// the moment is moved by.
type product Expr

// moments is the parser of moments.
var moments = sync.OnceValue(func() *participle.Parser[moment] {
	return participle.MustBuild[moment](participle.Lexer(definition{}))
})

// momentShape returns what the tags of a moment say.
func momentShape() *shape { return shapeOf(reflect.TypeFor[moment]()) }

// Parse reads a moment. By hand it is only handed on, so that the statements
// that have moments share one parser: each would build its own. Where it fails
// it leaves lex where it was.
func (a *Anchor) Parse(lex *lexer.PeekingLexer) error {
	start := lex.MakeCheckpoint()
	m, err := moments().ParseFromLexer(lex, participle.AllowTrailing(true))
	if err == nil {
		a.Pos, a.EndPos = m.place(lex, start)
		if f := a.fill(m, lex, start); f != nil {
			err = f
		}
	}
	if err == nil {
		return nil
	}
	lex.LoadCheckpoint(start)
	if f, ok := err.(*fault); ok {
		return f
	}
	return participle.NextMatch
}

// place returns where the tokens of a moment begin and end.
func (m *moment) place(lex *lexer.PeekingLexer, start lexer.Checkpoint) (from, to lexer.Position) {
	tokens := lex.Range(start.RawCursor(), lex.RawCursor())
	return tokens[0].Pos, endOf(&tokens[len(tokens)-1])
}

// fill makes the anchor of the moment.
func (a *Anchor) fill(m *moment, lex *lexer.PeekingLexer, start lexer.Checkpoint) *fault {
	a.Name, a.Words, a.Time, a.Offset = m.Name, m.Words, (*Expr)(m.Time), m.Offset
	switch {
	case m.End != nil:
		a.Kind, a.Name, a.Words, a.Of = AnchorEnd, cmp.Or(m.End.Name, m.End.Who), m.End.Words, m.End.Of
	case m.Words != nil:
		a.Kind, a.Name = AnchorWords, m.Who
	case m.Name != nil:
		a.Kind = AnchorName
	default:
		a.Kind = AnchorTime
	}
	count := m.Count
	if m.End != nil {
		count = m.End.Count
	}
	if count == "" {
		return nil
	}
	var err error
	if a.Nth, err = strconv.Atoi(count); err == nil && a.Nth > 0 {
		return nil
	}
	for _, t := range lex.Range(start.RawCursor(), lex.RawCursor()) {
		if t.Type == tokNumber {
			return faultAt(&t, "bad-number", "%s counts no words", describe(&t)).
				because("\"word\" 2 is the second of that word in the line.").
				offers(deleting(onTokens(&t, &t), t.Value))
		}
	}
	return nil
}

// Parse reads a product of values.
func (x *product) Parse(lex *lexer.PeekingLexer) error {
	return readExpr(lex, (*Expr)(x), (*exprReader).product)
}
