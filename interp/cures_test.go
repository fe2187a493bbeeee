// Every cure that is printed is written into the plan, and the finding has to
// be gone.

package interp_test

import (
	"flag"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pullscore/lang"
)

// TestMain asks for more generated plans than usual, so that every kind of cure
// comes up.
func TestMain(m *testing.M) {
	flag.Parse()
	if f := flag.Lookup("rapid.checks"); f.Value.String() == f.DefValue {
		if err := flag.Set("rapid.checks", "400"); err != nil {
			panic(err)
		}
	}
	os.Exit(m.Run())
}

func TestCuresHold(t *testing.T) {
	tried := map[string]int{}
	rapid.Check(t, func(t *rapid.T) {
		src := genPlan(t)
		res := interpret("plan.pull", src)
		for _, f := range res.Findings {
			for _, c := range f.Cures {
				tried[f.Code]++
				if strings.Contains(c.Text, " and iso ") {
					tried["light by two"]++
				}
				checkCure(t, src, f, c)
			}
		}
	})
	for _, code := range []string{
		"hard-to-land", "never-sure", "no-time-to-move", "faster-than-a-hand", "racks-overlap",
		"too-deep", "not-seen", "faint", "cuts-into-line", "unmotivated", "jarring", "no-time-to-see", "re-grip",
		"light", "light by two", "falls-behind", "goes-soft", "out-of-frame",
	} {
		if tried[code] == 0 {
			t.Errorf("no cure of %s was tried", code)
		}
	}
	t.Logf("cures tried: %v", tried)
}

func checkCure(t *rapid.T, src string, f lang.Diagnostic, c lang.Cure) {
	cured, ok := applyCure(src, f, c.Text)
	if !ok {
		t.Fatalf("%s: nobody can tell where to write %q in\n%s", f.Code, c.Text, src)
	}
	res := interpret("plan.pull", cured)
	line := f.Range.Start.Line
	if !strings.HasSuffix(c.Text, " after it") { // others insert above, if at all
		line += strings.Count(cured, "\n") - strings.Count(src, "\n")
	}
	left := func(d lang.Diagnostic) bool { return d.Code == f.Code && d.Range.Start.Line == line }
	if i := slices.IndexFunc(res.Findings, left); i >= 0 {
		t.Fatalf("%s is not cured by %q: %s\n--- before: %s\n%s\n--- after\n%s", f.Code, c.Text, res.Findings[i].Message, f.Message, src, cured)
	}
	if n, m := countErrors(res.Findings), countErrors(interpret("plan.pull", src).Findings); n > m {
		t.Fatalf("%q cures %s and brings %d errors more\n%s", c.Text, f.Code, n-m, cured)
	}
}

func countErrors(list []lang.Diagnostic) (n int) {
	for _, d := range list {
		if d.Severity == lang.Error {
			n++
		}
	}
	return n
}

// applyCure writes a cure into a plan of genPlan, as a reader of the message
// would.
func applyCure(src string, f lang.Diagnostic, cure string) (string, bool) {
	lines := strings.Split(src, "\n")
	at := f.Range.Start.Line - 1
	word, _, _ := strings.Cut(cure, " ")
	before, isBefore := strings.CutSuffix(cure, " before it")
	first, isFirst := strings.CutSuffix(cure, " before the first line")
	light, meter, isLight := strings.Cut(cure, ", which makes it meter ")
	after, isAfter := strings.CutSuffix(cure, " after it")
	switch {
	case isAfter:
		lines = slices.Insert(lines, at+1, "  "+after)
	case isBefore:
		lines = slices.Insert(lines, at, "  "+before)
	case isFirst:
		lines = slices.Insert(lines, index(lines, "  start on")+1, "  "+first)
	case isLight:
		with := index(lines, "  with ")
		for _, part := range strings.Split(light, " and ") {
			word := strings.Fields(part)[0]
			if word == "nd" {
				lines[with] = clause(lines[with], word, part)
			} else {
				lines[index(lines, "  "+word)] = "  " + part
			}
		}
		lines[with] = clause(lines[with], "meter", "meter "+meter)
	case slices.Contains([]string{"stop", "nd", "gear", "wheel"}, word):
		with := index(lines, "  with ")
		lines[with] = clause(lines[with], word, cure)
	case word == "over":
		lines[at] = clause(lines[at], "over", cure)
	case word == "because":
		lines[at] += ", " + cure
	case word == "on" || word == "landing":
		lines[at] = clause(clause(lines[at], "landing on", ""), "on", cure)
	case strings.HasSuffix(cure, " left") || strings.HasSuffix(cure, " right"):
		i := index(lines, "subject "+word+" ")
		lines[i] = besides.ReplaceAllLiteralString(lines[i], ", "+strings.TrimPrefix(cure, word+" "))
	default:
		return "", false
	}
	return strings.Join(lines, "\n"), true
}

// besides is what a subject's statement says of its side.
var besides = regexp.MustCompile(`, \d+ cm (left|right)`)

func index(lines []string, prefix string) int {
	return slices.IndexFunc(lines, func(l string) bool { return strings.HasPrefix(l, prefix) })
}

// clause replaces a clause of a line, or adds it.
func clause(line, word, text string) string {
	re := regexp.MustCompile(`,? ` + word + ` [^,]*`)
	if text != "" {
		text = ", " + text
	}
	if re.MatchString(line) {
		return re.ReplaceAllLiteralString(line, text)
	}
	return line + text
}
