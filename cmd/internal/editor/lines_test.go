package editor

import (
	"bytes"
	"strings"
	"testing"
	sixteen "unicode/utf16"
	"unicode/utf8"

	"pullscore/cmd/internal/lsp"
)

func TestLines(t *testing.T) {
	x := newLineIndex([]byte("aé😀b\r\nc\rd\n"))
	for _, c := range []struct {
		offset        int
		line, n8, n16 uint32
	}{
		{0, 0, 0, 0}, {1, 0, 1, 1}, {3, 0, 3, 2}, {7, 0, 7, 4}, {8, 0, 8, 5}, {10, 1, 0, 0}, {11, 1, 1, 1}, {12, 2, 0, 0}, {14, 3, 0, 0},
	} {
		for enc, n := range map[encoding]uint32{utf8s: c.n8, utf16: c.n16} {
			at := lsp.Position{Line: c.line, Character: n}
			if got := x.position(c.offset, enc); got != at {
				t.Errorf("byte %d is %+v, not %+v", c.offset, got, at)
			}
			if got, ok := x.offset(at, enc); got != c.offset || !ok {
				t.Errorf("%+v is byte %d, not %d", at, got, c.offset)
			}
		}
	}
	for _, c := range []struct {
		at     lsp.Position
		enc    encoding
		offset int
		exact  bool
	}{
		{lsp.Position{Line: 0, Character: 99}, utf16, 8, true},  // beyond the line: its end
		{lsp.Position{Line: 4, Character: 0}, utf16, 14, true},  // the line after the last: the end
		{lsp.Position{Line: 5, Character: 0}, utf16, 14, false}, // further down: nowhere
		{lsp.Position{Line: 0, Character: 3}, utf16, 3, false},  // within a pair
		{lsp.Position{Line: 0, Character: 2}, utf8s, 1, false},  // within two bytes
	} {
		if got, ok := x.offset(c.at, c.enc); got != c.offset || ok != c.exact {
			t.Errorf("%+v is byte %d (%v), not %d (%v)", c.at, got, ok, c.offset, c.exact)
		}
	}
}

// plainEdit makes an edit in the simplest way there is: it counts characters one by one
// from the start of the text.
func plainEdit(text string, c lsp.ContentChange, enc encoding) (string, bool) {
	place := func(at lsp.Position) (int, bool) {
		lines := strings.SplitAfter(strings.ReplaceAll(strings.ReplaceAll(text, "\r\n", "\x00\x01"), "\r", "\x02"), "\n")
		var all []string // lines also end at \x01 and \x02
		for _, l := range lines {
			for {
				i := strings.IndexAny(l, "\x01\x02")
				if i < 0 {
					break
				}
				all, l = append(all, l[:i+1]), l[i+1:]
			}
			if l != "" {
				all = append(all, l)
			}
		}
		if n := len(all); n == 0 || strings.HasSuffix(all[n-1], "\n") || strings.HasSuffix(all[n-1], "\x01") || strings.HasSuffix(all[n-1], "\x02") {
			all = append(all, "")
		}
		switch {
		case int(at.Line) == len(all):
			return len(text), true
		case int(at.Line) > len(all):
			return 0, false
		}
		before := len(strings.Join(all[:at.Line], ""))
		line := strings.TrimRight(all[at.Line], "\n\x00\x01\x02")
		for end := 0; ; end++ {
			n := end
			if enc == utf16 {
				n = len(sixteen.Encode([]rune(line[:end])))
			}
			if (end == len(line) || utf8.RuneStart(line[end])) && n == int(at.Character) || end == len(line) && n <= int(at.Character) {
				return before + end, true
			}
			if end == len(line) {
				return 0, false
			}
		}
	}
	if c.Range == nil {
		return c.Text, true
	}
	start, ok := place(c.Range.Start)
	end, also := place(c.Range.End)
	if !ok || !also || start > end {
		return "", false
	}
	return text[:start] + c.Text + text[end:], true
}

// FuzzEdits makes edits in a document and in a plain string.
func FuzzEdits(f *testing.F) {
	f.Add("rate 24\nshot 1\n", "# a 😀\r\n", uint16(0), uint16(2), uint16(1), uint16(3), false)
	f.Add("a😀b\r\nc\rd", "", uint16(0), uint16(2), uint16(2), uint16(0), false)
	f.Add("a😀b\r\n", "é", uint16(0), uint16(2), uint16(0), uint16(9), true)
	f.Add("", "x", uint16(1), uint16(0), uint16(1), uint16(7), false)
	f.Add("one\ntwo\n", "", uint16(7), uint16(0), uint16(9), uint16(0), true)
	f.Fuzz(func(t *testing.T, text, put string, line, char, endLine, endChar uint16, eight bool) {
		if !utf8.ValidString(text) || strings.ContainsAny(text, "\x00\x01\x02") {
			t.Skip() // JSON has no such text; the plain edit uses these signs
		}
		c := lsp.ContentChange{Text: put, Range: &lsp.Range{
			Start: lsp.Position{Line: uint32(line), Character: uint32(char)}, End: lsp.Position{Line: uint32(endLine), Character: uint32(endChar)},
		}}
		d := &document{text: newText([]byte(text), nil), version: 1}
		next := d.edited(2, []lsp.ContentChange{c, {Range: &lsp.Range{}, Text: "!"}}, encoding(eight))
		want, ok := plainEdit(text, c, encoding(eight))
		if next.lost == ok || next.version != 2 {
			t.Fatalf("lost: %v, but the place is there: %v", next.lost, ok)
		}
		if ok && !bytes.Equal(next.data, []byte("!"+want)) {
			t.Fatalf("%q, not %q", next.data, "!"+want)
		}
		if string(d.data) != text {
			t.Fatal("the old version has changed")
		}
	})
}
