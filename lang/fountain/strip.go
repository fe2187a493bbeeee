// What is not printed: boneyards and notes are taken out before the lines are
// read, and each line keeps its number.

package fountain

import (
	"iter"
	"strings"

	"pullscore/lang"
	"pullscore/lang/lines"
)

const (
	boneyardOpen, boneyardClose = "/*", "*/"
	noteOpen, noteClose         = "[[", "]]"
)

// A line is one line of the script with the number it has in the file.
type line struct {
	text   string
	number int
}

// boneyardless takes boneyards out, which may span lines and do not nest. One
// without an end is text, and told.
func boneyardless(t *lines.Text, s *Script, faults *lines.Faults) iter.Seq[line] {
	return func(yield func(line) bool) {
		y := boneyards{text: t, script: s, faults: faults}
		for l := range t.All() {
			if left, whole := y.cut(l); whole && !yield(left) {
				return
			}
		}
	}
}

// boneyards are taken out line by line.
type boneyards struct {
	text   *lines.Text
	script *Script
	faults *lines.Faults

	open    bool
	end     int  // where the open one ends, in the text
	endless bool // no boneyard has an end any more
	before  line // what stood before the open one
}

// cut returns what is left of a line; whole is false inside a boneyard, of
// which the line that it ends on joins what stood before it.
func (y *boneyards) cut(l lines.Line) (left line, whole bool) {
	at, left := 0, line{"", l.Number}
	if y.open {
		if y.end > l.Offset+len(l.Text) {
			return line{}, false
		}
		at, left, y.open = y.end-l.Offset, y.before, false
	} else if y.endless || !strings.Contains(l.Text, boneyardOpen) {
		return line{l.Text, l.Number}, true
	}
	var b strings.Builder
	b.WriteString(left.text)
	for !y.endless {
		i := strings.Index(l.Text[at:], boneyardOpen)
		if i < 0 {
			break
		}
		from := l.Offset + at + i + len(boneyardOpen)
		n := strings.Index(y.text.Content[from:], boneyardClose)
		if y.endless = n < 0; y.endless {
			y.faults.Add(unclosed(y.text, l, at+i))
			break
		}
		y.script.Boneyards++
		b.WriteString(l.Text[at : at+i])
		if y.end = from + n + len(boneyardClose); y.end > l.Offset+len(l.Text) {
			y.open, y.before = true, line{b.String(), left.number}
			return line{}, false
		}
		at = y.end - l.Offset
	}
	b.WriteString(l.Text[at:])
	return line{b.String(), left.number}, true
}

func unclosed(t *lines.Text, l lines.Line, at int) lang.Diagnostic {
	return lang.Diagnostic{
		Code: "unclosed-boneyard", Severity: lang.Warning, Range: t.At(l, at, at+len(boneyardOpen)),
		Message: "this boneyard has no end", Detail: "Close it with */. Until then it is read as text.",
	}
}

// longestNote is how many lines a note may have. One that goes on has lost its
// end, and is text.
const longestNote = 1000

// noteless takes notes out. A note may span lines, but with a truly empty line
// in it it is text. A line that held nothing but a note is gone, as it is on
// paper.
func noteless(in iter.Seq[line], s *Script) iter.Seq[line] {
	return func(yield func(line) bool) {
		n := notes{script: s, yield: yield}
		for l := range in {
			if !n.line(l) {
				return
			}
		}
		n.flush()
	}
}

// notes are taken out line by line.
type notes struct {
	script *Script
	yield  func(line) bool
	held   []line // lines of a note that has not ended yet
}

// flush yields the lines of what is no note after all.
func (n *notes) flush() bool {
	for _, l := range n.held {
		if !n.yield(l) {
			return false
		}
	}
	n.held = n.held[:0]
	return true
}

// line takes the next line; it returns false when no more is wanted.
func (n *notes) line(l line) bool {
	if len(n.held) > 0 {
		at := strings.Index(l.text, noteClose)
		switch {
		case l.text == "" || at < 0 && len(n.held) == longestNote:
			if !n.flush() {
				return false
			}
		case at < 0:
			n.held = append(n.held, l)
			return true
		default:
			n.script.Notes++
			first := n.held[0]
			open := strings.Index(first.text, noteOpen)
			l = line{first.text[:open] + l.text[at+len(noteClose):], first.number}
			n.held = n.held[:0]
			if blank(l.text) {
				return true
			}
		}
	}
	l, whole := within(l, n.script)
	if !whole {
		n.held = append(n.held, l)
		return true
	}
	return l.number == 0 || n.yield(l)
}

// within takes out the notes that begin and end on one line; whole is false
// where one is left open. A line of nothing but notes comes back without its
// number.
func within(l line, s *Script) (rest line, whole bool) {
	if !strings.Contains(l.text, noteOpen) {
		return l, true
	}
	var b strings.Builder
	text := l.text
	for {
		open := strings.Index(text, noteOpen)
		if open < 0 {
			break
		}
		n := strings.Index(text[open:], noteClose)
		if n < 0 {
			b.WriteString(text)
			return line{b.String(), l.number}, false
		}
		s.Notes++
		b.WriteString(text[:open])
		text = text[open+n+len(noteClose):]
	}
	b.WriteString(text)
	if strings.TrimSpace(b.String()) == "" {
		return line{}, true
	}
	return line{b.String(), l.number}, true
}
