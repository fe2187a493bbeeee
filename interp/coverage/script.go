// The lines of the scene, joined from those of its shots.
//
// Shots come one after the other. Words of a shot that the scene already has are noted
// at these words. All others come in: a line after the line that the shot has before it,
// a word after the word before it. So every word of every shot stands at one word of the
// scene, and nothing that is said gets lost, whatever was matched.

package coverage

import (
	"slices"
	"sort"

	"pullscore/interp/plan"
	"pullscore/interp/speech"
	"pullscore/interp/wording"
)

// A slot is a word of the scene, and where it is said.
type slot struct {
	text string
	fold string
	said []saying // in the order of the shots
	line *sceneLine
}

// A saying is a word of a shot.
type saying struct {
	shot int
	word *plan.Word
	gone bool // the cut does not have the line
}

// A sceneLine is a line of the scene that is being joined.
type sceneLine struct {
	who   string
	slots []*slot
	index int // in the scene, before the shot that is being joined
}

// A shotLine is a line of a shot, with its words as they are compared.
type shotLine struct {
	shot  int
	who   string
	text  string
	words []plan.Word
	folds speech.Folded
	gone  bool // the cut does not have it
}

// join returns the lines of a scene from those of its shots.
func join(shots []*plan.Shot) []*sceneLine {
	all := make([][]shotLine, len(shots))
	var folds []speech.Folded
	for i, s := range shots {
		all[i] = linesOf(i, s)
		for k := range all[i] {
			folds = append(folds, all[i][k].folds)
		}
	}
	j := &joiner{vocabulary: wording.NewVocabulary(folds...), spoken: map[string]*spoken{}}
	for _, lines := range all {
		j.add(lines, j.match(lines))
	}
	return j.lines
}

// linesOf returns the lines of a shot that have words.
func linesOf(shot int, s *plan.Shot) []shotLine {
	var list []shotLine
	order := make([]int, len(s.Lines))
	for i := range order {
		order[i] = i
	}
	sort.SliceStable(order, func(a, b int) bool { return s.Lines[order[a]].Start < s.Lines[order[b]].Start })
	for _, i := range order {
		l := &s.Lines[i]
		folds := speech.Fold(speech.Tokens(l.Text))
		if len(l.Words) == 0 || len(folds) != len(l.Words) {
			continue
		}
		list = append(list, shotLine{shot: shot, who: l.Who, text: l.Text, words: l.Words, folds: folds, gone: l.InCut.IsRemoved()})
	}
	return list
}

// A joiner holds the lines of the scene that are known so far.
type joiner struct {
	lines      []*sceneLine
	vocabulary wording.Vocabulary
	spoken     map[string]*spoken // by speaker; without those whose lines have changed
}

// add joins the lines of a shot to the scene, by the words that match.
func (j *joiner) add(lines []shotLine, matched [][]*slot) {
	j.number()
	last, fresh := -1, len(j.lines) // the index of the line behind which the next one comes in
	for i := range lines {
		l := &lines[i]
		if anySlot(matched[i]) != nil {
			line := j.fill(l, matched[i])
			last = max(last, slices.Index(j.lines[line.index:], line)+line.index)
			continue
		}
		at := last + 1
		if last < 0 {
			at = before(matched, fresh)
		}
		j.bring(l, at)
		last = at
	}
}

// number gives every line its index.
func (j *joiner) number() {
	for i, l := range j.lines {
		l.index = i
	}
}

// anySlot returns the first slot of a list, nil where it has none.
func anySlot(list []*slot) *slot {
	for _, s := range list {
		if s != nil {
			return s
		}
	}
	return nil
}

// before returns where a line comes in that the shot has before all that match: before
// the first of these, and at the end if none does.
func before(matched [][]*slot, end int) int {
	for _, list := range matched {
		if s := anySlot(list); s != nil {
			return s.line.index
		}
	}
	return end
}

// bring makes a line of a shot a line of the scene, with that index.
func (j *joiner) bring(l *shotLine, at int) {
	line := &sceneLine{who: l.who, index: at}
	room := make([]slot, len(l.words))
	line.slots = make([]*slot, len(l.words))
	for k := range l.words {
		room[k] = newSlot(line, l, k)
		line.slots[k] = &room[k]
	}
	j.lines = slices.Insert(j.lines, at, line)
	if slices.ContainsFunc(j.lines[at+1:], func(o *sceneLine) bool { return o.who == l.who }) {
		delete(j.spoken, l.who)
	} else if sp := j.spoken[l.who]; sp != nil {
		sp.add(line)
	}
}

// fill notes the words of a line at their slots, and brings in the others between these.
// It returns the last line of the scene that the line is in.
func (j *joiner) fill(l *shotLine, matched []*slot) *sceneLine {
	var last *slot
	early := 0 // words before the first that matches
	for k, s := range matched {
		switch {
		case s != nil:
			s.said = append(s.said, saying{l.shot, &l.words[k], l.gone})
			if last == nil && early > 0 {
				j.insert(s.line, slices.Index(s.line.slots, s), l, 0, early)
			}
			last = s
		case last == nil:
			early++
		default:
			at := slices.Index(last.line.slots, last) + 1
			j.insert(last.line, at, l, k, k+1)
			last = last.line.slots[at]
		}
	}
	return last.line
}

// insert brings some words of a line into a line of the scene.
func (j *joiner) insert(line *sceneLine, at int, l *shotLine, from, to int) {
	for k := from; k < to; k++ {
		s := newSlot(line, l, k)
		line.slots = slices.Insert(line.slots, at+k-from, &s)
	}
	delete(j.spoken, l.who)
}

// newSlot returns a word that a line of a shot brings into a line of the scene.
func newSlot(line *sceneLine, l *shotLine, k int) slot {
	return slot{text: l.words[k].Text, fold: l.folds[k], said: []saying{{l.shot, &l.words[k], l.gone}}, line: line}
}
