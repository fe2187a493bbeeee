package speech

import "testing"

func TestEnds(t *testing.T) {
	for _, c := range []struct {
		word, signs string
		want        bool
	}{
		{"dark", ".", true}, {"dark", "", false}, {"dark", ",", false}, {"dark", `?"`, true}, {"dark", "...", true}, {"dark", "…", true},
		{"Dr", ".", false}, {"J", ".", false}, {"I", ".", true}, {"7", ".", true}, {"行", "。", true}, {"Mr", "!", true},
	} {
		if got := Ends(c.word, c.signs); got != c.want {
			t.Errorf("%s%s: %v", c.word, c.signs, got)
		}
	}
	if !GoesOn("so") || GoesOn("So") || GoesOn("7") || GoesOn("") {
		t.Error("what begins with a small letter goes on")
	}
}
