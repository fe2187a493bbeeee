// What the film is watched on, and what sharp and sure mean for it.

package interp

import (
	"math"

	"pullscore/interp/viewer"
	"pullscore/lang"
)

// What stands in where a plan says nothing.
const (
	defaultWanted = 0.9
	defaultScreen = 1.2 // m wide, a living room's
	defaultViewer = 2.5 // m
)

// viewing is what sharp means, how sure a landing has to be, and how short a
// rack may be: for the film, or for a shot that says otherwise.
type viewing struct {
	width, viewer float64 // m
	watched       bool    // said, not the default
	criterion     float64 // m on the sensor where given outright; else NaN
	arcmin        float64
	wanted        float64
	quickest      float64
}

// with returns the viewing as changed by the settings of a file or a shot.
func (v viewing) with(set map[string]lang.Statement, e *evaluator) viewing {
	if s, ok := set["watched"].(*lang.Watched); ok {
		w, okW := e.size(s.Width)
		from, okV := e.positive(s.From, dimLength)
		if okW && okV {
			v.width, v.viewer, v.watched = w, from, true
			v.criterion = math.NaN()
		}
	}
	if s, ok := set["sharp"].(*lang.Sharp); ok {
		if q, ok := e.eval(s.To); ok {
			switch {
			case q.on == nil && q.dim == dimLength && q.v >= 1e-6 && q.v <= 1e-3:
				v.criterion, v.arcmin = q.v, viewer.Sharp
			case q.on == nil && q.dim == dimAngle && q.v > 0 && q.v <= 1:
				v.criterion, v.arcmin = math.NaN(), q.v*60
			default:
				e.fail(s.To.Range(), "wrong-unit", "sharp is a disc on the sensor or an angle at the viewer",
					"A length from 0.001 mm to 1 mm, as in 0.025 mm, or an angle up to 1 deg, as in 1 arcmin.")
			}
		}
	}
	if s, ok := set["land"].(*lang.Land); ok {
		if c, ok := e.within(s.Chance, dimPercent, 0.01, 0.9999, "a wanted chance lies between 1 % and 99.99 %"); ok {
			v.wanted = c
		}
	}
	if s, ok := set["quickest"].(*lang.Quickest); ok {
		if t, ok := e.notNegative(s.Time, dimTime); ok {
			v.quickest = t
		}
	}
	return v
}
