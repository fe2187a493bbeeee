// Names that look alike and are written with letters of two scripts.

package names

import (
	"fmt"
	"strings"
	"unicode"
)

// twins maps letters of Cyrillic and Greek to the Latin ones that most faces draw
// alike. From memory, after the idea of Unicode Technical Standard 39 (confusable
// characters); its table has thousands more.
var twins = strings.NewReplacer(
	"А", "A", "В", "B", "Е", "E", "К", "K", "М", "M", "Н", "H", "О", "O", "Р", "P", "С", "C", "Т", "T", "Х", "X", "У", "Y", "І", "I", "Ј", "J", "Ѕ", "S",
	"а", "a", "е", "e", "о", "o", "р", "p", "с", "c", "у", "y", "х", "x", "і", "i", "ј", "j", "ѕ", "s",
	"Α", "A", "Β", "B", "Ε", "E", "Ζ", "Z", "Η", "H", "Ι", "I", "Κ", "K", "Μ", "M", "Ν", "N", "Ο", "O", "Ρ", "P", "Τ", "T", "Υ", "Y", "Χ", "X", "ο", "o", "ν", "v",
)

// looksLike returns the name among others that looks as this one does and is
// written with other letters, and which: a keyboard that was left on another
// script makes them, and nobody sees it.
func looksLike(name string, among []string) (detail, meant string, ok bool) {
	drawn := twins.Replace(name)
	for _, other := range among {
		if other == name || twins.Replace(other) != drawn {
			continue
		}
		mine, theirs := []rune(name), []rune(other)
		for i := range min(len(mine), len(theirs)) {
			if mine[i] != theirs[i] {
				return fmt.Sprintf("It looks like %s, but its %c is a %s letter, and there it is a %s one.", other, mine[i], scriptOf(mine[i]), scriptOf(theirs[i])), other, true
			}
		}
	}
	return "", "", false
}

func scriptOf(r rune) string {
	switch {
	case unicode.Is(unicode.Cyrillic, r):
		return "Cyrillic"
	case unicode.Is(unicode.Greek, r):
		return "Greek"
	}
	return "Latin"
}
