package diff

import (
	"slices"
	"testing"

	"pullscore/lang"
)

// Notes of one code are told together, each once with all; errors and warnings never are.
func TestFindingsThatAreTold(t *testing.T) {
	finding := func(change Change, severity lang.Severity, code, message string) Finding {
		return Finding{change, lang.Diagnostic{Severity: severity, Code: code, Message: message, Range: lang.Range{File: "jetty.pull"}}}
	}
	list := []Finding{
		finding(New, lang.Note, "line-differs", "one"),
		finding(New, lang.Warning, "trimmed", "two"),
		finding(New, lang.Note, "line-differs", "three"),
		finding(New, lang.Warning, "trimmed", "four"),
		finding(Gone, lang.Note, "line-differs", "five"),
		finding(New, lang.Note, "faint", "six"),
		finding(New, lang.Note, "line-differs", "seven"),
	}
	want := []string{
		"new notes: the cut has 3 lines in other words [line-differs] (--all lists them)",
		"new warning: two [trimmed], jetty.pull:0",
		"new warning: four [trimmed], jetty.pull:0",
		"gone note: five [line-differs], jetty.pull:0",
		"new note: six [faint], jetty.pull:0",
	}
	if got := findingPhrases(list, false); !slices.Equal(got, want) {
		t.Errorf("%q", got)
	}
	all := findingPhrases(list, true)
	if len(all) != len(list) || all[0] != "new note: one [line-differs], jetty.pull:0" {
		t.Errorf("%q", all)
	}
	if g := groupsOf(list); len(g) != 1 || g[0].Count != 3 || g[0].Change != New {
		t.Errorf("%+v", g)
	}
}
