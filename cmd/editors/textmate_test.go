package editors

import (
	"bytes"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
)

// TestTextMate checks that the grammar colours every token of the plans as the scanner
// reads it.
func TestTextMate(t *testing.T) {
	packages := os.Getenv("PULLSCORE_TEXTMATE")
	if packages == "" {
		t.Skip("skipped: set PULLSCORE_TEXTMATE to a folder with the npm packages vscode-textmate and vscode-oniguruma")
	}
	files := plans(t)
	packages, err := filepath.Abs(packages)
	if err != nil {
		t.Fatal(err)
	}
	args := append([]string{"testdata/colours.mjs", packages, "vscode/syntaxes/pull.tmLanguage.json"}, files...)
	cmd := exec.Command("node", args...)
	cmd.Stderr = os.Stderr
	out, err := cmd.Output()
	if err != nil {
		t.Fatal(err)
	}
	for i, line := range bytes.Split(bytes.TrimSpace(out), []byte{'\n'}) {
		var pieces [][]any
		if err := json.Unmarshal(line, &pieces); err != nil {
			t.Fatal(err)
		}
		src := read(t, files[i])
		kinds := make([]string, len(src))
		for _, p := range pieces {
			for at := int(p[0].(float64)); at < int(p[1].(float64)); at++ {
				kinds[at] = p[2].(string)
			}
		}
		compareColours(t, files[i], src, func(from, to int) []string { return kinds[from:to] })
	}
}
