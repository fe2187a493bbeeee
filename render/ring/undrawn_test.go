package ring

import (
	"math"
	"strings"
	"testing"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/sheet"
	"pullscore/render/testing/plans"
)

// A page that draws no tape and no disc does not tell what is on one.
func TestUndrawnPagesTellNoBars(t *testing.T) {
	told := func(pages []*draw.Page) bool { return strings.Contains(plans.TextOf(pages), "Bar: the settings") }
	for _, drawn := range []bool{true, false} {
		s := plans.ThreeRacks()
		s.Optics.Diameter, s.WheelMM, s.Gear = 0.08, 80, 1.5
		if !drawn {
			s.Optics.Diameter, s.WheelMM = math.NaN(), plan.None()
		}
		if told(Strip(s, sheet.Options{})) != drawn {
			t.Errorf("the strip is drawn: %v, and tells of bars: %v", drawn, !drawn)
		}
		if told(Dial(s, sheet.Options{})) != drawn {
			t.Errorf("the disc is drawn: %v, and tells of bars: %v", drawn, !drawn)
		}
	}
}
