// Emphasis: marks that are not spoken.

package fountain

import (
	"strings"

	"pullscore/lang/lines"
)

var (
	escaped = strings.NewReplacer(`\*`, "\x00", `\_`, "\x01", `\\`, "\x02")
	literal = strings.NewReplacer("\x00", "*", "\x01", "_", "\x02", `\`)
	stars   = lines.Pattern(`\*{1,3}([^\s*](?:[^*\n]*[^\s*])?)\*{1,3}`)
	lows    = lines.Pattern(`_([^\s_](?:[^_\n]*[^\s_])?)_`)
)

// deepest is how deep marks may lie in each other: the form has three kinds.
const deepest = 6

// Plain returns a text without its emphasis: *italics*, **bold**, _underlined_
// and their mixtures, none of which goes over a line's end; \ before a mark
// keeps it.
func Plain(s string) string {
	if !strings.ContainsAny(s, `*_\`) {
		return s
	}
	s = escaped.Replace(s)
	for range deepest { // the innermost first
		plain := lows().ReplaceAllString(stars().ReplaceAllString(s, "$1"), "$1")
		if plain == s {
			break
		}
		s = plain
	}
	return literal.Replace(s)
}

var marks = strings.NewReplacer(`\`, `\\`, "*", `\*`, "_", `\_`)

// Literal returns the text of which Plain makes s: marks in it are signs like others.
func Literal(s string) string {
	if Plain(s) == s {
		return s
	}
	return marks.Replace(s)
}
