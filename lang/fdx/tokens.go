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

	"pullscore/lang/fountain"
	"pullscore/lang/lines"
)

// deepest is how deep elements may lie in each other.
const deepest = 100

var errDeep = fmt.Errorf("the file is nested more than %d deep", deepest)

// tokens are the tokens of a text.
type tokens struct {
	*xml.Decoder
	text  *lines.Text
	open  []string // the elements that are open
	began int      // the byte where the last token begins
	told  int
}

func newTokens(t *lines.Text, content string) *tokens {
	d := xml.NewDecoder(strings.NewReader(content))
	// The text is decoded already, whatever its first line says.
	d.CharsetReader = func(_ string, in io.Reader) (io.Reader, error) { return in, nil }
	return &tokens{Decoder: d, text: t}
}

// report is after how many bytes progress is told again.
const report = 1 << 20

// next returns the next token.
func (t *tokens) next() (xml.Token, error) {
	t.began = int(t.InputOffset())
	if t.text.Progress != nil && t.began-t.told >= report {
		t.told = t.began
		t.text.Progress(t.began, len(t.text.Content))
	}
	token, err := t.Token()
	if err != nil {
		return nil, err
	}
	switch token := token.(type) {
	case xml.StartElement:
		if t.open = append(t.open, token.Name.Local); len(t.open) > deepest {
			return nil, errDeep
		}
	case xml.EndElement:
		t.open = t.open[:len(t.open)-1]
	}
	return token, nil
}

// child returns the next element that begins. At the end of the one that is open it
// returns none, and that is closed.
func (t *tokens) child() (xml.StartElement, error) {
	for {
		token, err := t.next()
		if err != nil {
			return xml.StartElement{}, err
		}
		switch token := token.(type) {
		case xml.StartElement:
			return token, nil
		case xml.EndElement:
			return xml.StartElement{}, nil
		}
	}
}

// skip passes over the element that is open.
func (t *tokens) skip() error { return t.textTo(nil) }

// textTo reads the text of the element that is open, up to its end. No more is kept
// than a speech may have.
func (t *tokens) textTo(to *strings.Builder) error {
	for depth := len(t.open); len(t.open) >= depth; {
		token, err := t.next()
		if err != nil {
			return err
		}
		if text, ok := token.(xml.CharData); ok && to != nil && to.Len() <= fountain.MaxSpeech {
			to.Write(text[:min(len(text), fountain.MaxSpeech+1)])
		}
	}
	return nil
}

// line returns the line on which the last token begins.
func (t *tokens) line() int {
	line, _ := t.InputPos()
	return line - strings.Count(t.text.Content[t.began:t.InputOffset()], "\n")
}

// atEnd reports whether an error is that the text ends too early.
func (t *tokens) atEnd(err error) bool {
	var syntax *xml.SyntaxError
	return errors.Is(err, io.EOF) || errors.Is(err, io.ErrUnexpectedEOF) || errors.As(err, &syntax) && syntax.Msg == "unexpected EOF"
}
