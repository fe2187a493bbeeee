package speech

import (
	"strings"
	"testing"
)

// Every sign stands at the word that it belongs to, and all words make up the text.
func TestWrittenOf(t *testing.T) {
	for text, want := range map[string]string{
		"Go, now!":                     "Go,|now!",
		"twenty-two winters":           "twenty-+two|winters",
		"in ’71. He said “go” — well…": "in|’71.|He|said|“go” —|well…",
		"– \"Why\" (he asked)":         "– \"Why\"|(he|asked)",
		"行く":                           "行+く",
		"":                             "",
	} {
		var got strings.Builder
		for i, w := range WrittenOf(text, Spread(Split(text), 0, 1)) {
			if w.Joined {
				got.WriteByte('+')
			} else if i > 0 {
				got.WriteByte('|')
			}
			got.WriteString(w.Text)
		}
		if got.String() != want {
			t.Errorf("%q: %q, want %q", text, &got, want)
		}
	}
}
