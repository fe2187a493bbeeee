// Tests of the messages: the files under testdata/errors hold plans with
// mistakes, and what is expected on each faulty line.

package lang

import (
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"pullscore/lang/testing/chunk"
)

func TestErrors(t *testing.T) {
	files, err := filepath.Glob("testdata/errors/*.pull")
	if err != nil || len(files) == 0 {
		t.Fatal(files, err)
	}
	for _, name := range files {
		chunks, err := chunk.Read(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range chunks {
			t.Run(c.Name, func(t *testing.T) { checkChunk(t, c) })
		}
	}
}

// checkChunk parses one plan and compares its mistakes.
func checkChunk(t *testing.T, c *chunk.Chunk) {
	f, diags := Parse("plan.pull", c.Source)
	checkPlaces(t, f)
	checkFormat(t, c.Source)
	for _, d := range diags {
		checkStyle(t, d)
		text := strings.TrimRight(d.Code+": "+d.Message+". "+d.Detail, " ")
		if !c.Take(d.Range.Start.Line, text) {
			t.Errorf("line %d: unexpected %s\n%s", d.Range.Start.Line, text, Quote(d, c.Source))
		}
	}
	for _, left := range c.Left() {
		t.Errorf("no mistake matches %s", left)
	}
}

// grammarNotation matches what only participle's messages have in them.
var grammarNotation = regexp.MustCompile(`<\w+>|unexpected token|sub-expression|\)\?|\(\?`)

// checkStyle checks the manners of a diagnostic: a summary without full stop,
// a detail with one, nothing of the grammar's notation.
func checkStyle(t *testing.T, d Diagnostic) {
	t.Helper()
	if strings.HasSuffix(d.Message, ".") || d.Message == "" {
		t.Errorf("summary %q ends in a full stop or is empty", d.Message)
	}
	if grammarNotation.MatchString(d.Message + d.Detail) {
		t.Errorf("%q %q speaks the grammar's language", d.Message, d.Detail)
	}
	if d.Severity != Error || d.Range.Start.Line < 1 {
		t.Errorf("%q has no place or is no error", d.Message)
	}
}
