package lang

import (
	"slices"
	"strings"
	"testing"
)

func TestExplain(t *testing.T) {
	for word, want := range map[string]string{
		"goes-soft": "`goes-soft` (warning): whom the focus rests on",
		"light":     "`light` (warning): the stop differs",
		"plan":      "`plan \"TITLE\"`: the scene's title",
		"landing":   "A MOMENT (of `on`, `landing on`, `until`) is one of these",
		"turns":     "`turns left` or `turns right` is the way",
		"deep":      "`subject NAME at PLACE, deep LENGTH",
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

// Whatever a finding is called, there is help on it.
func TestExplained(t *testing.T) {
	codes := Explained()
	if len(codes) < 80 || !slices.Contains(codes, "re-grip") || !slices.Contains(codes, "too-deep") {
		t.Fatalf("%d codes: %q", len(codes), codes)
	}
	for _, code := range codes {
		if len(Explain(code)) == 0 {
			t.Errorf("%s is in a table and not explained", code)
		}
	}
}
