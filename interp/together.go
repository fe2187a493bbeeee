// Trying the cures of a shot together.

package interp

import "pullscore/interp/plan"

// TryTogether tries the cures that are printed of each shot together, and tells the shots
// what is left then. It builds a shot for every cure and step, so only what shows that
// asks for it.
func (r *Result) TryTogether(shots []*plan.Shot) {
	for _, s := range shots {
		if t := r.program.together[r.program.original(s)]; t != nil {
			s.Together = t.Steps(s)
		}
	}
}

// Lines returns the first and the last line of a shot in its file, counted from 1.
func (r *Result) Lines(s *plan.Shot) (first, last int) {
	section := r.program.sections[r.program.original(s)]
	if section == nil {
		return 0, 0
	}
	at := section.Head.Range()
	first, last = at.Start.Line, at.End.Line
	for _, statement := range section.Body {
		last = max(last, statement.Range().End.Line)
	}
	return first, last
}

// original returns the shot of the plan that a shot is, or is a copy of: one that stands
// alone with its scene is a copy.
func (p *program) original(s *plan.Shot) *plan.Shot {
	if p.sections[s] != nil {
		return s
	}
	for _, o := range p.plan.Shots {
		if o.ID == s.ID && o.File == s.File && o.Line == s.Line {
			return o
		}
	}
	return s
}
