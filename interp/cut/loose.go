// Pieces of another take whose place in the shot the record does not say.
//
// Where a piece of another take follows a piece of the shot without a gap, the shot goes on
// in it: the cutter went from one take to the other in the middle of what happens. Where
// something else lies between, only what is said in the piece tells which part of the shot
// it is. Its first line that the subtitles have stands where the plan's clock has it after
// the line before. That clock knows lenses, hands and pauses, and belongs to another
// package. So such a shot is found first without the lines of these pieces, for the clock
// to run as if the cut did not have them, and then settled by what the clock says of them.

package cut

import (
	"maps"
	"math"
	"slices"

	"pullscore/interp/plan"
)

// looseOf returns of each piece the one by whose place it is laid, where only its lines
// can tell that; -1 for the others.
func looseOf(pieces []plan.Piece) []int {
	of := make([]int, len(pieces))
	goesInto := true // from here on the record goes into the main take without a gap
	first := slices.IndexFunc(pieces, func(p plan.Piece) bool { return p.Main })
	for i := first - 1; i >= 0; i-- {
		if goesInto = goesInto && pieces[i].Joined(&pieces[i+1]); goesInto {
			of[i] = -1
		} else {
			of[i] = i
		}
	}
	for i := range pieces {
		switch follows := i > 0 && pieces[i-1].Joined(&pieces[i]); {
		case pieces[i].Main:
			of[i] = -1
		case follows:
			of[i] = of[i-1]
		case i > first:
			of[i] = i
		}
	}
	return of
}

// loose returns of each line the piece by whose place it is laid; -1 for those whose place
// is known.
func (s *Shot) loose() map[lineKey]int {
	if s.List == nil || !s.Placed || len(s.Pieces) < 2 {
		return nil
	}
	of, lines := looseOf(s.Pieces), map[lineKey]int{}
	for key, h := range s.Lines {
		if piece := of[h.piece]; piece >= 0 {
			lines[key] = piece
		}
	}
	return lines
}

// Anchored returns what the cuts say of the shot but for the lines of pieces whose place
// the record does not say; nil where there are no such lines.
func (s *Shot) Anchored() *Shot {
	loose := s.loose()
	if len(loose) == 0 {
		return nil
	}
	rest := *s
	rest.Lines, rest.First = maps.Clone(s.Lines), nil
	for _, key := range KeysOf(s.asked.Lines) {
		if _, is := loose[key]; is {
			delete(rest.Lines, key)
		} else if h := rest.Lines[key]; h != nil && rest.First == nil {
			rest.First = h
		}
	}
	return &rest
}

// A Span is when a clock has a line, in seconds from the shot's start.
type Span struct {
	Start, End float64
	Timed      bool
}

// Settle returns the shot with pieces whose place the record does not say where a clock
// has their first lines. The clock went by what Anchored returned.
func (s *Shot) Settle(lines []Said, by []Span) *Shot {
	loose, keys := s.loose(), KeysOf(lines)
	stand := map[int]float64{} // where loose pieces begin, from the first frame of the main take
	moved := map[int]float64{} // by how much that moves them
	for i, key := range keys {
		piece, is := loose[key]
		if _, known := moved[piece]; !is || known || s.firstOf(piece, loose) != key || !by[i].Timed {
			continue
		}
		at := by[i].Start
		if i > 0 && s.Lines[keys[i-1]] != nil { // where the line before ends, as the cut has that
			if before, is := loose[keys[i-1]]; is && by[i-1].Timed {
				if off, known := moved[before]; known {
					at += s.Lines[keys[i-1]].End() + off - by[i-1].End
				}
			}
		}
		moved[piece] = at - s.Lines[key].Start()
		stand[piece] = s.Pieces[piece].Begins + moved[piece] - s.zero
	}
	next := *s
	next.Pieces = slices.Clone(s.Pieces)
	next.settle(stand)
	next.findCues(s.asked)
	next.placeLines()
	return &next
}

// firstOf returns the line that is heard first in a loose piece, or in what goes on from it.
func (s *Shot) firstOf(piece int, loose map[lineKey]int) (first lineKey) {
	earliest := math.Inf(1)
	for key, of := range loose {
		if h := s.Lines[key]; of == piece && h.said[0].Start < earliest {
			first, earliest = key, h.said[0].Start
		}
	}
	return first
}
