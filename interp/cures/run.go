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
		flag := FlagOf(f.Diagnostic, i+1)
		flag.Who = f.Who
		if flag.Who == "" && f.Pull > 0 {
			flag.Who = b.Plan.Pulls[f.Pull-1].To
		}
		flags = append(flags, flag)
	}
	return flags
}

// FlagOf returns a finding as drawings show it, with its number in its shot.
func FlagOf(d lang.Diagnostic, number int) plan.Flag {
	says, texts := make([]string, len(d.Cures)), make([]string, len(d.Cures))
	for i, c := range d.Cures {
		says[i], texts[i] = c.Says(), c.Text
	}
	return plan.Flag{
		Number: number, Severity: d.Severity.String(), Code: d.Code, Text: d.Message,
		Cures: strings.Join(says, ", or "), CureTexts: texts, Time: max(d.Time, 0), Row: checks.RowOf(d.Code), Pull: d.Pull,
	}
}
