// The lines of a shot that is in a list, counted from the start of the shot.
//
// What is hard. A line may lie across the end of a piece: its sound begins before its
// picture or goes on behind it, over another shot or over another piece of the same. The
// pieces on both sides show different times of the shot, so if every word took the time of
// the piece that it falls in, the line would be torn into two.
//
// What is done. What is heard has been cut like any other track, and where the list has
// that track, it says of each word which part of the source it is. Where the list has the
// picture alone, a line is whole, and stands as the piece has it that shows most of it:
// somebody who speaks on while the picture is cut is the common case. Nobody is heard
// across a cut that falls between two subtitles, though: there the sound may well have
// been cut with the picture, as where a pause was taken out, and each part of the line
// stands in its own piece.
//
// What was rejected. To let every word stand in the piece that it falls in, which is right
// only where the sound is cut with the picture. To look for the place at which the line
// leaves the least gap to its neighbours: that is the plan's own clock, and a cut is
// followed because it knows better.

package cut

import (
	"math"
	"slices"

	"pullscore/interp/edit"
	"pullscore/interp/plan"
	"pullscore/interp/speech"
)

// edgeSlack is how far a cut may lie from the edge of a subtitle that is meant to lie on
// it, in frames.
const edgeSlack = 2

// placeLines counts the times of all lines from the shot's start.
func (s *Shot) placeLines() {
	first := s.First
	lines := make(map[lineKey]*Heard, len(s.Lines))
	for key, h := range s.Lines {
		lines[key] = s.placed(h)
		if h == first {
			s.First = lines[key]
		}
	}
	s.Lines = lines
}

// placed returns a line with its times from the shot's start.
func (s *Shot) placed(h *Heard) *Heard {
	next := *h
	next.Words = make([]speech.Timed, len(h.said))
	from := 0
	for _, to := range append(s.cutAt(h), len(h.said)) {
		if to <= from {
			continue
		}
		piece := s.placePart(h.said[from:to], next.Words[from:to])
		if from == 0 {
			next.piece = piece
		}
		from = to
	}
	for i := 1; i < len(next.Words); i++ { // across pieces time may jump back
		next.Words[i].Start = max(next.Words[i].Start, next.Words[i-1].End)
		next.Words[i].End = max(next.Words[i].Start, next.Words[i].End)
	}
	return &next
}

// record returns the frame of the record of a time of the subtitles.
func (s *Shot) record(t float64) float64 {
	num, den := s.asked.Speed.Rate.Exact()
	return float64(s.Subtitles.Picture) + t*(float64(num)/float64(den))
}

// cutAt returns the words of a line before which its sound may have been cut: those that
// begin a subtitle, between which and the word before it the picture is cut.
func (s *Shot) cutAt(h *Heard) (words []int) {
	for _, e := range h.edges {
		ends, begins := s.record(e.Ends)-edgeSlack, s.record(e.Begins)+edgeSlack
		isCut := false
		for i := 0; i+1 < len(s.Pieces) && !isCut; i++ {
			isCut = float64(s.Pieces[i].Out) >= ends && float64(s.Pieces[i+1].In) <= begins
		}
		if i := slices.IndexFunc(h.said, func(w speech.Timed) bool { return w.Start >= e.Begins-1e-9 }); isCut && i > 0 {
			words = append(words, i)
		}
	}
	return words
}

// placePart gives words that are heard in one go their times from the shot's start. It
// returns the piece that has the first of them, -1 where no list has the shot.
func (s *Shot) placePart(said, words []speech.Timed) (piece int) {
	piece = s.pieceOf(s.record(said[0].Start), s.record(said[len(said)-1].End))
	heard := s.heardIn(said)
	for i, w := range said {
		at := func(t float64) float64 { return s.timeIn(piece, t) }
		if heard != nil {
			at = heard[i].time(s)
		}
		words[i] = speech.Timed{Token: w.Token, Start: at(s.record(w.Start))}
		words[i].End = max(words[i].Start, at(s.record(w.End)))
	}
	if heard != nil {
		return heard[0].piece
	}
	return piece
}

// pieceOf returns the piece that shows the most of a stretch of the record, in frames; of
// none that shows any of it, the nearest.
func (s *Shot) pieceOf(from, to float64) int {
	best, most := -1, math.Inf(-1)
	for i := range s.Pieces {
		in, out := float64(s.Pieces[i].In), float64(s.Pieces[i].Out)
		if shows := min(to, out) - max(from, in); shows > most { // below 0 it is how far away it is
			best, most = i, shows
		}
	}
	return best
}

// timeIn returns the time from the shot's start of a frame of the record, as a piece has
// it; beyond the piece only the clock goes on.
func (s *Shot) timeIn(piece int, record float64) float64 {
	at := s.asked.Speed
	if piece < 0 {
		return at.Of(record - float64(s.asked.Begins))
	}
	p := &s.Pieces[piece]
	inside := min(max(record, float64(p.In)), float64(p.Out))
	return p.ShotTime(inside, at) + at.Of(record-inside)
}

// A sound is an event of the list that is heard, with the piece of the shot whose source
// it goes on.
type sound struct {
	*edit.Piece
	piece int
}

// time returns how frames of the record that are heard in it count from the shot's start.
// Sound that runs with its picture counts as that does.
func (h sound) time(s *Shot) func(record float64) float64 {
	p := &s.Pieces[h.piece]
	inStep := float64(p.Source) + float64(h.RecordIn-p.In)*float64(p.Speed)
	if h.Speed == float64(p.Speed) && math.Abs(inStep-float64(h.SourceIn)) < 0.5 {
		return func(record float64) float64 { return s.timeIn(h.piece, record) }
	}
	return func(record float64) float64 {
		source := float64(h.SourceIn) + (record-float64(h.RecordIn))*h.Speed
		return p.Begins + s.asked.Speed.Of(source-float64(p.Source))
	}
}

// heardIn returns of each word the sound that it is heard in; nil where the list has none
// for them. A word between two sounds counts as the one before it does.
func (s *Shot) heardIn(said []speech.Timed) []sound {
	list := make([]sound, len(said))
	first := -1
	for i, w := range said {
		middle := s.record((w.Start + w.End) / 2)
		k := slices.IndexFunc(s.sounds, func(h sound) bool { return middle >= float64(h.RecordIn) && middle < float64(h.RecordOut) })
		switch {
		case k >= 0 && first < 0:
			first = i
			list[i] = s.sounds[k]
		case k >= 0:
			list[i] = s.sounds[k]
		case first >= 0:
			list[i] = list[i-1]
		}
	}
	if first < 0 {
		return nil
	}
	for i := range first {
		list[i] = list[first]
	}
	return list
}

// findSounds finds what the list has of the sound of the shot. A sound is of the piece of
// the same name and reel whose source is nearest, if it can be of the same take.
func (s *Shot) findSounds() {
	heard := s.List.Heard(s.asked.ID)
	for i := range heard {
		best, nearest := -1, s.asked.Long+setUp
		from, to := source(&heard[i], s.asked)
		for k := range s.Pieces {
			p := &s.Pieces[k]
			if edit.Bare(p.Clip) != edit.Bare(heard[i].Name) || edit.Fold(p.Reel) != edit.Fold(heard[i].Reel) {
				continue
			}
			in, out := s.sourceOf(p)
			if away := max(from-out, in-to); away < nearest { // below 0 they share some
				best, nearest = k, away
			}
		}
		if best >= 0 {
			s.sounds = append(s.sounds, sound{&heard[i], best})
		}
	}
}

// sourceOf returns the part of the source that a piece shows, in seconds.
func (s *Shot) sourceOf(p *plan.Piece) (from, to float64) {
	in := s.asked.Speed.Rate.Seconds(p.Source)
	out := in + s.asked.Speed.Rate.Seconds(p.Frames())*float64(p.Speed)
	return min(in, out), max(in, out)
}
