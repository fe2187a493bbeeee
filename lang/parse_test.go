// Tests of the parser: the table, the whole plan, values and places.

package lang

import (
	"encoding/binary"
	"os"
	"path/filepath"
	"slices"
	"strings"
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

// What is left of a line holds, and what was lost is named.
func TestBadLinesKeepTheRest(t *testing.T) {
	for src, want := range map[string]struct {
		partial string // as the statement would be without what was lost; "" for none
		lost    string
	}{
		`with camera A, lens 75, stop f/2.8`:             {`with camera A, stop f/2.8`, "lens"},
		`with lens 75, camera A stop f/2.8`:              {`with camera A, stop f/2.8`, "lens"},
		`with lense "75" stop f/2.8`:                     {`with stop f/2.8`, "lens"},
		`with stop wombats 3, lens "75"`:                 {`with lens "75"`, "stop"},
		`with camera A, camera B, stop f/2.8`:            {`with camera A, stop f/2.8`, "camera"},
		`rack to AUNT VEE, over 1 s`:                     {"", ""},
		`rack to Q slowly, over 1 s`:                     {"", ""},
		`rack to Q, slowly, over 1 s`:                    {"rack to Q, over 1 s", "slowly"},
		`with stop`:                                      {"", "stop"},
		`with`:                                           {"", ""},
		`subject at 2 m, deep 2 cm`:                      {"", ""},
		`subject Q at 2 m, deap 4 cm, sways 1 cm`:        {`subject Q at 2 m, sways 1 cm`, "deep"},
		`subject Q at 2 m, deep 4 wombats, sways 1 sec`:  {`subject Q at 2 m`, "deep sways"},
		`rack to Q, landing "x", over 1 s`:               {`rack to Q, over 1 s`, "landing"},
		`rack to Q, landing on, over 1 s, even`:          {`rack to Q, over 1 s, even`, "landing"},
		`rack to Q, over on knock`:                       {`rack to Q, on knock`, "over"},
		`rack to Q, on landing on "x", because he, even`: {`rack to Q, landing on "x", even`, "on because"},
		`dolly in 30 cm ovr 2 s, even`:                   {"", "over"},
		`dolly in 30 cm, even`:                           {"", "over"},
		`Q moves to 3 m over 2 s, on`:                    {`Q moves to 3 m over 2 s`, "on"},
		`Q: "a", lasting 2 s, from 1 s to 2 s`:           {`Q: "a", lasting 2 s`, "from"},
		`Q: "a", from 1 s, on end of Q`:                  {`Q: "a", on end of Q`, "from"},
		`cue knock on`:                                   {`cue knock`, "on"},
	} {
		const head = "shot 1\n"
		f, diags := Parse("", []byte(head+src))
		bad, ok := statements(f)[len(statements(f))-1].(*Bad)
		if !ok || len(diags) == 0 {
			t.Errorf("%s: read as %T, %d mistakes", src, statements(f), len(diags))
			continue
		}
		if got := strings.Join(bad.Lost, " "); got != want.lost {
			t.Errorf("%s: lost %q, want %q", src, got, want.lost)
		}
		if (bad.Partial == nil) != (want.partial == "") {
			t.Errorf("%s: %#v is left", src, bad.Partial)
			continue
		}
		if want.partial == "" {
			continue
		}
		whole, _ := Parse("", []byte(head+want.partial))
		sound := statements(whole)[len(statements(whole))-1]
		if a, b := meaningOf(bad.Partial), meaningOf(sound); a != b {
			t.Errorf("%s: left is\n%s\nwant\n%s", src, a, b)
		}
	}
}

// statements returns all statements but headers.
func statements(f *File) []Statement {
	list := slices.Clone(f.Body)
	for _, s := range f.Sections {
		list = append(list, s.Body...)
	}
	return list
}

// A word that was meant for one that declares a name still declares it.
func TestMisspeltWordsDeclare(t *testing.T) {
	for src, want := range map[string][2]string{
		"subjct Q at 2 m":        {"subject", "Q"},
		"subjct AUNT VEE at 2 m": {"subject", "AUNT VEE"},
		"voce OTTO":              {"voice", "OTTO"},
		"lte beat = 2 s":         {"let", "beat"},
		"cue zip please":         {"cue", "zip"},
		"ceu zip":                {"cue", "zip"},
		"rakc to Q":              {"rack", ""},
		"focus Q":                {"", ""},
		"rakc Q":                 {"rack", ""},
		"wombat Q":               {"", ""},
	} {
		head := ""
		if want[0] == "cue" || want[0] == "rack" {
			head = "shot 1\n"
		}
		f, diags := Parse("", []byte(head+src))
		bad, ok := statements(f)[0].(*Bad)
		if !ok || len(diags) != 1 || bad.Keyword != want[0] || (bad.Name == nil) != (want[1] == "") || bad.Name != nil && bad.Name.Text != want[1] {
			t.Errorf("%s: %+v, %d mistakes, want %q", src, statements(f)[0], len(diags), want)
		}
	}
	for src, want := range map[string]string{
		"rakc to Q, over 2 s": "rack to Q, over 2 s", "hodl 1 s": "hold 1 s", "rakc Q": "", "focus Q": "", "pasue": "",
	} {
		f, _ := Parse("", []byte("shot 1\n"+src))
		bad, ok := statements(f)[0].(*Bad)
		if !ok || (bad.Partial == nil) != (want == "") {
			t.Errorf("%s: %+v", src, statements(f)[0])
			continue
		}
		if whole, _ := Parse("", []byte("shot 1\n"+want)); want != "" && meaningOf(bad.Partial) != meaningOf(statements(whole)[0]) {
			t.Errorf("%s: left is %s", src, meaningOf(bad.Partial))
		}
	}
	inCamera, diags := Parse("", []byte("camera A\n  iso 800\nsubjct Q at 2 m\n  shutter 180 deg\n"))
	if len(diags) != 1 || len(inCamera.Body) != 1 || len(inCamera.Sections[0].Body) != 2 {
		t.Errorf("a misspelt statement of the file behind a camera: %+v, %d in the file, %d in the camera", diags, len(inCamera.Body), len(inCamera.Sections[0].Body))
	}
	f, _ := Parse("", []byte("lns \"75\"\n  focal 75 mm\n"))
	if bad, ok := f.Sections[0].Head.(*Bad); !ok || bad.Keyword != "lens" || bad.Name == nil || bad.Name.Text != "75" {
		t.Errorf("a misspelt header: %+v", f.Sections[0].Head)
	}
}
