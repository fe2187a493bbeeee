// Turns: how the camera turns and where it goes, as the crew reads it.

package built

import (
	"math"

	"pullscore/interp/plan"
	"pullscore/interp/stage"
)

// fillTurns writes the turns of the camera and its path into the shot.
func (b *Shot) fillTurns() {
	sh := b.Plan
	if sh.Optics.Rig == nil {
		return
	}
	for _, m := range b.Stage.InTime() {
		if m.Kind == "pan" || m.Kind == "tilt" {
			sh.Turns = append(sh.Turns, b.turn(m))
		}
	}
	times := plan.Straight(append(sh.Optics.Keys(), 0, float64(sh.Duration)), float64(sh.Duration), func(t float64) []float64 {
		p := sh.Optics.Pose(t)
		return []float64{p.X, p.Y, p.Z, p.Pan * metresPerDegree, p.Tilt * metresPerDegree}
	})
	for _, t := range times {
		p := sh.Stands(t)
		sh.CameraPath = append(sh.CameraPath, plan.Station{
			T: plan.Number(t), Right: plan.Number(p.X), Upstage: plan.Number(p.Y), High: plan.Number(p.Z),
			PanDeg: plan.Number(p.Pan), TiltDeg: plan.Number(p.Tilt),
		})
	}
}

// metresPerDegree is what a degree of the camera is at three metres, where the error of
// its path is told.
const metresPerDegree = 3 * math.Pi / 180

// turn returns a turn of the camera with its speed.
func (b *Shot) turn(m *stage.Move) plan.Turn {
	t := plan.Turn{
		Kind: m.Kind, Start: plan.Number(m.Start), End: plan.Number(m.End), From: plan.Number(m.From), To: plan.Number(m.To),
		Profile: "even",
	}
	if m.Kind == "pan" {
		t.From, t.To = t.From+plan.Number(b.Plan.Heading()), t.To+plan.Number(b.Plan.Heading())
	}
	if m.Aim != nil {
		t.Target = m.Aim.Name
	}
	peak, at := b.Fastest(m)
	t.Peak = plan.Number(peak)
	switch {
	case m.Keeps:
		t.Profile = "with"
	case m.Smooth:
		t.Profile = "smooth"
	}
	t.Width = plan.Number(b.Plan.CrossesIn(m.Kind, peak, at))
	return t
}

// Fastest returns how fast a turn is at its fastest, degrees a second, and when.
func (b *Shot) Fastest(m *stage.Move) (peak, at float64) {
	long := m.End - m.Start
	if !(long > 0) {
		return 0, m.Start
	}
	if !m.Keeps {
		if peak = math.Abs(m.To-m.From) / long; m.Smooth {
			peak *= 1.875 // of minimum jerk
		}
		return peak, m.Start + long/2
	}
	at = m.Start
	angle := func(t float64) float64 { return stage.AngleOf(m.Kind, b.Plan.Optics.Pose(t)) }
	step := b.Plan.Speed().Seconds(1)
	n := int(min(math.Ceil(long/step), mostSteps))
	before := angle(m.Start)
	for i := 1; i <= n; i++ {
		now := angle(m.Start + long*float64(i)/float64(n))
		if speed := math.Abs(now-before) / (long / float64(n)); speed > peak {
			peak, at = speed, m.Start+long*(float64(i)-0.5)/float64(n)
		}
		before = now
	}
	return peak, at
}

// mostSteps is at how many moments a turn is looked at, at most.
const mostSteps = 20_000
