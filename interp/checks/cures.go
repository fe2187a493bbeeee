// Cures: the shot is built anew for what may cure a finding, and what holds is
// kept.

package checks

import (
	"pullscore/interp/change"
	"pullscore/interp/shot"
	"pullscore/interp/units"
)

// curesWorth is how many statements may be computed anew for the cures of one
// shot: a shot of hundreds of moves that all have findings is told them, and
// cures for the first.
const curesWorth = 60_000

// cures builds the shot once for every change that might cure a finding, and
// keeps those that remove it without making anything else impossible.
func (b Run) cures() {
	left := curesWorth
	before := b.Faults()
	trials := map[string]*trial{}
	for i := range b.Found {
		f := &b.Found[i]
		if f.Tries == nil || left < 0 {
			continue
		}
		for _, ch := range f.Tries() {
			left -= len(b.Items)
			key := ch.Key()
			if trials[key] == nil {
				trials[key] = b.try(ch, before)
			}
			if trials[key].cures(f, ch) {
				f.Cures = append(f.Cures, ch.Cure(units.Style{}))
			}
		}
	}
}

// A trial is what a shot comes to with a change, as far as cures ask.
type trial struct {
	sound bool // it can be built, and nothing else has become impossible
	found map[told]bool
	pulls map[int]int // the number of the pull at a statement, from 1; 0: it has no time
}

// told names a finding in a trial: its code, the statement and the pull that it
// is about.
type told struct {
	code       string
	item, pull int
}

// try builds the shot with a change.
func (b Run) try(ch change.Change, before map[shot.Fault]bool) *trial {
	again := Run{Builder: shot.NewBuilder(b.Film, b.Section, ch)}
	again.Probing = true
	if !again.Build() {
		return &trial{}
	}
	again.Check()
	t := &trial{sound: true, found: map[told]bool{}, pulls: map[int]int{}}
	for fault := range again.Faults() {
		t.sound = t.sound && before[fault]
	}
	for _, f := range again.Found {
		t.found[told{f.Code, f.Item, f.Pull}] = true
	}
	for i, p := range again.Clock.PullOf {
		switch {
		case p == nil:
		case p.Known:
			t.pulls[i+1] = p.Number
		default:
			t.pulls[i+1] = 0
		}
	}
	return t
}

// cures reports whether a finding is gone with a change.
func (t *trial) cures(f *shot.Finding, ch change.Change) bool {
	at := ch.Moved(f.Item)
	number, pulls := t.pulls[at]
	if !t.sound || pulls && number == 0 {
		return false
	}
	return !t.found[told{f.Code, at, number}]
}
