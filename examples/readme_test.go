// What the README shows is held to what the program does.

package examples_test

import (
	"bytes"
	"os"
	"regexp"
	"strings"
	"testing"

	"pullscore/interp"
	"pullscore/lang"
	"pullscore/render/score"
	"pullscore/render/sheet"
	"pullscore/render/svg"
)

func TestPictureInReadme(t *testing.T) {
	res, err := interp.Read("lantern.pull", interp.Options{})
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	if err := svg.Write(&out, score.Score(res.Plan.Shots[0], sheet.Options{})[0]); err != nil {
		t.Fatal(err)
	}
	const name = "lantern.svg"
	if os.Getenv("PULLSCORE_UPDATE") != "" {
		if err := os.WriteFile(name, out.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if old, err := os.ReadFile(name); err != nil || !bytes.Equal(old, out.Bytes()) {
		t.Errorf("%s is not what lantern.pull draws now (%v); PULLSCORE_UPDATE=1 draws it anew", name, err)
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
	plan := string(block[1])
	before := findings(plan)
	if len(before) != 2 || before[0].Code != "hard-to-land" || before[1].Code != "unmotivated" {
		t.Fatalf("the tour's plan is told %v", before)
	}
	for _, text := range []string{before[0].Message, before[0].Detail, "cure: " + before[0].Cures[0].Text + ", or " + before[0].Cures[1].Text} {
		if !strings.Contains(string(readme), text) {
			t.Errorf("the README does not show %q", text)
		}
	}
	cured := strings.NewReplacer("over 0.9 s", "over 1 s", "over 1.2 s\n", "over 1.2 s, because \"she decides\"\n").Replace(plan)
	if after := findings(cured); len(after) != 0 {
		t.Errorf("after the tour's changes: %v", after)
	}
}

func findings(plan string) []lang.Diagnostic {
	return interp.Interpret("kettle.pull", []byte(plan), interp.Options{}).Findings
}
