package ring

import (
	"strings"
	"testing"

	"pullscore/interp/plan"
)

// A tape is laid by the stops of a ring only where the ring has stops that hold.
func TestTapeIsLaidByWhatHolds(t *testing.T) {
	for _, ends := range []string{"", "hard", "slip", "linear"} {
		for _, marked := range []bool{false, true} {
			s := &plan.Shot{Ring: &plan.Ring{Ends: ends}}
			s.Optics.Marked = marked
			holds := ends == "" || ends == "hard"
			text := layOn(s)
			if strings.Contains(text, "two stops") != holds || strings.Contains(text, "nothing holds") == holds {
				t.Errorf("ends %q: %s", ends, text)
			}
			if strings.Contains(text, "light marks") != marked {
				t.Errorf("marked %v: %s", marked, text)
			}
		}
	}
}
