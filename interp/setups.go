// What the set-ups of a scene have against each other.

package interp

import (
	"strings"

	"pullscore/interp/checks"
	"pullscore/interp/plan"
	"pullscore/lang"
)

// tellSetups tells what was found between set-ups. Each finding is flagged on the drawings
// of the set-up in which it stands.
func (p *program) tellSetups(found []lang.Diagnostic) {
	for _, d := range found {
		if s := p.shot(d.Shot); s != nil {
			p.flagged[s] = append(p.flagged[s], len(p.To.Diags))
			s.Flags = append(s.Flags, flagOf(d, len(s.Flags)+1))
		}
		p.To.Diags = append(p.To.Diags, d)
	}
}

// flagOf returns a finding as the drawings of its shot show it.
func flagOf(d lang.Diagnostic, number int) plan.Flag {
	f := plan.Flag{
		Number: number, Severity: d.Severity.String(), Code: d.Code, Text: d.Message,
		Time: max(d.Time, 0), Row: checks.RowOf(d.Code), Pull: d.Pull,
	}
	var says []string
	for _, c := range d.Cures {
		says, f.CureTexts = append(says, c.Says()), append(f.CureTexts, c.Text)
	}
	f.Cures = strings.Join(says, ", or ")
	return f
}
