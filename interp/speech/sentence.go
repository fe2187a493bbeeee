// Where a sentence ends.

package speech

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// Ends reports whether a sentence ends with a word, by the signs behind it. The point of
// a title or an initial, as in Dr. J. Dale, ends none.
func Ends(word, signs string) bool {
	return strings.ContainsAny(signs, "?!…。？！") || strings.Contains(signs, ".") && !shortened(word)
}

// shortened reports whether a word before a point is a title or an initial.
func shortened(word string) bool {
	switch strings.ToLower(word) {
	case "mr", "mrs", "ms", "dr", "st", "prof", "capt", "lt", "sgt":
		return true
	}
	first, _ := utf8.DecodeRuneInString(word)
	return word != "I" && utf8.RuneCountInString(word) == 1 && unicode.IsUpper(first)
}

// GoesOn reports whether a word goes on with the sentence before it, whatever sign stands
// there: it begins with a small letter.
func GoesOn(word string) bool {
	first, _ := utf8.DecodeRuneInString(word)
	return unicode.IsLower(first)
}
