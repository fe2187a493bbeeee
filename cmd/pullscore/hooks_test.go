package main

import (
	"io"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// A listed hook is one that others name in their lists: the fields of its entry.
type listedHook map[string]string

// listedHooks reads .pre-commit-hooks.yaml, in which each field is a line.
func listedHooks(t *testing.T) (hooks []listedHook) {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "..", ".pre-commit-hooks.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	for line := range strings.Lines(string(text)) {
		if strings.HasPrefix(line, "- ") {
			hooks = append(hooks, listedHook{})
		}
		key, value, ok := strings.Cut(strings.TrimSpace(strings.TrimPrefix(line, "- ")), ": ")
		if !ok || len(hooks) == 0 {
			t.Fatalf("%q is no field of a hook", line)
		}
		hooks[len(hooks)-1][key] = value
	}
	return hooks
}

// Hooks are commands of this program. Those that take names take those of plans.
func TestHooksAreCommands(t *testing.T) {
	hooks := listedHooks(t)
	if len(hooks) == 0 {
		t.Fatal("there are no hooks")
	}
	for _, h := range hooks {
		entry, ok := strings.CutPrefix(h["entry"], "pullscore ")
		args := append(strings.Fields(entry), strings.Fields(strings.Trim(h["args"], "[]"))...)
		files := regexp.MustCompile(h["files"])
		if named := h["pass_filenames"] == "true"; named {
			args = append(args, "scene-12.pull")
			if files.MatchString("scenes/cut.srt") {
				t.Errorf("%s is given a name that is no plan's", h["id"])
			}
		}
		var cli commands
		parser, err := newParser(&cli, newSession(nil, io.Discard, io.Discard), args)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := parser.Parse(args); !ok || err != nil {
			t.Errorf("pullscore %s: %v", strings.Join(args, " "), err)
		}
		if !files.MatchString("scenes/scene-12.pull") || files.MatchString("scenes/notes.md") {
			t.Errorf("%s looks at %s", h["id"], h["files"])
		}
	}
}

// The listed hook and that of the examples look at the same kinds of files.
func TestHooksLookAtTheSameFiles(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("..", "..", "examples", "git", "pre-commit"))
	if err != nil {
		t.Fatal(err)
	}
	var kinds []string
	for _, m := range regexp.MustCompile(`'\*\.(\w+)'`).FindAllStringSubmatch(string(text), -1) {
		kinds = append(kinds, m[1])
	}
	hooks := listedHooks(t)
	i := slices.IndexFunc(hooks, func(h listedHook) bool { return h["id"] == "pullscore-check" })
	if want := `\.(` + strings.Join(kinds, "|") + `)$`; i < 0 || hooks[i]["files"] != want {
		t.Errorf("the listed hook does not look at %s", want)
	}
}
