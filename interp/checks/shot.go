// A shot as the checks here see it.

package checks

import (
	"pullscore/interp/checks/check"
	"pullscore/interp/shot"
	"pullscore/lang/rule"
)

// A Shot is a shot as the checks see it, with who speaks when.
type Shot struct {
	check.Shot
	speech map[string][]said // the lines by who speaks them
}

// A Finding is what a check finds; see check.Finding.
type Finding = check.Finding

// A Check tells of one thing, or of several that are found in one place.
type Check struct {
	Codes []rule.Code // all that it may tell
	Run   func(*Shot) []Finding
}

// Of returns a built shot as the checks see it.
func Of(b *shot.Built) *Shot { return &Shot{Shot: *check.Of(b), speech: speechOf(b)} }

// of returns a check of another package, about lens and ring or about the camera's moves,
// as one of this list.
func of(c check.Check) Check {
	return Check{Codes: c.Codes, Run: func(b *Shot) []Finding { return c.Run(&b.Shot) }}
}

// Findings runs all checks.
func (b *Shot) Findings() []Finding {
	var found []Finding
	for _, c := range All {
		found = append(found, b.InOrder(b.shown(c.Run(b)))...)
	}
	return found
}

// shown leaves out findings of pulls that the cut does not show. Nobody sees them.
func (b *Shot) shown(found []Finding) []Finding {
	list := found[:0:0]
	for _, f := range found {
		if f.Pull == 0 || !b.Pulls[f.Pull-1].Plan.IsRemoved() {
			list = append(list, f)
		}
	}
	return list
}

// RowOf returns the row of the score on which a finding of that code stands; ""
// where it concerns the shot as a whole.
func RowOf(code string) string {
	c, _ := rule.Named(code)
	return c.Rule().Row.String()
}

// sideOf returns which way from the middle a place is, in metres to the right.
func sideOf(side float64) string {
	if side < 0 {
		return "left"
	}
	return "right"
}
