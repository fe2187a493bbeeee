package film

import (
	"os"
	"strings"
	"testing"

	"pullscore/interp"
	"pullscore/lang"
)

func TestFilmIsWhatItSays(t *testing.T) {
	scenes, err := Write(t.TempDir(), 1, 4)
	if err != nil {
		t.Fatal(err)
	}
	for i, path := range scenes {
		src, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if string(src) != Scene(1, i+1) || string(src) == Scene(2, i+1) {
			t.Errorf("%s: the seed does not make the scene", path)
		}
		if n := strings.Count(string(src), "\n"); n != LinesPerScene {
			t.Errorf("%s: %d lines, want %d", path, n, LinesPerScene)
		}
		res := interp.Interpret(path, src, interp.Options{})
		for _, d := range res.Findings {
			if d.Severity == lang.Error {
				t.Errorf("%s:%d: %s", path, d.Range.Start.Line, d.Message)
			}
		}
		pulls := 0
		for _, shot := range res.Plan.Shots {
			pulls += len(shot.Pulls)
		}
		if pulls != PullsPerScene {
			t.Errorf("%s: %d pulls, want %d", path, pulls, PullsPerScene)
		}
	}
}
