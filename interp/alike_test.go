package interp_test

import (
	"testing"
)

// A name with a letter of another script looks right and is unknown: the message
// says which letter.
func TestLettersOfTwoScripts(t *testing.T) {
	res := interpret("p.pull", scene("  rack to GАTE, over 2 s")) // a Cyrillic А
	for _, d := range res.Findings {
		if d.Code == "unknown-name" {
			if want := "It looks like GATE, but its А is a Cyrillic letter, and there it is a Latin one."; d.Detail != want {
				t.Errorf("detail %q", d.Detail)
			}
			return
		}
	}
	t.Errorf("nothing is told of the name: %v", res.Findings)
}
