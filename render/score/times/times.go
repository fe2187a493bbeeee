// The scale of time, where a long shot is cut, and the steps of rulers.

package times

// Lap is how much of the next window a window shows again, seconds.
const Lap = 0.3

// SystemSeconds is how long a window of a long shot is, SystemSubjects how many subjects
// it may have at most if two stand on a sheet.
const (
	SystemSeconds  = 10.0
	SystemSubjects = 6
)

// ladder holds the scales of time, in millimetres a second.
var ladder = []float64{160, 120, 80, 60, 40, 30, 25, 20}

// Scale returns the greatest scale of time at which so many seconds fit in a room of
// so many millimetres, in millimetres a second. If none does, long is true, and the scale is the least.
func Scale(seconds float64, room float64) (perSecond float64, long bool) {
	axis, long := Layout(seconds, room, nil)
	return axis.perSecond, long
}

// Rung returns the scale of the ladder that is nearest to a scale from below, in
// millimetres a second; the least if none is.
func Rung(perSecond float64) float64 {
	for _, rung := range ladder {
		if rung <= perSecond {
			return rung
		}
	}
	return ladder[len(ladder)-1]
}

// Cuts returns the times at which windows of a long shot start, each so many seconds
// after the one before, and the end, in seconds. What is left over at the end has no
// window of its own if it is shorter than what windows show twice.
func Cuts(seconds, each float64) []float64 {
	cuts := []float64{0}
	for n := 1.0; n*each < seconds-Lap; n++ {
		cuts = append(cuts, n*each)
	}
	return append(cuts, seconds)
}

// TickStep returns the frames between two ticks: the smallest divisor of a
// second's frames that keeps them a millimetre apart.
func TickStep(base int64, perFrame float64) int64 {
	for step := int64(1); step < base; step++ {
		if base%step == 0 && float64(step)*perFrame >= 1 {
			return step
		}
	}
	return base
}

// LabelStep returns the seconds between two labels of that width.
func LabelStep(perSecond, width float64) float64 {
	for _, step := range []float64{1, 2, 5, 10, 15, 30, 60, 120, 300, 600, 1200} {
		if step*perSecond >= width {
			return step
		}
	}
	return 3600
}
