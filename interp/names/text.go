package names

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"pullscore/lang"
)

// SourceText is what a range covers, on one line.
func SourceText(src []byte, r lang.Range) string {
	if r.Start.Offset < 0 || r.End.Offset > len(src) || r.Start.Offset > r.End.Offset {
		return ""
	}
	return strings.Join(strings.Fields(string(src[r.Start.Offset:r.End.Offset])), " ")
}

// Sentence makes a detail of an error's text.
func Sentence(s string) string {
	if s == "" || strings.HasSuffix(s, ".") {
		return s
	}
	r, n := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(r)) + s[n:] + "."
}
