// What is said in a shot, for a script page to be compared with: words need
// neither a lens nor a time.

package interp

import (
	"pullscore/interp/plan"
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
func spokenIn(b *builder, built bool) *spoken {
	s := &spoken{all: &plan.Shot{ID: b.shot.ID}}
	if built {
		s.built = b.shot
	}
	for i, it := range b.items {
		speech, ok := it.stmt.(*lang.Speech)
		if !ok {
			continue
		}
		s.at = append(s.at, speech.Range())
		if built && b.clock.at[i].known {
			s.all.Lines = append(s.all.Lines, b.shot.Lines[b.clock.lines[i].listed])
			continue
		}
		who := speech.Who.Text
		if d, ok := b.who(speech.Who, it.env, declSubject, declVoice); ok {
			who = d.name.Text
		}
		s.all.Lines = append(s.all.Lines, plan.Line{Who: who, Text: valueOf(speech.Words)})
	}
	return s
}
