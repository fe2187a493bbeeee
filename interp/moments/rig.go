// The words of a camera that turns or leaves its axis.

package moments

import (
	"fmt"
	"math"
	"strings"

	"pullscore/interp/plan"
	"pullscore/interp/units"
)

// Turn says what a turn of the camera is, such as "pan 12 deg right, 0.9 s, peak 25
// deg/s".
func Turn(t *plan.Turn, in units.Style) string {
	what := t.Kind
	switch {
	case t.Target != "" && t.Profile == "with":
		what += " with " + t.Target + ","
	case t.Target != "":
		what += " to " + t.Target + ","
	}
	return fmt.Sprintf("%s %s, %s, peak %s", what, Heading(t.Kind, float64(t.To-t.From), in), in.Time(float64(t.End-t.Start)), in.Speed(float64(t.Peak)))
}

// Heading says an angle of a pan to the left or right, or of a tilt up or down.
func Heading(kind string, deg float64, in units.Style) string {
	ways := [2]string{"left", "right"}
	if kind == "tilt" {
		ways = [2]string{"down", "up"}
	}
	return way(in.AngleTo(math.Abs(deg), 1), deg, ways)
}

// Goes says what a move of the camera is that leaves its place, such as "track 80 cm
// right, 2 s", or "camera moves 1.2 m, 3 s" to a place on a floor; "" for all other moves.
func Goes(b *plan.Blocking, in units.Style) string {
	by := float64(b.To - b.From)
	if b.Kind == "camera" {
		return fmt.Sprintf("camera moves %s, %s", in.Gap(math.Abs(by)), in.Time(float64(b.End-b.Start)))
	}
	ways := map[string][2]string{"track": {"left", "right"}, "boom": {"down", "up"}, "dolly": {"out", "in"}}
	if _, ok := ways[b.Kind]; !ok {
		return ""
	}
	return fmt.Sprintf("%s %s, %s", b.Kind, way(in.Gap(math.Abs(by)), by, ways[b.Kind]), in.Time(float64(b.End-b.Start)))
}

// way adds to an amount which way it goes; nothing to none at all.
func way(amount string, v float64, ways [2]string) string {
	if v == 0 {
		return amount
	}
	if v < 0 {
		return amount + " " + ways[0]
	}
	return amount + " " + ways[1]
}

// SeenAt says where a subject is to the camera at t: by the tape, along the axis and off
// it, and whether it is out of the picture.
func SeenAt(s *plan.Shot, u *plan.Subject, t float64, in units.Style) string {
	v := s.ViewOf(u, t)
	text := fmt.Sprintf("%s: tape %s, focus %s, off axis %s", u.Name, in.Tape(v.Tape()), in.Tape(v.Along), in.AngleTo(v.OffAxis(), 1))
	switch s.FrameAt(u, t) {
	case plan.OutOfFrame:
		text += ", out of the picture"
	case plan.EdgeOfFrame:
		text += ", at its edge"
	}
	return text
}

// InFrame says from when to when a subject is in the picture; "" where that is not looked
// at.
func InFrame(s *plan.Shot, u *plan.Subject, in units.Style) string {
	if u.Seen == nil {
		return ""
	}
	if len(u.InFrame) == 0 {
		return "never in the picture"
	}
	text := "in the picture " + spans(u.InFrame, in)
	if in := u.InFrame[0]; in[0] <= 0 && in[1] >= s.Duration {
		text = "in the picture throughout"
	}
	if len(u.Blocked) > 0 {
		text += "; behind somebody " + spans(u.Blocked, in)
	}
	return text
}

// spans says from when to when some times last.
func spans(list []plan.Interval, in units.Style) string {
	parts := make([]string, len(list))
	for i, p := range list {
		parts[i] = in.Time(float64(p[0])) + " to " + in.Time(float64(p[1]))
	}
	return strings.Join(parts, ", ")
}
