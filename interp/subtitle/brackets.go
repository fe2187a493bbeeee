// Brackets: sounds, and how something is said.

package subtitle

import "strings"

// unbracketed takes the brackets off both ends of a text that may be a label, with
// what they hold: ADA (O.S.).
func unbracketed(s string) string {
	for s = strings.TrimSpace(s); ; {
		was := s
		for _, b := range [...]string{"[]", "()"} {
			if s != "" && s[0] == b[0] {
				if end := strings.IndexByte(s, b[1]); end > 0 {
					s = strings.TrimSpace(s[end+1:])
				}
			}
			if s != "" && s[len(s)-1] == b[1] {
				if start := strings.LastIndexByte(s, b[0]); start >= 0 {
					s = strings.TrimSpace(s[:start])
				}
			}
		}
		if s == was {
			return s
		}
	}
}

// withoutSounds takes brackets out with what they hold.
func withoutSounds(s string, turns []Turn) (string, []Turn) {
	for _, b := range [...][2]string{{"[", "]"}, {"(", ")"}, {"（", "）"}} {
		s, turns = without(s, b[0], b[1], turns)
	}
	return s, turns
}

// without takes one kind of brackets out of a text, with what they hold. Where
// one is not closed, or was not opened, only the sign goes. Turns keep their places.
func without(s, open, closing string, turns []Turn) (string, []Turn) {
	gone := spans(s, open, closing)
	if len(gone) == 0 {
		return s, turns
	}
	var out strings.Builder
	next, done := 0, 0 // of the turns, and the bytes passed
	keep := func(to int) {
		for ; next < len(turns) && turns[next].At <= to; next++ {
			turns[next].At = out.Len() + turns[next].At - done
		}
		out.WriteString(s[done:to])
	}
	for _, g := range gone {
		keep(g.from)
		for ; next < len(turns) && turns[next].At < g.to; next++ {
			turns[next].At = out.Len()
		}
		out.WriteByte(' ')
		done = g.to
	}
	keep(len(s))
	return out.String(), turns
}

// A span is bytes of a text.
type span struct{ from, to int }

// spans returns what goes with one kind of brackets: from each outermost to the one
// that closes it, and each that stands alone.
func spans(s, open, closing string) (list []span) {
	if !strings.Contains(s, open) && !strings.Contains(s, closing) { // as in most
		return nil
	}
	var opened []int // places in the list of those that are not closed yet
	for i := 0; i < len(s); {
		switch {
		case s[i] != open[0] && s[i] != closing[0]:
			i++
		case strings.HasPrefix(s[i:], open):
			opened = append(opened, len(list))
			list = append(list, span{i, i + len(open)})
			i += len(open)
		case strings.HasPrefix(s[i:], closing) && len(opened) > 0:
			last := opened[len(opened)-1]
			opened = opened[:len(opened)-1]
			list = list[:last+1] // what is within goes with it
			i += len(closing)
			list[last].to = i
		case strings.HasPrefix(s[i:], closing):
			list = append(list, span{i, i + len(closing)})
			i += len(closing)
		default:
			i++
		}
	}
	return list
}
