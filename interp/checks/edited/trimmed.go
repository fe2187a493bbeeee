// before-the-shot, trimmed: a pull that begins before the camera runs, or that the
// cut leaves out.

package edited

import (
	"fmt"
	"math"

	"pullscore/interp/checks/check"

	"pullscore/interp/change"
	"pullscore/interp/plan"
	"pullscore/interp/shot"
	"pullscore/interp/units"
	"pullscore/lang"
	"pullscore/lang/rule"
)

var BeforeTheShot = check.Check{Codes: []rule.Code{rule.BeforeTheShot}, Run: startsBefore}

func startsBefore(b *check.Shot) (found []check.Finding) {
	for _, p := range b.Pulls {
		if p.Rack.StartS >= -1e-9 || b.InList() {
			continue
		}
		early := -p.Rack.StartS
		found = append(found, b.About(p, check.Finding{Diagnostic: lang.Diagnostic{
			Code: "before-the-shot", Severity: lang.Error,
			Message: fmt.Sprintf("%s would start %s before the shot", b.Racked(p), b.Units.Time(early)),
			Figures: []lang.Figure{check.Figure("start_s", p.Rack.StartS)},
		}, Tries: func() []change.Change {
			lead := units.Up(early, 10)
			tries := []change.Change{check.Edited(change.Edit{Kind: change.Pause, Item: 1, Seconds: lead})}
			return append(tries, b.OverTry(p, math.Floor(p.Rack.LandS*10)/10)...)
		}}))
	}
	return found
}

var Trimmed = check.Check{Codes: []rule.Code{rule.Trimmed}, Run: outsidePicture}

// outsidePicture tells of racks that are in the picture in part: whom a follow is on, it
// may have been on before.
func outsidePicture(b *check.Shot) (found []check.Finding) {
	if !b.InList() {
		return nil
	}
	pieces := plan.Shown(b.Plan.Pieces)
	for _, p := range b.Pulls {
		message, lost := edited{b}.left(p, pieces)
		if message == "" || p.Plan.IsRemoved() {
			continue
		}
		all := b.Plan.Speed().Frames(p.Rack.LandS - p.Rack.StartS)
		found = append(found, b.About(p, check.Finding{Diagnostic: lang.Diagnostic{
			Code: "trimmed", Severity: lang.Warning, Message: message, Time: max(p.Rack.StartS, 0),
			Detail:  fmt.Sprintf("%d of %s of the %s are in the picture.", all-lost, b.Units.Frames(all), p.Plan.Kind),
			Figures: []lang.Figure{check.Figure("lost_frames", float64(lost)), check.Figure("start_s", p.Rack.StartS), check.Figure("land_s", p.Rack.LandS)},
			Related: []lang.Related{{Message: "the clip", Range: b.Cut.Events[0].Range}},
		}}))
	}
	return found
}

// left says how much of a pull the cut leaves out, and how many frames that
// are; nothing where it is less than half a frame.
func (b edited) left(p *shot.Pull, pieces []plan.Stretch) (message string, lost int64) {
	seen := 0.0
	for _, u := range pieces {
		seen += max(0, min(p.Rack.LandS, u.To)-max(p.Rack.StartS, u.From))
	}
	frames := func(t float64) int64 { return b.Plan.Speed().Frames(t) }
	lost = frames(p.Rack.LandS-p.Rack.StartS) - frames(seen)
	switch {
	case lost <= 0:
		return "", 0
	case p.Rack.Follow:
		return "", 0
	}
	for _, u := range pieces {
		into := frames(u.From - p.Rack.StartS)
		if into == lost && u.To >= p.Rack.LandS-1e-9 {
			return fmt.Sprintf("the cut begins %s into rack %d", b.Units.Frames(into), p.Plan.Number), lost
		}
		left := frames(p.Rack.LandS - u.To)
		if left == lost && u.From <= p.Rack.StartS+1e-9 {
			return fmt.Sprintf("the cut ends %s before rack %d lands", b.Units.Frames(left), p.Plan.Number), lost
		}
	}
	return fmt.Sprintf("the cut leaves out %s of rack %d", b.Units.Frames(lost), p.Plan.Number), lost
}
