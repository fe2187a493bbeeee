// The form of numbers on papers: that of interp/units, in the plan's system.

package sheet

import (
	"math"

	"pullscore/interp/plan"
	"pullscore/interp/units"
)

// Figures is the style of numbers that both systems write in the same way.
var Figures = units.ForTable(false)

// Style returns the style of numbers on the papers of a shot.
func Style(s *plan.Shot) units.Style { return units.ForTable(s.Imperial) }

// When returns a moment of the shot as text: its timecode, or else its time.
func When(s *plan.Shot, t float64) string {
	if tc := s.Timecode(t); tc != "" {
		return tc
	}
	return Figures.Time(t)
}

// Chance returns the chance that a pull lands as text. It never makes a chance below the
// wanted one look as if it were enough. It returns "" if there is no chance.
func Chance(s *plan.Shot, chance plan.Number) string {
	return Figures.Chance(float64(chance), float64(s.Wanted))
}

// Finite reports whether v is neither NaN nor infinite, so that a drawing can show it.
func Finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }
