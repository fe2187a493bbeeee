// Labels: the names of those who speak.

package subtitle

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// A name is one of the plan, as it is compared.
type name struct {
	whole string
	words []string
}

func newName(s string) name {
	words := wordsOf(s)
	return name{strings.Join(words, " "), words}
}

// wordsOf returns the words of a name in lower case, without points.
func wordsOf(s string) []string {
	return strings.FieldsFunc(strings.ToLower(s), func(r rune) bool { return unicode.IsSpace(r) || r == '.' || r == '"' })
}

const (
	longestLabel = 40 // characters
	mostWords    = 3  // of a label
	often        = 3  // subtitles in which a label stands that is only written with a capital
)

// label cuts the name of a speaker off a line, and returns it too; ok is false where
// none stands there.
func (c *Cleaner) label(line string) (rest string, by Speaker, name string, ok bool) {
	if rest, by, name, ok = c.bracketed(line); ok {
		return rest, by, name, true
	}
	before, rest, ok := strings.Cut(line, ":")
	if !ok || len(before) > 4*longestLabel {
		return "", Unknown, "", false
	}
	l := strings.TrimSpace(unbracketed(before))
	words := len(strings.Fields(l))
	if words == 0 || words > mostWords || strings.ContainsAny(l, "()[]") {
		return "", Unknown, "", false
	}
	if by := c.Who(l); by > 0 {
		return rest, by, l, true
	}
	if !c.shouted() && isUpper(l) || named(l) && c.labels[l] >= often {
		return rest, Stranger, l, true
	}
	return "", Unknown, "", false
}

// bracketed cuts the name of somebody of the plan off a line that begins with it
// in brackets.
func (c *Cleaner) bracketed(line string) (rest string, by Speaker, name string, ok bool) {
	for _, b := range [...]string{"[]", "()"} {
		inside, opened := strings.CutPrefix(line, b[:1])
		if !opened {
			continue
		}
		inside, rest, closed := strings.Cut(inside, b[1:])
		if closed && len(strings.Fields(inside)) <= mostWords {
			name = strings.TrimRight(inside, ": ")
			by = c.Who(name)
		}
		return strings.TrimLeft(rest, ": "), by, name, by > 0
	}
	return "", Unknown, "", false
}

// Who returns who is called so: the name as a whole, or as one of the words of
// what is said, as in Mrs. Dale, or the other way round. A Stranger is none of
// the plan.
func (c *Cleaner) Who(label string) Speaker {
	words := wordsOf(label)
	whole := strings.Join(words, " ")
	if whole == "" {
		return Unknown
	}
	for i, n := range c.names {
		if n.whole == whole {
			return Speaker(i + 1)
		}
	}
	if len(words) > mostWords {
		return Stranger
	}
	for i, n := range c.names {
		if len(n.words) == 1 && slices.Contains(words, n.whole) && capitals(label) || len(words) == 1 && slices.Contains(n.words, whole) {
			return Speaker(i + 1)
		}
	}
	return Stranger
}

// capitals reports whether every word of a text begins with a capital.
func capitals(s string) bool {
	for _, w := range strings.Fields(s) {
		if r, _ := utf8.DecodeRuneInString(w); !unicode.IsUpper(r) {
			return false
		}
	}
	return true
}

// isUpper reports whether a text is in upper case and has two letters or more.
func isUpper(s string) bool {
	letters := 0
	for _, r := range s {
		if unicode.IsLower(r) {
			return false
		}
		if unicode.IsUpper(r) {
			letters++
		}
	}
	return letters > 1
}

// named reports whether a text may be a name by its form: one or two words, each
// with a capital.
func named(s string) bool {
	n := len(strings.Fields(s))
	return (n == 1 || n == 2) && utf8.RuneCountInString(s) <= longestLabel && capitals(s) &&
		!strings.ContainsAny(s, "()[].,!?")
}
