// What is said in a shot, for a script page to be compared with: words need
// neither a lens nor a time.

package interp

import (
	"pullscore/interp/plan"
	"pullscore/interp/shot"
	"pullscore/lang"
)

// A spoken is a shot with all its lines, also those without a time, and also if
// it could not be built.
type spoken struct {
	all   *plan.Shot   // only its ID and its lines
	at    []lang.Range // where the lines stand
	built *plan.Shot   // the shot of the plan; nil where there is none
}

// spokenIn returns what is said in a shot, built or not.
func spokenIn(b *shot.Built, built bool) *spoken {
	s := &spoken{all: &plan.Shot{ID: b.Plan.ID}}
	if built {
		s.built = b.Plan
	}
	for _, l := range b.Spoken {
		s.all.Lines = append(s.all.Lines, l.Line)
		s.at = append(s.at, l.At)
	}
	return s
}
