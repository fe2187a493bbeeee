// The reference's derived parts: how each statement is written, the grammar, and
// the tables of findings.

package lang

import (
	"fmt"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"pullscore/lang/rule"
)

// TestReferenceIsDerived holds the reference to the grammar. PULLSCORE_UPDATE=1, or
// go generate, writes it anew.
func TestReferenceIsDerived(t *testing.T) {
	was := reference(t)
	is := withFindings(t, withGrammar(withUsages(t, was)))
	if is == was {
		return
	}
	if os.Getenv("PULLSCORE_UPDATE") == "" {
		t.Fatal("REFERENCE.md is not what the grammar and the table of findings say: go generate ./lang")
	}
	if err := os.WriteFile("REFERENCE.md", []byte(is), 0o644); err != nil {
		t.Fatal(err)
	}
}

var statementRow = regexp.MustCompile("^\\| `([^ `]+)[^`]*`.*? \\| ([^|]*) \\|$")

// withUsages writes how each statement is written into the first column of the
// tables of statements.
func withUsages(t *testing.T, text string) string {
	lines := strings.Split(text, "\n")
	seen := map[*spec]bool{}
	within := false
	for i, line := range lines {
		switch m := statementRow.FindStringSubmatch(line); {
		case line == "| statement | says |":
			within = true
		case !strings.HasPrefix(line, "|"):
			within = false
		case within && m != nil:
			row := specOfRow(line, m[1])
			if row == nil || seen[row] {
				t.Errorf("a row for %q: no statement, or a second time", m[1])
				continue
			}
			seen[row] = true
			lines[i] = fmt.Sprintf("| `%s` | %s |", strings.ReplaceAll(row.usage(), "|", `\|`), m[2])
		}
	}
	for _, s := range specs {
		if !seen[s] && s.under != 0 && s.under&inPuller == 0 && s.word != "with" {
			t.Errorf("no table has `%s`", s.usage())
		}
	}
	return strings.Join(lines, "\n")
}

// specOfRow finds the statement of a row, which begins with a word: of several with that
// word, the one whose usage line is most like it.
func specOfRow(line, word string) *spec {
	switch {
	case strings.HasPrefix(line, "| `NAME:"):
		word = speechWord
	case strings.HasPrefix(line, "| `NAME("):
		word = callWord
	case strings.HasPrefix(line, "| `NAME moves"):
		word = movesWord
	}
	written := strings.ReplaceAll(strings.TrimPrefix(line, "| `"), `\|`, "|")
	var found *spec
	most := 0
	for s := specOf[word]; s != nil; s = s.other {
		alike := 0
		for usage := s.usage() + "`"; alike < min(len(usage), len(written)) && usage[alike] == written[alike]; alike++ {
		}
		if alike > most {
			found, most = s, alike
		}
	}
	return found
}

// withGrammar writes the grammar between its two lines.
func withGrammar(text string) string {
	before, rest, _ := strings.Cut(text, grammarBegins)
	_, behind, _ := strings.Cut(rest, grammarEnds)
	var b strings.Builder
	b.WriteString(before + grammarBegins)
	b.WriteString("| statement | stands under |\n| --- | --- |\n")
	for _, s := range specs {
		under := "nothing: it is a header"
		if s.under != 0 {
			under = s.under.String()
		}
		fmt.Fprintf(&b, "| `%s` | %s |\n", strings.ReplaceAll(s.usage(), "|", `\|`), under)
	}
	b.WriteString("\nIn EBNF, as `pullscore help grammar` prints it: `<word>` and the like are kinds of\nwords, `(?= X )` says that X has to come next, `(?! X )` that it must not. Each\nclause stands once.\n")
	b.WriteString("\n```ebnf\n" + Grammar() + "```\n" + grammarEnds + behind)
	return b.String()
}

var findingsTable = regexp.MustCompile(`(?s)<!-- findings: ([a-z]+) -->\n.*?<!-- end of findings -->\n`)

// withFindings writes the tables of findings from the one table of them.
func withFindings(t *testing.T, text string) string {
	missing := map[string]bool{}
	for g := rule.Written; g <= rule.Page; g++ {
		missing[g.String()] = true
	}
	text = findingsTable.ReplaceAllStringFunc(text, func(old string) string {
		group := findingsTable.FindStringSubmatch(old)[1]
		if !missing[group] {
			t.Errorf("a table for %q: no group, or a second time", group)
		}
		delete(missing, group)
		var b strings.Builder
		fmt.Fprintf(&b, "<!-- findings: %s -->\n| code | severity | means |\n| --- | --- | --- |\n", group)
		for code := range rule.All() {
			r := code.Rule()
			if r.Group.String() != group {
				continue
			}
			severity := r.Severity.String()
			for _, also := range r.Also {
				severity += ", " + also.String()
			}
			fmt.Fprintf(&b, "| `%s` | %s | %s |\n", r.Name, severity, r.Means)
		}
		return b.String() + "<!-- end of findings -->\n"
	})
	for group := range missing {
		t.Errorf("no table of the findings of the group %s", group)
	}
	return text
}

// There is help on every statement and piece: how it is written, and what it says.
func TestHelpOnEverything(t *testing.T) {
	topics := slices.Clone(Pieces)
	for _, s := range specs {
		topics = append(topics, s.word)
	}
	for _, topic := range topics {
		if len(Usages(topic)) == 0 || len(Explain(topic)) == 0 {
			t.Errorf("%s: %d lines, %d passages", topic, len(Usages(topic)), len(Explain(topic)))
		}
	}
	for word, want := range map[string]string{
		"moment": `[NAME] "WORDS" [N] [+ TIME | - TIME]`, "place": "DISTANCE | NAME | NAME + LENGTH [, LENGTH | ANGLE left | right]",
		"target": "NAME | NAME + LENGTH | DISTANCE | inf [and NAME | NAME + LENGTH | DISTANCE | inf] ...", "value": "VALUE * VALUE",
		"tripod": "on tripod | dolly | shoulder | hand", "landing": Usage("rack"), "screen": Usage("watched"),
	} {
		if !slices.Contains(Usages(word), want) {
			t.Errorf("%s: %q lack %q", word, Usages(word), want)
		}
	}
}
