// Tests of the messages. The files under testdata/errors are divided into
// plans by lines of ---; a faulty line ends in ### and a regular expression in
// quotes for each of its mistakes.

package lang

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

func TestErrors(t *testing.T) {
	files, err := filepath.Glob("testdata/errors/*.pull")
	if err != nil || len(files) == 0 {
		t.Fatal(files, err)
	}
	for _, name := range files {
		src, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		start := 0
		for chunk := range strings.SplitSeq(string(src), "---\n") {
			checkChunk(t, name, start, chunk)
			start += strings.Count(chunk, "\n") + 1
		}
	}
}

// checkChunk parses one plan of a file and compares its mistakes.
func checkChunk(t *testing.T, name string, start int, chunk string) {
	want := map[int][]string{}
	lines := strings.Split(chunk, "\n")
	for i, line := range lines {
		plan, patterns, found := strings.Cut(line, "###")
		if found {
			lines[i] = strings.TrimRight(plan, " ")
			want[i+1] = quotedStrings(t, patterns)
		}
	}
	src := []byte(strings.Join(lines, "\n"))
	f, diags := Parse(name, src)
	checkPlaces(t, f)
	checkFormat(t, src)
	for _, d := range diags {
		line := d.Range.Start.Line
		text := strings.TrimRight(d.Code+": "+d.Message+". "+d.Detail, " ")
		checkStyle(t, d)
		if !takePattern(want, line, text) {
			t.Errorf("%s:%d: unexpected %s\n%s", name, start+line, text, Quote(d, src))
		}
	}
	for line, patterns := range want {
		for _, p := range patterns {
			t.Errorf("%s:%d: no mistake matches %q", name, start+line, p)
		}
	}
}

// takePattern strikes the first pattern of a line that matches the text.
func takePattern(want map[int][]string, line int, text string) bool {
	for i, p := range want[line] {
		if regexp.MustCompile(p).MatchString(text) {
			want[line] = append(want[line][:i:i], want[line][i+1:]...)
			return true
		}
	}
	return false
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

var quotedString = regexp.MustCompile(`"((?:[^"\\]|\\.)*)"`)

// quotedStrings reads the expressions in quotes. Only \" is an escape: other
// backslashes belong to the expression.
func quotedStrings(t *testing.T, s string) (list []string) {
	t.Helper()
	for _, m := range quotedString.FindAllStringSubmatch(s, -1) {
		list = append(list, strings.ReplaceAll(m[1], `\"`, `"`))
	}
	if len(list) == 0 {
		t.Fatalf("no expectation in %q", s)
	}
	return list
}
