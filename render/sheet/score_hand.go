package sheet

import (
	"strings"

	"pullscore/interp/plan"
)

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
