// Tests of the parser: the table, the whole plan, values and places.

package lang

import (
	"encoding/binary"
	"os"
	"path/filepath"
	"testing"
	"unicode/utf16"
)

func TestParseInputs(t *testing.T) {
	for _, in := range inputs {
		t.Run(in.name, func(t *testing.T) {
			f, diags := Parse("plan.pull", []byte(in.src))
			for _, d := range diags {
				t.Errorf("%v: %s: %s\n%s%s", d.Range.Start, d.Code, d.Message, Quote(d, f.Source), d.Detail)
			}
			checkPlaces(t, f)
		})
	}
}

func TestParsePlans(t *testing.T) {
	files, err := filepath.Glob("testdata/*.pull")
	if err != nil || len(files) < 2 {
		t.Fatal(files, err)
	}
	for _, name := range files {
		src, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		f, diags := Parse(name, src)
		for _, d := range diags {
			t.Errorf("%s:%v: %s\n%s", name, d.Range.Start, d.Message, Quote(d, src))
		}
		checkPlaces(t, f)
		if got := Format(src); string(got) != string(src) {
			t.Errorf("%s is not in canonical layout:\n%s", name, got)
		}
	}
}

// A line that cannot be read still tells which name it was to declare.
func TestBadLinesDeclare(t *testing.T) {
	for src, want := range map[string]Bad{
		"subject MARLO at 2.2 metres": {Keyword: "subject", Name: &Name{Text: "MARLO"}},
		"subject AUNT VEE at 2 m":     {Keyword: "subject", Name: &Name{Text: "AUNT VEE"}},
		"voice \"P. A.\" loud":        {Keyword: "voice", Name: &Name{Text: "P. A."}},
		"let late = 2 sec":            {Keyword: "let", Name: &Name{Text: "late"}},
		"subject 2 at 2 m":            {Keyword: "subject", Name: &Name{Text: "2"}},
		"subject at 2 m":              {Keyword: "subject"},
		"subject":                     {Keyword: "subject"},
		"pace":                        {Keyword: "pace"},
	} {
		f, diags := Parse("plan.pull", []byte(src))
		if len(f.Body) != 1 || len(diags) != 1 {
			t.Errorf("%q: %d statements, %d mistakes", src, len(f.Body), len(diags))
			continue
		}
		got, ok := f.Body[0].(*Bad)
		switch {
		case !ok || got.Keyword != want.Keyword || (got.Name == nil) != (want.Name == nil):
			t.Errorf("%q: %+v, want %+v", src, f.Body[0], want)
		case got.Name != nil && got.Name.Text != want.Name.Text:
			t.Errorf("%q declares %q, want %q", src, got.Name.Text, want.Name.Text)
		}
	}
	f, _ := Parse("plan.pull", []byte("lens \"50\" mm\n  focal 50 mm\n"))
	if b, ok := f.Sections[0].Head.(*Bad); !ok || b.Keyword != "lens" || b.Name == nil || b.Name.Text != "50" {
		t.Errorf("a header that cannot be read: %+v", f.Sections[0].Head)
	}
}

// UTF-16, with a byte order mark and without, is one mistake.
func TestUTF16(t *testing.T) {
	units := utf16.Encode([]rune("plan \"A\"\nsubject NORA at 2 m\n"))
	for name, order := range map[string]binary.AppendByteOrder{"little endian": binary.LittleEndian, "big endian": binary.BigEndian} {
		for mark, src := range map[string][]byte{"marked": order.AppendUint16(nil, 0xFEFF), "not marked": nil} {
			for _, u := range units {
				src = order.AppendUint16(src, u)
			}
			f, diags := Parse("plan.pull", src)
			if len(diags) != 1 || diags[0].Code != "bad-character" || diags[0].Detail != "Save it as UTF-8." || len(f.Body) > 0 {
				t.Errorf("%s, %s: %+v", name, mark, diags)
			}
		}
	}
	if _, diags := Parse("plan.pull", []byte("plan \"ÿþ\"")); len(diags) > 0 {
		t.Errorf("UTF-8: %+v", diags)
	}
}
