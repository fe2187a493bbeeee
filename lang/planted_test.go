// Planted mistakes: a plan with any of thirteen of them has exactly these
// reported, each on its line.

package lang

import (
	"os"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// planted are the mistakes: a line of testdata/scene.pull, what stands there,
// what is written instead, and the code of the diagnostic.
var planted = []struct {
	line            int
	right, wrong    string
	code, mentioned string
}{
	{2, "rate 24", "rat 24", "unknown-word", "did you mean `rate`"},
	{3, "screen", "scren", "expected-word", "`screen`"},
	{4, "150 wpm", "150", "missing-unit", "wpm"},
	{7, "1.70 m", "1,70 m", "bad-number", "1.70"},
	{8, "left", "lft", "expected-word", "`left`"},
	{12, "0.8 s", "0.8 sec", "unknown-unit", "`s`"},
	{15, "over", "ovr", "unknown-clause", "`over`"},
	{20, `lens "75"`, "lens 75", "expected-name", `"75"`},
	{23, `ledger.",`, "ledger.,", "unfinished-text", "quote"},
	{25, "OTTO:", "OTTO", "expected-word", "`:`"},
	{26, "rack to", "rack too", "expected-word", "`to`"},
	{30, "hold 1 s", "focal 75 mm", "wrong-section", "a lens"},
	{31, "over 2.5 s", "over 2.5 s, over 3 s", "duplicate-clause", "second time"},
}

func TestPlanted(t *testing.T) {
	src, err := os.ReadFile("testdata/scene.pull")
	if err != nil {
		t.Fatal(err)
	}
	every := make([]bool, len(planted))
	for i := range every {
		every[i] = true
	}
	checkPlanted(t, string(src), every)
	rapid.Check(t, func(t *rapid.T) {
		checkPlanted(t, string(src), rapid.SliceOfN(rapid.Bool(), len(planted), len(planted)).Draw(t, "which"))
	})
}

func checkPlanted(t rapid.TB, src string, which []bool) {
	lines := strings.Split(src, "\n")
	codes := map[int]int{}
	for i, p := range planted {
		if !which[i] {
			continue
		}
		line := &lines[p.line-1]
		if !strings.Contains(*line, p.right) {
			t.Fatalf("line %d has no %q", p.line, p.right)
		}
		*line = strings.Replace(*line, p.right, p.wrong, 1)
		codes[p.line] = i
	}
	file, diags := Parse("scene.pull", []byte(strings.Join(lines, "\n")))
	for _, d := range diags {
		i, ok := codes[d.Range.Start.Line]
		if !ok {
			t.Errorf("line %d: unexpected %s: %s", d.Range.Start.Line, d.Code, d.Message)
			continue
		}
		delete(codes, d.Range.Start.Line)
		text := strings.ToLower(d.Message + " " + d.Detail)
		if d.Code != planted[i].code || !strings.Contains(text, planted[i].mentioned) {
			t.Errorf("line %d: %s: %s", d.Range.Start.Line, d.Code, text)
		}
	}
	for line := range codes {
		t.Errorf("line %d: the mistake is not reported", line)
	}
	if len(file.Sections) != 2 || len(file.Sections[1].Body) != 13 {
		t.Errorf("the tree lacks statements")
	}
}
