// Causes: findings of one cause together.

package cures

import (
	"pullscore/interp/checks"
	"pullscore/interp/plan"
	"pullscore/interp/shot"
	"pullscore/lang"
)

// Causes returns the groups of findings that have one cause: those of one code
// and severity, where there are two or more, in the order of their first. Each
// has the change of the whole shot that mends most of it, and how many: several
// changes that mend as many are told by the first finding's own.
func Causes(b *shot.Built, found []checks.Finding) []plan.Cause {
	u := checks.Of(b).Units
	type group struct {
		code     string
		severity lang.Severity
	}
	var order []group
	members := map[group][]int{}
	for i, f := range found {
		g := group{f.Code, f.Severity}
		if members[g] == nil {
			order = append(order, g)
		}
		members[g] = append(members[g], i)
	}
	var causes []plan.Cause
	for _, g := range order {
		if len(members[g]) < 2 {
			continue
		}
		c := plan.Cause{Code: g.code, Severity: g.severity.String()}
		mends := map[string]int{}
		for _, i := range members[g] {
			c.Flags = append(c.Flags, i+1)
			for _, ch := range found[i].Mended {
				key := ch.Key()
				if mends[key]++; mends[key] > c.Mends {
					c.Mends, c.Cure = mends[key], ch.Cure(u).Text
				}
			}
		}
		causes = append(causes, c)
	}
	return causes
}
