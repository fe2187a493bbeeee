// Checks: what is told of a shot once it is computed, and what would cure it.

package checks

import (
	"fmt"
	"math"
	"strings"

	"pullscore/interp/change"
	"pullscore/interp/clock"
	"pullscore/interp/plan"
	"pullscore/interp/shot"
	"pullscore/interp/stops"
	"pullscore/lang"
)

// A Run is the checks of one shot.
type Run struct{ *shot.Builder }

// Check runs all checks; unless the builder itself is trying a cure, it then
// keeps of each finding's cures those that hold.
func (b Run) Check() {
	if b.Set == nil || b.Clock == nil {
		return
	}
	for _, check := range checks {
		check(b)
	}
	if !b.Probing {
		b.cures()
	}
	if b.Probing {
		return // only what was found is asked for
	}
	for _, f := range b.Found {
		b.Report(f.Diagnostic)
	}
}

// tellPull notes a finding about a pull.
func (b Run) tellPull(p *clock.Pull, f shot.Finding) {
	f.Item, f.Pull = p.Item+1, p.Number
	if f.Range == (lang.Range{}) {
		f.Range = p.Stmt.Range()
	}
	if call := b.Items[p.Item].Call; call != nil {
		f.Related = append(f.Related, lang.Related{Message: "in the move used here", Range: call.Range()})
	}
	if f.Time == 0 {
		f.Time = p.StartS
	}
	b.Tell(f)
}

// withStop computes f as if the shot were taken at another f-number.
func (b Run) withStop(n float64, f func()) {
	o := &b.Shot.Optics
	saved := o.Number
	o.Number = n
	f()
	o.Number = saved
}

// stopsOf returns the stops that the lens has: its widest, the marked
// third-stops between, and its smallest.
func (b Run) stopsOf() []float64 {
	widest, smallest := b.Set.Lens.StopsAt(b.Set.Focal)
	return stops.Scale(widest, smallest)
}

// stopTry offers the nearest stop, closing down (or opening up), at which ok
// holds.
func (b Run) stopTry(closing bool, ok func() bool) []change.Change {
	scale := b.stopsOf()
	for i := range scale {
		n := scale[i]
		if !closing {
			n = scale[len(scale)-1-i]
		}
		if closing && n <= b.Set.Number*1.01 || !closing && n >= b.Set.Number*0.99 {
			continue
		}
		holds := false
		b.withStop(n, func() { holds = ok() })
		if holds {
			return []change.Change{{Stop: n}}
		}
	}
	return nil
}

// edited returns the change that makes one edit.
func edited(e change.Edit) change.Change { return change.Change{Edits: []change.Edit{e}} }

// overTry offers another length for a rack.
func (b Run) overTry(p *clock.Pull, t float64) []change.Change {
	if p.Follow || p.On != nil && p.Landing != nil || !(t > 0) || math.IsInf(t, 0) {
		return nil
	}
	return []change.Change{edited(change.Edit{Kind: change.Over, Item: p.Item + 1, Seconds: t})}
}

// Flags turns the findings into what the drawings show.
func (b Run) Flags() {
	for i, f := range b.Found {
		cures := make([]string, len(f.Cures))
		for j, c := range f.Cures {
			cures[j] = c.Text
		}
		row, ok := RowOf[f.Code]
		if !ok {
			row = "distance"
		}
		b.Shot.Flags = append(b.Shot.Flags, plan.Flag{
			Number: i + 1, Severity: f.Severity.String(), Code: f.Code, Text: f.Message,
			Cures: strings.Join(cures, ", or "), Time: max(f.Time, 0), Row: row, Pull: f.Pull,
		})
	}
}

// RowOf says on which row of the score a finding stands.
var RowOf = map[string]string{
	"cuts-into-line": "lines", "unmotivated": "lines", "line-not-in-edit": "lines", "line-differs": "lines", "lines-elsewhere": "lines", "cue-not-in-edit": "lines", "shot-not-in-edit": "lines", "moved-in-edit": "lines",
	"line-changed": "lines", "line-moved": "lines", "line-gone": "lines", "speaker-changed": "lines", "trimmed": "hand",
	"not-seen": "sharp", "faint": "sharp", "no-time-to-see": "sharp", "too-deep": "sharp", "goes-soft": "sharp", "breathes": "sharp", "jarring": "sharp",
	"out-of-frame": "distance",
	"hard-to-land": "hand", "never-sure": "hand", "no-time-to-move": "hand", "faster-than-a-hand": "hand",
	"re-grip": "hand", "by-wire": "hand", "no-ring": "hand", "falls-behind": "hand", "beyond-marks": "hand",
}

func (b Run) fromText(p *clock.Pull) string { return b.GoalBefore(p).Text }

func racked(b Run, p *clock.Pull) string {
	return fmt.Sprintf("%s to %s", b.fromText(p), p.ToText())
}
