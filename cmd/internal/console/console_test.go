package console

import (
	"bytes"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"pgregory.net/rapid"
)

func TestColourOfWhatIsNoTerminal(t *testing.T) {
	for colour, want := range map[string]bool{"auto": false, "never": false, "always": true} {
		s := New(&bytes.Buffer{}, colour)
		if s.Colour != want || s.Terminal || s.Width != plainWidth {
			t.Errorf("%s: %+v", colour, s)
		}
	}
}

func TestPaint(t *testing.T) {
	on, off := Screen{Colour: true}, Screen{}
	if got := on.Paint(Red, "x"); got != "\x1b[1;31mx\x1b[0m" {
		t.Errorf("in colour: %q", got)
	}
	if got := off.Paint(Red, "x") + on.Paint(Plain, "x") + on.Paint(Red, ""); got != "xx" {
		t.Errorf("plain: %q", got)
	}
}

func TestClean(t *testing.T) {
	for text, want := range map[string]string{
		"plain":              "plain",
		"a\tb\r\nc":          "a b  c",
		"\x1b[31mred\x07":    "\uFFFD[31mred\uFFFD",
		"\xff":               "\uFFFD",
		"\u202Eback":         "\uFFFDback", // right-to-left override
		"می\u200Cخواهم":      "می\u200Cخواهم",
		"e\u0301":            "e\u0301",
		"\u2028":             " ",
		"\u009b31m":          "\uFFFD31m", // the one-byte form of a control sequence
		"\u00a0no-break":     " no-break",
		"\U000E0041tag char": "\uFFFDtag char",
	} {
		if got := Clean(text); got != want {
			t.Errorf("Clean(%q) = %q, want %q", text, got, want)
		}
	}
}

// Widths are those of Unicode Standard Annex 11, East Asian Width.
func TestColumns(t *testing.T) {
	for text, want := range map[string]int{"": 0, "abc": 3, "é": 1, "e\u0301": 1, "焦点": 4, "ｆ": 2, "→": 1, "한": 2} {
		if got := Columns(text); got != want {
			t.Errorf("Columns(%q) = %d, want %d", text, got, want)
		}
	}
}

func TestFitAndFill(t *testing.T) {
	for _, test := range []struct {
		text string
		n    int
		want string
	}{
		{"NADIA", 5, "NADIA"}, {"NADIA", 4, "NAD…"}, {"焦点距離", 5, "焦点…"}, {"焦点距離", 6, "焦点…"}, {"x", 0, "…"},
	} {
		if got := Fit(test.text, test.n); got != test.want {
			t.Errorf("Fit(%q, %d) = %q, want %q", test.text, test.n, got, test.want)
		}
	}
	if got := Left("焦", 4) + "|" + Right("焦", 4) + "|" + Left("long", 2); got != "焦  |  焦|long" {
		t.Errorf("filled: %q", got)
	}
}

func TestTextHoldsItsWidth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := Clean(rapid.String().Draw(t, "text"))
		n := rapid.IntRange(1, 40).Draw(t, "n")
		if !utf8.ValidString(text) || strings.ContainsAny(text, "\x1b\n") {
			t.Fatalf("not clean: %q", text)
		}
		if got := Columns(Fit(text, n)); got > n {
			t.Fatalf("Fit(%q, %d) takes %d columns", text, n, got)
		}
		lines := Wrap(text, n)
		if letters := func(s string) string { return strings.Join(strings.Fields(s), "") }; letters(strings.Join(lines, "")) != letters(text) {
			t.Fatalf("Wrap(%q, %d) = %q", text, n, lines)
		}
		for _, l := range lines {
			if Columns(l) > n && n > 1 { // a wide character has no room in one column
				t.Fatalf("Wrap(%q, %d) has the line %q", text, n, l)
			}
		}
	})
}

func TestProgress(t *testing.T) {
	var out bytes.Buffer
	clock := time.Time{}
	start := func(terminal bool, total int) *Progress {
		out.Reset()
		p := NewProgress(Screen{W: &out, Terminal: terminal}, "reading", total)
		p.now = func() time.Time { return clock }
		p.next = clock.Add(patience)
		return p
	}
	p := start(true, 4)
	p.Step()
	p.Clear()
	if out.Len() > 0 {
		t.Errorf("shown at once: %q", &out)
	}
	clock = clock.Add(patience)
	p.Step()
	p.Step() // too soon to draw again
	p.Clear()
	p.Clear()
	want := "\r\x1b[Kreading " + strings.Repeat("━", 12) + strings.Repeat("─", 12) + " 2 of 4\r\x1b[K"
	if out.String() != want {
		t.Errorf("shown: %q, want %q", &out, want)
	}
	for _, p := range []*Progress{start(false, 4), start(true, 1)} {
		clock = clock.Add(time.Hour)
		p.Step()
		if out.Len() > 0 {
			t.Errorf("shown where none is wanted: %q", &out)
		}
	}
}
