package sheet

import (
	"cmp"
	"strconv"

	"pullscore/interp/plan"
)

func None(n int) string {
	if n == 0 {
		return ""
	}
	return strconv.Itoa(n)
}

func WindowWidth(p *plan.Pull) string {
	if w := float64(p.WindowHand[1] - p.WindowHand[0]); w >= 0 && Finite(w) {
		return Degrees(w)
	}
	return ""
}

// PullName says what a pull does: where from and where to, or who is followed.
func PullName(s *plan.Shot, p *plan.Pull) string {
	to := TargetName(s, p.To, p.Target)
	if p.Kind == "follow" {
		return "follow " + to
	}
	return leftName(s, p) + " to " + to
}

// leftName names what a pull leaves: what the one before it, or the start, was
// on, or else the distance.
func leftName(s *plan.Shot, p *plan.Pull) string {
	name := ""
	if start := s.Optics.Start; p.Number == 1 {
		name = TargetName(s, start.Name, start.Text)
	} else if p.Number > 1 && p.Number-2 < len(s.Pulls) && s.Pulls[p.Number-2].Number == p.Number-1 {
		before := s.Pulls[p.Number-2]
		name = TargetName(s, before.To, before.Target)
	}
	return cmp.Or(name, p.From, Length(s, float64(p.FromM)))
}
