// leaves-frame: somebody goes out of the picture while the focus is on them.

package rig

import (
	"fmt"
	"math"
	"slices"

	"pullscore/interp/change"
	"pullscore/interp/checks/check"
	"pullscore/interp/names"
	"pullscore/interp/plan"
	"pullscore/interp/shot"
	"pullscore/interp/stage"
	"pullscore/lang"
	"pullscore/lang/rule"
)

var LeavesFrame = check.Check{Codes: []rule.Code{rule.LeavesFrame}, Run: leaves}

// A stay is how long the focus is on somebody without a break: once it has landed on
// them, while it follows them, and after.
type stay struct {
	who      *stage.Subject
	from, to float64
	pull     *shot.Pull // that began it; nil: the start of the shot
}

func leaves(b *check.Shot) (found []check.Finding) {
	if !rigged(b) {
		return nil
	}
	framed := map[*stage.Subject][][2]float64{}
	for _, s := range staysOf(b) {
		if _, ok := framed[s.who]; !ok {
			framed[s.who] = b.Plan.Framed(s.who.Subject)
		}
		for _, in := range framed[s.who] {
			if in[1] > s.from && in[1] < s.to {
				found = append(found, leaving(b, s, in[1]))
				break
			}
		}
	}
	return found
}

// staysOf returns the stays of a shot, in the order of time.
func staysOf(b *check.Shot) []stay {
	var list []stay
	open := map[*stage.Subject]int{} // the stays that reach up to now, by their places in the list
	for i := range len(b.Pulls) + 1 {
		goal, from, until := &b.Start, 0.0, float64(b.Plan.Duration)
		var p *shot.Pull
		if i > 0 {
			p = b.Pulls[i-1]
			if goal, from = &p.Rack.Aim, p.Rack.LandS; p.Rack.Follow {
				from = p.Rack.StartS
			}
		}
		if i < len(b.Pulls) {
			until = b.Pulls[i].Rack.StartS
		}
		if !goal.Ok || goal.Soft() {
			open = map[*stage.Subject]int{}
			continue
		}
		now := map[*stage.Subject]int{}
		for _, u := range goal.Members() {
			k, goesOn := open[u]
			if !goesOn || list[k].to < from {
				k = len(list)
				list = append(list, stay{who: u, from: from, pull: p})
			}
			list[k].to = until
			now[u] = k
		}
		open = now
	}
	return list
}

// leaving tells of somebody who leaves the picture at t.
func leaving(b *check.Shot, s stay, t float64) check.Finding {
	d := lang.Diagnostic{
		Code: "leaves-frame", Severity: lang.Warning, Time: t,
		Message: fmt.Sprintf("%s leaves the frame at %s, and the focus is on %s until %s", s.who.Name, b.Units.Time(t), s.who.Name, b.Units.Time(s.to)),
		Detail:  "Turn the camera with them, or take the focus away before.",
		Figures: []lang.Figure{check.Figure("time_s", t), check.Figure("until_s", s.to)},
	}
	item := 0
	if s.pull != nil {
		item = s.pull.Rack.Item + 1
	} else {
		d.Range = b.Start.At
		item = 1 + slices.IndexFunc(b.Items, func(it names.Item) bool { return it.Stmt == b.Settings["start"] })
	}
	f := check.Finding{Who: s.who.Name, Diagnostic: d, Tries: func() []change.Change {
		if item == 0 {
			return nil
		}
		return []change.Change{check.Edited(change.Edit{Kind: change.PanWith, Item: item, Who: s.who.Name})}
	}}
	if s.pull == nil {
		return f
	}
	return b.About(s.pull, f)
}

// Leaves reports whether somebody is out of the picture at some time between two, in a
// shot whose camera turns or leaves its axis.
func Leaves(b *check.Shot, u *stage.Subject, from, to float64) bool {
	if !rigged(b) {
		return false
	}
	steps := max(1, math.Ceil((to-from)*b.Plan.Looks()))
	for k := 0.0; k <= steps; k++ {
		if b.Plan.FrameAt(u.Subject, from+(to-from)*k/steps) == plan.OutOfFrame {
			return true
		}
	}
	return false
}
