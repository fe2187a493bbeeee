// Checks: what is told of a shot once it is computed, and what would cure it.

package interp

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"pullscore/interp/plan"
	"pullscore/interp/stops"
	"pullscore/lang"
)

// checks are run in this order on every shot; each has a file of its own.
var checks = []func(*builder){
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

// A finding is a diagnostic of a shot, with the changes that may cure it.
type finding struct {
	lang.Diagnostic
	item  int // the statement that it is about, from 1; 0: the shot
	tries func() []try
}

// A try is a change, as a cure words it.
type try struct {
	lang.Cure
	change
}

// check runs all checks; unless the builder itself is trying a cure, it then
// keeps of each finding's cures those that hold.
func (b *builder) check() {
	if b.set == nil || b.clock == nil {
		return
	}
	for _, run := range checks {
		run(b)
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

// tell notes a finding about the shot.
func (b *builder) tell(f finding) {
	f.Shot = b.head.ID
	f.Figures = slices.DeleteFunc(f.Figures, func(g lang.Figure) bool { return math.IsInf(g.Value, 0) || math.IsNaN(g.Value) })
	b.found = append(b.found, f)
}

// tellPull notes a finding about a pull.
func (b *builder) tellPull(p *pull, f finding) {
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

// A fault is an error by its place, to tell old ones from new.
type fault struct {
	code string
	at   lang.Range
}

// faults are what cannot be done in the shot.
func (b *builder) faults() map[fault]bool {
	set := map[fault]bool{}
	for _, d := range b.diags {
		if d.Severity == lang.Error {
			set[fault{d.Code, d.Range}] = true
		}
	}
	for _, f := range b.found {
		if f.Severity == lang.Error {
			set[fault{f.Code, f.Range}] = true
		}
	}
	return set
}

// curesWorth is how many statements may be computed anew for the cures of one
// shot: a shot of hundreds of moves that all have findings is told them, and
// cures for the first.
const curesWorth = 60_000

// cures builds the shot once for every change that might cure a finding, and
// keeps those that remove it without making anything else impossible.
func (b *builder) cures() {
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

func (b *builder) holds(f *finding, ch change, before map[fault]bool) bool {
	again := b.p.shotBuilder(b.section, ch)
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

// racks calls f for every rack in the order of time.
func (b *builder) racks(f func(*pull)) {
	for _, p := range b.pulls {
		if !p.follow {
			f(p)
		}
	}
}

func figure(name string, v float64) lang.Figure { return lang.Figure{Name: name, Value: v} }

// withStop computes f as if the shot were taken at another f-number.
func (b *builder) withStop(n float64, f func()) {
	o := &b.shot.Optics
	saved := o.Number
	o.Number = n
	f()
	o.Number = saved
}

// stopsOf returns the stops that the lens has: its widest, the marked
// third-stops between, and its smallest.
func (b *builder) stopsOf() []float64 {
	widest, smallest := b.set.lens.stopsAt(b.set.focal)
	return stops.Scale(widest, smallest)
}

// stopTry offers the nearest stop, closing down (or opening up), at which ok
// holds.
func (b *builder) stopTry(closing bool, ok func() bool) []try {
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
func (b *builder) overTry(p *pull, t float64) []try {
	if p.follow || p.on != nil && p.landing != nil || !(t > 0) || math.IsInf(t, 0) {
		return nil
	}
	return []try{{lang.Cure{Text: "over " + plan.Decimal(t, 1) + " s", Value: t, Unit: "s"}, change{Item: p.item + 1, Rack: withOver(t)}}}
}

// flags turns the findings into what the drawings show.
func (b *builder) flags() {
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

// to names what a pull goes to, in a message.
func (p *pull) to() string { return p.goal.text }

func (b *builder) fromText(p *pull) string { return b.goalBefore(p).text }

func racked(b *builder, p *pull) string {
	return fmt.Sprintf("%s to %s", b.fromText(p), p.to())
}
