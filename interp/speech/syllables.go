// Syllables: how many a word has.

package speech

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"
)

// Syllables estimates how many syllables a word has: at least 1 for anything
// with a letter or digit, 0 for anything else.
//
// Latin letters are read by the rules of English spelling, numerals as they are
// said in English ("14" is fourteen), and a run of both in turn ("R2" is are
// two). In scripts written without spaces each letter counts as one. In Cyrillic
// and Greek each vowel does; in other scripts, most of which write consonants
// alone or with a vowel each, every second letter.
func Syllables(word string) int {
	n := 0
	var before string // the run of digits just before
	mixed := false
	for rest := word; rest != ""; {
		var run string
		var k kind
		run, rest, k = nextRun(rest)
		mixed = mixed || rest != ""
		more, ordinal := suffix(before, run)
		switch {
		case ordinal:
			n += more
		case k != other:
			n += max(1, countRun(run, k, mixed))
		}
		before = ""
		if k == digits {
			before = run
		}
	}
	return n
}

// A kind is how the syllables of a run of characters are counted.
type kind uint8

const (
	other    kind = iota // not sounded
	latin                // Latin letters and apostrophes between them
	digits               // a numeral
	single               // letters of a script written without spaces
	vowelled             // letters of an alphabet with vowels
	foreign              // any other letters
)

// kindOf returns the kind of a character.
func kindOf(r rune) kind {
	switch {
	case 'a' <= r && r <= 'z' || 'A' <= r && r <= 'Z':
		return latin
	case unicode.IsDigit(r):
		return digits
	case !unicode.IsLetter(r):
		return other
	case spaceless(r):
		return single
	case unicode.In(r, unicode.Latin):
		return latin
	case unicode.In(r, unicode.Cyrillic, unicode.Greek):
		return vowelled
	}
	return foreign
}

// nextRun cuts the longest run of one kind off a text that is not empty. Marks,
// joiners and apostrophes inside belong to the run that they follow, points
// and commas inside a numeral too.
func nextRun(s string) (run, rest string, k kind) {
	r, end := utf8.DecodeRuneInString(s)
	k = kindOf(r)
	for end < len(s) {
		r, size := utf8.DecodeRuneInString(s[end:])
		within := kindOf(r) == k || k != other &&
			(unicode.IsMark(r) || joiner(r) || k == latin && apostrophe(r) || k == digits && binds('0', r, s[end+size:]))
		if !within {
			break
		}
		end += size
	}
	return s[:end], s[end:], k
}

// countRun returns the syllables of a run; mixed tells that others stand in the
// same word.
func countRun(run string, k kind, mixed bool) int {
	switch k {
	case latin:
		return countLatin(run, mixed)
	case digits:
		return numeral(run)
	case single:
		return countRunes(run, unicode.IsLetter)
	case vowelled:
		return countRunes(norm.NFD.String(strings.ToLower(run)), isVowelLetter)
	}
	return countRunes(run, unicode.IsLetter) / 2
}

// vowelLetters are the vowels of Cyrillic and Greek, without their marks.
const vowelLetters = "аеиоуыэюяієαεηιουω"

func isVowelLetter(r rune) bool { return strings.ContainsRune(vowelLetters, r) }

func countRunes(s string, wanted func(rune) bool) int {
	n := 0
	for _, r := range s {
		if wanted(r) {
			n++
		}
	}
	return n
}

// countLatin returns the syllables of a run of Latin letters. Letters among
// digits, capitals without a vowel (TV) and single letters are spelled.
func countLatin(run string, mixed bool) int {
	w := plain(run)
	if n, ok := irregular(w); ok {
		return n
	}
	if len(w) == 1 || len(w) <= 5 && !hasVowel(w) || mixed && len(w) <= 3 && upper(run) {
		return spelled(w)
	}
	return english(w)
}

// upper reports whether a text is written in capitals of ASCII.
func upper(s string) bool {
	for i := range len(s) {
		if s[i] < 'A' || s[i] > 'Z' {
			return false
		}
	}
	return true
}

// spelled returns the syllables of the names of letters: one each, but for w.
func spelled(w string) int { return len(w) + 2*strings.Count(w, "w") }

// plain returns the letters of a Latin word in lower case a to z, with its
// apostrophes as '. A vowel with an accent or diaeresis that gives it a
// syllable of its own (é, è, ë, ï) is written as a capital.
func plain(word string) string {
	b := make([]byte, 0, len(word))
	for _, r := range word {
		switch {
		case 'a' <= r && r <= 'z':
			b = append(b, byte(r))
		case 'A' <= r && r <= 'Z':
			b = append(b, byte(r)+'a'-'A')
		case apostrophe(r):
			b = append(b, '\'')
		case r >= utf8.RuneSelf:
			b = append(b, unaccented(unicode.ToLower(r))...)
		}
	}
	return string(b)
}

// unaccented returns a lower-case letter that is not ASCII as plain letters.
func unaccented(r rune) string {
	switch r {
	case 'é', 'è', 'ë':
		return "E"
	case 'ï':
		return "I"
	case 'æ', 'œ':
		return "e"
	case 'ø':
		return "o"
	case 'ß':
		return "ss"
	case 'ł':
		return "l"
	case 'þ', 'ð':
		return "th"
	}
	base := norm.NFD.String(string(r))
	if base[0] < utf8.RuneSelf {
		return base[:1]
	}
	return ""
}
