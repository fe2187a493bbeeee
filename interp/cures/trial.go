// Trials: the shot built with one change, and what is told of it then.

package cures

import (
	"strings"

	"pullscore/interp/change"
	"pullscore/interp/checks"
	"pullscore/interp/shot"
	"pullscore/interp/units"
	"pullscore/lang/rule"
)

// A trial is what a shot comes to with a change, as far as cures ask.
type trial struct {
	change change.Change
	sound  bool // it can be built, and nothing else has become impossible
	found  map[told]*checks.Finding
	order  []told      // of what has been found
	pulls  map[int]int // the number of the pull at a statement, from 1; 0: it has no time
}

// told names a finding in a trial: its code, the statement and the pull that it
// is about.
type told struct {
	code       string
	item, pull int
}

func toldOf(f *checks.Finding) told { return told{f.Code, f.Item, f.Pull} }

// try builds the shot with a change.
func try(ch change.Change, before map[Fault]bool, again Again) *trial {
	built, ok := again(ch)
	if !ok {
		return &trial{change: ch}
	}
	s := checks.Of(built)
	found := s.Findings()
	t := &trial{change: ch, sound: true, found: map[told]*checks.Finding{}, pulls: pullsAt(built)}
	for fault := range faults(s, found) {
		t.sound = t.sound && before[fault]
	}
	for i := range found {
		key := toldOf(&found[i])
		if t.found[key] == nil {
			t.found[key] = &found[i]
			t.order = append(t.order, key)
		}
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
	return t.found[told{f.Code, at, number}] == nil
}

// lands reports whether a hand gets there with the rack of a finding with the
// change, as often as wanted.
func (t *trial) lands(f *checks.Finding) bool {
	at := t.change.Moved(f.Item)
	number := t.pulls[at]
	if number == 0 {
		return false
	}
	for _, code := range []rule.Code{rule.NoTimeToMove, rule.FasterThanAHand, rule.NeverSure, rule.HardToLand, rule.PlayLoses} {
		if t.found[told{code.String(), at, number}] != nil {
			return false
		}
	}
	return true
}

// remains says what the change brings in place of a finding: what is told then of
// the same pull, or of the shot as a whole, and was not told before. It is "" where
// there is none.
func (t *trial) remains(f *checks.Finding, before map[told]bool, u units.Style, wanted float64) string {
	at := t.change.Moved(f.Item)
	was := map[told]bool{} // as statements and pulls are numbered with the change
	for key := range before {
		item := t.change.Moved(key.item)
		was[told{key.code, item, t.pulls[item]}] = true
	}
	var parts []string
	for _, key := range t.order {
		if was[key] || key.item != 0 && key.item != at || f.Pull == 0 && key.item != 0 {
			continue
		}
		parts = append(parts, then(t.found[key], u, wanted))
	}
	return strings.Join(parts, " and ")
}

// then names a finding, with the chance that it tells.
func then(f *checks.Finding, u units.Style, wanted float64) string {
	for _, g := range f.Figures {
		switch g.Name {
		case "probability", "worst_share", "sharp_share":
			return u.Chance(g.Value, wanted) + ", " + f.Code
		}
	}
	return f.Code
}
