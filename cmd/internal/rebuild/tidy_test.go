package rebuild

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// shots is a plan of shots with these IDs.
func shots(ids ...string) string {
	one := scene("Two at a window")
	head, body, _ := strings.Cut(one, "shot 1 ")
	for _, id := range ids {
		head += "shot " + id + " " + body
	}
	return head
}

// drawn reports whether the first plan has so many shots without errors.
func drawn(n int) func(event) bool {
	return func(e event) bool {
		p := e.state.Plans[0]
		return p.Good != nil && !p.Stale && len(p.Good.Shots) == n && len(e.changes) > 0
	}
}

func exists(t *testing.T, path string) bool {
	t.Helper()
	_, err := os.Lstat(path)
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		t.Fatal(err)
	}
	return err == nil
}

// Drawings of shots that are gone go too, if they were written by this watch and
// are as they were written.
func TestDrawingsOfShotsThatAreGone(t *testing.T) {
	dir := t.TempDir()
	out := func(id string) string { return filepath.Join(dir, "out", "a-"+id+"-score.svg") }
	write(t, filepath.Join(dir, "kit.pull"), kit)
	write(t, filepath.Join(dir, "a.pull"), shots("1", "2"))
	before, _ := start(t, dir, "a.pull")
	before.stop()

	// Another watch finds the drawings of 1 and 2 as they are, and writes others.
	g, _ := start(t, dir, "a.pull")
	g.write("a.pull", shots("1", "2", "3", "4", "5", "6"))
	g.until(drawn(6))
	write(t, out("4"), "somebody else's")
	if err := errors.Join(os.Rename(out("5"), out("kept")), os.Symlink(out("kept"), out("5"))); err != nil {
		t.Fatal(err)
	}
	g.write("a.pull", shots("3", "7")+"rack to NOBODY\n") // an error: nothing happens
	g.until(func(e event) bool { return e.state.Plans[0].Stale })
	if !exists(t, out("6")) {
		t.Error("a drawing is gone while the plan has errors")
	}
	g.write("a.pull", strings.ReplaceAll(kit+shots(), `use "kit.pull"`, "")) // no shots
	g.until(drawn(0))
	if !exists(t, out("6")) {
		t.Error("a drawing is gone while the plan has no shots")
	}
	g.write("a.pull", shots("3", "7"))
	e := g.until(drawn(2))
	if got := e.changes[0].Removed; len(got) != 1 || got[0] != out("6") {
		t.Errorf("removed: %v", got)
	}
	for id, want := range map[string]bool{"1": true, "2": true, "3": true, "4": true, "5": true, "6": false, "7": true, "kept": true} {
		if exists(t, out(id)) != want {
			t.Errorf("%s is there: %v, want %v", out(id), !want, want)
		}
	}
	g.write("a.pull", shots("3", "6"))
	g.until(func(e event) bool { return drawn(2)(e) && exists(t, out("6")) && !exists(t, out("7")) })
}

// With a plan that leaves its folder its drawings go.
func TestDrawingsOfPlansThatAreGone(t *testing.T) {
	dir := t.TempDir()
	write(t, filepath.Join(dir, "kit.pull"), kit)
	write(t, filepath.Join(dir, "a.pull"), scene("A"))
	write(t, filepath.Join(dir, "b.pull"), scene("B"))
	g, _ := start(t, dir, ".")
	if err := os.Remove(filepath.Join(dir, "b.pull")); err != nil {
		t.Fatal(err)
	}
	e := g.until(func(e event) bool { return len(e.changes) > 0 && e.changes[0].Gone })
	gone := filepath.Join(dir, "out", "b-1-score.svg")
	if got := e.changes[0].Removed; len(got) != 1 || got[0] != gone || exists(t, gone) {
		t.Errorf("removed: %v", got)
	}
	if !exists(t, filepath.Join(dir, "out", "a-1-score.svg")) {
		t.Error("the other plan's drawing is gone")
	}
}
