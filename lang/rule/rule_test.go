package rule_test

import (
	"encoding/json"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"pullscore/lang/rule"
)

// most of a row's one line, in characters.
const mostMeans = 90

// Help has this many sentences.
const fewestSentences, mostSentences = 2, 6

func TestEveryRowIsWhole(t *testing.T) {
	kebab := regexp.MustCompile(`^[a-z]+(-[a-z]+)*$`)
	seen, means := map[string]bool{}, map[string]string{}
	n := 0
	for c := range rule.All() {
		n++
		r := c.Rule()
		switch {
		case !kebab.MatchString(r.Name):
			t.Errorf("code %d has the name %q", c, r.Name)
		case seen[r.Name]:
			t.Errorf("the name %s stands twice", r.Name)
		case r.Group == rule.NoGroup || r.Group > rule.Page:
			t.Errorf("%s belongs to no group", r.Name)
		case r.Severity > rule.Error || slices.Contains(r.Also, r.Severity):
			t.Errorf("%s has the severities %v and %v", r.Name, r.Severity, r.Also)
		case r.Row > rule.Camera:
			t.Errorf("%s stands on no row of the score", r.Name)
		case r.Row != rule.NoRow && r.Group < rule.Shot:
			t.Errorf("%s never reaches the score and has the row %v", r.Name, r.Row)
		}
		seen[r.Name] = true
		if other, ok := means[r.Means]; ok {
			t.Errorf("%s and %s mean the same", other, r.Name)
		}
		means[r.Means] = r.Name
	}
	if n < 120 {
		t.Errorf("the table has %d rows only", n)
	}
}

// The one line is a clause and no sentence: it fits a table cell.
func TestMeansIsOneLine(t *testing.T) {
	for c := range rule.All() {
		m := c.Rule().Means
		first, _ := utf8.DecodeRuneInString(m)
		if m == "" || utf8.RuneCountInString(m) > mostMeans || strings.ContainsAny(m, "\n|") || strings.HasSuffix(m, ".") {
			t.Errorf("%s means %q, %d characters", c, m, utf8.RuneCountInString(m))
		}
		if unicode.IsUpper(first) && !slices.ContainsFunc([]string{"WebVTT", "OpenTimelineIO"}, func(w string) bool { return strings.HasPrefix(m, w) }) {
			t.Errorf("%s begins in upper case: %q", c, m)
		}
	}
}

var sentenceEnd = regexp.MustCompile(`[.?](?: |$)`)

func TestHelpIsSentences(t *testing.T) {
	for c := range rule.All() {
		h := c.Rule().Help
		if n := len(sentenceEnd.FindAllString(h, -1)); n < fewestSentences || n > mostSentences || !strings.HasSuffix(h, ".") {
			t.Errorf("%s: help of %d sentences: %q", c, n, h)
		}
		for _, s := range sentenceEnd.Split(h, -1) {
			if first, _ := utf8.DecodeRuneInString(s); s != "" && !unicode.IsUpper(first) {
				t.Errorf("%s: a sentence begins %q", c, s)
			}
			if words := len(strings.Fields(s)); words > 24 {
				t.Errorf("%s: a sentence of %d words: %q", c, words, s)
			}
		}
		if strings.Contains(h, "  ") {
			t.Errorf("%s: two blanks in %q", c, h)
		}
	}
}

func TestNamed(t *testing.T) {
	for c := range rule.All() {
		if found, ok := rule.Named(c.String()); !ok || found != c {
			t.Errorf("Named(%q) = %d, %v, want %d", c, found, ok, c)
		}
	}
	for _, name := range []string{"", "no-such-code", "Hard-To-Land", "hard-to-land "} {
		if c, ok := rule.Named(name); ok || c != 0 {
			t.Errorf("Named(%q) = %d, %v", name, c, ok)
		}
	}
}

func TestNumbersThatAreNoCode(t *testing.T) {
	for _, c := range []rule.Code{0, 60000} {
		if r := c.Rule(); r.Name != "" || c.String() != "" || c.May(rule.Note) {
			t.Errorf("code %d: %+v", c, r)
		}
	}
	if _, err := rule.Code(60000).MarshalText(); err == nil {
		t.Error("code 60000 was written")
	}
}

func TestJSON(t *testing.T) {
	all := slices.Collect(rule.All())
	text, err := json.Marshal(append(all, 0))
	if err != nil || !strings.Contains(string(text), `"hard-to-land"`) || strings.ContainsAny(string(text), "0123456789") {
		t.Fatalf("%s, %v", text, err)
	}
	var back []rule.Code
	if err := json.Unmarshal(text, &back); err != nil || !slices.Equal(back, append(all, 0)) {
		t.Errorf("read back: %v, %v", back, err)
	}
	if err := json.Unmarshal([]byte(`["no-such-code"]`), &back); err == nil {
		t.Error("a name that is none was read")
	}
}

func TestMay(t *testing.T) {
	tests := []struct {
		code rule.Code
		may  []rule.Severity
	}{
		{rule.HardToLand, []rule.Severity{rule.Warning}},
		{rule.BrokenLog, []rule.Severity{rule.Warning, rule.Error}},
		{rule.MoreFaults, []rule.Severity{rule.Note, rule.Warning, rule.Error}},
	}
	for _, test := range tests {
		for s := rule.Note; s <= rule.Error; s++ {
			if test.code.May(s) != slices.Contains(test.may, s) {
				t.Errorf("%s may be told as %s: %v", test.code, s, test.code.May(s))
			}
		}
	}
}

// Every code belongs to exactly one group, and the groups keep the table's order.
func TestGroups(t *testing.T) {
	var byGroup []rule.Code
	for g := rule.Written; g <= rule.Page; g++ {
		before := len(byGroup)
		byGroup = slices.AppendSeq(byGroup, rule.Of(g))
		if len(byGroup) == before || g.String() == "" {
			t.Errorf("group %q has no code", g)
		}
	}
	if !slices.Equal(byGroup, slices.Collect(rule.All())) {
		t.Error("the groups together are not the table")
	}
	for range rule.All() { // a reader may stop
		break
	}
}
