// sees-camera: a camera that runs with another is in its picture.

package setups

import (
	"fmt"
	"math"
	"slices"

	"pullscore/interp/plan"
	"pullscore/interp/staging"
	"pullscore/lang"
)

func sees(sc *scene) (told []lang.Diagnostic) {
	for _, s := range sc.shots {
		for _, other := range sc.shots {
			if !s.Staging.Placed || !other.Staging.Placed || !staging.Together(sc.shots, s, other) {
				continue
			}
			if seen := seenIn(s, other); len(seen) > 0 {
				told = append(told, sc.seeing(s, other, seen))
			}
		}
	}
	return told
}

// seenIn returns from when to when the sensor mark of another camera is in the picture of a
// shot, in seconds of the shot.
func seenIn(s, other *plan.Shot) [][2]float64 {
	ahead := 0.0 // of the other shot's time
	if s.Staging.Action && other.Staging.Action {
		ahead = float64(s.Staging.Covers[0] - other.Staging.Covers[0])
	}
	end := min(float64(s.Duration), float64(other.Duration)-ahead)
	start := max(0, -ahead)
	if end < start {
		return nil
	}
	keys := append([]float64{start, end}, s.Optics.Keys()...)
	keys = append(keys, s.Optics.Focal.Keys()...)
	for _, p := range s.Pulls { // where the lens breathes
		keys = append(keys, float64(p.Start), float64(p.Land))
	}
	for _, t := range other.Optics.Keys() {
		keys = append(keys, t-ahead)
	}
	keys = slices.DeleteFunc(keys, func(t float64) bool { return !(t >= start && t <= end) })
	still := !s.Optics.Travels() && !s.Optics.Turns() && !s.Optics.Focal.Moves() && !other.Optics.Travels()
	steps := func(from, to float64) int {
		if still {
			return 1
		}
		return int(math.Ceil((to - from) * s.Looks()))
	}
	return plan.While(plan.Sorted(keys), steps, func(t float64) bool { return sensorIn(s, other, t, t+ahead) })
}

// sensorIn reports whether a camera, at a time of its shot, is in the picture of another.
func sensorIn(s, other *plan.Shot, t, theirs float64) bool {
	mark := other.Stands(theirs)
	x := s.FocusAt(t)
	if !(x > s.FocalTo(x, t)) { // which is told elsewhere
		x = math.Inf(1)
	}
	return s.Place(s.Stands(t).View(mark.X, mark.Y, mark.Z), x, t) != plan.OutOfFrame
}

// seeing tells of a camera in the picture of another.
func (sc *scene) seeing(s, other *plan.Shot, seen [][2]float64) lang.Diagnostic {
	u := style(s)
	whom := "camera " + other.Camera
	if other.Camera == s.Camera {
		whom = "the camera of " + other.ID
	}
	first := seen[0]
	when := fmt.Sprintf("from %s to %s", u.Time(first[0]), u.Time(first[1]))
	if first[0] <= 0 && first[1] >= float64(s.Duration) {
		when = "all the time"
	}
	detail := "Move one of the two, or let a lens see less."
	if n := len(seen) - 1; n > 0 {
		detail = fmt.Sprintf("It does so %s. %s", times(n), detail)
	}
	return lang.Diagnostic{
		Code: "sees-camera", Shot: s.ID, Range: sc.placed(s), Time: first[0],
		Message: fmt.Sprintf("%s sees %s %s", s.ID, whom, when), Detail: detail,
		Figures: []lang.Figure{figure("from_s", first[0]), figure("to_s", first[1])},
		Related: []lang.Related{{Message: "where the camera of " + other.ID + " stands", Range: sc.placed(other)}},
	}
}

// times says how often more something is so.
func times(n int) string {
	if n == 1 {
		return "once more"
	}
	return fmt.Sprintf("%d times more", n)
}
