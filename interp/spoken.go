// What is said in a shot, for a script page to be compared with: words need
// neither a lens nor a time.

package interp

import (
	"pullscore/interp/names"
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
	for i, it := range b.Items {
		if line, ok := it.Stmt.(*lang.Speech); ok {
			s.all.Lines = append(s.all.Lines, lineOf(b, i, line))
			s.at = append(s.at, line.Range())
		}
	}
	return s
}

// lineOf returns one line of a shot, also of one that could not be computed. Names that
// nobody has are told by then.
func lineOf(b *shot.Built, i int, s *lang.Speech) plan.Line {
	if b.Clock != nil && b.Clock.At[i].Known {
		return b.Plan.Lines[b.Clock.Lines[i].Listed]
	}
	who := s.Who.Text
	if d, ok := b.Items[i].In.Quietly().Who(s.Who, names.DeclSubject, names.DeclVoice); ok {
		who = d.Name.Text
	}
	return plan.Line{Who: who, Text: names.ValueOf(s.Words)}
}
