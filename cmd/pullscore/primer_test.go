package main

import (
	"strings"
	"testing"

	"pullscore/interp"
	"pullscore/lang"
)

// The plan that the primer shows is one that works, laid out as fmt does.
func TestPrimersExample(t *testing.T) {
	res := interp.Interpret("primer.pull", []byte(example), interp.Options{})
	for _, d := range res.Findings {
		if d.Severity > lang.Note {
			t.Errorf("line %d: %s", d.Range.Start.Line, d.Message)
		}
	}
	if len(res.Plan.Shots) != 1 || len(res.Plan.Shots[0].Pulls) != 2 {
		t.Errorf("shots: %+v", res.Plan.Shots)
	}
	if got := string(lang.Format([]byte(example))); got != example {
		t.Errorf("fmt makes of it\n%s", got)
	}
}

// Every statement of the language is in the primer, and each part's words are
// statements.
func TestPrimerHasEveryStatement(t *testing.T) {
	text := primer()
	for _, k := range append(append(lang.Keywords(), lang.SoftWords()...), ":", "(") {
		if usage := lang.Usage(k); usage != "" && !strings.Contains(text, usage) {
			t.Errorf("%s is missing: %s", k, usage)
		}
	}
	for _, p := range tasks {
		for _, k := range strings.Fields(p.keywords) {
			if lang.Usage(k) == "" {
				t.Errorf("%s: %s is no statement", p.title, k)
			}
		}
	}
}

// The words to begin with are words of the language.
func TestFirstWords(t *testing.T) {
	if len(firstWords) != 12 {
		t.Errorf("%d words to begin with", len(firstWords))
	}
	for _, w := range firstWords {
		if len(lang.Usages(w[0])) == 0 {
			t.Errorf("%s is no word of the language", w[0])
		}
	}
}
