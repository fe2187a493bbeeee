package lang

import (
	"slices"
	"strings"
	"testing"
)

func TestExplain(t *testing.T) {
	for word, want := range map[string]string{
		"goes-soft": "`goes-soft` (warning): ",
		"light":     "`light` (warning): ",
		"plan":      "`plan \"TITLE\"`: the scene's title",
		"landing":   "A MOMENT (of `on`, `landing on`, `until`) is one of these",
		"turns":     "`turns left` or `turns right` is the way",
		"deep":      "`subject NAME at PLACE | FLOOR, eyes LENGTH, deep LENGTH",
	} {
		if got := Explain(word); !slices.ContainsFunc(got, func(p string) bool { return strings.Contains(p, want) }) {
			t.Errorf("%s: %q, want %q", word, got, want)
		}
	}
	for _, word := range []string{"", "soft", "Harbour", "sensor 24.89 x", "`"} {
		if got := Explain(word); len(got) > 0 {
			t.Errorf("%q is explained: %q", word, got)
		}
	}
}
