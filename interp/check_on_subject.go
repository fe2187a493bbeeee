// not-on-subject: a follow needs the focus on whom it follows.

package interp

import (
	"fmt"
	"math"
	"slices"

	"pullscore/lang"
)

func checkNotOnSubject(b run) {
	for _, p := range b.pulls {
		if !p.follow || b.lostRack(p) {
			continue
		}
		before := b.goalBefore(p)
		d := lang.Diagnostic{
			Code: "not-on-subject", Severity: lang.Error,
			Detail: fmt.Sprintf("Rack to %s first.", p.to()),
		}
		if !slices.Contains(before.members(), p.goal.subject) {
			d.Message = fmt.Sprintf("the focus is on %s, and cannot follow %s", before.text, p.to())
			b.tellPull(p, finding{Diagnostic: d})
			continue
		}
		x, at := b.focusBefore(p, p.start), b.lensDistance(&p.goal, p.start)
		if lo, hi := b.shot.Setting(p.start).Window(at); (x < lo || x > hi) && before.split == nil {
			gone := b.shot.ToTape(at, p.start) - b.shot.ToTape(x, p.start)
			d.Message = fmt.Sprintf("%s has gone %s since the focus landed, and is no longer sharp where the follow starts", p.to(), metres(math.Abs(gone)))
			d.Figures = []lang.Figure{figure("gone_m", gone)}
			b.tellPull(p, finding{Diagnostic: d})
		}
	}
}

// lostRack tells whether nobody knows where the focus is before a pull, since what
// was to take it there could not be read or has failed.
func (b run) lostRack(p *pull) bool {
	for i := p.item - 1; i >= 0; i-- {
		if q := b.clock.pullOf[i]; q != nil {
			return q.failed
		}
		if bad, ok := b.items[i].stmt.(*lang.Bad); ok && bad.Keyword == "rack" {
			return true
		}
	}
	if b.settings["start"] != nil {
		return !b.start.ok
	}
	return slices.ContainsFunc(b.section.Body, func(s lang.Statement) bool { bad, ok := s.(*lang.Bad); return ok && bad.Keyword == "start" })
}
