// The XML, token by token. Nothing of it is kept but the names of the elements that
// are open, so a page of any length takes no memory. No entities are known but the
// five of XML, and nothing outside the file is ever read.

package fdx

import (
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"pullscore/lang/fountain"
	"pullscore/lang/lines"
)

// deepest is how deep elements may lie in each other.
const deepest = 100

var errDeep = fmt.Errorf("the file is nested more than %d deep", deepest)

// A token is a piece of the XML.
type token struct {
	kind    tokenKind
	element xml.StartElement // of a beginning, until the next token
	text    string           // of what is said
}

type tokenKind uint8

const (
	beginning tokenKind = iota
	ending
	said
	aside // a comment, or what is said to programs
)

// tokens are the tokens of a text.
type tokens struct {
	text    *lines.Text
	content string
	open    []string // the elements that are open
	began   int      // the byte where the last token begins
	told    int

	decoder *xml.Decoder // reads the next token; nil: it is read quickly
	base    int          // the byte of the content at which the decoder counts 0
	only    bool         // it reads all that is left

	at         int // the next byte that is read quickly
	closing    bool
	attributes []xml.Attr // kept for their memory

	counted, lines int // the lines up to a byte
}

func newTokens(t *lines.Text) *tokens {
	return &tokens{text: t, content: t.Content, decoder: newDecoder(strings.NewReader(t.Content)), only: !utf8.ValidString(t.Content), lines: 1}
}

func newDecoder(r io.Reader) *xml.Decoder {
	d := xml.NewDecoder(r)
	// The text is decoded already, whatever its first line says.
	d.CharsetReader = func(_ string, in io.Reader) (io.Reader, error) { return in, nil }
	return d
}

// offset returns the byte where the next token begins.
func (t *tokens) offset() int {
	if t.decoder == nil {
		return t.at
	}
	return t.base + int(t.decoder.InputOffset())
}

// report is after how many bytes progress is told again.
const report = 1 << 20

// next returns the next token.
func (t *tokens) next() (token, error) {
	t.began = t.offset()
	if t.text.Progress != nil && t.began-t.told >= report {
		t.told = t.began
		t.text.Progress(t.began, len(t.content))
	}
	k, err := t.read()
	if err != nil {
		return token{}, err
	}
	switch k.kind {
	case beginning:
		if t.open = append(t.open, k.element.Name.Local); len(t.open) > deepest {
			return token{}, errDeep
		}
	case ending:
		t.open = t.open[:len(t.open)-1]
	}
	return k, nil
}

// read reads a token, quickly where that can be.
func (t *tokens) read() (token, error) {
	if t.decoder == nil {
		if k, ok := t.quick(); ok {
			return k, nil
		}
		t.handOver()
	}
	k, err := t.decoder.Token()
	if err != nil {
		return token{}, err
	}
	switch k := k.(type) {
	case xml.StartElement:
		t.takeOver(k)
		return token{kind: beginning, element: k}, nil
	case xml.EndElement:
		return token{kind: ending}, nil
	case xml.CharData:
		return token{kind: said, text: string(k[:min(len(k), fountain.MaxSpeech+1)])}, nil
	}
	return token{kind: aside}, nil
}

// takeOver has what stands behind the first element read quickly, if that has no name
// space: all others lie in it.
func (t *tokens) takeOver(e xml.StartElement) {
	if t.only {
		return
	}
	t.only = true
	for _, a := range e.Attr {
		if a.Name.Space != "" || a.Name.Local == "xmlns" {
			return
		}
	}
	if at := t.offset(); e.Name.Space == "" && !strings.HasSuffix(t.content[:at], "/>") && !strings.Contains(e.Name.Local, ":") {
		t.decoder, t.at = nil, at
	}
}

// handOver has all that is left read by a decoder, in which the same elements are open.
func (t *tokens) handOver() {
	var before strings.Builder
	for _, name := range t.open {
		before.WriteString("<" + name + ">")
	}
	t.decoder = newDecoder(io.MultiReader(strings.NewReader(before.String()), strings.NewReader(t.content[t.at:])))
	for range t.open {
		t.decoder.Token() // these are whole
	}
	t.base = t.at - before.Len()
}

// child returns the next element that begins. At the end of the one that is open it
// returns none, and that is closed.
func (t *tokens) child() (xml.StartElement, error) {
	for {
		k, err := t.next()
		if err != nil || k.kind == ending {
			return xml.StartElement{}, err
		}
		if k.kind == beginning {
			return k.element, nil
		}
	}
}

// skip passes over the element that is open.
func (t *tokens) skip() error { return t.textTo(nil) }

// textTo reads the text of the element that is open, up to its end. No more is kept
// than a speech may have.
func (t *tokens) textTo(to *strings.Builder) error {
	for depth := len(t.open); len(t.open) >= depth; {
		k, err := t.next()
		if err != nil {
			return err
		}
		if k.kind == said && to != nil && to.Len() <= fountain.MaxSpeech {
			to.WriteString(k.text[:min(len(k.text), fountain.MaxSpeech+1)])
		}
	}
	return nil
}

// line returns the line on which the last token begins.
func (t *tokens) line() int {
	t.lines += strings.Count(t.content[t.counted:t.began], "\n")
	t.counted = t.began
	return t.lines
}

// atEnd reports whether an error is that the text ends too early.
func (t *tokens) atEnd(err error) bool {
	var syntax *xml.SyntaxError
	return errors.Is(err, io.EOF) || errors.Is(err, io.ErrUnexpectedEOF) || errors.As(err, &syntax) && syntax.Msg == "unexpected EOF"
}
