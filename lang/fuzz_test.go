// Fuzz targets of the scanner, the parser and the formatter.

package lang

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/alecthomas/participle/v2/lexer"
)

// seed adds the table of inputs and the test files to a fuzz target.
func seed(f *testing.F) {
	for _, in := range inputs {
		f.Add([]byte(in.src))
	}
	for _, pattern := range []string{"testdata/*.pull", "testdata/*/*.pull"} {
		files, _ := filepath.Glob(pattern)
		for _, name := range files {
			src, err := os.ReadFile(name)
			if err != nil {
				f.Fatal(err)
			}
			f.Add(src)
		}
	}
}

// FuzzLex checks that tokens cover the source but for blanks, in order.
func FuzzLex(f *testing.F) {
	seed(f)
	f.Fuzz(func(t *testing.T, src []byte) {
		s := newScanner("", string(src))
		end := 0
		for tok := s.scan(); tok.Type != lexer.EOF; tok = s.scan() {
			start := tok.Pos.Offset
			if start < end || blanks(string(src[end:start])) != start-end {
				t.Fatalf("%q is lost before the token at %d", src[end:start], start)
			}
			end = start + len(tok.Value)
			if tok.Value == "" || string(src[start:end]) != tok.Value {
				t.Fatalf("token %q is not what stands at %d", tok.Value, start)
			}
			if got, want := at(tok.Pos), placeOf(src, start); got != want {
				t.Fatalf("token %q stands at %v, not at %v", tok.Value, want, got)
			}
		}
		if blanks(string(src[end:])) != len(src)-end {
			t.Fatalf("%q is lost at the end", src[end:])
		}
	})
}

// FuzzParse checks that any source gives a tree with true places, that what is
// no statement is told of, that participle and a walk take the same, and that what
// may come next can be said anywhere.
func FuzzParse(f *testing.F) {
	seed(f)
	f.Fuzz(func(t *testing.T, src []byte) {
		file, diags := Parse("fuzz.pull", src)
		checkPlaces(t, file)
		for _, d := range diags {
			Quote(d, src)
			if d.Code == "" || d.Message == "" || d.Range.Start.Line < 1 {
				t.Errorf("incomplete diagnostic %+v", d)
			}
		}
		if bad(file) && len(diags) == 0 {
			t.Errorf("a Bad statement and no diagnostic")
		}
		agree(t, src)
		for _, c := range Choices(src, len(src)/2) {
			if c.Word == "" && c.Text == "" {
				t.Errorf("an empty choice in the middle")
			}
		}
	})
}

// bad reports whether a tree has a Bad statement.
func bad(f *File) bool {
	all := f.Body
	for _, s := range f.Sections {
		all = append(append(all, s.Head), s.Body...)
	}
	for _, s := range all {
		if _, ok := s.(*Bad); ok {
			return true
		}
	}
	return false
}

func FuzzFormat(f *testing.F) {
	seed(f)
	f.Fuzz(checkFormat)
}
