// SubRip: number, times, text, blank line. There is no standard, so this takes
// what is met in real files: no numbers, dots for commas, places behind the
// times, tags, entities, lines of text that are only digits.

package captions

import (
	"html"
	"strings"

	"pullscore/lang/lines"
)

// A block is a SubRip cue as it is being read.
type block struct {
	id      string
	line    lines.Line
	at      timing
	open    bool // text is being taken
	good    bool // its times could be read
	payload []string
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
			id := ""
			if spare {
				id, spare = strings.TrimSpace(number.Text), false
			} else if n := len(now.payload); now.open && n > 0 && isNumber(now.payload[n-1]) {
				id, now.payload = strings.TrimSpace(now.payload[n-1]), now.payload[:n-1] // no blank line between
			}
			r.close(&now)
			at, ok := r.timing(l, subRipRule)
			now = block{id: id, line: l, at: at, open: true, good: ok}
		case l.Blank():
			r.close(&now)
		case r.garbled(l):
			r.close(&now)
			spare = false
			now = block{open: true} // its text goes with it
		case now.open:
			now.payload = append(now.payload, l.Text)
		case isNumber(l.Text):
			unused()
			number, spare = l, true
		default:
			unused()
			r.lost(l)
		}
	}
	r.close(&now)
	unused()
}

// close ends a cue.
func (r *reader) close(b *block) {
	if b.open && b.good {
		r.add(b.line, b.at, b.id, b.payload, plainSubRip)
	}
	*b = block{}
}

// twoTimes matches a line that begins with a time and has another: one whose
// arrow is garbled.
var twoTimes = lines.Pattern(`^\s*\d+:\d\d(?::\d\d)?(?:[.,]\d+)?(\D+)\d+:\d\d(?::\d\d)?(?:[.,]\d+)?(?:\s|$)`)

// garbled tells of a timing line without an arrow.
func (r *reader) garbled(l lines.Line) bool {
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

func plainSubRip(s string) (text string, voices []string) {
	return html.UnescapeString(subRipTags().ReplaceAllString(s, "")), nil
}
