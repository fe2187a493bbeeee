// Findings that came, and that are gone.

package diff

import (
	"strings"
	"unicode"

	"pullscore/lang"
)

// pairs are the numbers that pulls have now, by shot and number before.
type pairs map[place]int

// A place is a pull of a shot; number 0 is the shot itself.
type place struct {
	shot string
	pull int
}

func (p pairs) add(s Shot) {
	for _, u := range s.Pulls {
		if u.Before != nil && u.After != nil {
			p[place{s.ID, u.NumberBefore}] = u.Number
		}
	}
}

// findings returns those that are gone, and then those that came.
func (p pairs) findings(before, after []lang.Diagnostic) []Finding {
	left := map[sign]int{}
	for _, d := range before {
		left[p.sign(d)]++
	}
	var came, list []Finding
	for _, d := range after {
		s := signOf(d)
		if left[s] == 0 {
			came = append(came, Finding{New, d})
			continue
		}
		left[s]--
	}
	for _, d := range before {
		if s := p.sign(d); left[s] > 0 {
			left[s]--
			list = append(list, Finding{Gone, d})
		}
	}
	return append(list, came...)
}

// A sign tells findings apart: by the pull that they are about, else by what
// they say, but for the figures in it.
type sign struct {
	code     string
	severity lang.Severity
	message  string
	place
}

func signOf(d lang.Diagnostic) sign {
	s := sign{code: d.Code, severity: d.Severity, place: place{d.Shot, d.Pull}}
	if d.Pull == 0 {
		s.message = withoutFigures(d.Message)
	}
	return s
}

// sign is the sign that a finding of before would have now. No finding of now
// has that of one about a pull that is gone.
func (p pairs) sign(d lang.Diagnostic) sign {
	s := signOf(d)
	if d.Pull == 0 {
		return s
	}
	now, ok := p[s.place]
	if !ok {
		now = -d.Pull
	}
	s.pull = now
	return s
}

// withoutFigures returns a message with every number in it as one sign.
func withoutFigures(message string) string {
	var b strings.Builder
	number := false
	for _, r := range message {
		if unicode.IsDigit(r) || number && r == '.' {
			if !number {
				b.WriteByte('#')
			}
			number = true
			continue
		}
		number = false
		b.WriteRune(r)
	}
	return b.String()
}
