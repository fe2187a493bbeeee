// Event lines, and what is odd between them.

package edl

import (
	"fmt"
	"strconv"
	"strings"

	"pullscore/lang"
	"pullscore/lang/lines"
)

// transition reports whether a word is one: C, D, K, or W with up to three digits.
func transition(s string) bool {
	switch s {
	case "C", "D", "K":
		return true
	}
	return len(s) > 1 && len(s) <= 4 && s[0] == 'W' && consists(s[1:], isDigit)
}

func keyPart(s string) bool { return s == "B" || s == "O" }

func frameCount(s string) bool { return len(s) <= 4 && consists(s, isDigit) }

// channels reports whether a word is one: NONE, B, or pictures and sounds as V, A2/V.
func channels(s string) bool {
	return s == "NONE" || s == "B" || consists(s, func(c byte) bool { return isDigit(c) || c == 'A' || c == 'V' || c == '/' })
}

func isDigit(c byte) bool { return '0' <= c && c <= '9' }

// consists reports whether a text is bytes of a kind, at least one.
func consists(s string, kind func(byte) bool) bool {
	for i := range len(s) {
		if !kind(s[i]) {
			return false
		}
	}
	return s != ""
}

// event reads an event line. It is taken from its end, since a reel may have
// blanks in it: four times, a duration where there is one, the transition, the
// channels, and the rest is number and reel.
func (r *reader) event(l lines.Line) {
	r.words = fields(r.words[:0], l.Text, 0)
	words := r.words
	head := max(0, len(words)-4)
	e := Event{Range: r.text.Whole(l), Number: words[0].text}
	reel, ok := e.read(words[:head])
	if !ok {
		r.tell(lang.Error, "bad-event", l, 0, len(l.Text), "this is no whole event line",
			"It is a number, a reel, channels, a transition, and four timecodes: source in and out, record in and out.")
		return
	}
	e.Reel = l.Text[reel[0].from:reel[len(reel)-1].to]
	if !r.times(l, &e, words[head:]) {
		return
	}
	if len(r.group) > 0 && r.group[0].Number != e.Number {
		r.flush(0)
	}
	r.flush(together - 1)
	r.group = append(r.group, e)
}

// read reads what stands before the times, and returns the words of the reel.
func (e *Event) read(words []field) (reel []field, ok bool) {
	take := func(form func(string) bool) string {
		last := len(words) - 1
		if last < 0 || !form(words[last].text) {
			return ""
		}
		taken := words[last].text
		words = words[:last]
		return taken
	}
	e.Duration, _ = strconv.ParseInt(take(frameCount), 10, 64) // none is 0
	part := take(keyPart)
	e.Transition = take(transition)
	if part != "" && e.Transition == "K" {
		e.Transition += " " + part
	}
	e.Channels = take(channels)
	if e.Transition == "" || e.Channels == "" || len(words) < 2 {
		return nil, false
	}
	return words[1:], true
}

// times reads the four times of an event.
func (r *reader) times(l lines.Line, e *Event, words []field) bool {
	all := true
	for i, at := range []*int64{&e.SourceIn, &e.SourceOut, &e.RecordIn, &e.RecordOut} {
		frames, ok := r.label(l, words[i])
		*at, all = frames, all && ok
		e.Drop = e.Drop || r.rate(strings.Contains(words[i].text, ";")).Drop()
	}
	if !all {
		return false
	}
	if e.RecordOut < e.RecordIn {
		r.tell(lang.Error, "ends-before-it-starts", l, words[3].from, words[3].to,
			"the event ends before it starts", "The last time of the line is where it ends in the record. The line is left out.")
		return false
	}
	return true
}

// compare tells of lengths and places that do not fit together. Nothing is
// shifted: such lists are met, and what they mean only the cutting room knows.
func (r *reader) compare(e *Event) {
	r.lengths(e)
	if e.RecordIn == e.RecordOut {
		return
	}
	now := place{e.Number, e.Channels, e.RecordIn, e.RecordOut, e.Range}
	if r.last.number != "" && r.last.number != now.number && r.last.channels == now.channels {
		r.places(r.last, now)
	}
	r.last = now
}

func (r *reader) lengths(e *Event) {
	source, record := e.SourceOut-e.SourceIn, e.RecordOut-e.RecordIn
	if e.Speed != nil || source == record {
		return
	}
	r.faults.Add(lang.Diagnostic{
		Code: "lengths-differ", Severity: lang.Warning, Range: e.Range,
		Message: fmt.Sprintf("event %s has %d frames of source for %d of record, and no speed line", e.Number, source, record),
		Detail:  "The record times are followed.",
	})
}

// A place is where an event lies in the record.
type place struct {
	number, channels string
	in, out          int64
	where            lang.Range
}

func (r *reader) places(before, e place) {
	code, message := "", ""
	switch {
	case e.out <= before.in:
		code, message = "out-of-order", fmt.Sprintf("event %s lies before event %s in the record", e.number, before.number)
	case e.in < before.out:
		code, message = "events-overlap", fmt.Sprintf("event %s begins %d frames before event %s ends", e.number, before.out-e.in, before.number)
	default:
		return
	}
	r.faults.Add(lang.Diagnostic{
		Code: code, Severity: lang.Warning, Message: message, Range: e.where,
		Detail:  "Nothing is shifted.",
		Related: []lang.Related{{Message: "event " + before.number, Range: before.where}},
	})
}
