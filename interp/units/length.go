// Lengths: tape readings, and differences between two such readings.

package units

import (
	"math"
	"strconv"
)

// The inch in metres is exact (international yard and pound agreement, 1959).
const (
	inch          = 0.0254
	inchesPerFoot = 12
)

// People read a tape in quarters of an inch within 10 ft, in inches within 100 ft.
const (
	quarters        = 4
	quartersPerFoot = quarters * inchesPerFoot
	nearFeet        = 10
	farFeet         = 100
)

// Tape returns a distance in metres as a tape reading with its unit. Metric: to 1 mm
// within 1 m, to 1 cm within 10 m, to 10 cm within 100 m, else to 1 m. Imperial: to a
// quarter of an inch within 10 ft, to an inch within 100 ft, else to a foot.
func (s Style) Tape(m float64) string {
	if out, ok := s.unwritten(m); ok {
		return out
	}
	if s.System == Imperial {
		return s.feet(m)
	}
	switch mm, cm, dm := Nearest(m, 1000), Nearest(m, 100), Nearest(m, 10); {
	case math.Abs(mm) < 0.01 && mm != 0:
		return s.unit(mm*1000, 0, "mm")
	case math.Abs(mm) < 1:
		return s.unit(mm*100, 1, "cm")
	case math.Abs(cm) < 10:
		return s.unit(cm, 2, "m")
	case math.Abs(dm) < 100:
		return s.unit(dm, 1, "m")
	}
	return s.unit(m, 0, "m")
}

// feet returns a distance in metres, in feet and inches.
func (s Style) feet(m float64) string {
	sign, m := s.sign(m)
	q, in := math.Round(m/inch*quarters), math.Round(m/inch)
	switch {
	case q < inchesPerFoot*quarters:
		if q == 0 {
			sign = ""
		}
		return sign + s.inches(q)
	case q < nearFeet*quartersPerFoot:
		feet := math.Floor(q / quartersPerFoot)
		return sign + s.feetAnd(feet, q-feet*quartersPerFoot)
	case in < farFeet*inchesPerFoot:
		feet := math.Floor(in / inchesPerFoot)
		return sign + s.feetAnd(feet, (in-feet*inchesPerFoot)*quarters)
	}
	return sign + s.feetAnd(math.Round(m/inch/inchesPerFoot), 0)
}

// feetAnd returns whole feet, and quarters of an inch that make less than a foot.
func (s Style) feetAnd(feet, q float64) string {
	whole := strconv.FormatFloat(feet, 'f', 0, 64)
	foot, inches := "'", `"`
	if s.Face == Table {
		foot, inches = "′", "″"
	}
	if q == 0 {
		return whole + foot
	}
	return whole + foot + s.mixed(q, true) + inches
}

// inches returns quarters of an inch that make less than a foot. In words it writes
// the unit and not the inch sign, because no feet come before it.
func (s Style) inches(q float64) string {
	if s.Face == Table {
		return s.mixed(q, false) + "″"
	}
	return s.mixed(q, false) + " in"
}

// mixed returns quarters of an inch as a whole number and a fraction. After feet, it
// writes a zero before a fraction alone.
func (s Style) mixed(q float64, behindFeet bool) string {
	whole := math.Floor(q / quarters)
	part := int(q - whole*quarters)
	text := strconv.FormatFloat(whole, 'f', 0, 64)
	if part == 0 {
		return text
	}
	if whole == 0 && !behindFeet {
		text = ""
	}
	if s.Face == Table {
		return text + [...]string{"", "¼", "½", "¾"}[part]
	}
	if text != "" {
		text += " "
	}
	return text + [...]string{"", "1/4", "1/2", "3/4"}[part]
}

// sign returns the sign to write for a number, and its amount.
func (s Style) sign(v float64) (sign string, amount float64) {
	if v < 0 {
		return s.minus("-"), -v
	}
	return "", math.Abs(v) // no -0
}

// Both returns a distance in metres as a tape reading in the style's system, and in
// the other system. For an infinite distance the other is "".
func (s Style) Both(m float64) (first, other string) {
	if _, ok := s.unwritten(m); ok {
		return s.Tape(m), ""
	}
	return s.Tape(m), s.other().Tape(m)
}

// Gap returns a difference of two distances in metres, with its unit: the depth of a
// subject, a window, a miss. It is finer than Tape: metric to 0.1 mm within 1 cm and
// to 1 mm within 1 m, imperial to 0.01 in within a quarter of an inch.
func (s Style) Gap(m float64) string {
	if out, ok := s.unwritten(m); ok {
		return out
	}
	if s.System == Imperial {
		return s.gapInches(m)
	}
	if fine := Nearest(m, 10000); math.Abs(fine) < 0.01 {
		return s.unit(fine*1000, 1, "mm")
	}
	if mm := Nearest(m, 1000); math.Abs(mm) < 1 {
		return s.unit(mm*100, 1, "cm")
	}
	return s.Tape(m)
}

// gapInches returns a difference in metres, in inches; from a foot on it returns a tape
// reading. Papers use the form of sentences, because a difference is not a mark on the
// tape.
func (s Style) gapInches(m float64) string {
	in := m / inch
	if fine := Nearest(in, 100); math.Abs(fine) < 0.25 {
		return s.unit(fine, 2, "in")
	}
	q := math.Round(in * quarters)
	if math.Abs(q) >= quartersPerFoot {
		return s.feet(m)
	}
	sign, amount := s.sign(q)
	return sign + Style{s.System, Words}.mixed(amount, false) + " in"
}

// Miss returns how far something may miss towards the camera and away from it, such as
// "−2.0/+2.2 cm". near and far are in metres; their signs do not matter. Both sides
// have the unit and the decimals of the larger one; if that is infinite, of the other.
func (s Style) Miss(near, far float64) string {
	widest := max(math.Abs(near), math.Abs(far))
	if math.IsNaN(widest) {
		return ""
	}
	if math.IsInf(widest, 0) && !math.IsInf(min(math.Abs(near), math.Abs(far)), 0) {
		widest = min(math.Abs(near), math.Abs(far))
	}
	size, most, unit := s.scale(widest)
	sides := [2]float64{math.Abs(near) / size, math.Abs(far) / size}
	for most > 0 && Decimal(sides[0], most-1) == Decimal(sides[0], most) && Decimal(sides[1], most-1) == Decimal(sides[1], most) {
		most--
	}
	return s.minus("-") + s.Fixed(sides[0], most) + "/+" + s.Fixed(sides[1], most) + " " + unit
}

// scale returns the unit for differences up to widest: its size in metres, the number
// of decimals, and its name.
func (s Style) scale(widest float64) (size float64, most int, unit string) {
	switch {
	case math.IsInf(widest, 0) && s.System == Imperial:
		return inch, 1, "in"
	case math.IsInf(widest, 0):
		return 0.01, 1, "cm"
	case s.System == Imperial && Nearest(widest/inch, 100) < 0.25:
		return inch, 2, "in"
	case s.System == Imperial && Nearest(widest/inch, 10) < 10*inchesPerFoot:
		return inch, 1, "in"
	case s.System == Imperial:
		return inch * inchesPerFoot, 1, "ft"
	case Nearest(widest, 10000) < 0.01:
		return 0.001, 1, "mm"
	case Nearest(widest, 1000) < 1:
		return 0.01, 1, "cm"
	}
	return 1, 2, "m"
}

// Offset returns a difference in metres in the form that follows a name in a plan:
// " + 10 cm" or " - 10 cm", and "" for 0. It writes the amount as Gap does.
func (s Style) Offset(m float64) string {
	switch {
	case m == 0 || math.IsNaN(m):
		return ""
	case m < 0:
		return " " + s.minus("-") + " " + s.Gap(-m)
	}
	return " + " + s.Gap(m)
}

// Millimetres returns a length in metres, in millimetres to a tenth, in both systems.
// It is for a focal length, a wheel, or the side of a sensor.
func (s Style) Millimetres(m float64) string { return s.fine(m, 1) }

// Disc returns the diameter in metres of a disc of blur on the sensor, such as the
// circle of confusion, in millimetres to a thousandth.
func (s Style) Disc(m float64) string { return s.fine(m, 3) }

func (s Style) fine(m float64, most int) string {
	if out, ok := s.unwritten(m); ok {
		return out
	}
	return s.unit(m*1000, most, "mm")
}
