// removed, across-a-cut: moves that the cut does not show, and moves within which it
// jumps.

package edited

import (
	"fmt"
	"math"
	"strings"

	"pullscore/interp/checks/check"

	"pullscore/interp/plan"
	"pullscore/interp/shot"
	"pullscore/interp/units"
	"pullscore/lang"
	"pullscore/lang/rule"
)

var Removed = check.Check{Codes: []rule.Code{rule.Removed}, Run: notInCut}

// notInCut tells once a shot which of its moves the cut does not show.
func notInCut(b *check.Shot) []check.Finding {
	var gone []*shot.Pull
	var related []lang.Related
	for _, p := range b.Pulls {
		if p.Plan.IsRemoved() {
			gone = append(gone, p)
			related = append(related, lang.Related{Message: fmt.Sprintf("%s %d", p.Plan.Kind, p.Plan.Number), Range: p.Rack.Stmt.Range()})
		}
	}
	if len(gone) == 0 {
		return nil
	}
	is, counts := "are", "They count"
	if len(gone) == 1 {
		is, counts = "is", "It counts"
	}
	return []check.Finding{{Diagnostic: lang.Diagnostic{
		Code: "removed", Severity: lang.Note, Range: b.Head.Range(),
		Message: fmt.Sprintf("%d of %s %s not in the cut: %s", len(gone), units.Count(len(b.Pulls), "move"), is, numbered(gone)),
		Detail:  counts + " for where the focus is, and for nothing else.",
		Figures: []lang.Figure{check.Figure("moves", float64(len(gone)))},
		Related: related,
	}}}
}

// numbered names pulls by kind and number: "racks 3, 4 and follow 5".
func numbered(pulls []*shot.Pull) string {
	var parts []string
	for i, p := range pulls {
		text := fmt.Sprint(p.Plan.Number)
		if i == 0 || pulls[i-1].Plan.Kind != p.Plan.Kind {
			kind := p.Plan.Kind
			if i+1 < len(pulls) && pulls[i+1].Plan.Kind == kind {
				kind += "s"
			}
			text = kind + " " + text
		}
		parts = append(parts, text)
	}
	last := len(parts) - 1
	if last == 0 {
		return parts[0]
	}
	return strings.Join(parts[:last], ", ") + " and " + parts[last]
}

var AcrossACut = check.Check{Codes: []rule.Code{rule.AcrossACut}, Run: jumps}

// jumps tells of racks in the middle of which the cut goes on elsewhere in the shot.
func jumps(b *check.Shot) (found []check.Finding) {
	pieces := b.Plan.Pieces
	for i := 0; i+1 < len(pieces); i++ {
		before, after := &pieces[i], &pieces[i+1]
		if !before.Joined(after) {
			continue
		}
		for _, p := range b.Pulls {
			if f, ok := (edited{b}).across(p, before, after); ok {
				found = append(found, f)
			}
		}
	}
	return found
}

// across tells of one pull at one join.
func (b edited) across(p *shot.Pull, before, after *plan.Piece) (f check.Finding, ok bool) {
	at := b.Plan.Speed()
	leaves, comes, frame := before.End(at), after.Begins, at.Seconds(1)
	underWay := func(t float64) bool { return p.Rack.StartS < t-frame/2 && p.Rack.LandS > t+frame/2 }
	if p.Rack.Follow || p.Plan.IsRemoved() || !underWay(leaves) || !underWay(comes) {
		return f, false
	}
	d := lang.Diagnostic{Code: "across-a-cut", Severity: lang.Note, Time: leaves}
	jump := comes - leaves
	switch {
	case before.Take != after.Take:
		d.Severity = lang.Warning
		d.Message = fmt.Sprintf("rack %d begins in take %s and lands in take %s", p.Plan.Number, before.Take, after.Take)
		d.Detail = fmt.Sprintf("The focus must match at %s: %s.", after.RecordIn, b.matches(leaves, comes))
	case math.Abs(jump) < frame/2:
		return f, false
	case jump < 0:
		d.Message = fmt.Sprintf("the cut goes back %s in the middle of rack %d", b.Units.Time(-jump), p.Plan.Number)
	default:
		d.Message = fmt.Sprintf("the cut jumps %s in the middle of rack %d", b.Units.Time(jump), p.Plan.Number)
	}
	d.Figures = []lang.Figure{check.Figure("jump_s", jump)}
	return b.About(p, check.Finding{Diagnostic: d}), true
}

// matches says where the focus is at two times, by the plan.
func (b edited) matches(leaves, comes float64) string {
	tape := func(t float64) string { return b.Units.Tape(b.Plan.ToTape(b.Plan.FocusAt(t), t)) }
	one, other := tape(leaves), tape(comes)
	if one == other {
		return one + " in both by the plan"
	}
	return fmt.Sprintf("%s in the one, %s in the other by the plan", one, other)
}
