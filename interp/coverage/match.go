// Which line of a shot is which line of the scene.
//
// Lines are found by their words, as a script page finds them, among the lines of the
// same speaker. A line of three words or more that is found word for word is hardly there
// by chance: it ties the shot to the scene. A shorter one, and one with other words in it,
// counts only where it lies between lines that do, or where all that the shot has is
// found: "No." is in many scenes, and people say much the same of two things. Of a long
// line a set-up may have only a part, from some word within it on.

package coverage

import (
	"slices"

	"pullscore/interp/speech"
	"pullscore/interp/wording"
)

// telling is how many words a line has that is hardly found by chance.
const telling = 3

// leastSame is the least likeness of two lines of one plan: what differs is a slip or a
// change, and not another line.
const leastSame = 0.75

// mostAligned is how many words of a line are compared one by one.
const mostAligned = 400

// A match is a line of a shot that has been found in lines of the scene.
type match struct {
	slots []*slot // for each word of the line; nil: none
	words int     // that are in both
	other bool    // it has other words too, among these
	at    int     // the index of the first line of the scene that it is in
}

// match returns for each word of each line of a shot the word of the scene that it is,
// nil where the scene does not have it yet.
func (j *joiner) match(lines []shotLine) [][]*slot {
	j.number()
	found := make([]*match, len(lines))
	for _, who := range speakers(lines) {
		if sp := j.spokenBy(who); len(sp.lines) > 0 {
			var mine []int
			for i := range lines {
				if lines[i].who == who {
					mine = append(mine, i)
				}
			}
			taken := j.findLines(lines, mine, sp, found)
			j.findIn(lines, mine, sp, found, taken)
		}
	}
	keepSure(found)
	slots := make([][]*slot, len(lines))
	for i, m := range found {
		if slots[i] = make([]*slot, len(lines[i].words)); m != nil {
			slots[i] = m.slots
		}
	}
	return slots
}

// speakers returns who speaks, each once.
func speakers(lines []shotLine) []string {
	var list []string
	for i := range lines {
		if who := lines[i].who; !slices.Contains(list, who) {
			list = append(list, who)
		}
	}
	return list
}

// findLines looks for lines of a shot in the scene: those with the indices mine. It
// returns the lines of the scene that are found.
func (j *joiner) findLines(lines []shotLine, mine []int, sp *spoken, found []*match) map[*sceneLine]bool {
	var likely []int
	var wanted []speech.Folded
	for _, i := range mine {
		if sp.mayHave(lines[i].folds) {
			likely, wanted = append(likely, i), append(wanted, lines[i].folds)
		}
	}
	taken := map[*sceneLine]bool{}
	used := map[*slot]bool{}
	put := func(i int, slots []*slot) {
		m := newMatch(len(lines[i].words), slots[0].line)
		m.lay(lines[i].folds, 0, slots)
		found[i] = m
		for _, s := range slots {
			taken[s.line], used[s] = true, true
		}
	}
	if len(likely) == 0 {
		return taken
	}
	stream := sp.streamOf(j.vocabulary)
	if stream.Len() != len(sp.slots) { // it has other words: nothing is found in it
		return taken
	}
	for k, at := range stream.Place(wanted, 0, stream.Len()) {
		if at.Likeness >= leastSame && at.End > at.Start {
			put(likely[k], sp.slots[at.Start:at.End])
		}
	}
	for k, i := range likely {
		if found[i] == nil && len(wanted[k]) >= telling {
			if part := sp.part(wanted[k], used); part != nil {
				put(i, part)
			}
		}
	}
	return taken
}

// part returns the first words of one line of the scene that are those of a line of a
// shot, word for word, and not used yet; nil where there are none.
func (sp *spoken) part(folds speech.Folded, used map[*slot]bool) []*slot {
	for _, from := range sp.where[folds[0]] {
		to := from + len(folds)
		if to > len(sp.slots) || sp.slots[to-1].line != sp.slots[from].line {
			continue
		}
		same := true
		for k, s := range sp.slots[from:to] {
			if same = s.fold == folds[k] && !used[s]; !same {
				break
			}
		}
		if same {
			return sp.slots[from:to]
		}
	}
	return nil
}

// findIn looks for lines of the scene that are not taken in those of a shot that were
// not found: these may be longer.
func (j *joiner) findIn(lines []shotLine, mine []int, sp *spoken, found []*match, taken map[*sceneLine]bool) {
	var lost []int
	for _, i := range mine {
		if found[i] == nil {
			lost = append(lost, i)
		}
	}
	free, wanted := sp.likeAny(lines, lost, taken)
	if len(free) == 0 {
		return
	}
	stream := wording.New(j.vocabulary)
	var owner, place []int // of each word of the stream: its line, and which word of it
	for _, i := range lost {
		stream.Append(lines[i].text)
		for k := range lines[i].folds {
			owner, place = append(owner, i), append(place, k)
		}
	}
	if stream.Len() != len(owner) {
		return
	}
	for k, at := range stream.Place(wanted, 0, stream.Len()) {
		if at.Likeness < leastSame || at.End <= at.Start || owner[at.Start] != owner[at.End-1] {
			continue
		}
		i := owner[at.Start]
		if found[i] == nil {
			found[i] = newMatch(len(lines[i].words), free[k])
		}
		from, to := place[at.Start], place[at.End-1]+1
		found[i].lay(lines[i].folds[from:to], from, free[k].slots)
	}
}

// newMatch returns the match of a line of so many words that begins in a line of the
// scene.
func newMatch(words int, in *sceneLine) *match {
	return &match{slots: make([]*slot, words), at: in.index}
}

// lay lays words of the line on slots of the scene; from is the index of the first.
func (m *match) lay(folds speech.Folded, from int, slots []*slot) {
	if len(folds) > mostAligned || len(slots) > mostAligned {
		return
	}
	theirs := foldsOf(slots)
	m.other = m.other || !slices.Equal(folds, theirs)
	for k, at := range align(folds, theirs) {
		if at < 0 || m.slots[from+k] != nil {
			continue
		}
		m.slots[from+k] = slots[at]
		if folds[k] == slots[at].fold {
			m.words++
		}
	}
}

// tells reports whether the match is hardly there by chance.
func (m *match) tells() bool { return m != nil && !m.other && m.words >= telling }

// keepSure takes away the matches that may be there by chance.
func keepSure(found []*match) {
	if wholly(found) {
		return
	}
	told := slices.Clone(found) // what tells goes on telling
	for i, m := range told {
		if m != nil && !m.tells() && !between(told, i) {
			found[i] = nil
		}
	}
}

// wholly reports whether all of several lines are found in the order of the scene, and
// one of them word for word.
func wholly(found []*match) bool {
	exact := false
	for _, m := range found {
		if m == nil {
			return false
		}
		exact = exact || !m.other
	}
	return len(found) > 1 && exact && rising(found)
}

// rising reports whether the matches are in the order of the scene.
func rising(found []*match) bool {
	for i := 1; i < len(found); i++ {
		if found[i].at < found[i-1].at {
			return false
		}
	}
	return true
}

// between reports whether a match lies in the scene where the telling ones around it do,
// of which there is one at least.
func between(found []*match, i int) bool {
	told := false
	for k, m := range found {
		if k == i || !m.tells() {
			continue
		}
		if k < i && m.at > found[i].at || k > i && m.at < found[i].at {
			return false
		}
		told = true
	}
	return told
}
