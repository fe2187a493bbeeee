// Names that lead from one part of a document to another.

package draw

import (
	"fmt"
	"strings"
)

// ID returns a name for a group, made of words such as a shot, a paper and a number. It
// holds only ASCII letters, digits, hyphens and underlines, so that every format can write it.
// Different words give different names: any other character becomes its code point
// between underlines, and so does a hyphen inside a word.
func ID(words ...string) string {
	var b strings.Builder
	for i, word := range words {
		if i > 0 {
			b.WriteByte('-')
		}
		for _, r := range Clean(word) {
			switch {
			case r >= 'a' && r <= 'z', r >= 'A' && r <= 'Z', r >= '0' && r <= '9':
				b.WriteRune(r)
			default:
				fmt.Fprintf(&b, "_%x_", r)
			}
		}
	}
	return b.String()
}
