// Tokens as an editor colours them.

package lang

import (
	"reflect"

	"github.com/alecthomas/participle/v2/lexer"
)

// A TokenKind says how an editor colours a Token.
type TokenKind uint8

// The kinds of tokens.
const (
	TokenComment TokenKind = iota
	TokenText
	TokenNumber  // a number, stop, timecode, length in feet or clock position
	TokenKeyword // a word of the language, units included
	TokenName    // any other word, and the ID of a shot
	TokenSign
	TokenUnknown // no token of the language
)

// String returns the name of the kind.
func (k TokenKind) String() string {
	return [...]string{"comment", "text", "number", "keyword", "name", "sign", "unknown"}[k]
}

// A Token is a piece of a source. Start and End are offsets in bytes.
type Token struct {
	Kind       TokenKind
	Start, End int
}

// Tokens returns the tokens of a source in their order, without white space and line
// ends. A soft word is a keyword unless Parse reads a name where it stands.
func Tokens(src []byte) (list []Token) {
	names := map[int]bool{}
	file, _ := Parse("", src)
	addNames(names, reflect.ValueOf(file))
	for s := newScanner("", string(src)); ; {
		t := s.scan()
		switch {
		case t.EOF():
			return list
		case t.Type == tokLine || t.Type == tokJoin:
			continue
		}
		kind := kindOf(t.Type)
		if t.Type == tokWord && (isKeyword(t.Value) || isSoft(t.Value) && !names[t.Pos.Offset]) {
			kind = TokenKeyword
		}
		list = append(list, Token{kind, t.Pos.Offset, t.Pos.Offset + len(t.Value)})
	}
}

// kindOf returns the kind that the scanner's kind of token has for an editor.
func kindOf(of lexer.TokenType) TokenKind {
	switch of {
	case tokComment:
		return TokenComment
	case tokText:
		return TokenText
	case tokNumber, tokFeet, tokStop, tokTimecode, tokPerf, tokClock:
		return TokenNumber
	case tokWord, tokID:
		return TokenName
	case tokPunct:
		return TokenSign
	}
	return TokenUnknown
}

// addNames adds the offset of every name below a value of the tree.
func addNames(names map[int]bool, v reflect.Value) {
	switch v.Kind() {
	case reflect.Pointer, reflect.Interface:
		if v.IsNil() {
			return
		}
		switch x := v.Interface().(type) {
		case *Name:
			names[x.Pos.Offset] = true
			return
		case *Expr:
			if x.Kind == ExprName {
				names[x.Pos.Offset] = true
			}
		}
		addNames(names, v.Elem())
	case reflect.Slice:
		if v.Type().Elem().Kind() == reflect.Uint8 {
			return // the source
		}
		for i := range v.Len() {
			addNames(names, v.Index(i))
		}
	case reflect.Struct:
		for i := range v.NumField() {
			addNames(names, v.Field(i))
		}
	}
}
