// Quoting: a line of the source with the fault underlined.

package lang

import (
	"bytes"
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/width"
)

// Line returns line n of the file, counted from 1, without its line end. It returns ""
// if there is no such line.
func (f *File) Line(n int) string {
	rest := f.Source
	for ; n > 1 && len(rest) > 0; n-- {
		i := bytes.IndexAny(rest, "\n\r")
		if i < 0 {
			return ""
		}
		if rest[i] == '\r' && i+1 < len(rest) && rest[i+1] == '\n' {
			i++
		}
		rest = rest[i+1:]
	}
	if n < 1 {
		return ""
	}
	if i := bytes.IndexAny(rest, "\n\r"); i >= 0 {
		rest = rest[:i]
	}
	return string(rest)
}

// quoteWidth is the most columns that Quote gives to a line of the source.
const quoteWidth = 100

// Quote returns the line on which a diagnostic begins and, under it, a line that marks
// the fault with ^~~~. Both end in a line feed. It keeps tabs, so that both lines align.
// Wide characters count as two columns, combining marks as none. It replaces characters
// that a terminal could take for a command. It shows only the part of a long line around
// the fault. It returns "" for a diagnostic that has no place in src.
func Quote(d Diagnostic, src []byte) string {
	start, end := d.Range.Start, d.Range.End
	if start.Line < 1 || start.Offset < 0 || start.Offset > len(src) {
		return ""
	}
	from, to := lineAround(src, start.Offset)
	text := strings.TrimPrefix(string(src[from:to]), byteOrderMark)
	from = to - len(text)
	first := max(start.Offset-from, 0)
	last := min(max(end.Offset-from, first), len(text))

	line := newCells(text, first, last)
	line.window(quoteWidth)
	head := fmt.Sprintf("%5d | ", start.Line)
	gap := strings.Repeat(" ", len(head)-2) + "| "
	quoted, marks := line.draw()
	return head + quoted + "\n" + gap + marks + "\n"
}

// lineAround returns where the line around an offset begins and ends, or the
// part of it that Quote can show.
func lineAround(src []byte, offset int) (from, to int) {
	const far = 4 * quoteWidth // bytes: a character has four at most
	from, to = max(0, offset-far), min(len(src), offset+far)
	if i := bytes.LastIndexAny(src[from:offset], "\n\r"); i >= 0 {
		from += i + 1
	}
	for from < offset && !utf8.RuneStart(src[from]) {
		from++
	}
	if i := bytes.IndexAny(src[offset:to], "\n\r"); i >= 0 {
		to = offset + i
	}
	return from, to
}

// A cell is a character of a quoted line.
type cell struct {
	text  string
	width int
}

// cells is a line in characters, of which those from first up to last are at
// fault.
type cells struct {
	list        []cell
	first, last int
}

// newCells cuts a line into characters; the fault is given in bytes.
func newCells(text string, first, last int) *cells {
	c := &cells{first: -1, last: -1}
	for i := 0; i < len(text); {
		if i >= first && c.first < 0 {
			c.first = len(c.list)
		}
		if i >= last && c.last < 0 {
			c.last = len(c.list)
		}
		r, size := utf8.DecodeRuneInString(text[i:])
		c.list = append(c.list, cellOf(r))
		i += size
	}
	if c.first < 0 {
		c.first = len(c.list)
	}
	if c.last < 0 {
		c.last = len(c.list)
	}
	return c
}

func cellOf(r rune) cell {
	switch {
	case r == '\t':
		return cell{"\t", 1}
	case unicode.In(r, unicode.Mn, unicode.Me) || r == '\u200C' || r == '\u200D':
		return cell{string(r), 0}
	case !unicode.IsPrint(r) && !unicode.IsSpace(r) || r == '\v' || r == '\f' || r == '\u2028' || r == '\u2029' || r == '\u0085':
		return cell{"\uFFFD", 1}
	}
	if k := width.LookupRune(r).Kind(); k == width.EastAsianWide || k == width.EastAsianFullwidth {
		return cell{string(r), 2}
	}
	return cell{string(r), 1}
}

// window cuts the line to the given number of characters around the fault.
func (c *cells) window(most int) {
	if len(c.list) <= most {
		return
	}
	from := max(0, min(c.first-most/3, len(c.list)-most))
	to := from + most
	c.list = append([]cell(nil), c.list[from:to]...)
	if from > 0 {
		c.list[0] = cell{"…", 1}
	}
	c.list[most-1] = cell{"…", 1}
	c.first -= from
	c.last = min(c.last-from, most)
}

// draw returns the line and the marks under it.
func (c *cells) draw() (quoted, marks string) {
	var line, under strings.Builder
	sign := "^"
	for i, x := range c.list {
		line.WriteString(x.text)
		switch {
		case i >= c.first && i < c.last:
			for range x.width {
				under.WriteString(sign)
				sign = "~"
			}
		case i < c.first && x.text == "\t":
			under.WriteString("\t")
		case i < c.first:
			under.WriteString(strings.Repeat(" ", x.width))
		}
	}
	if sign == "^" {
		under.WriteString(sign) // nothing is there: the mark stands behind the line
	}
	return line.String(), under.String()
}
