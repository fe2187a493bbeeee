// Who is the one to watch, in sentences.

package cards

import (
	"math"
	"slices"

	"pullscore/interp/moments"
	"pullscore/interp/plan"
	"pullscore/interp/units"
	"pullscore/render/sheet"
)

// watchWords says on whom the one who watches the marks has to keep an eye: who is wrong on
// the very mark, or else who may miss it least.
func watchWords(s *plan.Shot, marks []mark) string {
	in := sheet.Style(s)
	least := -1
	for _, wanted := range []flaw{tooDeep, outOfFrame} {
		for i := range marks {
			if marks[i].flaw() == wanted {
				return wrongWords(&marks[i], in)
			}
		}
	}
	for i := range marks {
		if !math.IsInf(marks[i].least(), 0) && (least < 0 || marks[i].least() < marks[least].least()) {
			least = i
		}
	}
	if least < 0 {
		return "Nobody can miss a mark: all distances are sharp."
	}
	m := &marks[least]
	return m.name + " is the one to watch: soft from " + in.Gap(m.least()) + " on, at " + m.used() + "."
}

// wrongWords says what is wrong with somebody on the mark.
func wrongWords(m *mark, in units.Style) string {
	switch {
	case m.flaw() == outOfFrame:
		return m.name + " is the one to watch: out of the frame on the mark, at " + m.used() + "."
	case m.deep > 0:
		return m.name + " is the one to watch: " + in.Gap(m.deep) + " deep, which is more than is sharp, at " + m.used() + "."
	}
	return m.name + " is the one to watch: not sharp on the mark, at " + m.used() + "."
}

// turnWords says how to read the turns.
func turnWords(s *plan.Shot, marks []mark) string {
	if s.Optics.Ring == nil {
		return ""
	}
	text := "“Turn” is at the ring, towards near for nearer"
	if d := s.Optics.Diameter; d > 0 {
		text += "; at its rim, which is " + sheet.Figures.Millimetres(d) + " across"
	}
	if s.Gear.Known() && s.Gear != 1 {
		text += "; at the hand, gear " + sheet.Figures.Gear(float64(s.Gear))
	}
	text += "."
	if slices.ContainsFunc(marks, func(m mark) bool { return !m.miss.RingNear.Known() || !m.miss.RingFar.Known() }) {
		text += " “" + past + "”: the ring ends before."
	}
	if from := moments.Provenance(s); from != "" {
		text += " " + from + "."
	}
	return text
}
