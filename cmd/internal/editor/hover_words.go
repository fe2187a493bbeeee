// What a word of the language means where it stands.

package editor

import (
	"slices"
	"strings"

	"pullscore/lang"
)

// usage says how the word at the place is used: the usage line of the statement that it
// stands in, and what the reference says of that statement. Of a word that no usage line
// has, such as a unit, it gives what the reference says.
func (t *teller) usage() []string {
	word := t.word()
	own := lang.Usage(lang.At(t.doc.data, t.token.End).Statement)
	if t.one != nil && t.token.Start == t.one.Range().Start.Offset {
		own = lang.Usage(word)
	}
	lines := lang.Usages(word)
	if own != "" && hasWord(own, word) {
		lines = []string{own}
	} else if text := explained(word); own != "" && text != "" { // a word of a moment or a place, and not of other statements
		return fold(text, foldAt)
	}
	if len(lines) == 1 {
		return append(lines, fold(purpose(lines[0], word), foldAt)...)
	}
	if len(lines) > 4 {
		lines = append(lines[:4:4], "…")
	}
	return append(lines, fold(explained(word), foldAt)...)
}

// hasWord reports whether a usage line has a word, not as part of another.
func hasWord(usage, word string) bool {
	return slices.Contains(strings.FieldsFunc(usage, func(r rune) bool { return strings.ContainsRune(" ,|[]()\"", r) }), word)
}

// purpose returns what the reference says of a statement; if it has no row for it, what it
// says of the word.
func purpose(usage, word string) string {
	for _, passage := range lang.Explain(word) {
		if says, ok := strings.CutPrefix(passage, "`"+usage+"`: "); ok {
			return plain(says)
		}
	}
	if own := lang.Usage(word); own != "" && own != usage {
		return "" // it says what the word is elsewhere, such as camera as a header
	}
	return explained(word)
}

// explained returns the first sentence of the reference that is about a word: one that
// begins with it, or a list with it. A passage that only names the word says little of it.
func explained(word string) string {
	for _, passage := range lang.Explain(word) {
		before, rest, _ := strings.Cut(passage, "`")
		quoted, _, _ := strings.Cut(rest, "`")
		first := strings.FieldsFunc(quoted+" ", func(r rune) bool { return r == ' ' || r == ',' })
		switch {
		case before == "", before == "Write ":
			if len(first) > 0 && first[0] == word {
				return plain(passage)
			}
		case strings.HasSuffix(before, "s: "): // of units
			return plain(passage)
		}
	}
	return ""
}

// plain returns the first sentence of a passage, without its backquotes.
func plain(passage string) string {
	first, _, _ := strings.Cut(strings.ReplaceAll(passage, "`", ""), ". ")
	return first
}
