package lists

import (
	"pullscore/interp/plan"
	"pullscore/interp/units"
)

// figures is the style of what is written alike in both systems.
var figures = units.ForTable(false)

// style returns the style of a shot's list.
func style(s *plan.Shot) units.Style { return units.ForTable(s.Imperial) }
