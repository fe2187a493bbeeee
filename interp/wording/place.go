// Lines in their order: the sure ones first, the others between them.

package wording

import (
	"slices"

	"pullscore/interp/speech"
)

// A Place is where a line is.
type Place struct {
	Hit
	Moved bool // it stands out of the order that most lines keep
}

// Place finds lines, given in their order, in a stream. Short lines that occur
// often are looked for between the surer ones around them first.
func (s *Stream) Place(lines []speech.Folded) []Place {
	places := make([]Place, len(lines))
	sure := func(i int) bool {
		n := len(s.exact(lines[i], 2))
		return n == 1 && len(lines[i]) > 0
	}
	for i := range lines {
		if sure(i) {
			at := s.exact(lines[i], 1)[0]
			places[i].Hit = Hit{at, at + len(lines[i]), 1}
		}
	}
	markMoved(places)
	for i := range lines {
		if places[i].Found() {
			continue
		}
		from, to := s.between(places, i)
		if places[i].Hit = s.Find(lines[i], from, to); !places[i].Found() {
			places[i].Hit = s.Find(lines[i], 0, len(s.words))
			places[i].Moved = places[i].Found()
		}
	}
	return places
}

// exact returns where a line stands word for word, up to limit places.
func (s *Stream) exact(line speech.Folded, limit int) (at []int) {
	rare := s.rarest(line)
	if len(rare) == 0 {
		return nil
	}
	places := s.at[line[rare[0]]]
	for _, p := range places[:min(len(places), occurrences)] {
		start := p - rare[0]
		if start >= 0 && start+len(line) <= len(s.words) && slices.Equal(s.words[start:start+len(line)], line) {
			if at = append(at, start); len(at) == limit {
				break
			}
		}
	}
	return at
}

// between returns the stretch of the stream between the lines around one that
// are in order.
func (s *Stream) between(places []Place, i int) (from, to int) {
	to = len(s.words)
	for j := i - 1; j >= 0; j-- {
		if places[j].Found() && !places[j].Moved {
			from = places[j].End
			break
		}
	}
	for j := i + 1; j < len(places); j++ {
		if places[j].Found() && !places[j].Moved {
			to = places[j].Start
			break
		}
	}
	return from, max(from, to)
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
