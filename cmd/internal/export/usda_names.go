// Names of prims in USD: ASCII letters, digits and _, where plans have names in any
// script.

package export

import (
	"fmt"
	"strconv"
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"
)

// names are the names of prims that are taken, in small letters: some programs that read
// them do not tell case apart.
type names map[string]bool

// add returns the name of a prim for a name of the plan, which is taken from then on.
func (taken names) add(name string) string {
	clean := identifier(name)
	unique := clean
	for n := 2; taken[strings.ToLower(unique)]; n++ {
		unique = clean + "_" + strconv.Itoa(n)
	}
	taken[strings.ToLower(unique)] = true
	return unique
}

// identifier writes a name in what the form allows. Latin letters lose their marks, a
// blank and . - ' become _, and any other sign u and its code, so that two names that
// differ stay two.
func identifier(name string) string {
	var b strings.Builder
	latin := false // the sign before is a letter of ASCII
	for _, r := range norm.NFC.String(name) {
		base := []rune(norm.NFD.String(string(r)))[0]
		isLatin := base < unicode.MaxASCII && unicode.IsLetter(base)
		switch {
		case isLatin || r == '_' || '0' <= r && r <= '9':
			b.WriteRune(base)
		case strings.ContainsRune(" .-'", r):
			b.WriteByte('_')
		case latin && unicode.Is(unicode.Mn, r): // a mark that no letter has of its own
			isLatin = true
		default:
			fmt.Fprintf(&b, "u%04x", r)
		}
		latin = isLatin
	}
	clean := b.String()
	if clean == "" || '0' <= clean[0] && clean[0] <= '9' {
		clean = "_" + clean
	}
	return clean
}
