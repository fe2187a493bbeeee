// What the set-ups of a scene have against each other.

package interp

import (
	"pullscore/interp/cures"
	"pullscore/lang"
)

// tellSetups tells what was found between set-ups. Each finding is flagged on the drawings
// of the set-up in which it stands.
func (p *program) tellSetups(found []lang.Diagnostic) {
	for _, d := range found {
		if s := p.shot(d.Shot); s != nil {
			p.flagged[s] = append(p.flagged[s], len(p.To.Diags))
			s.Flags = append(s.Flags, cures.FlagOf(d, len(s.Flags)+1))
		}
		p.To.Diags = append(p.To.Diags, d)
	}
}
