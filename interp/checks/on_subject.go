// not-on-subject: a follow needs the focus on whom it follows.

package checks

import (
	"fmt"
	"math"
	"slices"

	"pullscore/interp/checks/check"

	"pullscore/interp/shot"
	"pullscore/lang"
	"pullscore/lang/rule"
)

var notOnSubject = Check{Codes: []rule.Code{rule.NotOnSubject}, Run: followsFromElsewhere}

func followsFromElsewhere(b *Shot) (found []Finding) {
	for _, p := range b.Pulls {
		if !p.Rack.Follow || b.lostRack(p) {
			continue
		}
		before := b.GoalBefore(p)
		d := lang.Diagnostic{
			Code: "not-on-subject", Severity: lang.Error,
			Detail: fmt.Sprintf("Rack to %s first.", p.Rack.ToText()),
		}
		if !slices.Contains(before.Members(), p.Rack.Aim.Subject) {
			d.Message = fmt.Sprintf("the focus is on %s, and cannot follow %s", before.Text, p.Rack.ToText())
			found = append(found, b.About(p, Finding{Diagnostic: d}))
			continue
		}
		x, at := b.FocusBefore(p, p.Rack.StartS), b.LensDistance(&p.Rack.Aim, p.Rack.StartS)
		if lo, hi := b.Plan.Judged(at, p.Rack.StartS).Window(at); (x < lo || x > hi) && before.Split == nil {
			gone := b.Plan.ToTape(at, p.Rack.StartS) - b.Plan.ToTape(x, p.Rack.StartS)
			d.Message = fmt.Sprintf("%s has gone %s since the focus landed, and is no longer sharp where the follow starts", p.Rack.ToText(), b.Units.Gap(math.Abs(gone)))
			d.Figures = []lang.Figure{check.Figure("gone_m", gone)}
			found = append(found, b.About(p, Finding{Diagnostic: d}))
		}
	}
	return found
}

// lostRack tells whether nobody knows where the focus is before a pull, since what
// was to take it there could not be read or has failed.
func (b *Shot) lostRack(p *shot.Pull) bool {
	for i := p.Rack.Item - 1; i >= 0; i-- {
		if q := b.Clock.PullOf[i]; q != nil {
			return q.Failed
		}
		if bad, ok := b.Items[i].Stmt.(*lang.Bad); ok && (bad.Keyword == "rack" || bad.Keyword == "") {
			return true
		}
	}
	if b.Settings["start"] != nil {
		return !b.Start.Ok
	}
	return b.Lost.Any("start")
}
