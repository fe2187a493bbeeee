// How papers name pulls, targets and what a pull leaves.

package sheet

import (
	"cmp"
	"strconv"
	"strings"

	"pullscore/interp/plan"
)

// CountOrBlank writes a number; nothing for 0.
func CountOrBlank(n int) string {
	if n == 0 {
		return ""
	}
	return strconv.Itoa(n)
}

// WindowWidth writes how wide the window of a pull is, in degrees at the hand;
// nothing where no setting holds all that should be sharp.
func WindowWidth(p *plan.Pull) string {
	if w := float64(p.WindowHand[1] - p.WindowHand[0]); w >= 0 && Finite(w) {
		return Figures.Angle(w)
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
	return cmp.Or(name, p.From, Style(s).Tape(float64(p.FromM)))
}

// TargetName returns the subject that a target is, with an offset as written,
// or the target as written but for the quotes of names; infinity by its sign.
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
	return u != nil && (u.Along.Moves() || s.Optics.Camera.Moves())
}

// NounOf is a noun for so many things.
func NounOf(n int, thing string) string {
	if n == 1 {
		return thing
	}
	return thing + "s"
}

// JoinNumbers writes numbers as a list.
func JoinNumbers(numbers []int) string {
	parts := make([]string, len(numbers))
	for i, n := range numbers {
		parts[i] = strconv.Itoa(n)
	}
	return strings.Join(parts, ", ")
}

// NumberMost is the longest list of numbers, in millimetres.
const NumberMost = 16.0
