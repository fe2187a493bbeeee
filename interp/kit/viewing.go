// What the film is watched on, and what sharp and sure mean for it.

package kit

import (
	"math"

	"pullscore/interp/names"
	"pullscore/interp/viewer"
	"pullscore/lang"
	"pullscore/optics"
)

// What stands in where a plan says nothing.
const (
	DefaultWanted = 0.9
	DefaultScreen = 1.2 // m wide, a living room's
	DefaultViewer = 2.5 // m
)

// Viewing is what sharp means, how sure a landing has to be, and how short a
// rack may be: for the film, or for a shot that says otherwise.
type Viewing struct {
	Width, Viewer float64 // m
	Watched       bool    // said, not the default
	Criterion     float64 // m on the sensor where given outright; else NaN
	Arcmin        float64
	Wanted        float64
	Quickest      float64
	QuickestSaid  bool // not the default
}

// With returns the viewing as changed by the settings of a file or a shot.
func (v Viewing) With(set map[string]lang.Statement, e *names.Evaluator) Viewing {
	if s, ok := set["watched"].(*lang.Watched); ok {
		w, okW := e.Size(s.Width)
		from, okV := e.Positive(s.From, names.DimLength)
		if okW && okV {
			v.Width, v.Viewer, v.Watched = w, from, true
			v.Criterion = math.NaN()
		}
	}
	if s, ok := set["sharp"].(*lang.Sharp); ok {
		if q, ok := e.Eval(s.To); ok {
			switch {
			case q.On == nil && q.Dim == names.DimLength && q.V >= 1e-6 && q.V <= 1e-3:
				v.Criterion, v.Arcmin = q.V, viewer.Sharp
			case q.On == nil && q.Dim == names.DimAngle && q.V > 0 && q.V <= 1:
				v.Criterion, v.Arcmin = math.NaN(), q.V*60
			default:
				e.Fail(s.To.Range(), "wrong-unit", "sharp is a disc on the sensor or an angle at the viewer",
					"A length from 0.001 mm to 1 mm, as in 0.025 mm, or an angle up to 1 deg, as in 1 arcmin.")
			}
		}
	}
	if s, ok := set["land"].(*lang.Land); ok {
		if c, ok := e.Within(s.Chance, names.DimPercent, 0.01, 0.9999, "a wanted chance lies between 1 % and 99.99 %"); ok {
			v.Wanted = c
		}
	}
	if s, ok := set["quickest"].(*lang.Quickest); ok {
		if t, ok := e.NotNegative(s.Time, names.DimTime); ok {
			v.Quickest, v.QuickestSaid = t, true
		}
	}
	return v
}

// CriterionOn returns the largest disc on the sensor that looks sharp, in metres. wide is
// the width of the picture on the sensor as if without a squeeze, in metres, and pixels
// how many it records across, 0 where nobody says it: no disc is smaller than one of them.
func (v Viewing) CriterionOn(wide, pixels float64) float64 {
	if !math.IsNaN(v.Criterion) {
		return v.Criterion
	}
	on := optics.Criterion(wide, v.Width, v.Viewer, v.Arcmin)
	if pixels > 0 {
		on = max(on, wide/pixels)
	}
	return on
}
