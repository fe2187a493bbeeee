// Widths of texts, from a table of the advance widths of Go Regular and Go
// Bold (the fonts of golang.org/x/image/font/gofont, by Bigelow & Holmes). The
// table costs no time at start; parsing the fonts would.

package draw

import (
	"sort"
	"unicode"
)

//go:generate go run ./genwidths

// A span is the advance widths of consecutive characters, in units of the em.
type span struct {
	first  rune
	widths []uint16
}

const (
	unitsPerEm = 2048
	// unknown is taken for a character that the fonts lack, as a share of the
	// em: an ideograph is one em wide in every font, and hardly a letter of
	// another script is wider.
	unknown = 1.05
)

// Width returns the width of s in millimetres.
func (f Font) Width(s string) float64 {
	w := 0.0
	for _, r := range s {
		w += f.advance(r)
	}
	return w
}

// Covers reports whether the fonts have every character of s. If not, Width returns a
// careful guess.
func Covers(s string) bool {
	for _, r := range s {
		if _, ok := lookup(regular, r); !ok {
			return false
		}
	}
	return true
}

func (f Font) advance(r rune) float64 {
	table := regular
	if f.Bold {
		table = bold
	}
	w, ok := lookup(table, r)
	switch {
	case ok:
		return float64(w) / unitsPerEm * f.Size * MM
	case unicode.In(r, unicode.M, unicode.Cf):
		return 0 // stands on the letter before, or is not seen
	}
	return unknown * f.Size * MM
}

// lookup returns the width of a character. The first span has the letters of nearly every
// text, and needs no search.
func lookup(table []span, r rune) (uint16, bool) {
	if i := int(r - table[0].first); i >= 0 && i < len(table[0].widths) {
		return table[0].widths[i], true
	}
	i := sort.Search(len(table), func(i int) bool { return table[i].first > r }) - 1
	if i < 0 || int(r-table[i].first) >= len(table[i].widths) {
		return 0, false
	}
	return table[i].widths[r-table[i].first], true
}
