// Tests of clip statements whose source ends before it begins.

package interp_test

import (
	"strings"
	"testing"

	"pullscore/lang"
)

// A clip statement whose source ends before it begins is told at its end, once, whether
// or not a list is there, and not as a clip that no list has.
func TestReversedClip(t *testing.T) {
	list := events([4]any{"1", "A001", 60, 64})
	for name, c := range map[string]struct {
		head, source string
		want         string // the codes that are told
	}{
		"reversed":        {"edit \"cut.edl\"\n", "from 10:02:00:00 to 10:01:00:00", "out-of-range"},
		"empty":           {"edit \"cut.edl\"\n", "from 10:01:00:00 to 10:01:00:00", "out-of-range"},
		"without a list":  {"", "from 10:02:00:00 to 10:01:00:00", "out-of-range"},
		"as it should be": {"edit \"cut.edl\"\n", "from 10:01:00:00 to 10:01:00:01", ""},
		"of no clip":      {"edit \"cut.edl\"\n", "from 10:02:00:00 to 10:02:00:01", "no-such-clip"},
	} {
		res := interpret("plan.pull", inCut(c.head, "clip \"1\", "+c.source+"\n"), "cut.edl", list)
		var got []string
		for _, d := range res.Findings {
			switch d.Code {
			case "out-of-range":
				if d.Severity != lang.Error || d.Message != "the source of this clip does not end after it begins" || d.Range.Start.Column < 20 {
					t.Errorf("%s: %v %s at %v", name, d.Severity, d.Message, d.Range.Start)
				}
				fallthrough
			case "no-such-clip", "shot-not-in-edit":
				got = append(got, d.Code)
			}
		}
		if text := strings.Join(got, " "); text != c.want {
			t.Errorf("%s: told %q, want %q", name, text, c.want)
		}
	}
}
