// Texts shortened where a reader loses least.

package sheet

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"pullscore/render/draw"
)

// ShortenedFront returns the text cut to w millimetres, with an ellipsis in front. It is
// for paths, which differ at their ends. Marks, which have no width, stay with their
// letter.
func ShortenedFront(t draw.Text, w float64) draw.Text {
	if w = w/draw.Slack + 1e-9; t.Width <= w {
		return t
	}
	rest, left := t.String, t.Width+t.Font.Width("…")
	for rest != "" && (left > w || weightless(rest)) {
		_, size := utf8.DecodeRuneInString(rest)
		left -= t.Font.Width(rest[:size])
		rest = rest[size:]
	}
	t.Full, t.String = t.String, "…"+rest
	t.Width = t.Font.Width(t.String)
	return t
}

// weightless reports whether a text begins with something that has no width.
func weightless(s string) bool {
	r, _ := utf8.DecodeRuneInString(s)
	return unicode.In(r, unicode.M, unicode.Cf)
}

// ShortenedPhrases returns the text cut to w millimetres, with an ellipsis after one of
// its commas. If the first phrase is too long, it cuts inside that.
func ShortenedPhrases(t draw.Text, w float64) draw.Text {
	short := t
	for short.Room().W > w+1e-9 {
		cut := strings.LastIndex(strings.TrimSuffix(short.String, ", …"), ", ")
		if cut < 0 {
			return t.Shortened(w)
		}
		short.String, short.Full = t.String[:cut]+", …", t.String
		short.Width = t.Font.Width(short.String)
	}
	return short
}
