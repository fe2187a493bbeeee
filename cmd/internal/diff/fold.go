// Findings of which there are many, told together.

package diff

import (
	"fmt"

	"pullscore/lang"
	"pullscore/lang/rule"
)

// A Group is what is told of several findings of a shot at once.
type Group struct {
	Change Change `json:"change"`
	Code   string `json:"code"`
	Count  int    `json:"count"`
	Says   string `json:"says"`

	first int // of its findings
}

// findingPhrases says which findings came and which are gone: all, or notes that are
// alike together.
func findingPhrases(list []Finding, all bool) []string {
	var groups []Group
	if !all {
		groups = groupsOf(list)
	}
	var texts []string
	for i, f := range list {
		switch g := groupOf(groups, f); {
		case g == nil:
			texts = append(texts, f.phrase())
		case g.first == i:
			texts = append(texts, g.Says)
		}
	}
	return texts
}

// groupsOf returns the notes of one code that came, or are gone, where there are two or
// more. Errors and warnings stand alone: each wants something done.
func groupsOf(list []Finding) []Group {
	groups := []Group{}
	for i, f := range list {
		if f.Is.Severity != lang.Note {
			continue
		}
		if g := groupOf(groups, f); g != nil {
			g.Count++
			continue
		}
		groups = append(groups, Group{Change: f.Change, Code: f.Is.Code, Count: 1, first: i})
	}
	several := []Group{}
	for _, g := range groups {
		if g.Count > 1 {
			g.Says = g.says()
			several = append(several, g)
		}
	}
	return several
}

// groupOf returns the group that a finding is of; nil for none.
func groupOf(groups []Group, f Finding) *Group {
	for i := range groups {
		if g := &groups[i]; f.Is.Severity == lang.Note && g.Change == f.Change && g.Code == f.Is.Code {
			return g
		}
	}
	return nil
}

// says tells a group: "new notes: the cut has 5 lines in other words [line-differs] (--all
// lists them)".
func (g Group) says() string {
	code, _ := rule.Named(g.Code)
	return fmt.Sprintf("%s notes: %s [%s] (--all lists them)", g.Change, code.Many(g.Count), g.Code)
}
