// Angles, speeds, blur and times.

package units

import "math"

// Angle returns an angle in degrees with its unit: to a tenth below ten, else whole.
func (s Style) Angle(deg float64) string { return s.AngleTo(deg, decimals(deg)) }

// AngleTo returns an angle in degrees with its unit and at most the given decimals:
// one for an angle to set on a ring, two for a value fitted to takes.
func (s Style) AngleTo(deg float64, most int) string {
	if out, ok := s.unwritten(deg); ok {
		return out
	}
	return s.Number(deg, most) + s.degree()
}

// AngleFixed returns an angle in degrees with its unit and exactly the given decimals,
// for columns of them.
func (s Style) AngleFixed(deg float64, decimals int) string {
	if out, ok := s.unwritten(deg); ok {
		return out
	}
	return s.Fixed(deg, decimals) + s.degree()
}

// degree returns the unit that follows a number of degrees.
func (s Style) degree() string {
	if s.Face == Table {
		return "°"
	}
	return " deg"
}

// Speed returns a turning speed in degrees a second with its unit: to a tenth below
// ten, else whole.
func (s Style) Speed(degPerSec float64) string {
	if out, ok := s.unwritten(degPerSec); ok {
		return out
	}
	return s.Number(degPerSec, decimals(degPerSec)) + s.degree() + "/s"
}

// Walk returns a speed over ground, given in metres a second, in metres or feet a
// second with the unit, to a tenth.
func (s Style) Walk(metresPerSec float64) string {
	if out, ok := s.unwritten(metresPerSec); ok {
		return out
	}
	if s.System == Imperial {
		return s.Number(metresPerSec/(inch*inchesPerFoot), 1) + " ft/s"
	}
	return s.Number(metresPerSec, 1) + " m/s"
}

// Blur returns a blur at the viewer in minutes of arc, with the unit "arcmin". It does
// not use the prime, because ′ means feet here.
func (s Style) Blur(arcmin float64) string {
	if out, ok := s.unwritten(arcmin); ok {
		return out
	}
	return s.unit(arcmin, decimals(arcmin), "arcmin")
}

// decimals returns the number of decimals of an angle: 1 if it rounds to less than 10,
// else 0.
func decimals(v float64) int {
	if math.Abs(Nearest(v, 10)) < 10 {
		return 1
	}
	return 0
}

// Time returns a time in seconds with its unit, to a hundredth.
func (s Style) Time(sec float64) string {
	if out, ok := s.unwritten(sec); ok {
		return out
	}
	return s.unit(sec, 2, "s")
}

// TimeFixed returns a time in seconds with its unit and exactly two decimals, for a
// column of times.
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
