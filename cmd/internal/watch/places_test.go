package watch

import (
	"os"
	"path/filepath"
	"slices"
	"testing"
)

func TestPlaces(t *testing.T) {
	root, err := filepath.EvalSymlinks(t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	write(t, filepath.Join(root, "store", "v1", "a.pull"), "a")
	for link, target := range map[string]string{
		"now":       "store/v1",
		"a.pull":    "now/a.pull",
		"round":     "around",
		"around":    "round",
		"up":        "store/../store/v1",
		"lost.pull": "nowhere/a.pull",
		"abs":       filepath.Join(root, "store"),
	} {
		if err := os.Symlink(target, filepath.Join(root, link)); err != nil {
			t.Skip(err) // a system without links
		}
	}
	for _, test := range []struct {
		path string
		want []string // the places below root
		last kind
	}{
		{"store/v1/a.pull", []string{"store", "store/v1", "store/v1/a.pull"}, aFile},
		{"a.pull", []string{"a.pull", "now", "store", "store/v1", "store/v1/a.pull"}, aFile},
		{"up/a.pull", []string{"up", "store", "store", "store/v1", "store/v1/a.pull"}, aFile},
		{"abs/v1", []string{"abs", "store", "store/v1"}, aFolder},
		{"lost.pull", []string{"lost.pull", "nowhere"}, nothing},
		{"missing/b/c.pull", []string{"missing"}, nothing},
		{"store/v1/a.pull/x", []string{"store", "store/v1", "store/v1/a.pull", "store/v1/a.pull/x"}, nothing},
	} {
		walk := walker{seen: map[string]step{}}
		var got []string
		list := walk.places(filepath.Join(root, test.path))
		for _, p := range list {
			if rel, err := filepath.Rel(root, p.path()); err == nil && filepath.IsLocal(rel) && rel != "." {
				got = append(got, filepath.ToSlash(rel))
			}
		}
		if !slices.Equal(got, test.want) || list[len(list)-1].kind != test.last {
			t.Errorf("%s: %q ends in %d, want %q and %d", test.path, got, list[len(list)-1].kind, test.want, test.last)
		}
	}
	walk := walker{seen: map[string]step{}}
	if list := walk.places(filepath.Join(root, "round", "a.pull")); len(list) > 3*maxLinks {
		t.Errorf("a circle of links has %d places", len(list))
	}
	if list := walk.places(string(filepath.Separator)); len(list) != 1 || list[0].kind != aFolder {
		t.Errorf("the root: %+v", list)
	}
}
