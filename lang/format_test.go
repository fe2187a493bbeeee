// Tests of the formatter.

package lang

import (
	"testing"

	"github.com/alecthomas/participle/v2/lexer"
)

func TestFormatInputs(t *testing.T) {
	for _, in := range inputs {
		t.Run(in.name, func(t *testing.T) {
			want := in.want
			if want == "" && in.src != "" && in.name != "only blank lines" {
				want = in.src
			}
			if got := string(Format([]byte(in.src))); got != want {
				t.Errorf("got\n%s\nwant\n%s", got, want)
			}
			checkFormat(t, []byte(in.src))
		})
	}
}

// A comma too many joins nothing, also in the layout.
func TestFormatStrayComma(t *testing.T) {
	for src, want := range map[string]string{
		"shot 1\npause 1 s,\nhold 2 s\n":                        "shot 1\n  pause 1 s,\n  hold 2 s\n",
		"shot 1\nrack to A,\nover 1 s,\nA: \"a\",\non 1 s\n":    "shot 1\n  rack to A,\n    over 1 s,\n  A: \"a\",\n    on 1 s\n",
		"with camera A,\nlens \"75\"\n":                         "with camera A,\n  lens \"75\"\n",
		"camera A\niso 800,\nlens \"75\"\nfocal 75 mm\n":        "camera A\n  iso 800,\nlens \"75\"\n  focal 75 mm\n",
		"camera A\npause 1 s,\nlens \"75\"\nfocal 75 mm\n":      "camera A\n  pause 1 s,\nlens \"75\"\n  focal 75 mm\n",
		"shot 1\nglance(A,\nB)\nrack to A ovr 1 s,\nhold 1 s\n": "shot 1\n  glance(A,\n    B)\n  rack to A ovr 1 s,\n  hold 1 s\n",
	} {
		if got := string(Format([]byte(src))); got != want {
			t.Errorf("%q became\n%s\nwant\n%s", src, got, want)
		}
		checkFormat(t, []byte(src))
	}
}

// A text in UTF-16 is left alone, and none is made of what is not.
func TestFormatLeavesUTF16(t *testing.T) {
	for _, src := range []string{
		"p\x00l\x00a\x00n\x00 \x00\r\x00\n\x00", "\xff\xfep\x00\n\x00", "\xfe\xff\x00p\x00\n",
		"\x000\x00", "  \x000\x00\n", // these would become such
	} {
		if got := string(Format([]byte(src))); got != src {
			t.Errorf("%q became %q", src, got)
		}
		checkFormat(t, []byte(src))
	}
}

// checkFormat checks the formatter's promises on any source: no token changes
// but for the commas that it adds, a second run changes nothing, and the plan
// means the same.
func checkFormat(t *testing.T, src []byte) {
	t.Helper()
	once := Format(src)
	if twice := Format(once); string(twice) != string(once) {
		t.Errorf("formatting twice changes\n%q\ninto\n%q", once, twice)
	}
	before, after := tokensOf(src), tokensOf(once)
	for _, tok := range before {
		for len(after) > 0 && after[0] != tok && after[0].Value == "," {
			after = after[1:] // a comma that the formatter added
		}
		if len(after) == 0 || after[0] != tok {
			t.Fatalf("token %q is lost: %q became %q", tok.Value, src, once)
		}
		after = after[1:]
	}
	if len(after) > 0 {
		t.Errorf("tokens %v are new: %q became %q", after, src, once)
	}
	a, _ := Parse("", src)
	b, _ := Parse("", once)
	if ma, mb := meaning(a), meaning(b); ma != mb {
		t.Errorf("the meaning changed: %q became %q\n%s\n%s", src, once, ma, mb)
	}
}

// tokensOf returns the tokens of a source without their places and without
// empty lines.
func tokensOf(src []byte) (list []lexer.Token) {
	s := newScanner("", string(src))
	for t := s.scan(); t.Type != lexer.EOF; t = s.scan() {
		t.Pos = lexer.Position{}
		switch {
		case t.Type == tokLine && (len(list) == 0 || list[len(list)-1].Type == tokLine):
			continue
		case t.Type == tokLine || t.Type == tokJoin:
			t.Value = "\n"
		case t.Type == tokClock:
			t.Value = writeClock(t.Value)
		}
		list = append(list, t)
	}
	if n := len(list); n > 0 && list[n-1].Type != tokLine {
		list = append(list, lexer.Token{Type: tokLine, Value: "\n"})
	}
	return list
}
