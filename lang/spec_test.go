package lang

import (
	"sync"
	"testing"
)

// One word may begin a statement in one section and another in the next.
func TestWithin(t *testing.T) {
	lens := &spec{word: "mark", under: inLens}
	file := &spec{word: "mark", under: inFile, other: lens}
	for in, want := range map[section]*spec{inLens: lens, inCamera: file, inFile: file, inShot: file} {
		if got := file.within(in); got != want {
			t.Errorf("in %v: that of %v", in, got.under)
		}
	}
	header := &spec{word: "camera", other: &spec{word: "camera", under: inShot}}
	for in, under := range map[section]section{inShot: inShot, inFile: 0, inLens: 0} {
		if got := header.within(in); got.under != under {
			t.Errorf("in %v: that of %v", in, got.under)
		}
	}
	if file.mayStand(inShot) || !file.mayStand(inCamera) || !header.mayStand(inLens) {
		t.Error("a statement of the file may stand behind a camera and not in a shot, a header anywhere")
	}
}

// Parsers are built once, also where several files are read at a time.
func TestParsersAreShared(t *testing.T) {
	var wait sync.WaitGroup
	for range 8 {
		wait.Go(func() {
			for _, in := range inputs {
				if _, diags := Parse("", []byte(in.src)); len(diags) > 0 {
					t.Errorf("%s: %s", in.name, diags[0].Message)
				}
			}
			Parse("", []byte("shot 1\n  rack to A ovr 1 s\n"))
		})
	}
	wait.Wait()
}
