package marks

import (
	"strings"

	"pullscore/interp/plan"
	"pullscore/render/sheet"
)

// marksOf tells what a lens's ring law rests on. A lens is one line of the kit
// also where plans differ in their units: then in metres.
func EngravedText(s *plan.Shot, imperially bool) string {
	switch {
	case s.Optics.Ring == nil:
		return "no ring that can be pulled by angle"
	case !s.Optics.Marked:
		return "none in the kit: computed from closest focus and throw"
	}
	var list []string
	for _, m := range engravedMarks(s, imperially) {
		text := m.Text
		if m.Other != "" {
			text += " (" + m.Other + ")"
		}
		list = append(list, text+" at "+sheet.Fixed(m.Deg, 1)+"°")
	}
	return strings.Join(list, ", ")
}
