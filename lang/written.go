// Names and texts as a plan writes them.

package lang

import (
	"strings"

	"github.com/alecthomas/participle/v2/lexer"
)

// WriteName returns a name in the form that a plan needs: without quotes if possible,
// else in quotes.
func WriteName(name string) string {
	s := newScanner("", name)
	first := s.scan()
	if !isName(&first) || first.Type == tokText || s.scan().Type != lexer.EOF || len(s.faults) > 0 {
		return WriteText(name)
	}
	if read, _ := nameOf(&first); read != name { // a bare ’ is read as '
		return WriteText(name)
	}
	return name
}

// WriteText returns words as a text of a plan, in quotes. It replaces line ends by
// blanks, because a text is on one line.
func WriteText(text string) string {
	return `"` + written.Replace(text) + `"`
}

var written = strings.NewReplacer("\r\n", " ", "\n", " ", "\r", " ", `\`, `\\`, `"`, `\"`)
