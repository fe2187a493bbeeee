// The words of a line in the time that subtitles give to the same words.

package cut

import (
	"pullscore/interp/edit"
	"pullscore/interp/speech"
)

// A unit is a term of a line, or a word without one, which subtitles cannot have.
type unit struct {
	word   int // its word
	term   int // its place among the terms; -1: none
	weight float64
}

// unitsOf returns the units of a line in their order. The terms of a word have equal
// parts of its syllables.
func unitsOf(tokens []speech.Token, line speech.Folding) (units []unit) {
	term := 0
	for i := range tokens {
		n := line.Count[i]
		if n == 0 {
			units = append(units, unit{i, -1, float64(tokens[i].Syllables)})
		}
		for range n {
			units = append(units, unit{i, term, float64(tokens[i].Syllables) / float64(n)})
			term++
		}
	}
	return units
}

// A stretch of time, in seconds.
type timed struct{ start, end float64 }

// align gives the words of a line the times of the same words in the subtitles.
// Words between them that differ are spread over the time between by their
// syllables.
func align(tokens []speech.Token, line speech.Folding, words []edit.Word) []speech.Timed {
	said := make(speech.Folded, len(words))
	for i, w := range words {
		said[i] = w.Folded
	}
	units := unitsOf(tokens, line)
	at := words[0].Start
	times := make([]timed, 0, len(units))
	fill := func(to int, until float64) {
		times = append(times, spread(units[len(times):to], at, max(at, until))...)
	}
	place := make([]int, len(line.Folded)) // of each term in the units
	for i, u := range units {
		if u.term >= 0 {
			place[u.term] = i
		}
	}
	for _, m := range common(line.Folded, said) {
		w := words[m.said]
		fill(place[m.line], w.Start)
		times = append(times, timed{w.Start, w.End})
		at = w.End
	}
	fill(len(units), words[len(words)-1].End)
	list := make([]speech.Timed, len(tokens))
	for i, u := range units {
		if i == 0 || units[i-1].word != u.word {
			list[u.word] = speech.Timed{Token: tokens[u.word], Start: times[i].start}
		}
		list[u.word].End = times[i].end
	}
	return list
}

// spread spreads units over a time by their syllables.
func spread(units []unit, start, end float64) []timed {
	total, done := 0.0, 0.0
	for _, u := range units {
		total += u.weight
	}
	list := make([]timed, len(units))
	at := start
	for i, u := range units {
		done += u.weight
		next := end
		if i < len(units)-1 {
			next = start + (end-start)*done/total
		}
		list[i] = timed{at, next}
		at = next
	}
	return list
}

// A pair is a word of a line and the same word of the subtitles.
type pair struct{ line, said int }

// mostCompared bounds the work on one line; longer ones are spread as a whole.
const mostCompared = 1_000_000

// common returns a longest common subsequence of two lists of words.
func common(line, said speech.Folded) (list []pair) {
	n, m := len(line), len(said)
	if n*m > mostCompared {
		return nil
	}
	length := make([][]int, n+1) // of the rest from i and j on
	for i := range length {
		length[i] = make([]int, m+1)
	}
	for i := n - 1; i >= 0; i-- {
		for j := m - 1; j >= 0; j-- {
			if line[i] == said[j] {
				length[i][j] = length[i+1][j+1] + 1
			} else {
				length[i][j] = max(length[i+1][j], length[i][j+1])
			}
		}
	}
	for i, j := 0, 0; i < n && j < m; {
		switch {
		case line[i] == said[j]:
			list = append(list, pair{i, j})
			i, j = i+1, j+1
		case length[i+1][j] >= length[i][j+1]:
			i++
		default:
			j++
		}
	}
	return list
}
