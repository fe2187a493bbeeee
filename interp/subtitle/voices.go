// Voices: the tags that tell who speaks.

package subtitle

import (
	"strings"
	"sync"

	"pullscore/lang/captions"
)

// Voiced returns the text of a subtitle in which the tags that tell who speaks are
// labels.
func Voiced(text string, turns []captions.Turn) string {
	if len(turns) == 0 {
		return text
	}
	var out strings.Builder
	last := 0
	for _, t := range turns {
		out.WriteString(text[last:t.At])
		last = t.At
		if out.Len() > 0 {
			out.WriteByte('\n')
		}
		out.WriteString(">> [" + noBrackets().Replace(t.Voice) + "] ")
	}
	out.WriteString(text[last:])
	return out.String()
}

var noBrackets = sync.OnceValue(func() *strings.Replacer {
	return strings.NewReplacer("[", "", "]", "", "(", "", ")", "", "{", "", "}", "")
})
