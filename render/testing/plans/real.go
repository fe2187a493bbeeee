package plans

import (
	"os"
	"path/filepath"
	"testing"

	"pullscore/lang/testing/chunk"
)

// Real returns the text of plans by name: the examples, and those that are
// wrong on purpose, named as if they lay beside a kit.
func Real(t *testing.T) map[string][]byte {
	t.Helper()
	all := map[string][]byte{}
	examples, _ := filepath.Glob("../../examples/*.pull")
	for _, name := range examples {
		src, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		all[name] = src
	}
	findings, _ := filepath.Glob("../../interp/testdata/findings/*.pull")
	for _, name := range findings {
		chunks, err := chunk.Read(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range chunks {
			all["../../examples/"+filepath.Base(c.Name)] = c.Source // beside a kit
		}
	}
	return all
}
