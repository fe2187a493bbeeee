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
func boneyardless(t *lines.Text, s *Script, diags *[]lang.Diagnostic) iter.Seq[line] {
	return func(yield func(line) bool) {
		end := -1         // where the boneyard that is open ends
		literal := false  // no boneyard has an end any more
		var before string // what stood before the open boneyard
		var number int
		for l := range t.All() {
			at := 0
			if end >= 0 {
				if end > l.Offset+len(l.Text) {
					continue
				}
				at, end = end-l.Offset, -1
			} else {
				before, number = "", l.Number
			}
			for end < 0 && !literal {
				i := strings.Index(l.Text[at:], boneyardOpen)
				if i < 0 {
					break
				}
				from := l.Offset + at + i + len(boneyardOpen)
				n := strings.Index(t.Content[from:], boneyardClose)
				if literal = n < 0; literal {
					*diags = append(*diags, unclosed(t, l, at+i))
					break
				}
				s.Boneyards++
				before += l.Text[at : at+i]
				if end = from + n + len(boneyardClose); end <= l.Offset+len(l.Text) {
					at, end = end-l.Offset, -1
				}
			}
			if end < 0 && !yield(line{before + l.Text[at:], number}) {
				return
			}
		}
	}
}

func unclosed(t *lines.Text, l lines.Line, at int) lang.Diagnostic {
	return lang.Diagnostic{
		Code: "unclosed-boneyard", Severity: lang.Warning, Range: t.At(l, at, at+len(boneyardOpen)),
		Message: "this boneyard has no end", Detail: "Close it with */. Until then it is read as text.",
	}
}

// noteless takes notes out. A note may span lines, but with a truly empty line
// in it it is text. A line that held nothing but a note is gone, as it is on
// paper.
func noteless(in iter.Seq[line], s *Script) iter.Seq[line] {
	return func(yield func(line) bool) {
		var held []line // lines of a note that has not ended yet
		flush := func() bool {
			for _, l := range held {
				if !yield(l) {
					return false
				}
			}
			held = held[:0]
			return true
		}
		for l := range in {
			if len(held) > 0 {
				switch at := strings.Index(l.text, noteClose); {
				case l.text == "":
					if !flush() {
						return
					}
				case at < 0:
					held = append(held, l)
					continue
				default:
					s.Notes++
					first := held[0]
					open := strings.Index(first.text, noteOpen)
					l = line{first.text[:open] + l.text[at+len(noteClose):], first.number}
					held = held[:0]
					if strings.TrimSpace(l.text) == "" {
						continue
					}
				}
			}
			l, whole := within(l, s)
			switch {
			case !whole:
				held = append(held, l)
			case l.number > 0 && !yield(l):
				return
			}
		}
		flush()
	}
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
