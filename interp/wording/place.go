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

// Place finds lines, given in their order, between two words of a stream. Short
// lines that occur often are looked for between the surer ones around them
// first.
func (s *Stream) Place(lines []speech.Folded, from, to int) []Place {
	places := make([]Place, len(lines))
	numbers := make([][]int32, len(lines))
	for i := range lines {
		numbers[i] = s.vocabulary.numbers(lines[i])
		if at := s.exact(numbers[i], from, to, 2); len(at) == 1 {
			places[i].Hit = Hit{at[0], at[0] + len(lines[i]), 1}
		}
	}
	markMoved(places)
	for i, line := range numbers {
		if places[i].Found() {
			continue
		}
		after, before := between(places, i, from, to)
		if places[i].Hit = s.find(line, after, before); !places[i].Found() {
			places[i].Hit = s.find(line, from, to)
			places[i].Moved = places[i].Found()
		}
	}
	return places
}

// exact returns where a line stands word for word, up to limit places.
func (s *Stream) exact(line []int32, from, to, limit int) (at []int) {
	rare := s.rarest(line, from, to)
	if len(rare) == 0 {
		return nil
	}
	places := s.places(line[rare[0]], from, to)
	for _, p := range places[:min(len(places), occurrences)] {
		start := int(p) - rare[0]
		if start >= from && start+len(line) <= to && slices.Equal(s.words[start:start+len(line)], line) {
			if at = append(at, start); len(at) == limit {
				break
			}
		}
	}
	return at
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
