// What a user waits, from start to exit. Read each beside the empty program,
// which is what the machine itself takes for a start.

package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"pullscore/cmd/internal/testing/film"
)

func BenchmarkStartToExit(b *testing.B) {
	dir := b.TempDir()
	empty := filepath.Join(dir, "empty.go")
	if err := os.WriteFile(empty, []byte("package main\n\nfunc main() {}\n"), 0o644); err != nil {
		b.Fatal(err)
	}
	build(b, filepath.Join(dir, "empty"), empty)
	build(b, filepath.Join(dir, "pullscore"), ".")
	feature := filepath.Join(dir, "film")
	if err := os.Mkdir(feature, 0o755); err != nil {
		b.Fatal(err)
	}
	if _, err := film.Write(feature, 1, film.Scenes); err != nil {
		b.Fatal(err)
	}
	const plan = "../../examples/lantern.pull"
	for _, run := range []struct {
		name string
		args []string
	}{
		{"empty", []string{filepath.Join(dir, "empty")}},
		{"check", []string{filepath.Join(dir, "pullscore"), "check", plan}},
		{"draw", []string{filepath.Join(dir, "pullscore"), "draw", "-o", filepath.Join(dir, "out.svg"), plan}},
		{"film", []string{filepath.Join(dir, "pullscore"), "check", feature}},
	} {
		b.Run(run.name, func(b *testing.B) {
			for b.Loop() {
				if out, err := exec.Command(run.args[0], run.args[1:]...).CombinedOutput(); err != nil {
					b.Fatalf("%v\n%s", err, out)
				}
			}
		})
	}
}

// build builds a program as releases are built.
func build(b *testing.B, to, from string) {
	b.Helper()
	cmd := exec.Command("go", "build", "-o", to, from)
	cmd.Env = append(os.Environ(), "CGO_ENABLED=0")
	if out, err := cmd.CombinedOutput(); err != nil {
		b.Fatalf("%v\n%s", err, out)
	}
}
