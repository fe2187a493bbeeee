// not-on-subject: a follow needs the focus on whom it follows.

package checks

import (
	"fmt"
	"math"
	"slices"

	"pullscore/interp/clock"
	"pullscore/interp/inwords"
	"pullscore/interp/shot"
	"pullscore/lang"
)

func checkNotOnSubject(b Run) {
	for _, p := range b.Pulls {
		if !p.Follow || b.lostRack(p) {
			continue
		}
		before := b.GoalBefore(p)
		d := lang.Diagnostic{
			Code: "not-on-subject", Severity: lang.Error,
			Detail: fmt.Sprintf("Rack to %s first.", p.ToText()),
		}
		if !slices.Contains(before.Members(), p.Aim.Subject) {
			d.Message = fmt.Sprintf("the focus is on %s, and cannot follow %s", before.Text, p.ToText())
			b.tellPull(p, shot.Finding{Diagnostic: d})
			continue
		}
		x, at := b.FocusBefore(p, p.StartS), b.LensDistance(&p.Aim, p.StartS)
		if lo, hi := b.Shot.Setting(p.StartS).Window(at); (x < lo || x > hi) && before.Split == nil {
			gone := b.Shot.ToTape(at, p.StartS) - b.Shot.ToTape(x, p.StartS)
			d.Message = fmt.Sprintf("%s has gone %s since the focus landed, and is no longer sharp where the follow starts", p.ToText(), inwords.Metres(math.Abs(gone)))
			d.Figures = []lang.Figure{shot.Figure("gone_m", gone)}
			b.tellPull(p, shot.Finding{Diagnostic: d})
		}
	}
}

// lostRack tells whether nobody knows where the focus is before a pull, since what
// was to take it there could not be read or has failed.
func (b Run) lostRack(p *clock.Pull) bool {
	for i := p.Item - 1; i >= 0; i-- {
		if q := b.Clock.PullOf[i]; q != nil {
			return q.Failed
		}
		if bad, ok := b.Items[i].Stmt.(*lang.Bad); ok && bad.Keyword == "rack" {
			return true
		}
	}
	if b.Settings["start"] != nil {
		return !b.Start.Ok
	}
	return slices.ContainsFunc(b.Section.Body, func(s lang.Statement) bool { bad, ok := s.(*lang.Bad); return ok && bad.Keyword == "start" })
}
