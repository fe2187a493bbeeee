// Running the checks.

package checks

import (
	"strings"

	"pullscore/interp/change"
	"pullscore/interp/plan"
	"pullscore/interp/shot"
	"pullscore/interp/units"
	"pullscore/lang"
	"pullscore/lang/rule"
)

// An Again builds a shot with a change; ok is false where it then cannot be
// built.
type Again func(change.Change) (b *shot.Built, ok bool)

// Run returns what all checks tell of a shot, and the cures that hold.
func Run(b *shot.Built, again Again) []Finding {
	s := Of(b)
	return cured(s, s.all(), again)
}

// Faults returns what cannot be done in a shot.
func Faults(b *shot.Built) map[Fault]bool {
	s := Of(b)
	return s.faults(s.all())
}

// Of returns a built shot as the checks see it.
func Of(b *shot.Built) *Shot {
	s := &Shot{Built: *b, speech: speechOf(b)}
	if b.Plan.Imperial {
		s.units.System = units.Imperial
	}
	return s
}

// all runs all checks.
func (b *Shot) all() []Finding {
	var found []Finding
	for _, c := range All {
		found = append(found, b.inOrder(c.Run(b))...)
	}
	return found
}

// A Fault is an error by its place, to tell old ones from new.
type Fault struct {
	Code string
	At   lang.Range
}

// faults returns what cannot be done in the shot: what its build has told, and
// what the checks have found.
func (b *Shot) faults(found []Finding) map[Fault]bool {
	set := map[Fault]bool{}
	for _, d := range b.Told {
		if d.Severity == lang.Error {
			set[Fault{d.Code, d.Range}] = true
		}
	}
	for _, f := range found {
		if f.Severity == lang.Error {
			set[Fault{f.Code, f.Range}] = true
		}
	}
	return set
}

// Flags returns findings as the drawings show them.
func Flags(found []Finding) []plan.Flag {
	var flags []plan.Flag
	for i, f := range found {
		cures := make([]string, len(f.Cures))
		for j, c := range f.Cures {
			cures[j] = c.Text
		}
		flags = append(flags, plan.Flag{
			Number: i + 1, Severity: f.Severity.String(), Code: f.Code, Text: f.Message,
			Cures: strings.Join(cures, ", or "), Time: max(f.Time, 0), Row: RowOf(f.Code), Pull: f.Pull,
		})
	}
	return flags
}

// RowOf returns the row of the score on which a finding of that code stands; ""
// where it concerns the shot as a whole.
func RowOf(code string) string {
	c, _ := rule.Named(code)
	return c.Rule().Row.String()
}
