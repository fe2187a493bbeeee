package preview

import (
	"os/exec"
	"path/filepath"
	"testing"
)

// The modules of the page that only compute are tested by node's own runner.
func TestModules(t *testing.T) {
	node, err := exec.LookPath("node")
	if err != nil {
		t.Skip("skipped: node is not installed")
	}
	files, err := filepath.Glob("webtest/*.test.mjs")
	if err != nil || len(files) == 0 {
		t.Fatalf("no tests: %v", err)
	}
	// One process for all: to start one for each takes longer than all tests.
	const all = `import { pathToFileURL } from "node:url"; for (const file of process.argv.slice(1)) await import(pathToFileURL(file));`
	if out, err := exec.Command(node, append([]string{"--input-type=module", "--eval", all}, files...)...).CombinedOutput(); err != nil {
		t.Errorf("%v\n%s", err, out)
	}
}
