// monitor-hides: what looks sharp on the set's monitor and is soft on the screen.

package checks

import (
	"fmt"
	"math"

	"pullscore/interp/checks/check"

	"pullscore/interp/shot"
	"pullscore/interp/viewer"
	"pullscore/lang"
	"pullscore/lang/rule"
	"pullscore/optics"
)

var monitorHides = Check{Codes: []rule.Code{rule.MonitorHides}, Run: looksSharp}

func looksSharp(b *Shot) []Finding {
	m := b.Setup.Camera.Monitor
	if m == nil || len(b.Pulls) == 0 {
		return nil
	}
	c := max(optics.Criterion(b.Plan.Optics.PictureW(), m.Width, m.Viewer, viewer.Sharp), b.Plan.Optics.PictureW()/m.Pixels)
	if c <= b.Setup.Criterion {
		return nil
	}
	var worst *shot.Pull
	var metre, deg float64
	b.Racks(func(p *shot.Pull) {
		if p.Rack.Aim.Soft() || p.Rack.Aim.Split != nil || b.OutOfReach(p) {
			return
		}
		if blind, ring := b.blindZone(p, c); worst == nil || ring > deg || math.IsNaN(ring) && blind > metre {
			worst, metre, deg = p, blind, ring
		}
	})
	if worst == nil {
		return nil
	}
	message := fmt.Sprintf("the monitor hides misses: on %s what is off by up to %s looks sharp there and is soft on the screen", worst.Rack.ToText(), b.Units.Gap(metre))
	figures := []lang.Figure{check.Figure("monitor_criterion_mm", c*1000), check.Figure("blind_m", metre)}
	if !math.IsNaN(deg) {
		message += fmt.Sprintf(" (%s of ring)", b.Units.Angle(deg))
		figures = append(figures, check.Figure("blind_deg", deg))
	}
	return []Finding{b.About(worst, Finding{Diagnostic: lang.Diagnostic{
		Code: "monitor-hides", Severity: lang.Note, Message: message, Figures: figures,
		Detail: "Judge by the marks, by magnified playback, or on a larger monitor.",
	}})}
}

// blindZone is how far settings that look sharp on the monitor lie outside the
// window of the screen: metres of distance, and degrees of ring.
func (b *Shot) blindZone(p *shot.Pull, c float64) (metre, deg float64) {
	set := b.Plan.Setting(p.Rack.LandS)
	set.Criterion = c
	lo, hi := set.Judged(p.Plan.ToLens).Window(p.Plan.ToLens)
	metre = p.Window[0] - lo
	if !math.IsInf(hi, 0) {
		metre = max(metre, hi-p.Window[1])
	}
	if !p.Plan.ToDeg.Known() {
		return metre, math.NaN()
	}
	a, z := b.Edges([2]float64{lo, hi}, p.Rack.LandS)
	near, far := b.Edges(p.Window, p.Rack.LandS)
	return metre, max(near-a, z-far)
}
