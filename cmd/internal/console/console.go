package console

import (
	"io"
	"os"

	"golang.org/x/term"
)

// A Screen is somewhere that text is written to.
type Screen struct {
	W        io.Writer
	Terminal bool
	Colour   bool
	Width    int // columns to fill at most
}

// plainWidth is the width of what is no terminal.
const plainWidth = 80

// The widths of a terminal that text is laid out for: in a narrower one it
// wraps, in a wider one lines are no longer easy to read.
const (
	narrowest = 40
	widest    = 100
)

// New returns the screen behind w. colour is "always", "never" or "auto": on a
// terminal that is not dumb, where the NO_COLOR convention (no-color.org)
// does not ask for none.
func New(w io.Writer, colour string) Screen {
	s := Screen{W: w, Width: plainWidth}
	if f, ok := w.(*os.File); ok && term.IsTerminal(int(f.Fd())) {
		s.Terminal = true
		if columns, _, err := term.GetSize(int(f.Fd())); err == nil && columns > 0 {
			s.Width = min(max(columns, narrowest), widest)
		}
	}
	switch colour {
	case "always":
		s.Colour = true
	case "auto":
		s.Colour = s.Terminal && os.Getenv("NO_COLOR") == "" && os.Getenv("TERM") != "dumb"
	}
	return s
}

// A Style is how text looks: the parameters of the control sequence SGR of
// ECMA-48. The colours are those of the terminal's own palette, which its user
// has made readable.
type Style string

// The styles that are used.
const (
	Plain  Style = ""
	Bold   Style = "1"
	Dim    Style = "2"
	Red    Style = "1;31"
	Yellow Style = "33"
	Green  Style = "32"
	Cyan   Style = "36"
)

// Paint returns the text in the style, where the screen shows colours.
func (s Screen) Paint(style Style, text string) string {
	if !s.Colour || style == Plain || text == "" {
		return text
	}
	return "\x1b[" + string(style) + "m" + text + "\x1b[0m"
}
