// Package wording finds the lines of a plan in other people's words: a script
// page, or the subtitles of a cut. Lines are found also where some of their
// words have changed, and the likeness is told.
package wording

import (
	"cmp"
	"math"
	"slices"

	"pullscore/interp/speech"
)

// Least is the likeness from which on words count as the same line, changed.
const Least = 0.6

// A Stream is the words of a text in their order.
type Stream struct {
	words speech.Folded
	at    map[string][]int // where each word stands
}

// New returns the stream of a text's words.
func New(words speech.Folded) *Stream {
	s := &Stream{words: words, at: make(map[string][]int)}
	for i, w := range words {
		s.at[w] = append(s.at[w], i)
	}
	return s
}

// A Hit is a stretch of a stream that is like a line.
type Hit struct {
	Start, End int     // words from Start up to End
	Likeness   float64 // 1: the same words; 0: no hit
}

// Found reports whether it is a hit.
func (h Hit) Found() bool { return h.Likeness > 0 }

// extends reports whether the hit begins with another and goes on.
func (h Hit) extends(other Hit) bool { return h.Start == other.Start && h.End > other.End }

// seeds is how many words of a line, the rarest, are looked up; occurrences how
// many places of each, and candidates how many places are looked at closely.
// They keep hostile texts from taking for ever and are more than real ones need.
const (
	seeds       = 8
	occurrences = 2000
	candidates  = 16
	longest     = 400 // words of a line that are compared
)

// Find returns the stretch between two words of the stream that is most like a
// line, the first of several; a hit has a likeness of at least Least.
func (s *Stream) Find(line speech.Folded, from, to int) Hit {
	line = line[:min(len(line), longest)]
	var best Hit
	for _, start := range s.candidates(line, from, to) {
		h := s.compare(line, max(from, start-slack(line)), min(to, start+len(line)+slack(line)))
		if h.Likeness >= Least && (h.Likeness > best.Likeness || h.Likeness == best.Likeness && h.extends(best)) {
			best = h
		}
	}
	return best
}

// slack is how many words may have come in before a line's place is lost.
func slack(line speech.Folded) int { return 2 + len(line)/4 }

// candidates returns where the line may begin: each of its rare words votes for
// the places that would put it right.
func (s *Stream) candidates(line speech.Folded, from, to int) []int {
	votes := map[int]int{}
	for _, i := range s.rarest(line) {
		places := s.at[line[i]]
		first, _ := slices.BinarySearch(places, from)
		for _, p := range places[first:min(len(places), first+occurrences)] {
			if p >= to {
				break
			}
			votes[p-i]++
		}
	}
	starts := make([]int, 0, len(votes))
	for start := range votes {
		starts = append(starts, start)
	}
	slices.SortFunc(starts, func(a, b int) int { return cmp.Or(cmp.Compare(votes[b], votes[a]), cmp.Compare(a, b)) })
	starts = starts[:min(len(starts), candidates)]
	slices.Sort(starts)
	return starts
}

// rarest returns the indices of the line's rarest words.
func (s *Stream) rarest(line speech.Folded) []int {
	order := make([]int, 0, len(line))
	for i, w := range line {
		if len(s.at[w]) > 0 {
			order = append(order, i)
		}
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(len(s.at[line[a]]), len(s.at[line[b]])) })
	return order[:min(len(order), seeds)]
}

// compare aligns a line with a stretch of the stream: the fewest words to
// change, put in or leave out (the edit distance), where the stretch may begin
// and end anywhere.
func (s *Stream) compare(line speech.Folded, from, to int) Hit {
	if len(line) == 0 || from >= to {
		return Hit{}
	}
	type cell struct{ cost, start int }
	stretch := s.words[from:to]
	above := make([]cell, len(stretch)+1)
	row := make([]cell, len(stretch)+1)
	for j := range above {
		above[j] = cell{0, j}
	}
	for i, w := range line {
		row[0] = cell{i + 1, 0}
		for j, v := range stretch {
			change := above[j]
			if w != v {
				change.cost++
			}
			left, up := row[j], above[j+1]
			left.cost++
			up.cost++
			best := change
			if up.cost < best.cost {
				best = up
			}
			if left.cost < best.cost {
				best = left
			}
			row[j+1] = best
		}
		above, row = row, above
	}
	best, end := cell{math.MaxInt, 0}, 0
	for j, c := range above {
		// Of two that begin alike the longer has the line's last word in it.
		if c.cost < best.cost || c.cost == best.cost && c.start == best.start {
			best, end = c, j
		}
	}
	return Hit{from + best.start, from + end, 1 - float64(best.cost)/float64(len(line))}
}
