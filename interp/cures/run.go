// Running the checks on a shot that has been built.

package cures

import (
	"strings"

	"pullscore/interp/change"
	"pullscore/interp/checks"
	"pullscore/interp/plan"
	"pullscore/interp/shot"
	"pullscore/interp/units"
	"pullscore/lang"
)

// An Again builds a shot with a change; ok is false where it then cannot be
// built.
type Again func(change.Change) (b *shot.Built, ok bool)

// A Written returns the edits that write a change into the plan; none where they would
// change other shots too.
type Written func(change.Change, units.Style) []lang.Edit

// Run returns what all checks tell of a shot, and the cures that hold.
func Run(b *shot.Built, again Again, written Written) []checks.Finding {
	s := checks.Of(b)
	return cured(s, s.Findings(), again, written)
}

// Faults returns what cannot be done in a shot.
func Faults(b *shot.Built) map[Fault]bool {
	s := checks.Of(b)
	return faults(s, s.Findings())
}

// A Fault is an error by its place, to tell old ones from new.
type Fault struct {
	Code string
	At   lang.Range
}

// faults returns what cannot be done in the shot: what its build has told, and
// what the checks have found.
func faults(b *checks.Shot, found []checks.Finding) map[Fault]bool {
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

// Flags returns findings as the drawings show them; letters are given to them later,
// once all are known.
func Flags(b *shot.Built, found []checks.Finding) []plan.Flag {
	var flags []plan.Flag
	for i, f := range found {
		cures, texts := make([]string, len(f.Cures)), make([]string, len(f.Cures))
		for j, c := range f.Cures {
			cures[j], texts[j] = c.Says(), c.Text
		}
		who := f.Who
		if who == "" && f.Pull > 0 {
			who = b.Plan.Pulls[f.Pull-1].To
		}
		flags = append(flags, plan.Flag{
			Number: i + 1, Severity: f.Severity.String(), Code: f.Code, Text: f.Message,
			Cures: strings.Join(cures, ", or "), CureTexts: texts, Time: max(f.Time, 0), Row: checks.RowOf(f.Code), Pull: f.Pull, Who: who,
		})
	}
	return flags
}
