// What only tests ask of a result.

package interp

import (
	"pullscore/interp/change"
	"pullscore/interp/cures"
	"pullscore/interp/shot"
)

// Built returns the shots of a result, each built as the plan has it, with what
// builds it anew.
func (r *Result) Built() (shots []*shot.Built, again []cures.Again) {
	for _, s := range r.Plan.Shots {
		anew := r.program.anew(r.program.sections[s], shot.Times{})
		b, ok := anew(change.Change{})
		if !ok {
			panic("a shot of a plan can be built")
		}
		shots, again = append(shots, b), append(again, anew)
	}
	return shots, again
}
