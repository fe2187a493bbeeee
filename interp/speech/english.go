// English spelling: from letters to syllables.

package speech

import "strings"

// vowel reports whether a letter of plain's alphabet is a vowel; y counts as
// one here.
func vowel(c byte) bool {
	switch c {
	case 'a', 'e', 'i', 'o', 'u', 'y', 'E', 'I':
		return true
	}
	return false
}

// hasVowel reports whether a word has a vowel at all.
func hasVowel(w string) bool {
	for i := range len(w) {
		if vowel(w[i]) {
			return true
		}
	}
	return false
}

// sibilant reports whether a letter before e hisses, so that -es after it has a
// syllable of its own.
func sibilant(c byte) bool {
	switch c {
	case 's', 'x', 'z', 'c', 'g', 'h':
		return true
	}
	return false
}

// english returns the syllables of a word in plain's alphabet.
func english(w string) int {
	if n, ok := irregular(w); ok {
		return n
	}
	if i := strings.IndexByte(w, '\''); i >= 0 {
		return contraction(w[:i], strings.ReplaceAll(w[i+1:], "'", ""))
	}
	if n := len(w); n > 3 && w[n-1] == 's' && w[n-2] != 's' {
		return plural(w[:n-1])
	}
	return max(1, regular(w))
}

// plural returns the syllables of a word with an s behind it.
func plural(stem string) int {
	n := len(stem)
	extra := 0
	if stem[n-1] == 'e' {
		if sibilant(stem[n-2]) && !(stem[n-2] == 'h' && stem[n-3] != 's' && stem[n-3] != 'c') {
			extra = 1
		}
	}
	return english(stem) + extra
}

// contraction returns the syllables of a stem and what follows its apostrophe.
func contraction(stem, rest string) int {
	if stem == "" || !hasVowel(stem) && len(rest) > 1 { // d'accord
		return english(rest)
	}
	n := english(stem)
	end := last(stem)
	switch rest {
	case "s":
		if hisses(stem) {
			n++
		}
	case "t":
		body := strings.TrimSuffix(stem, "n")
		if body == "" {
			return 1
		}
		n = english(body)
		if !vowel(last(body)) || silentE(body) {
			n++ // didn't, haven't
		}
	case "d":
		if end == 't' || end == 'd' {
			n++
		}
	case "ll", "ve", "re":
		if !vowel(end) && end != 'r' && end != 'w' {
			n++
		}
	case "", "m":
	default:
		n += english(rest)
	}
	return n
}

// hisses reports whether a word ends in a sound after which 's is a syllable.
func hisses(w string) bool {
	for _, end := range [...]string{"s", "x", "z", "ch", "sh", "ce", "ge", "se", "ze", "che", "xe"} {
		if strings.HasSuffix(w, end) {
			return true
		}
	}
	return false
}

// regular returns the syllables of a word that has no table entry, no
// apostrophe and no plural s.
func regular(w string) int {
	if w == "" {
		return 0
	}
	if rest, ok := strings.CutPrefix(w, "mc"); ok && rest != "" {
		return 1 + english(rest)
	}
	for _, b := range beginnings.of(first(w)) {
		if rest, ok := strings.CutPrefix(w, b.text); ok && len(rest) > 1 && !vowel(rest[0]) {
			return b.syllables + english(rest)
		}
	}
	for _, e := range endings.of(last(w)) {
		if stem, ok := strings.CutSuffix(w, e.text); ok && silentE(stem) {
			return english(stem) + e.syllables
		}
	}
	for _, e := range adjusted.of(last(w)) {
		if strings.HasSuffix(w, e.text) {
			return max(1, e.syllables+nuclei(silenced(w)))
		}
	}
	return nuclei(silenced(w))
}

// silenced cuts what is not sounded at the end of a word.
func silenced(w string) string {
	n := len(w)
	switch {
	case n > 3 && strings.HasSuffix(w, "ed"):
		return pastTense(w)
	case n > 3 && (strings.HasSuffix(w, "que") || strings.HasSuffix(w, "gue")):
		return w[:n-2]
	case silentE(w):
		return w[:n-1]
	}
	return w
}

// silentE reports whether a word ends in an e that is not sounded.
func silentE(w string) bool {
	n := len(w)
	if n < 3 || w[n-1] != 'e' {
		return false
	}
	c := w[n-3]
	if vowel(w[n-2]) {
		return w[n-2] == 'y' && vowel(c)
	}
	if !vowel(c) && (w[n-2] == 'l' && c != 'l' || w[n-2] == 'r' && c != 'r') {
		return false
	}
	return hasVowel(w[:n-1])
}

// pastTense cuts the e of -ed where it is silent.
func pastTense(w string) string {
	stem := w[:len(w)-2]
	c := stem[len(stem)-1]
	before := stem[len(stem)-2]
	switch {
	case c == 't', c == 'd', vowel(c) && !(c == 'y' && vowel(before)), !hasVowel(stem):
		return w
	case c == 'l' && !vowel(before) && before != 'l' && before != 'r' && before != 'w':
		return w // handled
	case c == 'r' && !vowel(before) && before != 'r':
		return w // hundred
	}
	return stem
}
