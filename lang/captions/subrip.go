// SubRip: number, times, text, blank line. There is no standard, so this takes
// what is met in real files: no numbers, dots for commas, places behind the
// times, tags, entities, lines of text that are only digits.

package captions

import (
	"html"
	"strings"

	"pullscore/lang/lines"
)

// A block is a SubRip cue, or lines that could have been one.
type block struct {
	cue
	open bool       // text is being taken
	good bool       // its times could be read
	last lines.Line // of its text
	back int        // where the text ended before that line
}

// take takes a line of text.
func (b *block) take(l lines.Line) {
	b.last, b.back = l, b.to
	b.add(l)
}

// number takes the last line off that was text, if it is the number of the next
// cue: no blank line stands between.
func (b *block) number() (id string) {
	if !b.open || b.to == b.from || !isNumber(b.last.Text) {
		return ""
	}
	if b.to = b.back; b.last.Offset == b.from {
		b.payload = payload{}
	}
	return strings.TrimSpace(b.last.Text)
}

// subRip reads the text as SubRip.
func (r *reader) subRip() {
	var now block
	var number lines.Line // a number that may belong to the next cue
	spare := false
	unused := func() { // the number was text
		if spare {
			r.lost(number)
		}
		spare = false
	}
	for l := range r.lines {
		switch {
		case strings.Contains(l.Text, arrow):
			id := now.number()
			if spare {
				id, spare = strings.TrimSpace(number.Text), false
			}
			r.close(&now)
			at, ok := r.timing(l, subRipRule)
			now = block{cue: cue{id: id, line: l, at: at}, open: true, good: ok}
		case l.Blank():
			r.close(&now)
		case r.garbled(l):
			r.close(&now)
			spare = false
			now = block{open: true} // its text goes with it
		case now.open:
			now.take(l)
		case isNumber(l.Text):
			unused()
			number, spare = l, true
		default:
			unused()
			r.lost(l)
		}
		if r.stopped {
			return
		}
	}
	r.close(&now)
	unused()
}

// close ends a cue.
func (r *reader) close(b *block) {
	if b.open && b.good {
		r.add(b.cue, plainSubRip)
	}
	*b = block{}
}

// twoTimes matches a line that begins with a time and has another: one whose
// arrow is garbled.
var twoTimes = lines.Pattern(`^\s*\d+:\d\d(?::\d\d)?(?:[.,]\d+)?(\D+)\d+:\d\d(?::\d\d)?(?:[.,]\d+)?(?:\s|$)`)

// garbled tells of a timing line without an arrow.
func (r *reader) garbled(l lines.Line) bool {
	if strings.IndexByte(l.Text, ':') < 0 { // as most lines
		return false
	}
	m := twoTimes().FindStringSubmatchIndex(l.Text)
	if m == nil {
		return false
	}
	from, to := m[2], m[3]
	between := strings.TrimSpace(l.Text[from:to])
	if between != "" {
		from += strings.Index(l.Text[from:to], between)
		to = from + len(between)
	}
	r.tell("garbled-arrow", l, from, to, "between the two times an arrow is missing", "Write "+arrow+" with a blank on either side. The cue is left out.")
	return true
}

func isNumber(s string) bool {
	_, ok := digits(strings.TrimSpace(s))
	return ok
}

func plainSubRip(s string) (text string, turns []Turn) {
	return html.UnescapeString(untagged(s)), nil
}

// untagged takes out the tags that players know: <i>, <b>, <u> and <font> with or
// without a slash, in any case, and {\an8}; anything else in brackets is text.
func untagged(s string) string {
	if strings.IndexByte(s, '<') < 0 && strings.IndexByte(s, '{') < 0 { // as in most
		return s
	}
	var out strings.Builder
	kept := 0
	for i := 0; i < len(s); {
		n := tag(s[i:])
		if n == 0 {
			i++
			continue
		}
		out.WriteString(s[kept:i])
		i += n
		kept = i
	}
	if kept == 0 {
		return s
	}
	out.WriteString(s[kept:])
	return out.String()
}

// tag returns how many bytes the tag has that a text begins with, 0 where it is none.
func tag(s string) int {
	switch {
	case s[0] == '{' && len(s) > 1 && s[1] == '\\':
		if n := strings.IndexAny(s[2:], "{}"); n >= 0 && s[2+n] == '}' {
			return n + 3
		}
		return 0
	case s[0] != '<':
		return 0
	}
	name := s[1:]
	if name != "" && name[0] == '/' {
		name = name[1:]
	}
	const font = "font"
	switch {
	case len(name) > 1 && name[1] == '>' && strings.IndexByte("biuBIU", name[0]) >= 0:
		return len(s) - len(name) + 2
	case len(name) > len(font) && strings.EqualFold(name[:len(font)], font):
		rest := name[len(font):]
		if n := strings.IndexAny(rest, "<>"); n >= 0 && rest[n] == '>' && (n == 0 || strings.IndexByte(" \t\n\f\r", rest[0]) >= 0) {
			return len(s) - len(rest) + n + 1
		}
	}
	return 0
}
