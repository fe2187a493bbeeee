package lines

import (
	"io"
	"strings"
	"testing"
	"testing/iotest"
	"unicode/utf16"
)

// A text that is read comes out as the same text does that is decoded at once.
func TestReader(t *testing.T) {
	const text = "tc,focus_m\nÄ é Зоя 𝄞\n"
	as16 := func(mark string, big bool) string {
		var b strings.Builder
		b.WriteString(mark)
		for _, u := range utf16.Encode([]rune(text)) {
			lo, hi := byte(u), byte(u>>8)
			if big {
				lo, hi = hi, lo
			}
			b.WriteByte(lo)
			b.WriteByte(hi)
		}
		return b.String()
	}
	for name, src := range map[string]string{
		"UTF-8":                text,
		"UTF-8 with a mark":    "\uFEFF" + text,
		"UTF-16LE with a mark": as16("\xFF\xFE", false),
		"UTF-16BE with a mark": as16("\xFE\xFF", true),
		"UTF-16LE":             as16("", false),
		"UTF-16BE":             as16("", true),
		"half a character":     as16("", true) + "\x00",
		"half a pair":          as16("", true) + "\xD8\x34\x00A",
		"a pair cut short":     as16("", true) + "\xD8\x34",
		"empty":                "",
		"one byte":             "t",
	} {
		t.Run(name, func(t *testing.T) {
			want, _ := Decode("f", []byte(src))
			for _, r := range []io.Reader{strings.NewReader(src), iotest.OneByteReader(strings.NewReader(src))} {
				text, err := NewReader(r)
				if err != nil {
					t.Fatal(err)
				}
				got, err := io.ReadAll(iotest.OneByteReader(text))
				if err != nil || unlikeEnd(string(got)) != unlikeEnd(want.Content) {
					t.Errorf("%q, %v, want %q", got, err, want.Content)
				}
			}
		})
	}
	if _, err := NewReader(iotest.ErrReader(iotest.ErrTimeout)); err != iotest.ErrTimeout {
		t.Errorf("%v", err)
	}
}

// unlikeEnd leaves out U+FFFD at the end, of which a decoder may give one or two
// for what is cut short.
func unlikeEnd(s string) string { return strings.TrimRight(s, "\uFFFD") }
