// What the README shows is held to what the program does.

package examples_test

import (
	"bytes"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"pullscore/interp"
	"pullscore/lang"
	"pullscore/render/score"
	"pullscore/render/sheet"
	"pullscore/render/svg"
)

func TestPicturesInReadme(t *testing.T) {
	for _, name := range []string{"lantern", "loft"} {
		res, err := interp.Read(name+".pull", interp.Options{})
		if err != nil {
			t.Fatal(err)
		}
		var out bytes.Buffer
		if err := svg.Write(&out, score.Score(res.Plan.Shots[0], sheet.Options{})[0]); err != nil {
			t.Fatal(err)
		}
		name += ".svg"
		if os.Getenv("PULLSCORE_UPDATE") != "" {
			if err := os.WriteFile(name, out.Bytes(), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		if old, err := os.ReadFile(name); err != nil || !bytes.Equal(old, out.Bytes()) {
			t.Errorf("%s is not what its plan draws now (%v); PULLSCORE_UPDATE=1 draws it again", name, err)
		}
	}
}

// The tour's plan has the two warnings that the tour tells of, and none once
// it is changed as the tour says.
func TestTourOfReadme(t *testing.T) {
	readme, err := os.ReadFile("../README.md")
	if err != nil {
		t.Fatal(err)
	}
	block := regexp.MustCompile("(?s)```pull\n(.*?)```").FindSubmatch(readme)
	if block == nil {
		t.Fatal("the README has no plan")
	}
	head, err := os.ReadFile("kettle.pull")
	if err != nil {
		t.Fatal(err)
	}
	plan := string(head) + string(block[1])
	before := findings(plan)
	if len(before) != 2 || before[0].Code != "hard-to-land" || before[1].Code != "unmotivated" {
		t.Fatalf("the tour's plan is told %v", before)
	}
	shown := strings.Join(strings.Fields(string(readme)), " ") // as the screen breaks its lines
	for _, text := range []string{before[0].Message, before[0].Detail, "cure: " + before[0].Cures[0].Text + ", or " + before[0].Cures[1].Text} {
		if !strings.Contains(shown, text) {
			t.Errorf("the README does not show %q", text)
		}
	}
	cured := strings.NewReplacer("over 0.9 s", "over 1 s", "over 1.2 s\n", "over 1.2 s, because \"she decides\"\n").Replace(plan)
	if after := findings(cured); len(after) != 0 {
		t.Errorf("after the tour's changes: %v", after)
	}
}

// The tour needs no more words than those to begin with; "because" comes with its
// cure.
func TestTourNeedsTwelveWords(t *testing.T) {
	readme, err := os.ReadFile("../README.md")
	if err != nil {
		t.Fatal(err)
	}
	known := strings.Fields("subject voice shot with start rack hold follow moves cue")
	seen := 0
	tour := regexp.MustCompile("(?s)\n## Five minutes\n(.*?)\n## ").FindSubmatch(readme)
	if tour == nil {
		t.Fatal("the README has no tour")
	}
	for _, block := range regexp.MustCompile("(?s)```pull\n(.*?)```").FindAllSubmatch(tour[1], -1) {
		for line := range strings.Lines(string(block[1])) {
			words := strings.Fields(line)
			if len(words) == 0 || strings.HasSuffix(words[0], ":") || len(words) > 1 && words[1] == "moves" {
				continue
			}
			seen++
			if !slices.Contains(known, words[0]) {
				t.Errorf("the tour needs the word %s: %s", words[0], line)
			}
		}
	}
	if seen < 8 {
		t.Errorf("only %d statements in the tour", seen)
	}
}

// What the README and the topic show of a staged plan are lines of that plan, in its order.
func TestStagedLines(t *testing.T) {
	plan, err := os.ReadFile("staged/two-hander.pull")
	if err != nil {
		t.Fatal(err)
	}
	for _, file := range []string{"../README.md", "topics/staging.md"} {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		block := regexp.MustCompile("(?s)```(?:pull)?\n(scene .*?)```").FindSubmatch(text)
		if block == nil {
			t.Fatalf("%s shows no scene", file)
		}
		rest := string(plan)
		for line := range strings.Lines(string(block[1])) {
			if line == "\n" {
				continue
			}
			_, after, found := strings.Cut(rest, "\n"+line)
			if rest = "\n" + after; !found {
				t.Errorf("%s shows %q, which the plan does not say there", file, line)
			}
		}
	}
}

func findings(plan string) []lang.Diagnostic {
	return interp.Interpret("kettle.pull", []byte(plan), interp.Options{}).Findings
}
