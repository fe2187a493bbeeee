// The lines of a shot in subtitles.

package interp

import (
	"math"
	"strings"

	"pullscore/interp/edit"
	"pullscore/interp/speech"
	"pullscore/lang/timecode"
)

// A heard is a spoken line as subtitles have it: its words with their times, in
// seconds from the shot's start where that is known there, else in their own.
type heard struct {
	words    []speech.Timed // those of the plan
	text     string         // the words of the subtitles
	likeness float64
}

func (h *heard) start() float64 { return h.words[0].Start }
func (h *heard) end() float64   { return h.words[len(h.words)-1].End }

// Where lines are looked for around a shot whose place is known: sound may come
// before the picture and stay behind it, and a shot is hardly longer than the
// ten minutes or so of a magazine (common practice, no source).
const (
	soundAround = 30.0 // s
	longestTake = 600.0
)

// findLines looks for the shot's lines in the subtitles; the first file that
// has any counts.
func (s *shotCut) findLines(a *asked) {
	for _, c := range a.cuts {
		if c.IsList {
			continue
		}
		begins := s.list != nil || a.begun
		if begins && c.known {
			from, to := s.span(a)
			perFrame := a.rate.Seconds(1)
			picture := float64(c.picture)
			lo, hi := (from-picture)*perFrame-soundAround, (to-picture)*perFrame+soundAround
			if s.take(findIn(a, c, lo, hi)) {
				s.placed, s.elsewhere = true, nil
				s.shift(a, c)
				return
			}
		}
		anywhere := findIn(a, c, math.Inf(-1), math.Inf(1))
		if s.list != nil && c.known { // the list is surer than any likeness
			if s.elsewhere == nil && anywhere.sure(a) {
				s.elsewhere = anywhere
			}
			continue
		}
		if s.take(anywhere) {
			s.adrift = begins && c.known
			return
		}
	}
}

// A match is the lines of a shot in a part of some subtitles.
type match struct {
	subtitles *cutFile
	lines     map[lineKey]*heard
	first     *heard // in the order of the plan; nil: no line is found
}

// take makes a match what the cuts say, if it has any line.
func (s *shotCut) take(m *match) bool {
	if m.first == nil {
		return false
	}
	s.match = *m
	return true
}

// sure reports whether a match is no chance: most of the lines are found, and
// one of some length.
func (m *match) sure(a *asked) bool {
	wanted, long := 0, false
	for i, key := range keysOf(a.lines) {
		tokens := a.lines[i].tokens
		if len(tokens) > 0 {
			wanted++
		}
		long = long || m.lines[key] != nil && len(tokens) >= 3
	}
	return long && 2*len(m.lines) > wanted
}

// away is how far from the shot's first frame the first line lies, in seconds,
// as the start of the picture in the subtitles is known.
func (m *match) away(rate timecode.Rate, from float64) float64 {
	return m.first.start() - (from-float64(m.subtitles.picture))*rate.Seconds(1)
}

// span is the part of the record that the shot is known to lie in, in frames.
func (s *shotCut) span(a *asked) (from, to float64) {
	if s.list == nil {
		return float64(a.begins), float64(a.begins + a.rate.Frames(longestTake))
	}
	from, to = math.Inf(1), math.Inf(-1)
	for _, c := range s.pieces {
		from, to = min(from, float64(c.RecordIn)), max(to, float64(c.RecordOut))
	}
	return from, to
}

// findIn finds the lines of the shot among the words between two times of the subtitles.
func findIn(a *asked, c *cutFile, lo, hi float64) *match {
	from, to := c.Said.Between(lo, hi)
	lines := a.lines
	folded := make([]speech.Folded, len(lines))
	for i, l := range lines {
		folded[i] = speech.Fold(l.tokens)
	}
	m := &match{subtitles: c, lines: map[lineKey]*heard{}}
	keys := keysOf(lines)
	for i, at := range c.Said.Place(folded, from, to) {
		if !at.Found() || at.End <= at.Start {
			continue
		}
		words := c.Said.Words(at.Start, at.End)
		h := &heard{text: written(words), likeness: at.Likeness}
		h.words = align(lines[i].tokens, folded[i], words)
		m.lines[keys[i]] = h
		if m.first == nil {
			m.first = h
		}
	}
	return m
}

func written(words []edit.Word) string {
	var text strings.Builder
	for _, w := range words {
		text.WriteString(w.Text)
	}
	return strings.Join(strings.Fields(text.String()), " ")
}

// shift counts the times of the lines from the shot's start.
func (s *shotCut) shift(a *asked, c *cutFile) {
	num, den := a.rate.Exact()
	perSecond := float64(num) / float64(den)
	for _, h := range s.lines {
		for i := range h.words {
			w := &h.words[i]
			w.Start = s.timeOf(float64(c.picture)+w.Start*perSecond, a)
			w.End = max(w.Start, s.timeOf(float64(c.picture)+w.End*perSecond, a))
		}
		for i := 1; i < len(h.words); i++ { // across pieces time may jump back
			h.words[i].Start = max(h.words[i].Start, h.words[i-1].End)
			h.words[i].End = max(h.words[i].Start, h.words[i].End)
		}
	}
}

// align gives the words of a line the times of the same words in the subtitles.
// Words between them that differ are spread over the time between by their
// syllables.
func align(tokens []speech.Token, line speech.Folded, words []edit.Word) []speech.Timed {
	said := make(speech.Folded, len(words))
	for i, w := range words {
		said[i] = w.Folded
	}
	timed := make([]speech.Timed, 0, len(tokens))
	at := words[0].Start
	fill := func(to int, until float64) {
		if len(timed) < to {
			timed = append(timed, speech.Spread(tokens[len(timed):to], at, max(at, until))...)
		}
	}
	for _, m := range common(line, said) {
		fill(m.line, words[m.said].Start)
		timed = append(timed, speech.Timed{Token: tokens[m.line], Start: words[m.said].Start, End: words[m.said].End})
		at = words[m.said].End
	}
	fill(len(tokens), words[len(words)-1].End)
	return timed
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
