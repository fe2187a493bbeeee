// Markers for the cutting room: the moves of a recording without a plan.

package export

import (
	"fmt"
	"io"

	"pullscore/interp/plan"
	"pullscore/interp/units"
	"pullscore/interp/unplanned"
)

// UnplannedEDL writes what a cut shows of a recording as a list, with markers where each
// move sets out and lands. Those that set out inside a sentence are red.
func UnplannedEDL(w io.Writer, p *plan.Plan, moves []unplanned.Told) error {
	return writeEDL(w, p, unplannedMarks(moves))
}

// UnplannedOTIO writes the same as a timeline.
func UnplannedOTIO(w io.Writer, p *plan.Plan, moves []unplanned.Told) error {
	return writeOTIO(w, p, unplannedMarks(moves))
}

// unplannedMarks returns the markers of a piece. They are short: lists cut off long texts.
func unplannedMarks(moves []unplanned.Told) func(placed) []mark {
	style := units.Style{}
	return func(s placed) (list []mark) {
		shown := func(label string, at int64) bool { return label != "" && at >= s.in && at < s.out }
		for i := range moves {
			m := &moves[i]
			if shown(m.RecordStart, m.Start) {
				colour, text := startColour, fmt.Sprintf("%d sets out from %s", m.Number, style.Gap(float64(m.From)))
				if m.WordStart != "" {
					text += ", on " + m.WordStart
				}
				if m.Within {
					colour, text = softColour, text+", inside a sentence"
				}
				list = append(list, mark{m.Start, colour, text})
			}
			if !shown(m.RecordLand, m.Land) {
				continue
			}
			text := fmt.Sprintf("%d lands at %s", m.Number, style.Gap(float64(m.To)))
			if !m.Rests {
				text = fmt.Sprintf("%d is still moving at the end", m.Number)
			}
			list = append(list, mark{m.Land, landColour, text})
		}
		return list
	}
}
