// Which distances to measure on a lens: those of optics/ring, by the most demanding use
// of the lens. That is its longest focal length, and the camera whose criterion is the
// smallest. A kit alone, without a shot, is enough.

package lenses

import (
	"fmt"
	"math"

	"pullscore/interp/kit"
	"pullscore/interp/plan"
	"pullscore/interp/units"
	"pullscore/optics/ring"
)

// usualSensor is the width in metres that is taken where a kit has no camera: that of a
// frame of 35 mm film, 4 perforations high, without a soundtrack.
const usualSensor = 24.89e-3

// measure says which distances to measure.
func (of *Lens) measure(l *kit.Lens, k Kit, stop Stop) {
	of.Criterion = of.criterion(l, k)
	number := of.stop(l, stop)
	s := ring.Sheet{Focal: l.Longest, Closest: l.Closest, Number: number, Criterion: of.Criterion, Imperial: of.Imperial}
	for _, d := range s.Distances() {
		of.Sheet = append(of.Sheet, plan.Number(d))
	}
	of.Infinity = plan.Number(s.InfinityFrom())
}

// stop sets the stop in words, and returns the f-number.
func (of *Lens) stop(l *kit.Lens, stop Stop) (number float64) {
	if stop.Number > 0 {
		of.Stop = units.Style{}.Stop(stop.Number, stop.T, units.Exact)
		return l.Spoken(l.Longest, stop.T).Number(stop.Number)
	}
	spoken := l.Spoken(l.Longest, !l.HasScale(false))
	of.Stop, of.Widest = units.Style{}.Stop(spoken.Widest, spoken.T, units.Exact), true
	return spoken.Number(spoken.Widest)
}

// criterion returns the smallest criterion of sharpness that the kit asks for of a lens.
func (of *Lens) criterion(l *kit.Lens, k Kit) float64 {
	v := k.View
	if !math.IsNaN(v.Criterion) {
		return v.Criterion
	}
	if !v.Watched {
		style := units.Style{}
		of.Defaults = append(of.Defaults, plan.Default{
			Name: "watched", Value: fmt.Sprintf("on %s screen from %s", style.Tape(v.Width), style.Tape(v.Viewer)), Why: "the kit does not say",
		})
	}
	least, squeeze := math.Inf(1), l.SqueezeFar()
	for _, c := range k.Cameras {
		if !c.Ok {
			continue
		}
		wide := c.Picture(squeeze).SensorW * squeeze // as if without a squeeze
		least = min(least, v.CriterionOn(wide, c.Pixels))
	}
	if math.IsInf(least, 1) {
		of.Defaults = append(of.Defaults, plan.Default{Name: "camera", Value: "sensor 24.89 mm wide", Why: "the kit has no camera"})
		return v.CriterionOn(usualSensor*squeeze, 0)
	}
	return least
}
