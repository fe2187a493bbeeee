// Angles, speeds, blur and times.

package units

import "math"

// Angle returns an angle in degrees: to a tenth below ten, else whole.
func (s Style) Angle(deg float64) string { return s.AngleTo(deg, decimals(deg)) }

// AngleTo returns an angle in degrees with at most so many decimals: to a tenth
// for what is set on a ring, to a hundredth for what is fitted to takes.
func (s Style) AngleTo(deg float64, most int) string {
	if out, ok := s.unwritten(deg); ok {
		return out
	}
	return s.Number(deg, most) + s.degree()
}

// degree returns what stands behind degrees.
func (s Style) degree() string {
	if s.Face == Table {
		return "°"
	}
	return " deg"
}

// Speed returns a turning speed in degrees a second: to a tenth below ten, else
// whole.
func (s Style) Speed(degPerSec float64) string {
	if out, ok := s.unwritten(degPerSec); ok {
		return out
	}
	return s.Number(degPerSec, decimals(degPerSec)) + s.degree() + "/s"
}

// Walk returns a speed over ground in metres or feet a second, to a tenth.
func (s Style) Walk(metresPerSec float64) string {
	if out, ok := s.unwritten(metresPerSec); ok {
		return out
	}
	if s.System == Imperial {
		return s.Number(metresPerSec/(inch*inchesPerFoot), 1) + " ft/s"
	}
	return s.Number(metresPerSec, 1) + " m/s"
}

// Blur returns an angle of blur at the viewer in minutes of arc, with its unit
// in letters: a prime means feet here.
func (s Style) Blur(arcmin float64) string {
	if out, ok := s.unwritten(arcmin); ok {
		return out
	}
	return s.unit(arcmin, decimals(arcmin), "arcmin")
}

// decimals returns how many an angle has: one while it rounds to less than ten.
func decimals(v float64) int {
	if math.Abs(Nearest(v, 10)) < 10 {
		return 1
	}
	return 0
}

// Time returns a time in seconds, to a hundredth.
func (s Style) Time(sec float64) string {
	if out, ok := s.unwritten(sec); ok {
		return out
	}
	return s.unit(sec, 2, "s")
}

// TimeFixed returns a time in seconds with two decimals, for a column of times.
func (s Style) TimeFixed(sec float64) string {
	if out, ok := s.unwritten(sec); ok {
		return out
	}
	return s.Fixed(sec, 2) + " s"
}

// Frames returns a number of frames: "12 frames" in words, "12 fr" in a table.
func (s Style) Frames(n int64) string {
	if s.Face == Table {
		return s.Number(float64(n), 0) + " fr"
	}
	return Count(int(n), "frame")
}
