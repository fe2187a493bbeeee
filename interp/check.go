// Checks: what is told of a shot once it is computed, and what would cure it.

package interp

import (
	"fmt"
	"math"
	"strings"

	"pullscore/interp/plan"
	"pullscore/interp/stops"
	"pullscore/lang"
)

// checks are run in this order on every shot; each has a file of its own.
var checks = []func(run){
	checkBeforeTheShot,
	checkTrimmed,
	checkEdit,
	checkOverlap,
	checkBlockingOverlap,
	checkRunsInto,
	checkNotOnSubject,
	checkOutOfFrame,
	checkGoesSoft,
	checkHoldBoth,
	checkNoRing,
	checkInsideClosest,
	checkMacro,
	checkHand,
	checkRegrip,
	checkTooDeep,
	checkSeen,
	checkCutsIntoLine,
	checkUnmotivated,
	checkJarring,
	checkNoTimeToSee,
	checkZoom,
	checkFallsBehind,
	checkMonitor,
	checkSlant,
	checkBreathes,
	checkLight,
	checkBeyondMarks,
	checkDiffraction,
}

// A run is the checks of one shot.
type run struct{ *builder }

// check runs all checks; unless the builder itself is trying a cure, it then
// keeps of each finding's cures those that hold.
func (b run) check() {
	if b.set == nil || b.clock == nil {
		return
	}
	for _, check := range checks {
		check(b)
	}
	if !b.probing {
		b.cures()
	}
	if b.probing {
		return // only what was found is asked for
	}
	for _, f := range b.found {
		b.report(f.Diagnostic)
	}
}

// tellPull notes a finding about a pull.
func (b run) tellPull(p *pull, f finding) {
	f.item, f.Pull = p.item+1, p.Number
	if f.Range == (lang.Range{}) {
		f.Range = p.stmt.Range()
	}
	if call := b.items[p.item].call; call != nil {
		f.Related = append(f.Related, lang.Related{Message: "in the move used here", Range: call.Range()})
	}
	if f.Time == 0 {
		f.Time = p.start
	}
	b.tell(f)
}

// curesWorth is how many statements may be computed anew for the cures of one
// shot: a shot of hundreds of moves that all have findings is told them, and
// cures for the first.
const curesWorth = 60_000

// cures builds the shot once for every change that might cure a finding, and
// keeps those that remove it without making anything else impossible.
func (b run) cures() {
	left := curesWorth
	before := b.faults()
	for i := range b.found {
		f := &b.found[i]
		if f.tries == nil || left < 0 {
			continue
		}
		for _, t := range f.tries() {
			left -= len(b.items)
			if b.holds(f, t.change, before) {
				f.Cures = append(f.Cures, t.Cure)
			}
		}
	}
}

func (b run) holds(f *finding, ch change, before map[fault]bool) bool {
	again := run{newBuilder(b.film, b.section, ch)}
	again.probing = true
	if !again.build() {
		return false
	}
	again.check()
	number, at := 0, ch.moved(f.item)
	if f.item > 0 {
		p := again.clock.pullOf[at-1]
		if p != nil && !p.known {
			return false
		}
		if p != nil {
			number = p.Number
		}
	}
	for _, o := range again.found {
		if o.Code == f.Code && o.item == at && o.Pull == number {
			return false
		}
	}
	for f := range again.faults() {
		if !before[f] {
			return false
		}
	}
	return true
}

// withStop computes f as if the shot were taken at another f-number.
func (b run) withStop(n float64, f func()) {
	o := &b.shot.Optics
	saved := o.Number
	o.Number = n
	f()
	o.Number = saved
}

// stopsOf returns the stops that the lens has: its widest, the marked
// third-stops between, and its smallest.
func (b run) stopsOf() []float64 {
	widest, smallest := b.set.lens.stopsAt(b.set.focal)
	return stops.Scale(widest, smallest)
}

// stopTry offers the nearest stop, closing down (or opening up), at which ok
// holds.
func (b run) stopTry(closing bool, ok func() bool) []try {
	scale := b.stopsOf()
	for i := range scale {
		n := scale[i]
		if !closing {
			n = scale[len(scale)-1-i]
		}
		if closing && n <= b.set.number*1.01 || !closing && n >= b.set.number*0.99 {
			continue
		}
		holds := false
		b.withStop(n, func() { holds = ok() })
		if holds {
			return []try{{lang.Cure{Text: "stop f/" + plan.Decimal(n, 2), Value: n, Unit: "f"}, change{Stop: n}}}
		}
	}
	return nil
}

// overTry offers another length for a rack.
func (b run) overTry(p *pull, t float64) []try {
	if p.follow || p.on != nil && p.landing != nil || !(t > 0) || math.IsInf(t, 0) {
		return nil
	}
	return []try{{lang.Cure{Text: "over " + plan.Decimal(t, 1) + " s", Value: t, Unit: "s"}, change{Item: p.item + 1, Rack: withOver(t)}}}
}

// flags turns the findings into what the drawings show.
func (b run) flags() {
	for i, f := range b.found {
		cures := make([]string, len(f.Cures))
		for j, c := range f.Cures {
			cures[j] = c.Text
		}
		row, ok := rowOf[f.Code]
		if !ok {
			row = "distance"
		}
		b.shot.Flags = append(b.shot.Flags, plan.Flag{
			Number: i + 1, Severity: f.Severity.String(), Code: f.Code, Text: f.Message,
			Cures: strings.Join(cures, ", or "), Time: max(f.Time, 0), Row: row, Pull: f.Pull,
		})
	}
}

// rowOf says on which row of the score a finding stands.
var rowOf = map[string]string{
	"cuts-into-line": "lines", "unmotivated": "lines", "line-not-in-edit": "lines", "line-differs": "lines", "lines-elsewhere": "lines", "cue-not-in-edit": "lines", "shot-not-in-edit": "lines", "moved-in-edit": "lines",
	"line-changed": "lines", "line-moved": "lines", "line-gone": "lines", "speaker-changed": "lines", "trimmed": "hand",
	"not-seen": "sharp", "faint": "sharp", "no-time-to-see": "sharp", "too-deep": "sharp", "goes-soft": "sharp", "breathes": "sharp", "jarring": "sharp",
	"out-of-frame": "distance",
	"hard-to-land": "hand", "never-sure": "hand", "no-time-to-move": "hand", "faster-than-a-hand": "hand",
	"re-grip": "hand", "by-wire": "hand", "no-ring": "hand", "falls-behind": "hand", "beyond-marks": "hand",
}

func (b run) fromText(p *pull) string { return b.goalBefore(p).text }

func racked(b run, p *pull) string {
	return fmt.Sprintf("%s to %s", b.fromText(p), p.to())
}
