package main

import (
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"

	"pullscore/cmd/internal/files"
)

func TestNamesOfFiles(t *testing.T) {
	o := output{folder: "out", form: "svg", names: &files.Names{}}
	for _, test := range []struct {
		plan, shot    string
		number, total int
		want          string
	}{
		{"a/scene.pull", "1", 1, 1, "scene-1-score.svg"},
		{"b/scene.pull", "1", 1, 2, "scene-1-score-1.svg"},
		{"b/scene.pull", "1", 2, 2, "scene-1-score-2.svg"},
		{"c/SCENE.pull", "1", 1, 1, "SCENE-1-score~2.svg"}, // some systems know no capitals
		{"c/scene.pull", "1", 1, 1, "scene-1-score~3.svg"},
		{"-", "5/6", 1, 1, "stdin-5_6-score.svg"},
		{"-rf.pull", "..", 1, 1, "rf-_-score.svg"},
		{"kö:nig.pull", "a b", 1, 1, "kö_nig-a_b-score.svg"},
	} {
		got := o.name(test.plan, page{shot: test.shot, what: "score", number: test.number, total: test.total})
		if got != filepath.Join("out", test.want) {
			t.Errorf("%s %s: %q, want %q", test.plan, test.shot, got, test.want)
		}
	}
}

func TestNamesAreSafeAndNeverTwice(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := output{folder: "out", form: "svg", names: &files.Names{}}
		seen := map[string]bool{}
		for range rapid.IntRange(1, 20).Draw(t, "pages") {
			plan := rapid.SampledFrom([]string{"a", "A", "b/a", ".", "-", "a-1", rapid.String().Draw(t, "plan")}).Draw(t, "which")
			got := o.name(plan+".pull", page{shot: rapid.StringN(0, 200, -1).Draw(t, "shot"), what: "score", number: 1, total: 1})
			base := filepath.Base(got)
			if filepath.Dir(got) != "out" || !filepath.IsLocal(base) || len(base) > 255 || !utf8.ValidString(base) {
				t.Fatalf("name %q", got)
			}
			if strings.ContainsAny(base, "\\:*?\"<>| \n\x00") || strings.HasPrefix(base, ".") || strings.HasPrefix(base, "-") {
				t.Fatalf("name %q", base)
			}
			if key := strings.ToLower(got); seen[key] {
				t.Fatalf("twice: %q", got)
			} else {
				seen[key] = true
			}
		}
	})
}
