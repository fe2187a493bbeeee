package lines

import (
	"encoding/binary"
	"fmt"
	"strings"
	"testing"
	"unicode/utf16"

	"golang.org/x/text/encoding/unicode"
	"pgregory.net/rapid"
)

func texts(t *Text) (list []string) {
	for l := range t.All() {
		list = append(list, fmt.Sprintf("%d@%d %s", l.Number, l.Offset, l.Text))
	}
	return list
}

func TestLineEnds(t *testing.T) {
	for _, src := range []string{"a\n\nb", "a\r\n\r\nb\r\n", "a\r\rb\r", "a\n\r\nb\r", "\uFEFFa\n\nb\n"} {
		text, diags := Decode("f", []byte(src))
		if got := strings.Join(texts(text), "|"); got != "1@0 a|2@2 |3@3 b" || len(diags) > 0 {
			t.Errorf("%q: %s %v", src, got, diags)
		}
	}
	if text, _ := Decode("f", nil); texts(text) != nil {
		t.Errorf("an empty file has lines: %q", texts(text))
	}
}

// UTF-16 against the encoder of golang.org/x/text.
func TestUTF16(t *testing.T) {
	const want = "1 ▸ 𝄞\nSPEAKER – «où»"
	for _, c := range []struct {
		end  unicode.Endianness
		bom  unicode.BOMPolicy
		want Encoding
	}{
		{unicode.LittleEndian, unicode.UseBOM, UTF16LE}, {unicode.BigEndian, unicode.UseBOM, UTF16BE},
		{unicode.LittleEndian, unicode.IgnoreBOM, UTF16LE}, {unicode.BigEndian, unicode.IgnoreBOM, UTF16BE},
	} {
		src, err := unicode.UTF16(c.end, c.bom).NewEncoder().Bytes([]byte(want))
		if err != nil {
			t.Fatal(err)
		}
		text, diags := Decode("f", src)
		if text.Content != want || text.Encoding != c.want || text.Marked != (c.bom == unicode.UseBOM) || len(diags) > 0 {
			t.Errorf("%v: %q as %s, %v", c.want, text.Content, text.Encoding, diags)
		}
	}
}

func TestBrokenEncodingIsToldOnItsPlace(t *testing.T) {
	lone := binary.LittleEndian.AppendUint16([]byte("\xFF\xFE"), uint16('a'))
	lone = append(binary.LittleEndian.AppendUint16(lone, 0xD800), 'b', 0)
	for src, column := range map[string]int{"ok\nna\xefve": 3, string(lone): 2} {
		text, diags := Decode("f", []byte(src))
		if len(diags) != 1 || diags[0].Code != "bad-encoding" || diags[0].Range.Start.Column != column {
			t.Errorf("%q: %+v", src, diags)
		}
		if !strings.Contains(text.Content, "�") {
			t.Errorf("%q: %q", src, text.Content)
		}
	}
}

func TestPlacesCountCharacters(t *testing.T) {
	text, _ := Decode("f", []byte("x\n  où est\n"))
	for l := range text.All() {
		if l.Number == 2 {
			r := text.At(l, len("  où "), len("  où est"))
			if r.Start.Line != 2 || r.Start.Column != 6 || r.End.Column != 9 || text.Content[r.Start.Offset:r.End.Offset] != "est" {
				t.Errorf("%+v", r)
			}
			if r := text.Whole(l); r.Start.Column != 3 || r.End.Column != 9 {
				t.Errorf("%+v", r)
			}
		}
	}
}

func TestProgressIsTold(t *testing.T) {
	text, _ := Decode("f", []byte(strings.Repeat("a line of words\n", 300_000)))
	var told []int
	text.Progress = func(done, total int) {
		if total != len(text.Content) {
			t.Fatalf("total %d", total)
		}
		told = append(told, done)
	}
	for range text.All() {
	}
	if len(told) != len(text.Content)/report {
		t.Errorf("told %d times: %v", len(told), told)
	}
}

func TestTooLarge(t *testing.T) {
	text, diags := Decode("f", make([]byte, MaxSize+1))
	if text.Content != "" || len(diags) != 1 || diags[0].Code != "too-large" {
		t.Errorf("%d bytes, %v", len(text.Content), diags)
	}
}

// Lines put together again are the content, in any encoding.
func TestNothingIsLost(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		src := rapid.StringOf(rapid.RuneFrom([]rune("ab \n\r𝄞é"))).Draw(t, "src")
		as16 := rapid.Bool().Draw(t, "utf16")
		raw := []byte("\uFEFF" + src)
		if as16 {
			raw = nil
			for _, u := range utf16.Encode([]rune("\uFEFF" + src)) {
				raw = binary.BigEndian.AppendUint16(raw, u)
			}
		}
		text, diags := Decode("f", raw)
		if len(diags) > 0 {
			t.Fatalf("%v", diags)
		}
		var joined strings.Builder
		for l := range text.All() {
			if joined.Len() != l.Offset {
				t.Fatalf("line %d at %d, is at %d", l.Number, l.Offset, joined.Len())
			}
			joined.WriteString(l.Text + "\n")
		}
		want := strings.NewReplacer("\r\n", "\n", "\r", "\n").Replace(src)
		if got := joined.String(); got != want && got != want+"\n" {
			t.Fatalf("%q, want %q", got, want)
		}
	})
}
