// monitor-hides: what looks sharp on the set's monitor and is soft on the screen.

package checks

import (
	"fmt"
	"math"

	"pullscore/interp/clock"
	"pullscore/interp/inwords"
	"pullscore/interp/shot"
	"pullscore/interp/viewer"
	"pullscore/lang"
	"pullscore/optics"
)

func checkMonitor(b Run) {
	m := b.Set.Camera.Monitor
	if m == nil || len(b.Pulls) == 0 {
		return
	}
	c := max(optics.Criterion(b.Set.Camera.SensorW, m.Width, m.Viewer, viewer.Sharp), b.Set.Camera.SensorW/m.Pixels)
	if c <= b.Set.Criterion {
		return
	}
	var worst *clock.Pull
	var metre, deg float64
	b.Racks(func(p *clock.Pull) {
		if p.Aim.Soft() || p.Aim.Split != nil || b.OutOfReach(p) {
			return
		}
		if blind, ring := b.blindZone(p, c); worst == nil || ring > deg || math.IsNaN(ring) && blind > metre {
			worst, metre, deg = p, blind, ring
		}
	})
	if worst == nil {
		return
	}
	message := fmt.Sprintf("the monitor hides misses: on %s what is off by up to %s looks sharp there and is soft on the screen", worst.ToText(), inwords.Metres(metre))
	figures := []lang.Figure{shot.Figure("monitor_criterion_mm", c*1000), shot.Figure("blind_m", metre)}
	if !math.IsNaN(deg) {
		message += fmt.Sprintf(" (%s of ring)", inwords.Degrees(deg))
		figures = append(figures, shot.Figure("blind_deg", deg))
	}
	b.tellPull(worst, shot.Finding{Diagnostic: lang.Diagnostic{
		Code: "monitor-hides", Severity: lang.Note, Message: message, Figures: figures,
		Detail: "Judge by the marks, by magnified playback, or on a larger monitor.",
	}})
}

// blindZone is how far settings that look sharp on the monitor lie outside the
// window of the screen: metres of distance, and degrees of ring.
func (b Run) blindZone(p *clock.Pull, c float64) (metre, deg float64) {
	set := b.Shot.Setting(p.LandS)
	set.Criterion = c
	lo, hi := set.Window(p.ToLens)
	metre = p.Window[0] - lo
	if !math.IsInf(hi, 0) {
		metre = max(metre, hi-p.Window[1])
	}
	if b.Shot.Optics.Ring == nil {
		return metre, math.NaN()
	}
	a, z := b.Edges([2]float64{lo, hi}, p.LandS)
	near, far := b.Edges(p.Window, p.LandS)
	return metre, max(near-a, z-far)
}
