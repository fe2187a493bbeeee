// Markers for the cutting room: how each rack in the cut landed.

package export

import (
	"fmt"
	"io"

	"pullscore/interp/plan"
	"pullscore/interp/takes/used"
)

const (
	sharpColour = "GREEN"
	softColour  = "RED"
	otherColour = "YELLOW"
)

// UsedEDL writes the pieces of the cut as a list, with a marker where each rack lands
// that says which take it is and whether that was sharp.
func UsedEDL(w io.Writer, p *plan.Plan, r *used.Report) error {
	return writeEDL(w, inCutAlone(p), usedMarks(r))
}

// UsedOTIO writes the same as a timeline.
func UsedOTIO(w io.Writer, p *plan.Plan, r *used.Report) error {
	return writeOTIO(w, inCutAlone(p), usedMarks(r))
}

// inCutAlone returns the plan with only the shots that the cut has.
func inCutAlone(p *plan.Plan) *plan.Plan {
	q := *p
	q.Shots = nil
	for _, s := range p.Shots {
		if len(s.Pieces) > 0 {
			q.Shots = append(q.Shots, s)
		}
	}
	return &q
}

// usedMarks returns the markers of a piece.
func usedMarks(r *used.Report) func(placed) []mark {
	return func(s placed) (list []mark) {
		for i := range r.Racks {
			u := &r.Racks[i]
			if u.Shot != s.ID || s.piece == nil || u.Piece != s.piece.Number {
				continue
			}
			colour := otherColour
			switch u.Sharp {
			case used.Sharp:
				colour = sharpColour
			case used.Soft:
				colour = softColour
			}
			// Short: lists cut long texts off, and the end says which take to use instead.
			text := fmt.Sprintf("%s %d on %s", u.Shot, u.Pull, u.To)
			if u.Take != "" {
				text += ", take " + u.Take
			}
			list = append(list, mark{min(u.At, s.piece.Out-1), colour, text + ": " + u.Words()})
		}
		return list
	}
}
