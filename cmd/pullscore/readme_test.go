// What the README and the topics show of the program's output is what it prints.

package main

import (
	"bytes"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"pullscore/examples/topics"
	"pullscore/lang"
	"pullscore/lang/rule"
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

// What the topic of staging names exists: commands and their flags, findings, statements.
func TestStagingNamesWhatExists(t *testing.T) {
	text, ok := topics.Markdown("staging")
	if !ok {
		t.Fatal("there is no such topic")
	}
	var examples strings.Builder
	files, err := filepath.Glob(filepath.Join("..", "..", "examples", "staged", "*.pull"))
	if err != nil {
		t.Fatal(err)
	}
	for _, file := range files {
		plan, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		examples.Write(plan)
	}
	text = regexp.MustCompile("(?s)```.*?```").ReplaceAllString(text, "")
	named := regexp.MustCompile("`([^`\n]+)`").FindAllStringSubmatch(text, -1)
	for _, m := range named {
		words := strings.Fields(m[1])
		if words[0] == "pullscore" {
			_, help, errs := runs(t, words[1], "--help")
			for _, w := range words[1:] {
				if strings.HasPrefix(w, "--") && !strings.Contains(help, " "+w) || errs != "" {
					t.Errorf("%s: %s %s", m[1], w, errs)
				}
			}
			continue
		}
		_, isFinding := rule.Named(m[1])
		if !isFinding && len(lang.Usages(words[0])) == 0 && !strings.Contains(examples.String(), m[1]) {
			t.Errorf("nothing is called %s", m[1])
		}
	}
	if len(named) < 30 {
		t.Errorf("only %d names", len(named))
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
