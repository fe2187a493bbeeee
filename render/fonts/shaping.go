// Scripts whose letters stand one beside the other, from left to right, each as it is. All
// others join their letters, change their order, or run from right to left; that takes
// more than a font.

package fonts

import "unicode"

var plain = []*unicode.RangeTable{
	unicode.Common, unicode.Latin, unicode.Greek, unicode.Cyrillic, unicode.Armenian, unicode.Georgian,
	unicode.Han, unicode.Hiragana, unicode.Katakana, unicode.Hangul, unicode.Bopomofo, unicode.Yi,
	unicode.Cherokee, unicode.Canadian_Aboriginal, unicode.Ethiopic, unicode.Runic, unicode.Ogham,
	unicode.Coptic, unicode.Glagolitic, unicode.Gothic, unicode.Tifinagh, unicode.Vai, unicode.Lisu,
	unicode.Braille, unicode.Deseret, unicode.Osage,
}

// NeedsShaping reports whether a character belongs to a script that cannot be written
// letter by letter from left to right.
func NeedsShaping(r rune) bool {
	const firstJamo, lastJamo = 0x1100, 0x11ff // parts of syllables, which join
	return r >= firstJamo && r <= lastJamo || !unicode.In(r, plain...) && !unicode.Is(unicode.Co, r)
}
