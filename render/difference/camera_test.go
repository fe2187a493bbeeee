package difference

import (
	"strings"
	"testing"

	"pullscore/render/sheet"
	"pullscore/render/testing/plans"
)

// A lane of both states has one scale, a turn that stays is written once, and one that
// moved is written as it was, too.
func TestDiffOfTheCamera(t *testing.T) {
	d := difference(plans.PanAndRack(), turnedLater())
	d.Notes = []string{"pan to DOOR lands 0.8 s later"}
	text := plans.TextOf(Draw(d, sheet.Options{}))
	for words, times := range map[string]int{"24° right": 1, "36° left": 1, "before: 37°/s": 1, "30 cm up": 1, "boom": 1, "pan ": 2} {
		if got := strings.Count(text, words); got != times {
			t.Errorf("%q is written %d times, want %d: %s", words, got, times, text)
		}
	}
	df := newDiffer(d, sheet.A4)
	pairs := df.lanePairs()
	if len(pairs) != 2 || pairs[0][before].Low != pairs[0][after].Low || pairs[0][before].High != pairs[0][after].High || pairs[1][before] != nil {
		t.Errorf("%d lanes", len(pairs))
	}
	if plain := plans.TextOf(Draw(difference(plans.OneRack(), plans.ThreeRacks()), sheet.Options{})); strings.Contains(plain, "Camera") {
		t.Errorf("a camera on its axis has a band: %s", plain)
	}
}
