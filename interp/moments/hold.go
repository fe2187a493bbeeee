// Where the hand takes hold, in words.

package moments

import (
	"fmt"

	"pullscore/interp/plan"
	"pullscore/interp/units"
)

// Hold says where the thumb takes hold of the ring or wheel in a pull, where it lets go
// on the way, and where it is in the end.
func Hold(p *plan.Pull, h *plan.Hold, in units.Style) string {
	from, to := in.Clock(float64(h.HoldFrom)), in.ClockHand(float64(h.HoldTo))
	text := "take hold with the thumb at " + from
	switch {
	case h.Kept:
		text = "keep hold with the thumb at " + from
	case h.Hurried:
		text = "let go at once and " + text
	}
	again := in.ClockHand(float64(h.RegripTo))
	switch at := in.ClockHand(float64(h.Regrip)); {
	case p.Regrips == 1:
		text += fmt.Sprintf(", re-grip from %s to %s", at, again)
	case p.Regrips > 1:
		text += fmt.Sprintf(", re-grip %d times at %s, the last time to %s", p.Regrips, at, again)
	}
	land := ", land"
	if p.Kind == "follow" {
		land = ", end"
	}
	if p.Regrips == 0 && in.ClockHand(float64(h.HoldFrom)) == to {
		text += land + " there"
	} else {
		text += land + " at " + to
	}
	if h.HoldOn != "wheel" {
		return text
	}
	mirrored := h.Mirrored()
	return fmt.Sprintf("on the wheel: %s (where it turns anticlockwise to infinity: %s)", text, Thumb(&mirrored, in))
}

// Thumb says the same in figures alone: from where to where the thumb goes in each hold,
// as in "2 to 12", or "10 to 2, 11 to 12". It returns "" for nil.
func Thumb(h *plan.Hold, in units.Style) string {
	if h == nil {
		return ""
	}
	from, to := in.ClockHand(float64(h.HoldFrom)), in.ClockHand(float64(h.HoldTo))
	if !h.Regrip.Known() {
		return from + " to " + to
	}
	return fmt.Sprintf("%s to %s, %s to %s", from, in.ClockHand(float64(h.Regrip)), in.ClockHand(float64(h.RegripTo)), to)
}

// ThumbHead returns what heads a column of Thumb. On a wheel, the places are for one
// that turns clockwise towards infinity.
func ThumbHead(s *plan.Shot) string {
	for _, p := range s.Pulls {
		if p.Hold != nil && p.HoldOn == "wheel" {
			return "thumb, ∞ clockwise"
		}
	}
	return "thumb, o'clock"
}
