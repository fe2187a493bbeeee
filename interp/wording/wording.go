// Package wording finds the lines of a plan in other people's words: a script
// page, or the subtitles of a cut. Lines are found also where some of their
// words have changed, and the likeness is told.
package wording

import (
	"cmp"
	"maps"
	"slices"
	"strings"
	"sync"

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
	sentences  bits      // where one begins, or the text ends
	clauses    bits      // where a part of a sentence begins
	turns      bits      // where a sentence begins within what is said in one subtitle
	voices     []voice   // in order

	growing *sync.RWMutex // guards the vocabulary of a whole stream while listeners number its words; nil: it is complete
}

// New returns the stream of a text without words, in which lines of these words
// can be looked for.
func New(v Vocabulary) *Stream {
	return &Stream{vocabulary: v, at: make([][]int32, len(v)+1)}
}

// NewWhole returns the stream of a text without words, in which any lines can be looked
// for. It keeps every word of the text, which takes more memory.
func NewWhole() *Stream {
	return &Stream{vocabulary: Vocabulary{}, at: make([][]int32, 1), growing: &sync.RWMutex{}}
}

// number numbers a word, also one that is new in a whole stream. Several listeners may ask
// at a time: which of two new words has which number is left to chance, and means nothing.
func (s *Stream) number(word string) int32 {
	if s.growing == nil {
		return s.vocabulary[word]
	}
	s.growing.RLock()
	n, known := s.vocabulary[word]
	s.growing.RUnlock()
	if known {
		return n
	}
	s.growing.Lock()
	defer s.growing.Unlock()
	if n, known = s.vocabulary[word]; !known {
		n = int32(len(s.vocabulary) + 1)
		s.vocabulary[strings.Clone(word)] = n // and not the whole text with it
	}
	return n
}

// MostWords is how many words a stream takes: more than in any text of a
// hundred megabytes that is talk.
const MostWords = 20_000_000

// Append adds the words of a text at the end; its sentences are known by their
// signs, and by new lines. false: there are more than MostWords.
func (s *Stream) Append(text string) bool {
	tokens := speech.Tokens(text)
	if len(s.words)+len(tokens) > MostWords {
		return false
	}
	if len(tokens) > 0 {
		s.mark(text, tokens)
	}
	for _, w := range speech.Fold(tokens) {
		s.add(s.number(w))
	}
	return true
}

// Expect makes room in a new stream for a number of written words, some of which are
// several terms: a list that grows takes its room twice.
func (s *Stream) Expect(words int) { s.words = make([]int32, 0, min(words+3*words/4, MostWords)) }

// add adds a word by its number.
func (s *Stream) add(n int32) {
	if n > 0 {
		for int(n) >= len(s.at) { // of a whole stream
			s.at = append(s.at, nil)
		}
		s.at[n] = append(s.at[n], int32(len(s.words)))
	}
	s.words = append(s.words, n)
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

// find returns the free stretch that is most like a line: of several the one that
// its speaker says, then the first. A hit has a likeness of at least Least.
func (s *Stream) find(w wanted, t taken) Hit {
	w.words = w.words[:min(len(w.words), longest)]
	if at := s.exact(w, t, 1); len(at) > 0 {
		return Hit{at[0], at[0] + len(w.words), 1}
	}
	var best Hit
	if len(w.words) < few {
		return best // with another word too little of it is left
	}
	for _, c := range s.candidates(w, t) {
		from, to := t.free(c.seed, w.from, w.to)
		h := s.compare(w, max(from, c.start-slack(w.words)), min(to, c.start+len(w.words)+slack(w.words)))
		if h.Likeness >= Least && s.better(w, h, best) && s.fits(w, h) {
			best = h
		}
	}
	return best
}

// better reports whether a hit is more like a line than the best so far.
func (s *Stream) better(w wanted, h, best Hit) bool {
	if h.Likeness != best.Likeness {
		return h.Likeness > best.Likeness
	}
	if by, other := s.saidBy(w, h.Start), s.saidBy(w, best.Start); by != other {
		return by
	}
	return h.extends(best)
}

// slack is how many words may have come in before a line's place is lost.
func slack(line []int32) int { return 2 + len(line)/4 }

// A candidate is where a line may begin.
type candidate struct {
	start int
	seed  int // the first free word there that is one of the line
	votes int
}

// candidates returns where the line may begin: each of its rare words votes for
// the places that would put it right.
func (s *Stream) candidates(w wanted, t taken) []candidate {
	votes := map[int]candidate{}
	for _, i := range s.rarest(w.words, w.from, w.to) {
		places := s.places(w.words[i], w.from, w.to)
		for _, p := range places[:min(len(places), occurrences)] {
			at := int(p)
			if t.overlaps(at, at+1) {
				continue
			}
			c, known := votes[at-i]
			if !known {
				c = candidate{start: at - i, seed: at}
			}
			c.votes, c.seed = c.votes+1, min(c.seed, at)
			votes[at-i] = c
		}
	}
	list := slices.Collect(maps.Values(votes))
	slices.SortFunc(list, func(a, b candidate) int {
		return cmp.Or(cmp.Compare(b.votes, a.votes), cmp.Compare(a.start, b.start))
	})
	list = list[:min(len(list), candidates)]
	slices.SortFunc(list, func(a, b candidate) int { return cmp.Compare(a.start, b.start) })
	return list
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
