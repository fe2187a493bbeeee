// The kinds of token, and the lexer as participle knows it.

package lang

import (
	"io"
	"unicode/utf8"

	"github.com/alecthomas/participle/v2/lexer"
)

// The kinds of token. tokLine ends a statement; tokJoin is a line break inside
// one, after a comma; neither it nor a comment reaches the grammar.
const (
	tokWord lexer.TokenType = iota + 1
	tokText
	tokNumber // 12, 2.5, 1/50
	tokFeet   // 5', 5'6", 5' 6 1/2"
	tokStop   // f/2.8, T2.1, T2
	tokTimecode
	tokID // the ID of a shot, up to the blank
	tokPunct
	tokLine
	tokJoin
	tokComment
	tokInvalid
)

// symbols names the kinds for the grammar's tags.
var symbols = map[string]lexer.TokenType{
	"EOF": lexer.EOF, "Word": tokWord, "Text": tokText, "Number": tokNumber,
	"Feet": tokFeet, "Stop": tokStop, "Timecode": tokTimecode, "ID": tokID,
	"Punct": tokPunct, "Line": tokLine, "Join": tokJoin, "Comment": tokComment,
	"Invalid": tokInvalid,
}

// definition is the language's lexer for participle. It never returns an
// error: what is no token is one of kind Invalid.
type definition struct{}

var (
	_ lexer.Definition       = definition{}
	_ lexer.StringDefinition = definition{}
)

func (definition) Symbols() map[string]lexer.TokenType { return symbols }

func (d definition) Lex(filename string, r io.Reader) (lexer.Lexer, error) {
	src, err := io.ReadAll(r)
	if err != nil {
		return nil, err
	}
	return d.LexString(filename, string(src))
}

func (definition) LexString(filename, src string) (lexer.Lexer, error) {
	return &grammarLexer{scanner: newScanner(filename, src)}, nil
}

// grammarLexer hands the grammar what it reads: no comments, no joins, and one
// end of line for any number of empty lines.
type grammarLexer struct {
	*scanner
	within bool // a statement has begun
	count  int
}

// Next returns the next token; its error is always nil.
func (g *grammarLexer) Next() (lexer.Token, error) {
	for {
		t := g.scan()
		switch {
		case t.Type == tokComment || t.Type == tokJoin || t.Type == tokLine && !g.within:
			continue
		case t.Type == lexer.EOF && g.within:
			t.Type = tokLine // every statement has its end
		}
		g.within = t.Type != tokLine && t.Type != lexer.EOF
		if g.count++; g.count == maxTokens {
			t = lexer.EOFToken(t.Pos)
			g.stop()
		}
		return t, nil
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
