// Texts: one line each, cleaned and measured when they are made.

package draw

import (
	"math"
	"strings"
	"unicode"
)

// An Align says which part of a text lies at its point.
type Align uint8

// The alignments.
const (
	Start Align = iota
	Middle
	End
)

// A Font is a size in points and a weight.
type Font struct {
	Size float64
	Bold bool
}

// A Text is one line of text. At lies on its baseline. Turn turns it clockwise round At,
// in degrees.
type Text struct {
	At     Point
	Turn   float64
	Align  Align
	Font   Font
	Ink    Ink
	String string
	Width  float64 // millimetres, as measured
	Full   string  // the whole text, if String is a shortened one
	Face   int     // of a text that Set returns: 0 an embedded font, else a face, from 1
}

// Rise and fall of a line of text about its baseline, as shares of the size:
// the box from an accented capital to a descender.
const (
	rise = 0.80
	fall = 0.22
)

// NewText returns a text at (x, y), in millimetres, cleaned and measured.
func NewText(x, y float64, s string, f Font, ink Ink) Text {
	s = Clean(s)
	return Text{At: Point{x, y}, Font: f, Ink: ink, String: s, Width: f.Width(s)}
}

// Aligned returns the text with another alignment.
func (t Text) Aligned(a Align) Text {
	t.Align = a
	return t
}

// Shortened returns the text, cut with an ellipsis if it has no room in w millimetres,
// with Slack. Full then holds the whole text.
func (t Text) Shortened(w float64) Text {
	if short := t.Font.Shorten(t.String, w); short != t.String {
		t.Full, t.String, t.Width = t.String, short, t.Font.Width(short)
	}
	return t
}

// Turned returns the text turned clockwise round its point by deg degrees.
func (t Text) Turned(deg float64) Text {
	t.Turn = deg
	return t
}

// Box returns the area that the text takes, in millimetres. That of a turned text is the
// upright box round its corners.
func (t Text) Box() Box {
	if t.Turn == 0 {
		return t.line()
	}
	return around(t.Corners())
}

// Corners returns the corners of the area that the text takes, in millimetres: the top
// left one first, as one reads the text, then clockwise.
func (t Text) Corners() [4]Point {
	b := t.line()
	return [4]Point{
		t.turned(b.X, b.Y), t.turned(b.Right(), b.Y), t.turned(b.Right(), b.Bottom()), t.turned(b.X, b.Bottom()),
	}
}

// turned returns where a point of the level text lies once the text is turned.
func (t Text) turned(x, y float64) Point {
	if t.Turn == 0 {
		return Point{x, y}
	}
	sin, cos := math.Sincos(t.Turn * math.Pi / 180)
	dx, dy := x-t.At.X, y-t.At.Y
	return Point{t.At.X + dx*cos - dy*sin, t.At.Y + dx*sin + dy*cos}
}

// line returns the area that the text takes if it is not turned.
func (t Text) line() Box {
	size := t.Font.Size * MM
	x := t.At.X
	switch t.Align {
	case Middle:
		x -= t.Width / 2
	case End:
		x -= t.Width
	}
	return Box{x, t.At.Y - rise*size, t.Width, (rise + fall) * size}
}

// Slack is by how much a text may come out wider than measured: viewers set drawings in
// the fonts that they have. Whatever keeps texts apart counts every text as that much
// wider.
const Slack = 1.15

// rounding is what a text may be wider than its room, in millimetres: less than anybody
// prints, and more than arithmetic is off.
const rounding = 1e-9

// Room returns the area that the text may take in any viewer, in millimetres: its box
// with Slack. The slack lies on the side to which the text grows, on both sides if it is
// centred.
func (t Text) Room() Box { return t.Wide().Box() }

// Wide returns the text as wide as it may come out in any viewer.
func (t Text) Wide() Text {
	t.Width *= Slack
	return t
}

// Level returns where a point of the page lies for somebody who turns the page until the
// text is level, with its own point where it is.
func (t Text) Level(p Point) Point {
	t.Turn = -t.Turn
	return t.turned(p.X, p.Y)
}

// Room returns the width that s may take in any viewer, in millimetres: with Slack.
func (f Font) Room(s string) float64 { return Slack * f.Width(s) }

// Height returns the height of the box of a line, in millimetres.
func (f Font) Height() float64 { return (rise + fall) * f.Size * MM }

// Middle returns the distance from the middle of the capitals down to the baseline, in
// millimetres.
func (f Font) Middle() float64 { return 0.36 * f.Size * MM }

// Shorten returns s, or the start of s with an ellipsis, that has room in w millimetres,
// with Slack. Marks, which have no width, stay with their letter. If nothing fits, it returns the
// ellipsis alone.
func (f Font) Shorten(s string, w float64) string {
	if w = w/Slack + rounding; f.Width(s) <= w {
		return s
	}
	room := w - f.Width("…")
	cut, sum := 0, 0.0
	for i, r := range s {
		if sum += f.advance(r); sum > room {
			break
		}
		cut = i + len(string(r))
	}
	return strings.TrimRightFunc(s[:cut], unicode.IsSpace) + "…"
}

// Wrap returns s broken into lines that have room in w millimetres, with Slack. It breaks
// at blanks, and inside a word only if the word is longer than a line. It returns at least
// one line.
func (f Font) Wrap(s string, w float64) []string {
	w = w/Slack + rounding
	var lines []string
	line := ""
	for _, word := range strings.Fields(Clean(s)) {
		if joined := line + " " + word; line != "" && f.Width(joined) <= w {
			line = joined
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		for f.Width(word) > w {
			head := f.head(word, w)
			lines = append(lines, word[:head])
			word = word[head:]
		}
		line = word
	}
	return append(lines, line)
}

// head returns how many bytes of s stand in w millimetres, at least one
// character.
func (f Font) head(s string, w float64) int {
	sum := 0.0
	for i, r := range s {
		if sum += f.advance(r); sum > w && i > 0 {
			return i
		}
	}
	return len(s)
}

// Clean returns s ready for a page. It replaces blanks of every kind by one blank. It
// replaces characters that no page can show, or that would reorder the characters
// around them, by the replacement character.
func Clean(s string) string {
	if isClean(s) {
		return s
	}
	s = strings.Map(func(r rune) rune {
		switch {
		case unicode.IsSpace(r):
			return ' '
		case unicode.IsControl(r), r == unicode.ReplacementChar, r&0xfffe == 0xfffe, reorders(r):
			return unicode.ReplacementChar
		}
		return r
	}, strings.ToValidUTF8(s, "\ufffd"))
	return strings.Join(strings.Fields(s), " ")
}

// isClean reports whether s has only visible characters of ASCII, with single blanks
// between them: as nearly every text, which then needs no copy.
func isClean(s string) bool {
	last := byte(' ')
	for i := range len(s) {
		if s[i] < ' ' || s[i] > '~' || s[i] == ' ' && last == ' ' {
			return false
		}
		last = s[i]
	}
	return last != ' ' || s == ""
}

// reorders reports whether r is a control that imposes a writing direction:
// the embeddings, overrides and isolates of Unicode Standard Annex 9.
func reorders(r rune) bool {
	return r >= 0x202a && r <= 0x202e || r >= 0x2066 && r <= 0x2069
}
