// blocked: somebody stands between the camera and the one on whom the focus is. Only a
// staged shot says how high everybody is.

package rig

import (
	"fmt"

	"pullscore/interp/checks/check"
	"pullscore/interp/plan"
	"pullscore/interp/staging"
	"pullscore/lang"
	"pullscore/lang/rule"
)

var Blocked = check.Check{Codes: []rule.Code{rule.Blocked}, Run: blocked}

// crosses is how long somebody may be in the way who only passes, seconds. Common
// practice, no source.
const crosses = 0.5

func blocked(b *check.Shot) (found []check.Finding) {
	if !placed(b) {
		return nil
	}
	people := staging.People(b.Plan)
	spans := map[*plan.Subject][][2]float64{}
	told := map[[2]string]bool{}
	for _, s := range staysOf(b) {
		who := s.who.Subject
		if _, ok := spans[who]; !ok {
			spans[who] = staging.Blocked(b.Plan, who)
		}
		for _, span := range spans[who] {
			from, to := max(span[0], s.from), min(span[1], s.to)
			if to-from < min(crosses, s.to-s.from)-1e-9 {
				continue
			}
			at := from + (to-from)/2
			by := staging.InTheWay(b.Plan, people, who, at)
			if by.By == nil || b.Plan.FrameAt(who, at) == plan.OutOfFrame || told[[2]string{who.Name, by.By.Name}] {
				continue
			}
			told[[2]string{who.Name, by.By.Name}] = true
			found = append(found, blocking(b, s, by, from, to))
		}
	}
	return found
}

// placed reports whether the camera has a place on the floor of a scene.
func placed(b *check.Shot) bool { return b.Plan.Staging != nil && b.Plan.Staging.Placed }

// blocking tells of somebody who stands in the way for a part of a stay.
func blocking(b *check.Shot, s stay, by staging.Block, from, to float64) check.Finding {
	when := ""
	if from > s.from+1e-6 || to < s.to-1e-6 {
		when = fmt.Sprintf(" from %s to %s", b.Units.Time(from), b.Units.Time(to))
	}
	d := lang.Diagnostic{
		Code: "blocked", Severity: lang.Warning, Time: from,
		Message: fmt.Sprintf("%s stands in the way of %s%s: %s from the line of sight, %s nearer",
			by.By.Name, s.who.Name, when, b.Units.Gap(by.Aside), b.Units.Tape(by.Nearer)),
		Detail:  "Move the camera or one of the two.",
		Figures: []lang.Figure{check.Figure("aside_m", by.Aside), check.Figure("nearer_m", by.Nearer), check.Figure("from_s", from), check.Figure("until_s", to)},
	}
	if u := b.Stage.Subjects[by.By.Name]; u != nil && u.Decl != nil {
		d.Related = []lang.Related{{Message: "where " + u.Name + " stands", Range: u.Decl.Stmt.Range()}}
	}
	f := check.Finding{Who: s.who.Name, Diagnostic: d}
	if s.pull == nil {
		f.Range = b.Start.At
		return f
	}
	return b.About(s.pull, f)
}
