// Places in a text by their bytes alone.

package lines

import (
	"cmp"
	"slices"
	"strings"
	"unicode/utf8"

	"pullscore/lang"
)

// apart is how many bytes lie between two marks: few enough to count from one
// to any place, and enough that the marks are small beside the text.
const apart = 32 << 10

// A mark is where counting may begin.
type mark struct{ line, column int }

// Place returns the place of the character that begins at a byte of the text,
// which may be its end. It takes a moment wherever that is, also in a text that
// is one long line.
func (t *Text) Place(at int) lang.Range {
	t.mark()
	at = max(0, min(at, len(t.Content)))
	n := at / apart
	m := t.marks[n].after(t.Content[n*apart : at])
	start := lang.Pos{Offset: at, Line: m.line, Column: m.column}
	end := start
	if at < len(t.Content) && t.Content[at] != '\n' {
		_, size := utf8.DecodeRuneInString(t.Content[at:])
		end.Offset, end.Column = at+size, m.column+1
	}
	return lang.Range{File: t.Name, Start: start, End: end}
}

// Line returns the line with a number; without text where there is none.
func (t *Text) Line(number int) Line {
	t.mark()
	n, _ := slices.BinarySearchFunc(t.marks, number, func(m mark, number int) int { return cmp.Compare(m.line, number) })
	n = max(0, n-1) // the last mark before it, so the line begins behind that
	at := n * apart
	for line := t.marks[n].line; line < number; line++ {
		next := strings.IndexByte(t.Content[at:], '\n')
		if next < 0 {
			return Line{Number: number, Offset: len(t.Content)}
		}
		at += next + 1
	}
	text, _, _ := strings.Cut(t.Content[at:], "\n")
	return Line{Text: text, Number: number, Offset: at}
}

// mark makes the marks.
func (t *Text) mark() {
	if t.marks == nil {
		t.marks = append(t.marks, mark{1, 1})
		for from := 0; from+apart <= len(t.Content); from += apart {
			t.marks = append(t.marks, t.marks[len(t.marks)-1].after(t.Content[from:from+apart]))
		}
	}
}

// after returns the mark behind a piece of text. A character counts by its
// first byte, since the piece may end within one.
func (m mark) after(piece string) mark {
	if n := strings.Count(piece, "\n"); n > 0 {
		m.line += n
		m.column = 1
		piece = piece[strings.LastIndexByte(piece, '\n')+1:]
	}
	for i := range len(piece) {
		if c := piece[i]; c < 0x80 || c >= 0xC0 {
			m.column++
		}
	}
	return m
}
