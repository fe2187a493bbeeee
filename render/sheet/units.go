// How papers write numbers: as interp/units does, in the plan's system.

package sheet

import (
	"math"

	"pullscore/interp/plan"
	"pullscore/interp/units"
)

// Figures is the style of what is written alike in both systems.
var Figures = units.ForTable(false)

// Style returns the style of a shot's papers.
func Style(s *plan.Shot) units.Style { return units.ForTable(s.Imperial) }

// When writes a moment of the shot: its timecode where it has one.
func When(s *plan.Shot, t float64) string {
	if tc := s.Timecode(t); tc != "" {
		return tc
	}
	return Figures.Time(t)
}

// Chance writes how likely a pull lands, beside the chance that is wanted of the
// shot's pulls; nothing where none is known.
func Chance(s *plan.Shot, chance plan.Number) string {
	return Figures.Chance(float64(chance), float64(s.Wanted))
}

// Finite reports whether a number can be drawn.
func Finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }
