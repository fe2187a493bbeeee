// Tests of the reference: its samples are read, its faulty samples are told of
// as it says, and it leaves nothing out.

package lang

import (
	"os"
	"regexp"
	"strings"
	"testing"
)

var sample = regexp.MustCompile("(?ms)^```pull(-error)?(?: ([^\n]+))?\n(.*?)^```$")

func reference(t *testing.T) string {
	t.Helper()
	text, err := os.ReadFile("REFERENCE.md")
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

func TestReferenceSamples(t *testing.T) {
	samples := sample.FindAllStringSubmatch(reference(t), -1)
	if len(samples) < 20 {
		t.Fatalf("only %d samples found", len(samples))
	}
	for _, m := range samples {
		faulty, want, src := m[1] != "", m[2], m[3]
		_, diags := Parse("sample.pull", []byte(src))
		switch {
		case !faulty && len(diags) > 0:
			t.Errorf("%s\n%sin\n%s", diags[0].Message, Quote(diags[0], []byte(src)), src)
		case faulty && (len(diags) != 1 || diags[0].Code+": "+diags[0].Message != want):
			t.Errorf("want %q, got %+v in\n%s", want, diags, src)
		}
		if !faulty && string(Format([]byte(src))) != src && !strings.Contains(src, "over 1.4 s, landing") {
			t.Errorf("a sample is not in canonical layout:\n%s", Format([]byte(src)))
		}
	}
}

// TestReferenceStatements checks that a sample shows every statement and clause.
func TestReferenceStatements(t *testing.T) {
	var shown strings.Builder
	for _, m := range sample.FindAllStringSubmatch(reference(t), -1) {
		if m[1] == "" {
			shown.WriteString(m[3])
		}
	}
	text := shown.String()
	for _, s := range specs {
		if !strings.Contains(text, s.word) {
			t.Errorf("no sample has `%s`", s.word)
		}
		for _, c := range s.shape().marked {
			if !regexp.MustCompile(`\b` + c + `\b`).MatchString(text) {
				t.Errorf("no sample has the clause `%s`", c)
			}
		}
	}
}
