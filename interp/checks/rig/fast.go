// pans-fast: what stands still crosses the picture so fast that it may judder.

package rig

import (
	"fmt"

	"pullscore/interp/change"
	"pullscore/interp/checks/check"
	"pullscore/interp/units"
	"pullscore/lang"
	"pullscore/lang/rule"
)

// What stands still should take so many seconds on the screen to cross a picture at that
// many frames a second. A turn that is over sooner than quick reads as one move. All
// common practice, no source.
const (
	crossing     = 7.0
	crossingRate = 24.0
	quick        = 1.5
)

var PansFast = check.Check{Codes: []rule.Code{rule.PansFast}, Run: judders}

func judders(b *check.Shot) (found []check.Finding) {
	if !rigged(b) {
		return nil
	}
	speed := b.Plan.Speed()
	frames, seconds := b.Plan.Rate.Exact()
	calm := crossing * crossingRate * float64(seconds) / float64(frames)
	for _, m := range b.Stage.Moves {
		if m.Kind != "pan" && m.Kind != "tilt" {
			continue
		}
		if m.Keeps || speed.Screen(m.End-m.Start) < quick-1e-9 {
			continue
		}
		peak, at := b.Fastest(m)
		takes := b.Plan.CrossesIn(m.Kind, peak, at)
		if !(takes < calm*(1-1e-9)) {
			continue
		}
		across := "width"
		if m.Kind == "tilt" {
			across = "height"
		}
		found = append(found, check.Finding{Item: m.Item + 1, Diagnostic: lang.Diagnostic{
			Code: "pans-fast", Severity: lang.Note, Range: m.Stmt.Range(), Time: m.Start,
			Message: fmt.Sprintf("the picture crosses its %s in %s%s, and under %s it may judder", across, b.Units.Time(takes), b.OnScreen(), b.Units.Time(calm)),
			Figures: []lang.Figure{check.Figure("width_s", takes), check.Figure("calm_s", calm)},
		}, Tries: func() []change.Change {
			return []change.Change{check.Edited(change.Edit{Kind: change.MoveOver, Item: m.Item + 1, What: m.Kind, Seconds: units.Up((m.End-m.Start)*calm/takes, 10)})}
		}})
	}
	return found
}
