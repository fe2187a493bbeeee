// Package samples gives tests the sample files that other people wrote, which
// are not part of this repository, and what a correct reader finds in them. The
// folder is the one that PULLSCORE_SAMPLES names, else ../shared/samples beside
// the repository. Where it is absent, tests say that they were skipped.
package samples

import (
	"encoding/json"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
)

// dir returns the folder of the samples.
func dir() string {
	if dir := os.Getenv("PULLSCORE_SAMPLES"); dir != "" {
		return dir
	}
	_, file, _, _ := runtime.Caller(0)
	return filepath.Join(filepath.Dir(file), "..", "..", "..", "..", "shared", "samples")
}

// Read returns a sample by its path in the folder.
func Read(t testing.TB, name string) []byte {
	t.Helper()
	src, err := os.ReadFile(filepath.Join(dir(), filepath.FromSlash(name)))
	if os.IsNotExist(err) {
		t.Skipf("skipped: there is no sample %s (set PULLSCORE_SAMPLES)", name)
	}
	if err != nil {
		t.Fatal(err)
	}
	return src
}

// Each runs a subtest for every sample whose path begins with prefix and of
// which something is expected; T has the fields that the test compares.
func Each[T any](t *testing.T, prefix string, test func(t *testing.T, name string, src []byte, want T)) {
	t.Helper()
	each(t, ".", prefix, test)
}

// Cut is the folder, beside that of the other samples, of those about the cut. A
// name that begins with it can be given to Read.
const Cut = "../cut-samples"

// EachCut is Each for the samples about the cut.
func EachCut[T any](t *testing.T, prefix string, test func(t *testing.T, name string, src []byte, want T)) {
	t.Helper()
	each(t, Cut, prefix, test)
}

func each[T any](t *testing.T, folder, prefix string, test func(t *testing.T, name string, src []byte, want T)) {
	t.Helper()
	var all map[string]json.RawMessage
	if err := json.Unmarshal(Read(t, folder+"/EXPECTED.json"), &all); err != nil {
		t.Fatal(err)
	}
	ran := 0
	for name, raw := range all {
		if !strings.HasPrefix(name, prefix) {
			continue
		}
		var want T
		if err := json.Unmarshal(raw, &want); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		ran++
		t.Run(strings.TrimPrefix(name, prefix), func(t *testing.T) { test(t, name, Read(t, folder+"/"+name), want) })
	}
	if ran == 0 {
		t.Fatalf("nothing is expected of any sample in %s", prefix)
	}
}
