// Cures tried together.
//
// A cure that is printed mends its own finding. Several of them may mend the same, or
// stand in each other's way: a smaller stop may make one rack too deep to be seen that a
// longer time mends as well. So they are tried together, too. At each step the shot is
// built with every cure that is printed and not yet taken, each in all places of its
// cause at once, on top of those taken before. Taken is the one that leaves the fewest
// errors, of those the fewest warnings, then the fewest notes; of equal ones the first by
// letter. It ends where none leaves fewer. That is greedy: no order is tried twice, and
// another order may leave less.

package cures

import (
	"cmp"
	"slices"

	"pullscore/interp/change"
	"pullscore/interp/checks"
	"pullscore/interp/plan"
	"pullscore/interp/shot"
	"pullscore/lang"
)

const (
	mostSteps = 5 // of cures tried together

	// togetherWorth is how many statements may be built anew for the cures of one shot
	// that are tried together.
	togetherWorth = 60_000
)

// A Together holds what is needed to try the cures of a shot together. It keeps no built
// shot.
type Together struct {
	again Again
	found []held
	items int            // statements of the shot
	told  map[Fault]bool // errors of its build
}

// A held is a finding, and the changes that hold as its cures, by what they say.
type held struct {
	told
	severity lang.Severity
	cures    map[string]change.Change
}

// Try returns what is needed to try the cures of a shot together, once somebody asks.
func Try(b *shot.Built, found []checks.Finding, again Again) *Together {
	t := &Together{again: again, items: len(b.Items), told: toldErrors(b)}
	for i := range found {
		f := &found[i]
		t.found = append(t.found, held{toldOf(f), f.Severity, f.Held})
	}
	return t
}

// An offer is a cure in all places of its cause.
type offer struct {
	plan.Tried
	change change.Change
}

// Steps tries the cures together. The flags of the shot must have their letters.
func (t *Together) Steps(s *plan.Shot) []plan.Tried {
	offers := t.offers(s)
	var steps []plan.Tried
	var taken change.Change
	now, left := t.asIs(), togetherWorth
	for len(steps) < mostSteps {
		best, bestAt := now, -1
		for i, o := range offers {
			if left -= t.items; left < 0 {
				return steps
			}
			if r, ok := t.with(taken.And(o.change)); ok && r.fewerThan(best) {
				best, bestAt = r, i
			}
		}
		if bestAt < 0 {
			break
		}
		o := offers[bestAt]
		o.Leaves = sum(best.counts) + len(s.Flags) - len(t.found) // with what a script page tells, which no cure changes
		o.AddsBy, o.Adds, o.Mends = best.added, sum(best.added), mendedLetters(s, now, best)
		taken, now = taken.And(o.change), best
		steps, offers = append(steps, o.Tried), slices.Delete(offers, bestAt, bestAt+1)
	}
	return steps
}

// offers returns every cure that is printed, each once a cause, by letter.
func (t *Together) offers(s *plan.Shot) (list []offer) {
	for _, l := range s.Lettered() {
		for _, text := range l.Cures {
			o := offer{Tried: plan.Tried{Cure: text, Cause: l.Letter}}
			for _, n := range l.Flags {
				if n > len(t.found) {
					continue
				}
				ch, ok := t.found[n-1].cures[text]
				if !ok {
					continue
				}
				o.change = o.change.And(ch)
				if pull := t.found[n-1].pull; pull > 0 && len(ch.Edits) > 0 && !slices.Contains(o.Pulls, pull) {
					o.Pulls = append(o.Pulls, pull)
				}
			}
			slices.Sort(o.Pulls)
			if o.change.Key() != (change.Change{}).Key() && !slices.ContainsFunc(list, func(other offer) bool { return other.change.Key() == o.change.Key() }) {
				list = append(list, o)
			}
		}
	}
	return list
}

// A result is what is told of a shot with changes.
type result struct {
	gone   []bool // by finding of the plan as it is
	counts [3]int // errors, warnings, notes
	added  [3]int // those of them that the plan as it is does not have
}

func (r *result) fewerThan(other result) bool {
	return slices.Compare(r.counts[:], other.counts[:]) < 0
}

func sum(counts [3]int) int { return counts[0] + counts[1] + counts[2] }

// asIs is the result of no change.
func (t *Together) asIs() result {
	r := result{gone: make([]bool, len(t.found))}
	for _, h := range t.found {
		r.counts[lang.Error-h.severity]++
	}
	return r
}

// with returns what is told of the shot with a change; ok is false where it cannot be
// built, or not without a new mistake.
func (t *Together) with(ch change.Change) (r result, ok bool) {
	b, ok := t.again(ch)
	if !ok {
		return r, false
	}
	for fault := range toldErrors(b) {
		if !t.told[fault] {
			return r, false
		}
	}
	pulls, was, now := pullsAt(b), map[told]int{}, map[told]int{}
	moved := func(h *held) told {
		item := ch.Moved(h.item)
		return told{h.code, item, pulls[item]}
	}
	for i := range t.found {
		was[moved(&t.found[i])]++
	}
	for _, f := range checks.Of(b).Findings() {
		key := toldOf(&f)
		r.counts[lang.Error-f.Severity]++
		if now[key]++; now[key] > was[key] {
			r.added[lang.Error-f.Severity]++
		}
	}
	for i := range t.found {
		key := moved(&t.found[i])
		r.gone = append(r.gone, now[key] == 0)
		now[key] = max(0, now[key]-1)
	}
	return r, true
}

// mendedLetters returns the letters of which a step has left nothing.
func mendedLetters(s *plan.Shot, before, after result) (letters []string) {
	for _, l := range s.Lettered() {
		all, already := true, true
		for _, n := range l.Flags {
			all = all && n <= len(after.gone) && after.gone[n-1]
			already = already && n <= len(before.gone) && before.gone[n-1]
		}
		if all && !already {
			letters = append(letters, l.Letter)
		}
	}
	slices.SortFunc(letters, func(a, b string) int { return cmp.Or(cmp.Compare(len(a), len(b)), cmp.Compare(a, b)) })
	return letters
}

// toldErrors returns the errors that the build of a shot has told.
func toldErrors(b *shot.Built) map[Fault]bool {
	set := map[Fault]bool{}
	for _, d := range b.Told {
		if d.Severity == lang.Error {
			set[Fault{d.Code, d.Range}] = true
		}
	}
	return set
}
