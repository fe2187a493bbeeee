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

// A Vocabulary numbers the words of the lines that are looked for, from 1. All
// other words are the same to a search, and a text has many of them.
type Vocabulary map[string]int32

// NewVocabulary returns the vocabulary of some lines.
func NewVocabulary(lines ...speech.Folded) Vocabulary {
	v := Vocabulary{}
	for _, line := range lines {
		for _, w := range line {
			if _, known := v[w]; !known {
				v[w] = int32(len(v) + 1)
			}
		}
	}
	return v
}

// unheard numbers a word of a line that is in no text.
const unheard = -1

// numbers returns a line as a stream has it.
func (v Vocabulary) numbers(line speech.Folded) []int32 {
	list := make([]int32, len(line))
	for i, w := range line {
		list[i] = unheard
		if n, known := v[w]; known {
			list[i] = n
		}
	}
	return list
}

// A Stream is the words of a text in their order.
type Stream struct {
	vocabulary Vocabulary
	words      []int32   // 0: one that nobody looks for
	at         [][]int32 // where the word with each number stands
}

// New returns the stream of a text without words, in which lines of these words
// can be looked for.
func New(v Vocabulary) *Stream {
	return &Stream{vocabulary: v, at: make([][]int32, len(v)+1)}
}

// MostWords is how many words a stream takes: more than in any text of a
// hundred megabytes that is talk.
const MostWords = 20_000_000

// Append adds words at the end; false: there are more than MostWords.
func (s *Stream) Append(words speech.Folded) bool {
	if len(s.words)+len(words) > MostWords {
		return false
	}
	for _, w := range words {
		n := s.vocabulary[w]
		if n > 0 {
			s.at[n] = append(s.at[n], int32(len(s.words)))
		}
		s.words = append(s.words, n)
	}
	return true
}

// Len returns how many words the stream has.
func (s *Stream) Len() int { return len(s.words) }

// Same reports whether the words from one up to another are a line.
func (s *Stream) Same(line speech.Folded, from, to int) bool {
	return slices.Equal(s.words[from:to], s.vocabulary.numbers(line))
}

// places returns where a word stands between two words of the stream.
func (s *Stream) places(word int32, from, to int) []int32 {
	if word <= 0 {
		return nil
	}
	all := s.at[word]
	first, _ := slices.BinarySearch(all, int32(from))
	last, _ := slices.BinarySearch(all, int32(to))
	return all[first:max(first, last)]
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
	return s.find(s.vocabulary.numbers(line), from, to)
}

func (s *Stream) find(line []int32, from, to int) Hit {
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
func slack(line []int32) int { return 2 + len(line)/4 }

// candidates returns where the line may begin: each of its rare words votes for
// the places that would put it right.
func (s *Stream) candidates(line []int32, from, to int) []int {
	votes := map[int]int{}
	for _, i := range s.rarest(line, from, to) {
		places := s.places(line[i], from, to)
		for _, p := range places[:min(len(places), occurrences)] {
			votes[int(p)-i]++
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

// rarest returns the indices of the line's rarest words between two words of the
// stream.
func (s *Stream) rarest(line []int32, from, to int) []int {
	order, often := make([]int, 0, len(line)), make([]int, len(line))
	for i, w := range line {
		if often[i] = len(s.places(w, from, to)); often[i] > 0 {
			order = append(order, i)
		}
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(often[a], often[b]) })
	return order[:min(len(order), seeds)]
}

// compare aligns a line with a stretch of the stream: the fewest words to
// change, put in or leave out (the edit distance), where the stretch may begin
// and end anywhere.
func (s *Stream) compare(line []int32, from, to int) Hit {
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
