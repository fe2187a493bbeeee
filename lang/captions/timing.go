// Timing lines: two times and the arrow between them.

package captions

import (
	"fmt"
	"strings"

	"pullscore/lang/lines"
)

const arrow = "-->"

// A timing is a timing line.
type timing struct{ start, end stamp }

// A stamp is one time, and the bytes of the line on which it stands.
type stamp struct {
	ms       int64
	from, to int
}

// A rule is what a form of subtitles asks of a time.
type rule struct {
	separators string // that may stand before the fraction
	whole      bool   // a time without a fraction is taken
	loose      bool   // hours, minutes and seconds may have one digit
	form       string // what a time looks like, for messages
}

var (
	subRipRule = rule{separators: ",.", whole: true, loose: true, form: "00:01:02,345"}
	webVTTRule = rule{separators: ".", form: "00:01:02.345"}
)

// timing reads a line that has an arrow; what is wrong is told.
func (r *reader) timing(l lines.Line, rule rule) (at timing, ok bool) {
	middle := strings.Index(l.Text, arrow)
	if at.start, ok = r.stamp(l, 0, middle, true, rule); !ok {
		return at, false
	}
	at.end, ok = r.stamp(l, middle+len(arrow), len(l.Text), false, rule)
	return at, ok
}

// stamp reads the time that stands between two bytes of a line: all of it, or
// with settings behind a blank after it.
func (r *reader) stamp(l lines.Line, from, to int, alone bool, rule rule) (stamp, bool) {
	for from < to && isBlank(l.Text[from]) {
		from++
	}
	if alone {
		for from < to && isBlank(l.Text[to-1]) {
			to--
		}
	} else if n := strings.IndexAny(l.Text[from:to], " \t"); n >= 0 {
		to = from + n
	}
	ms, fault := rule.parse(l.Text[from:to])
	if fault.message != "" {
		r.tell(fault.code, l, from, to, fault.message, fault.detail)
	}
	return stamp{ms, from, to}, fault.message == "" || fault.taken
}

func isBlank(c byte) bool { return c == ' ' || c == '\t' }

// A fault is what is wrong with a time; taken says that it has a value for all
// that.
type fault struct {
	code, message, detail string
	taken                 bool
}

// most is the largest number of hours that is taken for a time: years of film.
const most = 99_999

// parse reads [HH:]MM:SS and a fraction.
func (u rule) parse(s string) (ms int64, f fault) {
	if ms, ok := u.usual(s); ok {
		return ms, fault{}
	}
	return u.any(s)
}

// any is parse for a time in any form.
func (u rule) any(s string) (ms int64, f fault) {
	clock, fraction, separated := s, "", false
	if i := strings.IndexAny(s, u.separators); i >= 0 {
		clock, fraction, separated = s[:i], s[i+1:], true
	}
	parts := strings.Split(clock, ":")
	if len(parts) < 2 || len(parts) > 3 || !separated && !u.whole {
		return 0, u.bad(s, "")
	}
	for i, p := range parts {
		n, ok := digits(p)
		hours := len(parts) == 3 && i == 0
		switch {
		case !ok || len(p) != 2 && !u.loose && (!hours || len(p) < 2) || hours && n > most:
			return 0, u.bad(s, "")
		case !hours && (n > 59 || len(p) > 2):
			return 0, u.bad(s, "Minutes and seconds go up to 59, in two digits. ")
		}
		ms = ms*60 + n
	}
	thousandths, f := u.fraction(s, fraction, separated)
	return ms*1000 + thousandths, f
}

// bad tells that a text is no time; why says more than the form of one.
func (u rule) bad(s, why string) fault {
	return fault{code: "bad-time", message: fmt.Sprintf("%s is no time", quoted(s)), detail: why + "A time looks like " + u.form + "."}
}

// usual reads a time in the form that nearly all have, 00:01:02,345, since a text has
// millions of them. There may be more hours.
func (u rule) usual(s string) (ms int64, ok bool) {
	const behind = len(":00:00,000")
	n := len(s) - behind
	if n < 2 || n > 5 {
		return 0, false
	}
	rest := s[n:]
	if rest[0] != ':' || rest[3] != ':' || strings.IndexByte(u.separators, rest[6]) < 0 {
		return 0, false
	}
	hours, ok1 := digits(s[:n])
	minutes, ok2 := digits(rest[1:3])
	seconds, ok3 := digits(rest[4:6])
	thousandths, ok4 := digits(rest[7:])
	if !ok1 || !ok2 || !ok3 || !ok4 || minutes > 59 || seconds > 59 {
		return 0, false
	}
	return ((hours*60+minutes)*60+seconds)*1000 + thousandths, true
}

// fraction reads what stands behind the seconds. One or two digits are read in
// two ways by two kinds of programs, so they are refused; the value is that of
// a decimal fraction.
func (u rule) fraction(s, fraction string, separated bool) (ms int64, f fault) {
	n, ok := digits(fraction)
	switch {
	case !separated:
		return 0, fault{}
	case len(fraction) == 3 && ok:
		return n, fault{}
	case !u.whole || !ok || len(fraction) > 3:
		return 0, fault{
			code: "bad-time", message: fmt.Sprintf("%s has a fraction that is not three digits", quoted(s)),
			detail: "A time looks like " + u.form + ".",
		}
	}
	decimal := n * 100
	if len(fraction) == 2 {
		decimal = n * 10
	}
	return decimal, fault{
		code:    "ambiguous-time",
		message: fmt.Sprintf("%s can be read as %d ms or as %d ms", quoted(s), decimal, n),
		detail:  fmt.Sprintf("Programs differ: write three digits. It is taken as %d ms.", decimal),
		taken:   true,
	}
}

// digits reads up to nine digits.
func digits(s string) (n int64, ok bool) {
	for i := range len(s) {
		if s[i] < '0' || s[i] > '9' || i == 9 {
			return 0, false
		}
		n = n*10 + int64(s[i]-'0')
	}
	return n, s != ""
}

// quoted quotes a text for a message, shortened.
func quoted(s string) string {
	const longest = 40
	if r := []rune(s); len(r) > longest {
		s = string(r[:longest]) + "…"
	}
	return "“" + s + "”"
}
