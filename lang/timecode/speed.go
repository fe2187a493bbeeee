package timecode

import "math"

// A Speed is how many frames a second a camera takes, beside the rate at which they
// are shown. There are two times then. Set time is that of the hand, the voice and the
// click. Screen time is what the audience sees; it is the factor times as long. The
// camera's frame n is frame n on the screen too.
type Speed struct {
	Rate   Rate
	Shoots float64 // frames a second; 0: the rate
}

// sameRate is how near the number of frames a second lies to a rate, as a share, to be
// that rate: 23.98 is 23.976, but 24 is another.
const sameRate = 5e-4

// SpeedOf returns the speed of a camera that takes so many frames a second; 0 is the
// rate. If both are the same, Shoots is 0, so that they are one speed.
func SpeedOf(rate Rate, shoots float64) Speed {
	num, den := rate.Exact()
	if math.Abs(shoots*float64(den)/float64(num)-1) < sameRate {
		shoots = 0
	}
	return Speed{rate, shoots}
}

// Factor returns the length of screen time that a second of set time takes: 4 at 96
// frames a second, shown at 24.
func (s Speed) Factor() float64 {
	if s.Shoots == 0 {
		return 1
	}
	num, den := s.Rate.Exact()
	return s.Shoots * float64(den) / float64(num)
}

// Off reports whether the camera takes more or fewer frames a second than are shown.
func (s Speed) Off() bool { return s.Shoots != 0 }

// PerSecond returns how many frames the camera takes in a second.
func (s Speed) PerSecond() float64 {
	if s.Shoots != 0 {
		return s.Shoots
	}
	num, den := s.Rate.Exact()
	return float64(num) / float64(den)
}

// Seconds returns the set time that so many frames take.
func (s Speed) Seconds(frames int64) float64 {
	if s.Shoots == 0 {
		return s.Rate.Seconds(frames)
	}
	return float64(frames) / s.Shoots
}

// Of returns the set time that a number of frames takes, which need not be whole.
func (s Speed) Of(frames float64) float64 {
	if s.Shoots == 0 {
		num, den := s.Rate.Exact()
		return frames * float64(den) / float64(num)
	}
	return frames / s.Shoots
}

// Frames returns the frame nearest to a set time in seconds, as Rate.Frames does.
func (s Speed) Frames(seconds float64) int64 { return s.Rate.Frames(s.Screen(seconds)) }

// Screen returns how long a set time lasts on the screen.
func (s Speed) Screen(seconds float64) float64 {
	if s.Shoots == 0 {
		return seconds
	}
	return seconds * s.Factor()
}

// Set returns the set time of a time on the screen.
func (s Speed) Set(seconds float64) float64 {
	if s.Shoots == 0 {
		return seconds
	}
	return seconds / s.Factor()
}
