// Where shots lie in the record: as the cut shows them, piece by piece, or as the plan
// has them.

package export

import (
	"cmp"
	"math"
	"slices"

	"pullscore/interp/plan"
)

// A placed shot is a shot in the record, or a piece of one.
type placed struct {
	*plan.Shot
	piece   *plan.Piece // nil: the shot as the plan has it
	in, out int64       // frames
}

// place lays the shots of a plan into the record. Of those that a list has, every piece
// lies where the list has it. The others lie where they begin, if all of them say so,
// else one behind the other: from 00:00:00:00, or from the end of the cut.
func place(p *plan.Plan) (list []placed) {
	timed, at := true, int64(0)
	for _, s := range p.Shots {
		if !byPieces(s) {
			timed = timed && s.BeginsAt != ""
			continue
		}
		for i := range s.Pieces {
			piece := &s.Pieces[i]
			list = append(list, placed{s, piece, piece.In, piece.Out})
			at = max(at, piece.Out)
		}
	}
	for _, s := range p.Shots {
		if byPieces(s) {
			continue
		}
		length := max(1, int64(len(Frames(s))))
		if timed {
			at = s.Begins
		}
		list = append(list, placed{s, nil, at, at + length})
		at += length
	}
	slices.SortStableFunc(list, func(a, b placed) int { return cmp.Compare(a.in, b.in) })
	return list
}

// byPieces reports whether a shot is written as the cut shows it.
func byPieces(s *plan.Shot) bool { return len(s.Pieces) > 0 }

// Away returns how many moves of the focus of a shot the cut does not show.
func Away(s *plan.Shot) (n int) {
	for _, p := range s.Pulls {
		if p.IsRemoved() {
			n++
		}
	}
	return n
}

// name returns what the clip is called.
func (s placed) name() string {
	if s.piece != nil && s.piece.Clip != "" {
		return s.piece.Clip
	}
	return s.ID
}

// source returns the first frame of the source, in its own order, and the first that is
// no longer used.
func (s placed) source() (in, out int64) {
	if s.piece == nil {
		return s.in, s.out
	}
	in = s.piece.Source
	switch n := math.Round(float64(s.piece.Frames()) * float64(s.piece.Speed)); {
	case n > 0:
		return in, in + int64(n)
	case n < 0: // it begins with its last frame
		return in + 1 + int64(n), in + 1
	}
	return in, in + 1
}

// speed returns the speed of the piece, frames of the source in one of the record.
func (s placed) speed() float64 {
	if s.piece == nil {
		return 1
	}
	return float64(s.piece.Speed)
}

// reel returns the reel that the list gives the piece; "" where it gives none.
func (s placed) reel() string {
	if s.piece == nil {
		return ""
	}
	return s.piece.Reel
}
