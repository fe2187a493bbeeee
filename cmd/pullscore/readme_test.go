// What the README shows of the program's output is what it prints.

package main

import (
	"bytes"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// Every block of the README that begins with a command on the examples is the
// whole of what the command prints.
func TestOutputsInReadme(t *testing.T) {
	t.Chdir(filepath.Join("..", ".."))
	readme, err := os.ReadFile("README.md")
	if err != nil {
		t.Fatal(err)
	}
	blocks := regexp.MustCompile("(?s)```\n\\$ pullscore ([^\n]* examples/[^\n]*)\n(.*?)```").FindAllSubmatch(readme, -1)
	if len(blocks) == 0 {
		t.Fatal("the README shows nothing")
	}
	for _, block := range blocks {
		var out, errs bytes.Buffer
		run(strings.Fields(string(block[1])), strings.NewReader(""), &out, &errs)
		if out.String() != string(block[2]) || errs.Len() > 0 {
			t.Errorf("pullscore %s prints\n%s%s\nand the README shows\n%s", block[1], &out, &errs, block[2])
		}
	}
}
