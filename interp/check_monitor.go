// monitor-hides: what looks sharp on the set's monitor and is soft on the screen.

package interp

import (
	"fmt"
	"math"

	"pullscore/interp/viewer"
	"pullscore/lang"
	"pullscore/optics"
)

func checkMonitor(b run) {
	m := b.set.camera.monitor
	if m == nil || len(b.pulls) == 0 {
		return
	}
	c := max(optics.Criterion(b.set.camera.sensorW, m.width, m.viewer, viewer.Sharp), b.set.camera.sensorW/m.pixels)
	if c <= b.set.criterion {
		return
	}
	var worst *pull
	var metre, deg float64
	b.racks(func(p *pull) {
		if p.goal.soft() || p.goal.split != nil || b.outOfReach(p) {
			return
		}
		if blind, ring := b.blindZone(p, c); worst == nil || ring > deg || math.IsNaN(ring) && blind > metre {
			worst, metre, deg = p, blind, ring
		}
	})
	if worst == nil {
		return
	}
	message := fmt.Sprintf("the monitor hides misses: on %s what is off by up to %s looks sharp there and is soft on the screen", worst.to(), metres(metre))
	figures := []lang.Figure{figure("monitor_criterion_mm", c*1000), figure("blind_m", metre)}
	if !math.IsNaN(deg) {
		message += fmt.Sprintf(" (%s of ring)", degrees(deg))
		figures = append(figures, figure("blind_deg", deg))
	}
	b.tellPull(worst, finding{Diagnostic: lang.Diagnostic{
		Code: "monitor-hides", Severity: lang.Note, Message: message, Figures: figures,
		Detail: "Judge by the marks, by magnified playback, or on a larger monitor.",
	}})
}

// blindZone is how far settings that look sharp on the monitor lie outside the
// window of the screen: metres of distance, and degrees of ring.
func (b run) blindZone(p *pull, c float64) (metre, deg float64) {
	set := b.shot.Setting(p.land)
	set.Criterion = c
	lo, hi := set.Window(p.ToLens)
	metre = p.window[0] - lo
	if !math.IsInf(hi, 0) {
		metre = max(metre, hi-p.window[1])
	}
	if b.shot.Optics.Ring == nil {
		return metre, math.NaN()
	}
	a, z := b.edges([2]float64{lo, hi}, p.land)
	near, far := b.edges(p.window, p.land)
	return metre, max(near-a, z-far)
}
