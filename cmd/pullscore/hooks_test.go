package main

import (
	"io"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// The hooks that others name in their lists are commands of this program, and take plans.
func TestHooksAreCommands(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("..", "..", ".pre-commit-hooks.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	entries := regexp.MustCompile(`(?m)^  entry: pullscore (.+)$`).FindAllStringSubmatch(string(text), -1)
	if hooks := strings.Count(string(text), "- id: "); hooks == 0 || len(entries) != hooks {
		t.Fatalf("%d hooks have %d entries", hooks, len(entries))
	}
	for _, entry := range entries {
		args := append(strings.Fields(entry[1]), "scene-12.pull")
		var cli commands
		parser, err := newParser(&cli, newSession(nil, io.Discard, io.Discard), args)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := parser.Parse(args); err != nil {
			t.Errorf("pullscore %s: %v", strings.Join(args, " "), err)
		}
	}
	for _, line := range regexp.MustCompile(`(?m)^  files: (.+)$`).FindAllStringSubmatch(string(text), -1) {
		files := regexp.MustCompile(line[1])
		if !files.MatchString("scenes/scene-12.pull") || files.MatchString("scenes/cut.srt") {
			t.Errorf("%s", line[1])
		}
	}
}
