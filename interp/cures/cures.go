// Cures: the shot is built anew for what may cure a finding, and what holds is
// kept.

package cures

import (
	"maps"
	"slices"

	"pullscore/interp/change"
	"pullscore/interp/checks"
	"pullscore/interp/shot"
)

// Every cure that is printed has been tried: the shot is built with it, and the
// finding has to be gone and nothing else impossible. A rule that says what would
// cure a rack by itself was not enough: a longer rack lands in the next one, a
// smaller stop asks for more light, a hold moves all that comes after it.
//
// A build costs as much as the shot is long, and a shot has as many findings as
// it is long, so cures would cost the square of it. Two things keep that small:
// findings that want the same change share its build, and the statements built
// are counted. When they are used up the rest of the findings go without.

// curesWorth is how many statements may be built anew for the cures of one shot:
// a shot of hundreds of moves that all have findings is told them, and cures for
// the first.
const curesWorth = 60_000

// cured returns the findings with those cures that remove them without making
// anything else impossible. The shot is built once for every change.
func cured(b *checks.Shot, found []checks.Finding, again Again) []checks.Finding {
	left := curesWorth
	before := faults(b, found)
	trials := map[string]*trial{}
	for i := range found {
		f := &found[i]
		if f.Tries == nil || left < 0 {
			continue
		}
		for _, ch := range f.Tries() {
			key := ch.Key()
			if trials[key] == nil {
				left -= len(b.Items)
				trials[key] = try(ch, before, again)
			}
			if trials[key].cures(f, ch) {
				f.Cures = append(f.Cures, ch.Cure(b.Units()))
			}
		}
	}
	mended(found, trials)
	return found
}

// mended notes with every finding which of the changes that were tried for any
// of them mends it too: those of the whole shot, such as another stop. A change
// of one statement is about that alone.
func mended(found []checks.Finding, trials map[string]*trial) {
	for _, key := range slices.Sorted(maps.Keys(trials)) {
		t := trials[key]
		if len(t.change.Edits) > 0 || !t.sound {
			continue
		}
		for i := range found {
			if t.cures(&found[i], t.change) {
				found[i].Mended = append(found[i].Mended, t.change)
			}
		}
	}
}

// A trial is what a shot comes to with a change, as far as cures ask.
type trial struct {
	change change.Change
	sound  bool // it can be built, and nothing else has become impossible
	found  map[told]bool
	pulls  map[int]int // the number of the pull at a statement, from 1; 0: it has no time
}

// told names a finding in a trial: its code, the statement and the pull that it
// is about.
type told struct {
	code       string
	item, pull int
}

// try builds the shot with a change.
func try(ch change.Change, before map[Fault]bool, again Again) *trial {
	built, ok := again(ch)
	if !ok {
		return &trial{change: ch}
	}
	s := checks.Of(built)
	found := s.Findings()
	t := &trial{change: ch, sound: true, found: map[told]bool{}, pulls: pullsAt(built)}
	for fault := range faults(s, found) {
		t.sound = t.sound && before[fault]
	}
	for _, f := range found {
		t.found[told{f.Code, f.Item, f.Pull}] = true
	}
	return t
}

// pullsAt returns the numbers of the pulls by their statements, from 1; 0 is one
// that has no time.
func pullsAt(b *shot.Built) map[int]int {
	pulls := map[int]int{}
	for i, p := range b.Clock.PullOf {
		if p != nil {
			pulls[i+1] = 0
		}
	}
	for _, p := range b.Pulls {
		pulls[p.Rack.Item+1] = p.Plan.Number
	}
	return pulls
}

// cures reports whether a finding is gone with a change.
func (t *trial) cures(f *checks.Finding, ch change.Change) bool {
	at := ch.Moved(f.Item)
	number, pull := t.pulls[at]
	if !t.sound || pull && number == 0 {
		return false
	}
	return !t.found[told{f.Code, at, number}]
}
