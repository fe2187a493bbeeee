package lang

import (
	"path/filepath"
	"strings"
	"testing"
	"unicode"

	"pullscore/lang/testing/chunk"
)

// Every fix of the mistakes under testdata/errors takes its mistake away, and nothing new
// is told of the whole file.
func TestFixesHold(t *testing.T) {
	files, err := filepath.Glob("testdata/errors/*.pull")
	if err != nil || len(files) == 0 {
		t.Fatal(files, err)
	}
	mistakes, mendable := 0, 0
	for _, name := range files {
		chunks, err := chunk.Read(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range chunks {
			_, diags := Parse("plan.pull", c.Source)
			for _, d := range diags {
				mistakes++
				if len(d.Fixes) > 0 {
					mendable++
				}
				for _, f := range d.Fixes {
					checkFix(t, c.Source, diags, d, f)
				}
			}
		}
	}
	t.Logf("%d of %d mistakes have a fix", mendable, mistakes)
	if mendable < 300 {
		t.Errorf("only %d of %d mistakes have a fix", mendable, mistakes)
	}
}

// checkFix writes a fix, and compares what is told.
func checkFix(t *testing.T, src []byte, diags []Diagnostic, d Diagnostic, f Fix) {
	t.Helper()
	if !unicode.IsUpper([]rune(f.Title)[0]) || strings.HasSuffix(f.Title, ".") || len(f.Edits) == 0 {
		t.Errorf("the fix %+v", f)
	}
	for _, e := range f.Edits {
		checkEditPlace(t, src, e)
	}
	made, ok := ApplyEdits(src, f.Edits)
	if !ok {
		t.Errorf("the edits %+v do not fit", f.Edits)
		return
	}
	count := func(list []Diagnostic) map[string]int {
		n := map[string]int{}
		for _, d := range list {
			n[d.Code+": "+d.Message]++
		}
		return n
	}
	_, after := Parse("plan.pull", made)
	before, now := count(diags), count(after)
	line := lineAt(src, d.Range.Start.Offset)
	if key := d.Code + ": " + d.Message; now[key] >= before[key] {
		t.Errorf("%s\n  %s is still told after %q:\n%s", line, key, f.Title, lineAt(made, f.Edits[0].Range.Start.Offset))
	}
	for key, n := range now {
		if n > before[key] {
			t.Errorf("%s\n  %q brings %s:\n%s", line, f.Title, key, lineAt(made, f.Edits[0].Range.Start.Offset))
		}
	}
}

// lineAt returns the line of a text that an offset lies in.
func lineAt(src []byte, offset int) string {
	from := strings.LastIndexByte(string(src[:offset]), '\n') + 1
	line, _, _ := strings.Cut(string(src[from:]), "\n")
	return line
}
