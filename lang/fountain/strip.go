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
	end     int             // where the open one ends, in the text
	endless bool            // no boneyard has an end any more
	left    strings.Builder // of the line so far: it may go on behind many boneyards
	number  int             // of that line
}

// cut returns what is left of a line; whole is false inside a boneyard, of
// which the line that it ends on joins what stood before it.
func (y *boneyards) cut(l lines.Line) (left line, whole bool) {
	at := 0
	switch {
	case y.open && y.end > l.Offset+len(l.Text):
		return line{}, false
	case y.open:
		at, y.open = y.end-l.Offset, false
	case y.endless || !strings.Contains(l.Text, boneyardOpen):
		return line{l.Text, l.Number}, true
	default:
		y.number = l.Number
	}
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
		y.left.WriteString(l.Text[at : at+i])
		if y.end = from + n + len(boneyardClose); y.end > l.Offset+len(l.Text) {
			y.open = true
			return line{}, false
		}
		at = y.end - l.Offset
	}
	y.left.WriteString(l.Text[at:])
	left = line{y.left.String(), y.number}
	y.left.Reset()
	return left, true
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
	left   strings.Builder // of the line so far: it may go on behind many notes
	number int             // of that line
	held   []line          // what follows it: a note that has not ended yet, from its opening on
}

// flush yields the lines of what is no note after all.
func (n *notes) flush() bool {
	for i, l := range n.held {
		if i == 0 {
			l = n.end(l.text)
		}
		if !n.yield(l) {
			return false
		}
	}
	n.held = n.held[:0]
	return true
}

// end ends the line that is being put together.
func (n *notes) end(text string) line {
	n.left.WriteString(text)
	whole := line{n.left.String(), n.number}
	n.left.Reset()
	return whole
}

// line takes the next line; it returns false when no more is wanted.
func (n *notes) line(l line) bool {
	if len(n.held) == 0 {
		return n.begin(l)
	}
	at := strings.Index(l.text, noteClose)
	switch {
	case l.text == "" || at < 0 && len(n.held) == longestNote:
		return n.flush() && n.begin(l)
	case at < 0:
		n.held = append(n.held, l)
		return true
	}
	n.script.Notes++
	n.held = n.held[:0]
	return n.rest(l.text[at+len(noteClose):], l.number)
}

// begin takes a line before which no note is open.
func (n *notes) begin(l line) bool {
	if !strings.Contains(l.text, noteOpen) {
		return n.yield(l)
	}
	n.number = l.number
	return n.rest(l.text, l.number)
}

// rest takes the notes out of what goes on the line so far, of which a note was
// taken out or begins here. Nothing is left of a line of nothing but notes.
func (n *notes) rest(text string, number int) bool {
	for {
		open := strings.Index(text, noteOpen)
		if open < 0 {
			break
		}
		n.left.WriteString(text[:open])
		text = text[open:]
		end := strings.Index(text, noteClose)
		if end < 0 {
			n.held = append(n.held, line{text, number})
			return true
		}
		n.script.Notes++
		text = text[end+len(noteClose):]
	}
	whole := n.end(text)
	return blank(whole.text) || n.yield(whole)
}
