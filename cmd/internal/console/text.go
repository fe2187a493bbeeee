// Text as a terminal shows it: clean, measured, wrapped.

package console

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/width"
)

// The joiners that scripts such as Persian and Malayalam need within a word.
const (
	nonJoiner = '\u200C'
	joiner    = '\u200D'
)

// Clean returns text from a plan or of a path with everything replaced that a
// terminal could take for a command, or that turns the direction of writing:
// on one line, in valid UTF-8.
func Clean(text string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\t' || r == '\n' || r == '\r' || unicode.IsSpace(r):
			return ' '
		case unicode.IsPrint(r) || r == nonJoiner || r == joiner:
			return r
		}
		return utf8.RuneError
	}, text)
}

// Columns returns how many columns of a terminal a clean text takes: two for
// the wide characters of East Asian scripts, none for combining marks.
func Columns(text string) int {
	n := 0
	for _, r := range text {
		n += columns(r)
	}
	return n
}

func columns(r rune) int {
	switch {
	case r < 0x300:
		return 1
	case unicode.In(r, unicode.Mn, unicode.Me) || r == nonJoiner || r == joiner:
		return 0
	}
	if k := width.LookupRune(r).Kind(); k == width.EastAsianWide || k == width.EastAsianFullwidth {
		return 2
	}
	return 1
}

// Fit returns the text in at most n columns, shortened by an ellipsis where it
// is longer.
func Fit(text string, n int) string {
	if Columns(text) <= n {
		return text
	}
	used := 1 // the ellipsis
	for i, r := range text {
		if used += columns(r); used > n {
			return text[:i] + "…"
		}
	}
	return text
}

// Left returns the text with blanks behind it to fill n columns.
func Left(text string, n int) string {
	return text + strings.Repeat(" ", max(0, n-Columns(text)))
}

// Right returns the text with blanks before it to fill n columns.
func Right(text string, n int) string {
	return strings.Repeat(" ", max(0, n-Columns(text))) + text
}

// Wrap breaks text between words into lines of at most n columns, and inside a
// word that is longer than a line.
func Wrap(text string, n int) []string {
	var lines []string
	line, used := "", 0
	for _, word := range strings.Fields(text) {
		w := Columns(word)
		if line != "" && used+1+w > n {
			lines = append(lines, line)
			line, used = "", 0
		}
		for w > n {
			head := head(word, n)
			lines = append(lines, word[:head])
			word = word[head:]
			w = Columns(word)
		}
		if line != "" {
			line, used = line+" ", used+1
		}
		line, used = line+word, used+w
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// head returns how many bytes of a word stand in n columns, at least one
// character.
func head(word string, n int) int {
	used := 0
	for i, r := range word {
		if used += columns(r); used > n && i > 0 {
			return i
		}
	}
	return len(word)
}
