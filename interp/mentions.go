// The names of a plan, and where they stand.

package interp

import "pullscore/interp/mention"

// A Mention is one place at which a name stands.
type Mention = mention.Mention

// Names returns every mention of a name in the plan and the files that it uses, in the
// order of their paths and their text. They are found at the first call, which takes
// about as long as the plan took; several goroutines may call it at a time.
func (r *Result) Names() []Mention { return r.program.names() }

// FamilyOf returns those of some mentions that mean the same as one of them, and would
// have to change with it.
func FamilyOf(all []Mention, of Mention) []Mention { return mention.Family(all, of) }
