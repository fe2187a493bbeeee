package units

import (
	"math"
	"testing"
)

func TestClock(t *testing.T) {
	for hours, want := range map[float64]string{
		12: "12 o'clock", 0: "12 o'clock", 4: "4 o'clock", 4.5: "4:30 o'clock", 4.74: "4:30 o'clock", 4.76: "5 o'clock",
		11.74: "11:30 o'clock", 11.8: "12 o'clock", 12.4: "12:30 o'clock", 0.2: "12 o'clock", 0.3: "12:30 o'clock", 25: "1 o'clock", -1: "11 o'clock",
		math.NaN(): "", math.Inf(1): "",
	} {
		for _, face := range []Face{Words, Table} {
			if got := (Style{Face: face}).Clock(hours); got != want {
				t.Errorf("%v: %q, want %q", hours, got, want)
			}
		}
	}
	if got := (Style{}).ClockHand(4.5); got != "4:30" {
		t.Errorf("4.5: %q", got)
	}
}
