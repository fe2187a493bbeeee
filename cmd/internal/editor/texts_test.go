package editor

import (
	"os"
	"slices"
	"testing"

	"pullscore/lang"
)

// The lines that name files name the same as the whole text.
func TestNamedFiles(t *testing.T) {
	texts := []string{
		"use \"a.pull\"\nedit \"b.edl\", # why\n\n  from 01:00:00:00\nscript\t\"c.fountain\"\n", "\ufeffuse \"a.pull\"\r\nuse \"b.pull\"\r", "use\t\"g.pull\"\n  edit\"h.edl\"",
		"puller NEVO\n  takes \"d.csv\"\nclips \"e.ale\"\nshot 1\n  Use \"f.pull\"\n", "rate 24,\nuse \"a.pull\"\n",
	}
	for _, path := range plansOf(t, "examples", "lang/testdata", "interp/testdata", "cmd/pullscore/starter") {
		src, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		texts = append(texts, string(src))
	}
	some := 0
	for _, text := range texts {
		file, _ := lang.Parse("", []byte(text))
		want, got := filesNamed(file), namedFiles([]byte(text))
		some += len(want)
		for _, said := range want { // more is no harm: the plan is looked at once too often
			if !slices.Contains(got, said.Value) {
				t.Errorf("%.60q: %q is missing from %q", text, said.Value, got)
			}
		}
	}
	if some < 30 {
		t.Errorf("only %d files are named", some)
	}
}
