// The lines of a shot in subtitles.

package cut

import (
	"math"
	"strings"

	"pullscore/interp/edit"
	"pullscore/interp/speech"
	"pullscore/interp/wording"
	"pullscore/lang/timecode"
)

// A Heard is a spoken line as subtitles have it: its words with their times, in
// seconds from the shot's start where that is known there, else in their own.
type Heard struct {
	Words    []speech.Timed // those of the plan
	Text     string         // the words of the subtitles
	Likeness float64
	// Labelled tells that a label stands before them, and Label is whom of the plan it
	// names; empty: somebody else.
	Labelled bool
	Label    string

	said  []speech.Timed // the words in the time of the subtitles
	edges []edit.Edge    // where subtitles begin within the line, likewise
	piece int            // the piece of the shot that has the first word
}

// Start returns when the first word begins, in seconds.
func (h *Heard) Start() float64 { return h.Words[0].Start }

// End returns when the last word ends, in seconds.
func (h *Heard) End() float64 { return h.Words[len(h.Words)-1].End }

// Where lines are looked for around a shot whose place is known: sound may come
// before the picture and stay behind it, and a shot is hardly longer than the
// ten minutes or so of a magazine (common practice, no source).
const (
	soundAround = 30.0 // s
	longestTake = 600.0
)

// findLines looks for the shot's lines in the subtitles; the first file that
// has any counts.
func (s *Shot) findLines(a *Asked) {
	for _, c := range a.Cuts {
		if c.IsList {
			continue
		}
		begins := s.List != nil || a.Begun
		if begins && c.Known {
			from, to := s.span(a)
			perFrame := a.Speed.Rate.Seconds(1)
			picture := float64(c.Picture)
			lo, hi := (from-picture)*perFrame-soundAround, (to-picture)*perFrame+soundAround
			if s.take(findIn(a, c, lo, hi)) {
				s.Placed, s.Elsewhere = true, nil
				s.placeLines()
				return
			}
		}
		anywhere := findIn(a, c, math.Inf(-1), math.Inf(1))
		if s.List != nil && c.Known { // the list is surer than any likeness
			if s.Elsewhere == nil && anywhere.sure(a) {
				s.Elsewhere = anywhere
			}
			continue
		}
		if s.take(anywhere) {
			s.Adrift = begins && c.Known
			return
		}
	}
}

// A match is the lines of a shot in a part of some subtitles.
type match struct {
	Subtitles *File
	Lines     map[lineKey]*Heard
	First     *Heard // in the order of the plan; nil: no line is found
}

// take makes a match what the cuts say, if it has any line.
func (s *Shot) take(m *match) bool {
	if m.First == nil {
		return false
	}
	s.match = *m
	return true
}

// sure reports whether a match is no chance: most of the lines are found, and
// one of some length.
func (m *match) sure(a *Asked) bool {
	wanted, long := 0, false
	for i, key := range KeysOf(a.Lines) {
		tokens := a.Lines[i].Tokens
		if len(tokens) > 0 {
			wanted++
		}
		long = long || m.Lines[key] != nil && len(tokens) >= 3
	}
	return long && 2*len(m.Lines) > wanted
}

// Away is how far from the shot's first frame the first line lies, in seconds,
// as the start of the picture in the subtitles is known.
func (m *match) Away(rate timecode.Rate, from float64) float64 {
	return m.First.Start() - (from-float64(m.Subtitles.Picture))*rate.Seconds(1)
}

// span is the part of the record that the shot is known to lie in, in frames.
func (s *Shot) span(a *Asked) (from, to float64) {
	if s.List == nil {
		return float64(a.Begins), float64(a.Begins + a.Speed.Rate.Frames(longestTake))
	}
	from, to = math.Inf(1), math.Inf(-1)
	for _, c := range s.Pieces {
		from, to = min(from, float64(c.In)), max(to, float64(c.Out))
	}
	return from, to
}

// findIn finds the lines of the shot among the words between two times of the subtitles.
func findIn(a *Asked, c *File, lo, hi float64) *match {
	from, to := c.Said.Between(lo, hi)
	lines := a.Lines
	wanted := make([]wording.Line, len(lines))
	folded := make([]speech.Folding, len(lines))
	for i, l := range lines {
		text := ""
		if l.Stmt.Words != nil {
			text = l.Stmt.Words.Value
		}
		folded[i] = speech.FoldText(text)
		wanted[i] = wording.Line{Text: text, Terms: folded[i].Folded, By: c.Said.Who(l.Who)}
	}
	m := &match{Subtitles: c, Lines: map[lineKey]*Heard{}}
	keys := KeysOf(lines)
	for i, at := range c.Said.PlaceSaid(wanted, from, to) {
		if !at.Found() || at.End <= at.Start {
			continue
		}
		words := c.Said.Words(at.Start, at.End)
		h := &Heard{Text: written(words), Likeness: at.Likeness}
		h.Words = align(lines[i].Tokens, folded[i], words)
		h.said, h.edges = h.Words, c.Said.Edges(at.Start, at.End)
		h.Label, h.Labelled = c.Said.Label(at.Start)
		m.Lines[keys[i]] = h
		if m.First == nil {
			m.First = h
		}
	}
	return m
}

func written(words []edit.Word) string {
	var text strings.Builder
	for i, w := range words {
		if i == 0 || w.Part == 0 {
			text.WriteString(w.Text)
		}
	}
	return strings.Join(strings.Fields(text.String()), " ")
}
