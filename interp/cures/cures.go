// Cures: the shot is built anew for what may cure a finding, and what holds is
// kept.

package cures

import (
	"maps"
	"slices"

	"pullscore/interp/change"
	"pullscore/interp/checks"
	"pullscore/interp/units"
	"pullscore/lang"
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
// anything else impossible, and with the time that is needed where that has been
// tried. The shot is built once for every change.
func cured(b *checks.Shot, found []checks.Finding, again Again, written Written) []checks.Finding {
	left := curesWorth
	before, was := faults(b, found), map[told]bool{}
	for i := range found {
		was[toldOf(&found[i])] = true
	}
	trials := map[string]*trial{}
	tried := func(ch change.Change) *trial {
		key := ch.Key()
		if trials[key] == nil {
			left -= len(b.Items)
			trials[key] = try(ch, before, again)
		}
		return trials[key]
	}
	for i := range found {
		f := &found[i]
		for _, ch := range f.Untried {
			f.Cures = append(f.Cures, cure(ch, b.Units, written))
		}
		if f.Tries == nil || left < 0 {
			continue
		}
		tries := f.Tries()
		if t, ok := needed(f, tried); ok {
			*f = b.Needing(*f, t)
			tries = inTime(tries, t)
		}
		for _, ch := range tries {
			if t := tried(ch); t.cures(f, ch) {
				c := cure(ch, b.Units, written)
				c.Then = t.remains(f, was, b.Units, b.Setup.View.Wanted)
				f.Cures = append(f.Cures, c)
				if f.Held == nil {
					f.Held = map[string]change.Change{}
				}
				f.Held[c.Text] = ch
			}
		}
		slices.SortStableFunc(f.Cures, func(a, b lang.Cure) int { return min(len(a.Then), 1) - min(len(b.Then), 1) })
	}
	mended(found, trials)
	return found
}

// cure returns a change as a cure, with its edits.
func cure(ch change.Change, u units.Style, written Written) lang.Cure {
	c := ch.Cure(u)
	c.Edits = written(ch, u)
	return c
}

// needSteps is in how many tenths of a second a time is sought that does.
const needSteps = 8

// needed returns the time, in seconds, in which the rack of a finding lands as
// wanted once it is written: what it needs for the landing as it is, or a little
// more, since somebody may have moved on by then.
func needed(f *checks.Finding, tried func(change.Change) *trial) (seconds float64, ok bool) {
	if f.Needs == 0 {
		return 0, false
	}
	for i := range needSteps {
		t := units.Nearest(units.Up(f.Needs, 10)+float64(i)/10, 10)
		ch := change.Change{Edits: []change.Edit{{Kind: change.Over, Item: f.Item, Seconds: t}}}
		if tried(ch).lands(f) {
			return t, true
		}
	}
	return 0, false
}

// inTime returns changes with the time that a rack takes as it is needed.
func inTime(tries []change.Change, seconds float64) []change.Change {
	tries = slices.Clone(tries)
	for i, ch := range tries {
		if len(ch.Edits) == 1 && ch.Edits[0].Kind == change.Over {
			e := ch.Edits[0]
			e.Seconds = seconds
			tries[i].Edits = []change.Edit{e}
		}
	}
	return tries
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
