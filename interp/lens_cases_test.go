// The figures of lenses and cameras against an independent model:
// testdata/lens-cases.tsv at the top holds what a program of its own, in another
// language, makes of the same formulas. It shares no code with this one.
//
// A topic of the table has its rules in a file of its own. A rule says of which rows it
// is, by their words, and what the program has for them.

package interp_test

import (
	"math"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// lensTopics has the rules of each topic.
var lensTopics = map[string][]lensRule{
	"marks": marksRules, "chance": chanceRules,
	"near": nearRules, "closeup": closeupRules, "squeeze": squeezeRules, "play": playRules, "planes": planesRules,
}

// lensElsewhere has the topics whose rows other tests read.
var lensElsewhere = map[string]string{
	"sheet":  "optics/ring has a test of its own, which reads all of them",
	"import": "cmd/internal/foreign has a test of its own, beside the readers",
	"speed":  "speed_test.go reads them",
	"stops":  "scale_test.go reads them",
}

// lensRows are how many rows each topic has.
var lensRows = map[string]int{
	"chance": 32, "closeup": 30, "import": 26, "marks": 68, "near": 30, "planes": 25, "play": 25, "sheet": 55, "speed": 26, "squeeze": 33, "stops": 25,
}

// A lensRule computes the rows that match a pattern. A row that begins with "same" goes
// on with the lens of the last row that does not: its text is then that row, " // " and
// what is behind "same".
type lensRule struct {
	pattern string
	got     func(a lensArgs) float64
}

// lensArgs are the groups of a pattern, as text and, where they are numbers, as numbers.
// A group "inf" is infinite.
type lensArgs struct {
	text []string
	n    []float64
}

// A lensRow is a row of the table.
type lensRow struct {
	topic, text  string
	want, within float64
}

func readLensRows(t *testing.T) (rows []lensRow) {
	t.Helper()
	data, err := os.ReadFile("../testdata/lens-cases.tsv")
	if err != nil {
		t.Fatal(err)
	}
	last := ""
	for _, line := range strings.Split(strings.TrimSpace(string(data)), "\n")[1:] {
		c := strings.Split(line, "\t")
		r := lensRow{topic: c[0], text: c[1]}
		if behind, ok := strings.CutPrefix(c[1], "same"); ok {
			r.text = last + " // " + strings.TrimLeft(behind, ":, ")
		} else {
			last = c[1]
		}
		if r.want, err = lensNumber(c[2]); err == nil {
			r.within, err = strconv.ParseFloat(c[4], 64)
		}
		if err != nil {
			t.Fatalf("%s: %v", line, err)
		}
		rows = append(rows, r)
	}
	return rows
}

// lensNumber reads a number, inf, or NaN as unknown.
func lensNumber(text string) (float64, error) {
	if text == "unknown" {
		return math.NaN(), nil
	}
	return strconv.ParseFloat(text, 64)
}

func TestLensFiguresOfTheModel(t *testing.T) {
	counts := map[string]int{}
	for _, r := range readLensRows(t) {
		counts[r.topic]++
		if lensElsewhere[r.topic] != "" {
			continue
		}
		a, rule := ruleFor(lensTopics[r.topic], r.text)
		if rule == nil {
			t.Errorf("%s: no rule for %s", r.topic, r.text)
			continue
		}
		got := rule.got(a)
		same := got == r.want || math.IsNaN(got) && math.IsNaN(r.want)
		if !same && !(math.Abs(got-r.want) <= r.within*max(1, math.Abs(r.want))) {
			t.Errorf("%s: %s: %.9g, the model has %.9g", r.topic, r.text, got, r.want)
		}
	}
	for topic, want := range lensRows {
		if counts[topic] != want {
			t.Errorf("%s: %d rows, not %d", topic, counts[topic], want)
		}
		if (lensTopics[topic] == nil) == (lensElsewhere[topic] == "") {
			t.Errorf("%s: neither rules nor a test elsewhere, or both", topic)
		}
	}
}

// ruleFor returns the first rule that matches a text, or nil.
func ruleFor(rules []lensRule, text string) (a lensArgs, rule *lensRule) {
	for i := range rules {
		m := regexp.MustCompile("^(?:" + rules[i].pattern + ")$").FindStringSubmatch(text)
		if m == nil {
			continue
		}
		for _, group := range m[1:] {
			v, err := lensNumber(group)
			if err != nil {
				v = math.NaN()
			}
			a.text, a.n = append(a.text, group), append(a.n, v)
		}
		return a, &rules[i]
	}
	return a, nil
}
