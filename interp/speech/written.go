// Words as they are written.

package speech

import (
	"strings"
	"unicode"
)

// Written is a word with the signs about it.
type Written struct {
	Text   string
	Joined bool // no blank stands before it, as behind a hyphen
}

// WrittenOf returns the words of a text as they are written. A sign belongs to the word
// that it stands at: behind a blank to the next, else to the one before it.
func WrittenOf(text string, words []Timed) []Written {
	list := make([]Written, len(words))
	from, joined := 0, false
	for i, w := range words {
		to, blank := len(text), -1
		if i+1 < len(words) {
			to = words[i+1].Token.Start
			if blank = strings.LastIndexFunc(text[w.Token.End:to], unicode.IsSpace); blank >= 0 {
				to = w.Token.End + blank
			}
		}
		list[i] = Written{strings.TrimSpace(text[from:to]), joined}
		from, joined = to, blank < 0
	}
	return list
}
