// What the README and the topics show of the program's output is what it prints.

package main

import (
	"bytes"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// Every block of these texts that begins with a command on the examples is the
// whole of what the command prints.
func TestShownOutputs(t *testing.T) {
	t.Chdir(filepath.Join("..", ".."))
	files, err := filepath.Glob(filepath.Join("examples", "topics", "*.md"))
	if err != nil {
		t.Fatal(err)
	}
	pattern := regexp.MustCompile("(?s)```\n\\$ pullscore ([^\n]* examples/[^\n]*)\n(.*?)```")
	shown := 0
	for _, file := range append(files, "README.md") {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		for _, block := range pattern.FindAllSubmatch(text, -1) {
			shown++
			var out, errs bytes.Buffer
			run(strings.Fields(string(block[1])), strings.NewReader(""), &out, &errs)
			if out.String() != string(block[2]) || errs.Len() > 0 {
				t.Errorf("pullscore %s prints\n%s%s\nand %s shows\n%s", block[1], &out, &errs, file, block[2])
			}
		}
	}
	if shown < 2 {
		t.Errorf("only %d outputs are shown", shown)
	}
}
