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

// spokenIn returns what is said in a shot, built or not. It is asked for once the
// findings of the shot are taken: names that nobody has are told by then.
func spokenIn(b *shot.Builder, built bool) *spoken {
	s := &spoken{all: &plan.Shot{ID: b.Shot.ID}}
	if built {
		s.built = b.Shot
	}
	for i, it := range b.Items {
		speech, ok := it.Stmt.(*lang.Speech)
		if !ok {
			continue
		}
		s.at = append(s.at, speech.Range())
		if built && b.Clock.At[i].Known {
			s.all.Lines = append(s.all.Lines, b.Shot.Lines[b.Clock.Lines[i].Listed])
			continue
		}
		who := speech.Who.Text
		if d, ok := b.Who(speech.Who, it.Env, names.DeclSubject, names.DeclVoice); ok {
			who = d.Name.Text
		}
		s.all.Lines = append(s.all.Lines, plan.Line{Who: who, Text: names.ValueOf(speech.Words)})
	}
	return s
}
