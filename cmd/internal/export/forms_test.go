package export

import (
	"bytes"
	"strings"
	"testing"
	"unicode/utf8"
)

// Every form has what the command asks of it, and writes something.
func TestForms(t *testing.T) {
	p := made(t, "25")
	seen := map[string]bool{}
	for _, f := range Forms() {
		if f.Name == "" || f.Ending == "" || seen[f.Name] {
			t.Errorf("%q: no name or ending, or a name twice", f.Name)
		}
		seen[f.Name] = true
		if (f.Plan == nil) == (f.Shot == nil) {
			t.Errorf("%s is for a plan or for a shot, and for one of them", f.Name)
		}
		for line := range strings.SplitSeq(f.Help, "\n") {
			if n := utf8.RuneCountInString(line); n == 0 || n > 64 {
				t.Errorf("%s: a line of its help has %d letters", f.Name, n)
			}
		}
		var out bytes.Buffer
		write := func() error { return f.Plan(&out, p) }
		if f.Plan == nil {
			write = func() error { return f.Shot(&out, p, p.Shots[0]) }
		}
		if err := write(); err != nil || out.Len() == 0 {
			t.Errorf("%s: %d bytes, %v", f.Name, out.Len(), err)
		}
	}
}
