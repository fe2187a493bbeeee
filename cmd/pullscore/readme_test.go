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

// What the README says of a lens of one's own: its commands run, its statements stand in
// the kit that it shows, and its picture is what the first command draws.
func TestOwnLensInReadme(t *testing.T) {
	root, err := filepath.Abs(filepath.Join("..", ".."))
	if err != nil {
		t.Fatal(err)
	}
	readme, err := os.ReadFile(filepath.Join(root, "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	section := regexp.MustCompile("(?s)\n## Your own lens\n(.*?)\n## ").FindSubmatch(readme)
	if section == nil {
		t.Fatal("the README has no such section")
	}
	kit, err := os.ReadFile(filepath.Join(root, "examples", "own-lens", "after", "kit.pull"))
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	if err := os.Symlink(filepath.Join(root, "examples"), filepath.Join(dir, "examples")); err != nil {
		t.Fatal(err)
	}
	t.Chdir(dir)
	commands, statements := 0, 0
	for _, code := range regexp.MustCompile("`([^`\n]+)`").FindAllSubmatch(section[1], -1) {
		text := string(code[1])
		if args, ok := strings.CutPrefix(text, "pullscore "); ok {
			commands++
			var out, errs bytes.Buffer
			if code := run(strings.Fields(args), strings.NewReader(""), &out, &errs); code != exitFine || errs.Len() > 0 {
				t.Errorf("%s: exit code %d\n%s", text, code, &errs)
			}
			continue
		}
		if statements++; !bytes.Contains(kit, []byte("\n  "+text+"\n")) {
			t.Errorf("the kit does not say %s", text)
		}
	}
	if commands != 2 || statements != 5 {
		t.Errorf("%d commands and %d statements, not 2 and 5", commands, statements)
	}
	samePicture(t, "kit-found_65-sheet-1.svg", filepath.Join(root, "examples", "own-lens", "sheet.svg"))
}

// samePicture compares a drawing with the one that the README shows.
func samePicture(t *testing.T, drawn, shown string) {
	t.Helper()
	got, err := os.ReadFile(drawn)
	if err != nil {
		t.Fatal(err)
	}
	if os.Getenv("PULLSCORE_UPDATE") == "1" {
		if err := os.WriteFile(shown, got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if want, err := os.ReadFile(shown); err != nil || !bytes.Equal(got, want) {
		t.Errorf("%s is not what the first command draws now (%v); PULLSCORE_UPDATE=1 draws it anew", shown, err)
	}
}
