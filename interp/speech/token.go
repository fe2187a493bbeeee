// Tokens: the words of a line.

package speech

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"
)

// A Token is a word of a line, or one character of a script that is written
// without spaces.
type Token struct {
	Text       string // in normal form C
	Start, End int    // bytes of the line as given, End after the last
	Syllables  int    // at least 1, where they are counted
}

// Split returns the words of a line in order: runs of letters, marks and
// digits. An apostrophe between letters (don't) and a comma or point between
// digits (1,500) are part of the word; hyphens and other signs part words and
// are silent. In scripts written without spaces each letter, with the marks
// that follow it, is a Token.
func Split(text string) []Token {
	tokens := Tokens(text)
	for i := range tokens {
		tokens[i].Syllables = Syllables(tokens[i].Text)
	}
	return tokens
}

// Tokens returns what Split does, without counting syllables, which takes most of the
// time.
func Tokens(text string) []Token {
	nfc, offset := compose(text)
	tokens := make([]Token, 0, len(nfc)/4+1) // most words are longer
	for i := 0; i < len(nfc); {
		start, end := nextToken(nfc, i)
		if start == end {
			break
		}
		word := nfc[start:end]
		tokens = append(tokens, Token{Text: word, Start: offset.of(start), End: offset.of(end)})
		i = end
	}
	return tokens
}

// nextToken returns where the next token of a text in normal form C starts and
// ends, from a byte on; both are the end of the text where there is none.
func nextToken(s string, i int) (start, end int) {
	for i < len(s) {
		if alike[s[i]] == silent {
			i++
			continue
		}
		r, size := rune(s[i]), 1
		if r >= utf8.RuneSelf {
			r, size = utf8.DecodeRuneInString(s[i:])
		}
		if begins(r) {
			return i, tokenEnd(s, i, r, i+size)
		}
		i += size
	}
	return len(s), len(s)
}

// tokenEnd returns where the token ends that starts at i with the letter or
// digit r, whose own bytes end at next.
func tokenEnd(s string, i int, r rune, next int) int {
	alone := spaceless(r)
	latest := r // the latest letter or digit
	end := next
	for end < len(s) {
		switch k := alike[s[end]]; { // as most are
		case k == spoken && !alone:
			latest = rune(s[end])
			end++
			continue
		case k == silent:
			return end
		}
		r, size := utf8.DecodeRuneInString(s[end:])
		switch {
		case !alone && begins(r) && !spaceless(r):
			latest = r
			end += size
		case unicode.IsMark(r), joiner(r):
			end += size
		case alone:
			return end
		case binds(latest, r, s[end+size:]):
			end += size
		default:
			return end
		}
	}
	return end
}

// What a byte is for words, where it is a character that needs no closer look.
const (
	closer uint8 = iota
	spoken       // it begins a word, or goes on with it
	silent       // it is in no word
)

// alike says what each byte is.
var alike = func() (t [256]uint8) {
	for c := range rune(utf8.RuneSelf) {
		switch {
		case begins(c):
			t[c] = spoken
		case !apostrophe(c) && c != ',' && c != '.':
			t[c] = silent
		}
	}
	return t
}()

// begins reports whether a character can begin a token.
func begins(r rune) bool {
	if r < utf8.RuneSelf {
		return 'a' <= r && r <= 'z' || 'A' <= r && r <= 'Z' || '0' <= r && r <= '9'
	}
	return unicode.IsLetter(r) || unicode.IsDigit(r)
}

// binds reports whether the sign r is part of a word: it stands behind the
// letter or digit latest, and rest follows it.
func binds(latest, r rune, rest string) bool {
	after, _ := utf8.DecodeRuneInString(rest)
	switch {
	case apostrophe(r):
		return unicode.IsLetter(latest) && begins(after) && !spaceless(after)
	case r == ',' || r == '.':
		return unicode.IsDigit(latest) && unicode.IsDigit(after)
	}
	return false
}

// apostrophe reports whether a character is used as an apostrophe.
func apostrophe(r rune) bool {
	switch r {
	case '\'', '’', '‘', 'ʼ', '′', '＇', '`', '´':
		return true
	}
	return false
}

// joiner reports whether a character only shapes or breaks the word that it is
// in: the zero-width joiners and the soft hyphen.
func joiner(r rune) bool {
	return r == '\u200c' || r == '\u200d' || r == '\u00ad'
}

// spacelessScripts are those written without spaces between words. Korean has
// spaces, but its particles are written on to the noun, so a word is found in
// it as it is in the others.
var spacelessScripts = []*unicode.RangeTable{
	unicode.Han, unicode.Hiragana, unicode.Katakana, unicode.Hangul,
	unicode.Thai, unicode.Lao, unicode.Khmer, unicode.Myanmar,
}

// spaceless reports whether r is a letter of a script written without spaces.
func spaceless(r rune) bool {
	const firstThai = 0x0e00 // the first such script in Unicode's order
	if r < firstThai || !unicode.IsLetter(r) {
		return false
	}
	// The long-vowel mark of kana counts as common to several scripts.
	return r == 'ー' || r == 'ｰ' || unicode.In(r, spacelessScripts...)
}

// offsets says where each byte of a composed text came from; nil where nothing
// was changed.
type offsets []int

func (o offsets) of(i int) int {
	if o == nil {
		return i
	}
	return o[i]
}

// compose returns a text in normal form C, and where its bytes came from. What
// is the same up to the first change in a piece came from where it stands; the
// rest of the piece counts as a whole.
func compose(text string) (string, offsets) {
	if norm.NFC.IsNormalString(text) {
		return text, nil
	}
	var out []byte
	var from offsets
	for i := 0; i < len(text); {
		n := norm.NFC.NextBoundaryInString(text[i:], true)
		piece := text[i : i+n]
		size := len(out)
		out = norm.NFC.AppendString(out, piece)
		same := unchanged(piece, string(out[size:]))
		for k := range len(out) - size {
			from = append(from, i+min(k, same))
		}
		i += n
	}
	return string(out), append(from, len(text))
}

// unchanged returns how many bytes of whole characters two texts begin with in
// common.
func unchanged(a, b string) int {
	for i, r := range a {
		if !strings.HasPrefix(b[min(i, len(b)):], string(r)) {
			return i
		}
	}
	return len(a)
}
