// Lines in their order: the sure ones first, the others between them.

package wording

import (
	"cmp"
	"slices"

	"pullscore/interp/speech"
)

// A Place is where a line is.
type Place struct {
	Hit
	Moved bool // it stands out of the order that most lines keep
}

// Place finds lines, given in their order, between two words of a stream. Short
// lines that occur often are looked for between the surer ones around them
// first. No word is part of two lines, and a short line is found only where it
// is all that is said: as a sentence, or beside the lines before and after it.
func (s *Stream) Place(lines []speech.Folded, from, to int) []Place {
	p := &placing{stream: s, places: make([]Place, len(lines)), lines: make([]wanted, len(lines))}
	for i := range lines {
		p.lines[i] = wanted{words: s.vocabulary.numbers(lines[i]), from: from, to: to}
	}
	p.place()
	return p.places
}

// place places all lines.
func (p *placing) place() {
	var before *wanted
	for i := range p.lines {
		if w := &p.lines[i]; len(w.words) > 0 {
			if before != nil {
				before.after, w.before = w.words, before.words
			}
			before = w
		}
	}
	p.placeSure()
	p.placeBetween()
	p.placeMoved()
}

// A placing is the work on the lines of one shot.
type placing struct {
	stream *Stream
	lines  []wanted
	places []Place
	taken  taken
}

// put gives a line its place, if it is a hit.
func (p *placing) put(i int, h Hit) {
	h = p.narrow(p.lines[i], h)
	if p.places[i].Hit = h; h.Found() {
		p.taken.add(h)
	}
}

// placeSure places the lines that stand word for word in one place only; of two
// that would have the same words the longer.
func (p *placing) placeSure() {
	order := make([]int, len(p.lines))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(len(p.lines[b].words), len(p.lines[a].words)) })
	for _, i := range order {
		w := p.lines[i]
		if at := p.stream.exact(w, p.taken, 2); len(at) == 1 {
			p.put(i, Hit{at[0], at[0] + len(w.words), 1})
		}
	}
	markMoved(p.places)
}

// placeBetween looks for the others between the lines around them.
func (p *placing) placeBetween() {
	for i, w := range p.lines {
		if !p.places[i].Found() {
			w.from, w.to = between(p.places, i, w.from, w.to)
			p.put(i, p.stream.find(w, p.taken))
		}
	}
}

// placeMoved looks everywhere for those that are still missing.
func (p *placing) placeMoved() {
	for i, w := range p.lines {
		if !p.places[i].Found() {
			p.put(i, p.stream.find(w, p.taken))
			p.places[i].Moved = p.places[i].Found()
		}
	}
}

// taken is the words that lines have, in order.
type taken []Hit

// search returns the first stretch that ends behind a word.
func (t taken) search(word int) int {
	i, _ := slices.BinarySearchFunc(t, word, func(h Hit, word int) int {
		if h.End <= word {
			return -1
		}
		return 1
	})
	return i
}

func (t *taken) add(h Hit) { *t = slices.Insert(*t, t.search(h.Start), h) }

// overlaps reports whether any of the words is taken.
func (t taken) overlaps(from, to int) bool {
	i := t.search(from)
	return i < len(t) && t[i].Start < to
}

// free returns the part between two words around a free one in which no word is
// taken.
func (t taken) free(word, from, to int) (int, int) {
	i := t.search(word)
	if i > 0 {
		from = max(from, t[i-1].End)
	}
	if i < len(t) {
		to = min(to, t[i].Start)
	}
	return from, to
}

// exact returns where a line stands word for word and free, up to limit places:
// those where it is all that is said, if there are any.
func (s *Stream) exact(w wanted, t taken, limit int) []int {
	rare := s.rarest(w.words, w.from, w.to)
	if len(rare) == 0 {
		return nil
	}
	var whole, part []int
	places := s.places(w.words[rare[0]], w.from, w.to)
	for _, p := range places[:min(len(places), occurrences)] {
		start := int(p) - rare[0]
		h := Hit{start, start + len(w.words), 1}
		if !s.stands(w.words, start, w) || t.overlaps(h.Start, h.End) || !s.fits(w, h) {
			continue
		}
		if !s.whole(w, h) {
			part = append(part, start)
		} else if whole = append(whole, start); len(whole) == limit && w.by <= 0 {
			break
		}
	}
	if len(whole) == 0 {
		whole = part
	}
	whole = s.ofSpeaker(w, whole)
	return whole[:min(len(whole), limit)]
}

// ofSpeaker returns those places of a line that its speaker says, or all where none
// is so.
func (s *Stream) ofSpeaker(w wanted, places []int) []int {
	if w.by <= 0 || len(places) < 2 {
		return places
	}
	var own []int
	for _, at := range places {
		if s.saidBy(w, at) {
			own = append(own, at)
		}
	}
	if len(own) > 0 {
		return own
	}
	return places
}

// stands reports whether words stand at a place, in the part of the stream where
// a line is looked for.
func (s *Stream) stands(words []int32, at int, w wanted) bool {
	return at >= w.from && at+len(words) <= w.to && slices.Equal(s.words[at:at+len(words)], words)
}

// between returns the stretch between the lines around one that are in order,
// from and to where there are none.
func between(places []Place, i, from, to int) (after, before int) {
	after, before = from, to
	for j := i - 1; j >= 0; j-- {
		if places[j].Found() && !places[j].Moved {
			after = places[j].End
			break
		}
	}
	for j := i + 1; j < len(places); j++ {
		if places[j].Found() && !places[j].Moved {
			before = places[j].Start
			break
		}
	}
	return after, max(after, before)
}

// markMoved marks the found lines that are not part of the longest run of
// lines in order.
func markMoved(places []Place) {
	var found, starts []int
	for i, p := range places {
		if p.Found() {
			found = append(found, i)
			starts = append(starts, p.Start)
		}
	}
	kept := increasing(starts)
	for k, i := range found {
		places[i].Moved = !kept[k]
	}
}

// increasing marks the members of a longest increasing subsequence (patience
// sorting, Schensted 1961).
func increasing(values []int) (kept []bool) {
	var tails []int // the index of the smallest last value of a run of each length
	before := make([]int, len(values))
	for i, v := range values {
		n, _ := slices.BinarySearchFunc(tails, v, func(at, v int) int { return values[at] - v })
		before[i] = -1
		if n > 0 {
			before[i] = tails[n-1]
		}
		if n == len(tails) {
			tails = append(tails, i)
		} else {
			tails[n] = i
		}
	}
	kept = make([]bool, len(values))
	if len(tails) > 0 {
		for i := tails[len(tails)-1]; i >= 0; i = before[i] {
			kept[i] = true
		}
	}
	return kept
}
