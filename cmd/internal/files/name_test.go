package files

import (
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"
)

func TestNames(t *testing.T) {
	var n Names
	for _, test := range []struct{ owner, stem, tail, want string }{
		{"a", "scene-1", ".svg", "scene-1.svg"},
		{"a", "scene-1", "-2.svg", "scene-1-2.svg"},
		{"b", "SCENE-1", ".svg", "SCENE-1~2.svg"}, // some systems know no capitals
		{"a", "scene-1", ".svg", "scene-1~3.svg"},
	} {
		if got := n.Give(test.owner, test.stem, test.tail); got != test.want {
			t.Errorf("%+v: %q", test, got)
		}
	}
	n.Drop("a")
	if got := n.Give("c", "scene-1", ".svg"); got != "scene-1.svg" {
		t.Errorf("after its owner has gone: %q", got)
	}
	if got := n.Give("c", "scene-1", ".svg"); got != "scene-1~3.svg" {
		t.Errorf("beside that of another owner: %q", got)
	}
}

func TestSafe(t *testing.T) {
	for name, want := range map[string]string{
		"": "_", "..": "_", "-rf": "rf", "5/6": "5_6", "kö:nig": "kö_nig", "a\nb": "a_b", "焦点": "焦点", "\xff": "_",
	} {
		if got := Safe(name); got != want {
			t.Errorf("%q: %q, want %q", name, got, want)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		got := Safe(rapid.String().Draw(t, "name"))
		if !filepath.IsLocal(got) || len(got) > longest || !utf8.ValidString(got) || strings.ContainsAny(got, "\\/:*?\"<>| \n\x00") {
			t.Fatalf("%q", got)
		}
		if Safe(got) != got {
			t.Fatalf("%q is not safe: %q", got, Safe(got))
		}
	})
}
