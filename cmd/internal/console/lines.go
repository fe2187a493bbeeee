// Text that is put together line by line, and written once it is whole.

package console

import (
	"io"
	"strings"
)

// Lines collects the lines of an answer for a screen.
type Lines struct {
	strings.Builder
	Screen Screen
}

// Line adds a line, without the blanks at its end.
func (l *Lines) Line(text string) { l.WriteString(strings.TrimRight(text, " ") + "\n") }

// Wrapped adds text in lines that all begin with the given blanks.
func (l *Lines) Wrapped(style Style, indent, text string) {
	for _, line := range Wrap(Clean(text), l.Screen.Width-len(indent)) {
		l.Line(indent + l.Screen.Paint(style, line))
	}
}

// hang is how much farther in the lines after the first of a hanging text begin.
const hang = "  "

// Hanging adds text whose first line begins with the given blanks, and the
// others two columns farther in.
func (l *Lines) Hanging(style Style, indent, text string) {
	for i, line := range Wrap(Clean(text), l.Screen.Width-len(indent)-len(hang)) {
		if i > 0 {
			line = hang + line
		}
		l.Line(indent + l.Screen.Paint(style, line))
	}
}

// Flush writes what was collected.
func (l *Lines) Flush() error {
	_, err := io.WriteString(l.Screen.W, l.String())
	return err
}
