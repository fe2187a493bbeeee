// Places on a clock face.

package units

import (
	"fmt"
	"math"
)

// Clock returns a place on a clock face with its unit, as in "4:30 o'clock". The hours
// are above 0 and up to 12. A hand finds a place to about half an hour, so the place is
// rounded to half hours.
func (s Style) Clock(hours float64) string {
	if math.IsNaN(hours) || math.IsInf(hours, 0) {
		return ""
	}
	return s.ClockHand(hours) + " o'clock"
}

// ClockHand returns the same without the unit, as in "4:30".
func (s Style) ClockHand(hours float64) string {
	if math.IsNaN(hours) || math.IsInf(hours, 0) {
		return ""
	}
	halves := int(Nearest(math.Mod(math.Mod(hours, 12)+12, 12), 2)*2) % 24
	hour := halves / 2
	if hour == 0 {
		hour = 12
	}
	if halves%2 == 1 {
		return fmt.Sprintf("%d:30", hour)
	}
	return fmt.Sprint(hour)
}
