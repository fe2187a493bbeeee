// drifts-soft: whom the focus rests on, or the camera, sways out of what is sharp.

package checks

import (
	"fmt"
	"math"
	"sync"

	"pullscore/interp/checks/check"
	"pullscore/interp/checks/rig"

	"pullscore/interp/change"
	"pullscore/interp/shot"
	"pullscore/lang"
	"pullscore/lang/rule"
)

var driftsSoft = Check{Codes: []rule.Code{rule.DriftsSoft}, Run: drifts}

func drifts(b *Shot) (found []Finding) {
	soft := sync.OnceValue(b.softTimes) // looked for only where a rest is not sharp often enough
	for i := range b.Rests {
		r := &b.Rests[i]
		after := 0
		if r.After != nil {
			after = r.After.Plan.Number
		}
		if float64(r.Plan.Share) >= b.Setup.View.Wanted-1e-9 || soft()[after] != nil || r.After != nil && b.missed(r.After) {
			continue
		}
		if rig.Leaves(&b.Shot, r.Who, r.From, r.To) { // which is told
			continue
		}
		f := b.driftFinding(r)
		if r.After == nil {
			f.Range = b.Start.At
			found = append(found, f)
			continue
		}
		found = append(found, b.About(r.After, f))
	}
	return found
}

// missed tells whether a pull is told of because it does not land.
func (b *Shot) missed(p *shot.Pull) bool {
	if !p.Plan.Chance.Known() {
		return false
	}
	wanted := b.Setup.View.Wanted
	return p.Landed.Ceiling < wanted || !p.Rack.Follow && p.Landed.Chance < wanted-1e-9
}

func (b *Shot) driftFinding(r *shot.Rest) Finding {
	wanted := b.Setup.View.Wanted
	near, far := -float64(r.Plan.Zone[0]), float64(r.Plan.Zone[1])
	room := fmt.Sprintf("%s before and %s behind is sharp", b.Units.Gap(near), b.Units.Gap(far))
	if math.IsInf(far, 1) {
		room = fmt.Sprintf("%s before is sharp", b.Units.Gap(near))
	}
	return Finding{Who: r.Who.Name, Diagnostic: lang.Diagnostic{
		Code: "drifts-soft", Severity: lang.Warning, Time: r.From,
		Message: fmt.Sprintf("%s is sharp %s of the time from %s to %s, and %s is wanted", r.Who.Name,
			b.Units.Chance(float64(r.Plan.Share), wanted), b.Units.Time(r.From), b.Units.Time(r.To), b.Units.Wanted(wanted)),
		Detail: fmt.Sprintf("Subject and camera move by %s, and %s; it stays sharp through all of it %s of the time.",
			b.Units.Gap(r.Sway), room, b.Units.Chance(float64(r.Plan.Stays), wanted)),
		Figures: []lang.Figure{
			check.Figure("sharp_share", float64(r.Plan.Share)), check.Figure("stays_sharp", float64(r.Plan.Stays)), check.Figure("wanted", wanted),
			check.Figure("sway_m", r.Sway), check.Figure("near_m", near), check.Figure("far_m", far),
		},
	}, Tries: func() []change.Change {
		var tries []change.Change
		if b.Setup.Camera.Support == "hand" || b.Setup.Camera.Support == "shoulder" {
			tries = append(tries, change.Change{Support: "tripod"})
		}
		return append(tries, b.StopTry(true, func(at *shot.Built) bool {
			return float64(at.JudgeAgain(*r).Share) >= wanted
		})...)
	}}
}
