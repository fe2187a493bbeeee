package draw

import (
	"math"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"pgregory.net/rapid"
)

func TestClean(t *testing.T) {
	for _, tc := range []struct{ name, in, want string }{
		{"plain", "NADIA", "NADIA"},
		{"blanks of every kind", " a\tb\n\u00a0\u2009c ", "a b c"},
		{"controls", "bell\x07", "bell\ufffd"},
		{"not UTF-8", "a\xffb", "a\ufffdb"},
		{"no character", "a\ufffeb\U0001ffff", "a\ufffdb\ufffd"},
		{"override", "\u202egnirts", "\ufffdgnirts"},
		{"isolate", "\u2067x\u2069", "\ufffdx\ufffd"},
		{"a mark that spelling needs stays", "می\u200cروم", "می\u200cروم"},
	} {
		if got := Clean(tc.in); got != tc.want {
			t.Errorf("%s: Clean(%q) = %q, want %q", tc.name, tc.in, got, tc.want)
		}
	}
}

func TestCleanIsClean(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := Clean(rapid.String().Draw(t, "s"))
		if Clean(s) != s {
			t.Errorf("Clean(%q) changes it again", s)
		}
		if !utf8.ValidString(s) || strings.ContainsFunc(s, unicode.IsControl) {
			t.Errorf("Clean left %q", s)
		}
	})
}

func TestShortenFits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := Font{Size: rapid.Float64Range(7, 20).Draw(t, "size"), Bold: rapid.Bool().Draw(t, "bold")}
		s := Clean(rapid.String().Draw(t, "s"))
		w := rapid.Float64Range(f.Room("…"), 60).Draw(t, "w")
		short := f.Shorten(s, w)
		if f.Room(short) > w+1e-8 {
			t.Errorf("%q takes %.3f mm, room %.3f", short, f.Room(short), w)
		}
		if short != s && !strings.HasPrefix(s, strings.TrimSuffix(short, "…")) {
			t.Errorf("%q does not begin as %q does", short, s)
		}
		if (short == s) != (f.Room(s) <= w+1e-9) {
			t.Errorf("%q became %q where it takes %.3f of %.3f", s, short, f.Room(s), w)
		}
	})
}

func TestShortenKeepsMarksWithTheirLetter(t *testing.T) {
	f := Font{Size: 10}
	s := "xxxe\u0301\u0302yyyyyyy"
	for w := f.Room("…"); w < f.Room(s); w += 0.1 {
		short := strings.TrimSuffix(f.Shorten(s, w), "…")
		rest := strings.TrimPrefix(s, short)
		if r, _ := utf8.DecodeRuneInString(rest); unicode.Is(unicode.M, r) {
			t.Errorf("in %.1f mm %q is cut before a mark", w, short)
		}
	}
}

func TestWrapLosesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := Font{Size: 7.5}
		s := rapid.String().Draw(t, "s")
		w := rapid.Float64Range(4, 80).Draw(t, "w")
		lines := f.Wrap(s, w)
		if got, want := strings.ReplaceAll(strings.Join(lines, ""), " ", ""), strings.ReplaceAll(Clean(s), " ", ""); got != want {
			t.Errorf("Wrap(%q) gave %q", s, lines)
		}
		for _, line := range lines {
			if f.Room(line) > w+1e-8 && utf8.RuneCountInString(line) > 1 {
				t.Errorf("line %q takes %.2f mm, room %.2f", line, f.Room(line), w)
			}
		}
	})
}

func TestTextBox(t *testing.T) {
	f := Font{Size: 10}
	text := NewText(100, 50, "Hand", f, Black)
	for _, tc := range []struct {
		align Align
		left  float64
	}{{Start, 100}, {Middle, 100 - text.Width/2}, {End, 100 - text.Width}} {
		b := text.Aligned(tc.align).Box()
		if b.X != tc.left || b.W != text.Width {
			t.Errorf("align %d: box from %.2f, %.2f wide", tc.align, b.X, b.W)
		}
		if b.Y >= 50-0.7*10*MM || b.Bottom() <= 50+0.2*10*MM {
			t.Errorf("align %d: box %v cuts off capitals or descenders", tc.align, b)
		}
		r, extra := text.Aligned(tc.align).Room(), (Slack-1)*text.Width
		left, right := map[Align][2]float64{Start: {0, extra}, Middle: {extra / 2, extra / 2}, End: {extra, 0}}[tc.align], r.Right()-b.Right()
		if math.Abs(b.X-r.X-left[0]) > 1e-9 || math.Abs(right-left[1]) > 1e-9 {
			t.Errorf("align %d: room %v about %v", tc.align, r, b)
		}
	}
}
