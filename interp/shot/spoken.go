// What is said in a shot, for a script page to be compared with: words need
// neither a lens nor a time.

package shot

import (
	"pullscore/interp/names"
	"pullscore/interp/plan"
	"pullscore/lang"
)

// A Spoken is one spoken line, with or without a time.
type Spoken struct {
	Line plan.Line
	At   lang.Range
}

// spoken returns all lines of a shot, also of one that could not be computed.
// Names that nobody has are told by then.
func spoken(b *Built) []Spoken {
	var list []Spoken
	for i, it := range b.Items {
		s, ok := it.Stmt.(*lang.Speech)
		if !ok {
			continue
		}
		if b.Clock != nil && b.Clock.At[i].Known {
			list = append(list, Spoken{Line: b.Plan.Lines[b.Clock.Lines[i].Listed], At: s.Range()})
			continue
		}
		who := s.Who.Text
		if d, ok := it.In.Quietly().Who(s.Who, names.DeclSubject, names.DeclVoice); ok {
			who = d.Name.Text
		}
		list = append(list, Spoken{Line: plan.Line{Who: who, Text: names.ValueOf(s.Words)}, At: s.Range()})
	}
	return list
}
