// The kinds of token, and the lexer as participle knows it.

package lang

import (
	"io"
	"sync"
	"unicode/utf8"

	"github.com/alecthomas/participle/v2/lexer"
)

// The kinds of token. tokLine ends a statement; tokJoin is a line break inside
// one, after a comma; neither it nor a comment reaches the grammar.
const (
	tokWord lexer.TokenType = iota + 1
	tokText
	tokNumber // 12, 2.5, 1/50
	tokFeet   // 5', 5'6", 5'-6", 5' 6 1/2", 6"
	tokStop   // f/2.8, T2.1, T2
	tokTimecode
	tokPerf  // 3-perf, behind the name of a format
	tokClock // 4 o'clock, 4:30 o'clock
	tokID    // the ID of a shot, up to the blank
	tokPunct
	tokLine
	tokJoin
	tokComment
	tokInvalid
)

// definition is the language's lexer for participle. It never returns an
// error: what is no token is one of kind Invalid.
type definition struct{}

var (
	_ lexer.Definition       = definition{}
	_ lexer.StringDefinition = definition{}
)

// Symbols names the kinds of token for the grammar's tags.
func (definition) Symbols() map[string]lexer.TokenType { return symbols() }

// symbols makes one map for all parsers: participle asks for it at every name in
// a tag.
var symbols = sync.OnceValue(func() map[string]lexer.TokenType {
	return map[string]lexer.TokenType{
		"EOF": lexer.EOF, "Word": tokWord, "Text": tokText, "Number": tokNumber,
		"Feet": tokFeet, "Stop": tokStop, "Timecode": tokTimecode, "ID": tokID,
		"Perf": tokPerf, "Clock": tokClock, "Punct": tokPunct, "Line": tokLine, "Join": tokJoin, "Comment": tokComment,
		"Invalid": tokInvalid,
	}
})

func (d definition) Lex(filename string, r io.Reader) (lexer.Lexer, error) {
	src, err := io.ReadAll(r)
	if err != nil {
		return nil, err
	}
	return d.LexString(filename, string(src))
}

func (definition) LexString(filename, src string) (lexer.Lexer, error) {
	return newGrammarLexer(filename, src, 0), nil
}

// grammarLexer hands the grammar what it reads: no comments, no joins, and one
// end of line for any number of empty lines.
type grammarLexer struct {
	*scanner
	ahead  lexer.Token // the next token
	within bool        // a statement has begun
	total  int         // tokens so far
	// A lexer with a chunk size says EOF before a shot or move where it has
	// returned as many tokens, and then goes on: participle keeps all tokens up
	// to an EOF, and a whole film's would be slow to move about.
	chunk, count int
}

func newGrammarLexer(filename, src string, chunk int) *grammarLexer {
	g := &grammarLexer{scanner: newScanner(filename, src), chunk: chunk}
	g.ahead = g.read()
	return g
}

// Next returns the next token; its error is always nil.
func (g *grammarLexer) Next() (lexer.Token, error) {
	t := g.ahead
	g.count++
	if g.chunk > 0 && g.count > g.chunk && !g.within && g.opensScene() {
		return lexer.EOFToken(t.Pos), nil
	}
	g.within = t.Type != tokLine
	if !t.EOF() {
		g.ahead = g.read()
	}
	return t, nil
}

// opensScene reports whether the next token is the header of a shot or move.
func (g *grammarLexer) opensScene() bool {
	return g.ahead.Type == tokWord && (g.ahead.Value == "shot" || g.ahead.Value == "move")
}

// nextChunk starts the count anew, and reports whether there is more to read.
func (g *grammarLexer) nextChunk() bool {
	g.count = 0
	return !g.ahead.EOF()
}

// read scans the next token that the grammar sees.
func (g *grammarLexer) read() lexer.Token {
	within := g.ahead.Type != tokLine && g.ahead.Type != 0
	for {
		t := g.scan()
		switch {
		case t.Type == tokComment || t.Type == tokJoin || t.Type == tokLine && !within:
			continue
		case t.Type == lexer.EOF && within:
			t.Type = tokLine // every statement has its end
		}
		if g.total++; g.total >= maxTokens {
			t = lexer.EOFToken(t.Pos)
		}
		return t
	}
}

// endOf returns the place right after a token.
func endOf(t *lexer.Token) lexer.Position {
	p := t.Pos
	if t.Type == tokLine || t.Type == lexer.EOF {
		return p
	}
	p.Offset += len(t.Value)
	p.Column += utf8.RuneCountInString(t.Value)
	return p
}
