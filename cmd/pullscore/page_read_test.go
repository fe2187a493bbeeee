package main

import (
	"strings"
	"testing"
	"unicode/utf16"

	"pgregory.net/rapid"
)

// What begins or goes on as no text does is refused by what it is.
func TestRefuse(t *testing.T) {
	long := strings.Repeat("Aye, and more of it.\n", 5000)
	for _, c := range []struct{ name, src, want string }{
		{"a.fountain", "\xef\xbb\xbf%PDF-1.7\n%\xe2\xe3\xcf\xd3\n", "a PDF has places of letters and no lines of a script [pdf-script]. Ask for"},
		{"a.PDF", "x", "[pdf-script]"},
		{"a.fadein", "x", "Write it as FDX or Fountain there."},
		{"a.fdx", "<?xml version=\"1.0\"?>", ""},
		{"a.fountain", "PK\x03\x04\x14\x00", "this is a zip archive"},
		{"a.fountain", "{\\rtf1\\ansi", "this is rich text; "},
		{"a.fountain", "\x89PNG\r\n\x1a\n", "this is a picture; "},
		{"a.fountain", "ADA\nNo\x00.\n", "this is no text; "},
		{"a.fountain", "\x7fELF\x02\x01\x01\x02\x03", "this is no text; "},
		{"a.fountain", long + "\x00", ""},    // past what is looked at
		{"a.fountain", "ADA\nNo\x02.\n", ""}, // a slip
		{"a.fountain", "ADA\nNo.\f\n\vBO\r\nYes.\n", ""},
		{"a.fountain", long[:looked-1] + "é", ""}, // half of it is looked at
		{"a.fountain", " \n\t\n", "is empty"},
		{"a.fountain", "\xef\xbb\xbf", "is empty"},
		{"a.pull", "plan \"A\"\n", "is a plan"},
	} {
		err := refuse(c.name, []byte(c.src))
		if (err == nil) != (c.want == "") || err != nil && !strings.Contains(err.Error(), c.want) {
			t.Errorf("%.20q: %v, want %q", c.src, err, c.want)
		}
	}
}

// No page in words is refused, in whatever encoding.
func TestRefusesNoWords(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := "ADA\n" + rapid.StringMatching(`[a-zA-Zéßя港 .,!?\n\t"']{1,80}`).Draw(t, "text")
		utf16le := []byte("\xff\xfe")
		for _, u := range utf16.Encode([]rune(text)) {
			utf16le = append(utf16le, byte(u), byte(u>>8))
		}
		for _, src := range [][]byte{[]byte(text), utf16le} {
			if err := refuse("a.fountain", src); err != nil {
				t.Fatalf("%q: %v", src, err)
			}
		}
	})
}
