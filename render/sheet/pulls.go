// The names of pulls, of targets, and of what a pull leaves.

package sheet

import (
	"cmp"
	"strconv"
	"strings"

	"pullscore/interp/plan"
)

// CountOrBlank returns a number as text, and "" for 0.
func CountOrBlank(n int) string {
	if n == 0 {
		return ""
	}
	return strconv.Itoa(n)
}

// WindowWidth returns the width of the window of a pull as text, in degrees at the
// hand. It returns "" if no setting keeps everything sharp.
func WindowWidth(p *plan.Pull) string {
	if w := float64(p.WindowHand[1] - p.WindowHand[0]); w >= 0 && Finite(w) {
		return Figures.Angle(w)
	}
	return ""
}

// PullName returns what a pull does: from where to where it goes, or whom it follows.
func PullName(s *plan.Shot, p *plan.Pull) string {
	to := TargetName(s, p.To, p.Target)
	if p.Kind == "follow" {
		return "follow " + to
	}
	return leftName(s, p) + " to " + to
}

// leftName returns the name of what a pull leaves: the target of the pull before it, or
// of the start, or else the distance.
func leftName(s *plan.Shot, p *plan.Pull) string {
	name := ""
	if start := s.Optics.Start; p.Number == 1 {
		name = TargetName(s, start.Name, start.Text)
	} else if p.Number > 1 && p.Number-2 < len(s.Pulls) && s.Pulls[p.Number-2].Number == p.Number-1 {
		before := s.Pulls[p.Number-2]
		name = TargetName(s, before.To, before.Target)
	}
	return cmp.Or(name, p.From, Style(s).Tape(float64(p.FromM)))
}

// TargetName returns the name of the subject of a target, with the offset as written.
// For any other target it returns the text as written, without the quotes of names,
// and with the sign for infinity.
func TargetName(s *plan.Shot, name, text string) string {
	written := strings.ReplaceAll(text, `"`, "")
	if name != "" && s.Subject(name) != nil {
		if offset, ok := strings.CutPrefix(written, name); ok && strings.ContainsAny(offset, "+-") {
			return written
		}
		return name
	}
	if text == "inf" {
		return "∞"
	}
	return written
}

// Moves reports whether the distance to a subject changes.
func Moves(s *plan.Shot, u *plan.Subject) bool {
	return u != nil && (u.Along.Moves() || s.Optics.Travels() || s.Optics.Turns())
}

// NounOf returns the noun for a number of things, singular or plural.
func NounOf(n int, thing string) string {
	if n == 1 {
		return thing
	}
	return thing + "s"
}

// JoinNumbers returns numbers as a list with commas.
func JoinNumbers(numbers []int) string {
	parts := make([]string, len(numbers))
	for i, n := range numbers {
		parts[i] = strconv.Itoa(n)
	}
	return strings.Join(parts, ", ")
}

// NumberMost is the greatest width of a list of numbers, in millimetres.
const NumberMost = 16.0
