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
	for l := range r.text.All() {
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

// subRipTags are the tags that players know; anything else in angle brackets
// is text.
var subRipTags = lines.Pattern(`(?i)</?(?:[biu]|font(?:\s[^<>]*)?)>|\{\\[^{}]*\}`)

func plainSubRip(s string) (text string, turns []Turn) {
	if strings.ContainsAny(s, "<{") {
		s = subRipTags().ReplaceAllString(s, "")
	}
	return html.UnescapeString(s), nil
}
