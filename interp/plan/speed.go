// Set time and screen time.

package plan

import (
	"pullscore/lang/timecode"
)

// Speed returns the speed of the camera. All times of the shot are set time.
func (s *Shot) Speed() timecode.Speed {
	if !(s.SlowFactor > 0) || s.SlowFactor == 1 { // also of a shot that says nothing
		return timecode.Speed{Rate: s.Rate}
	}
	return timecode.Speed{Rate: s.Rate, Shoots: float64(s.Shoots)}
}

// OnScreen returns the screen time of a set time, in seconds; none if both are the same.
func (s *Shot) OnScreen(t float64) Number {
	if at := s.Speed(); at.Off() {
		return Number(at.Screen(t))
	}
	return None()
}
