// Tests of quoting and of positions in lines.

package lang

import (
	"strings"
	"testing"
)

func TestQuote(t *testing.T) {
	tests := []struct {
		name, src   string
		first, last int // the fault, in bytes
		want        string
	}{
		{"plain", "a\n  rack to X\n", 10, 11, "    2 |   rack to X\n      |         ^\n"},
		{"several characters", "hold 2 sec", 7, 10, "    1 | hold 2 sec\n      |        ^~~\n"},
		{"a tab", "\thold\tx y", 6, 7, "    1 | \thold\tx y\n      | \t    \t^\n"},
		{"a tab at fault", "a\tb", 1, 3, "    1 | a\tb\n      |  ^~\n"},
		{"wide characters before and at the fault", "小林 林x", 7, 11, "    1 | 小林 林x\n      |      ^~~\n"},
		{"combining marks", "e\u0301a\u0301 bo\u0301b", 7, 12, "    1 | e\u0301a\u0301 bo\u0301b\n      |    ^~~\n"},
		{"the end of the line", "rack to", 7, 7, "    1 | rack to\n      |        ^\n"},
		{"the end of the file", "a\nb\n", 4, 4, "    3 | \n      | ^\n"},
		{"an end on a later line", "ab\ncd", 1, 5, "    1 | ab\n      |  ^\n"},
		{"carriage return", "ab\r\ncd\r\n", 4, 5, "    2 | cd\n      | ^\n"},
		{"what a terminal would obey", "a\x1b[2Jb\x00", 1, 2, "    1 | a\uFFFD[2Jb\uFFFD\n      |  ^\n"},
		{"broken UTF-8", "a\xff b", 3, 4, "    1 | a\uFFFD b\n      |    ^\n"},
		{"byte order mark", "\uFEFFrat 24", 3, 6, "    1 | rat 24\n      | ^~~\n"},
		{"long before", strings.Repeat("x", 500) + "!" + strings.Repeat("y", 500), 500, 501,
			"    1 | …" + strings.Repeat("x", 32) + "!" + strings.Repeat("y", 65) + "…\n      | " + strings.Repeat(" ", 33) + "^\n"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			src := []byte(test.src)
			d := Diagnostic{Range: Range{Start: placeOf(src, test.first), End: placeOf(src, test.last)}}
			if got := Quote(d, src); got != test.want {
				t.Errorf("got\n%s\nwant\n%s", got, test.want)
			}
		})
	}
	if got := Quote(Diagnostic{}, []byte("a")); got != "" {
		t.Errorf("a diagnostic without a place is quoted as %q", got)
	}
}

func TestLine(t *testing.T) {
	f := &File{Source: []byte("a\nb\r\nc\rd\n\ne")}
	for n, want := range []string{"", "a", "b", "c", "d", "", "e", ""} {
		if got := f.Line(n); got != want {
			t.Errorf("line %d is %q, not %q", n, got, want)
		}
	}
}
