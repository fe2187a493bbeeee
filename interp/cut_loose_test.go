// Tests of pieces of another take that do not follow a piece of the shot in the record.

package interp_test

import (
	"testing"

	"pullscore/interp/plan"
)

// pieceFrom returns where the pieces of a shot begin.
func pieceFrom(s *plan.Shot) (list []float64) {
	for _, p := range s.Pieces {
		list = append(list, float64(p.From))
	}
	return list
}

// A piece of another take behind a gap stands by its first line: where the plan's clock has
// that after the line before. What goes on from it goes with it. A piece in which nothing
// is said goes on from the one before it.
func TestLoosePiece(t *testing.T) {
	main := cutEvent{"V", "1 TK 1", "A1", 0, 0, 7}
	other := cutEvent{"V", "2", "B1", 7, 0, 2}
	loose := cutEvent{"V", "1 TK 2", "A2", 9, 300, 4}
	third := cutEvent{"V", "1 TK 3", "A3", 13, 500, 2}
	said := []any{1., 3., "You kept the lamp.", 4., 6., "It was never mine to keep."}
	// Behind the second line there are a pause of 2 s by the plan.
	s := laid(listOf(main, other, loose, third), srt(append(said, 10., 12., "Then whose name is on the paper?")...))
	if from := pieceFrom(s); len(from) != 3 || !nearly(s.Lines[2].Start, 8) || !nearly(s.Pieces[1].From, 7) || !nearly(s.Pieces[2].From, 11) {
		t.Errorf("said at once: pieces from %v, the line at %v", from, s.Lines[2].Start)
	}
	s = laid(listOf(main, other, loose, third), srt(append(said, 9.5, 11.5, "Then whose name is on the paper?")...))
	if from := pieceFrom(s); len(from) != 3 || !nearly(s.Lines[2].Start, 8) || !nearly(s.Pieces[1].From, 7.5) || !nearly(s.Pieces[2].From, 11.5) {
		t.Errorf("said sooner: pieces from %v, the line at %v", from, s.Lines[2].Start)
	}
	if record, ok := s.RecordAt(8); !ok || s.Rate.Format(record) != "01:00:09:12" {
		t.Errorf("it is said at %s in the record", s.Rate.Format(record))
	}
	s = laid(listOf(main, other, loose, third), srt(said...))
	if from := pieceFrom(s); len(from) != 3 || from[1] != 7 || from[2] != 11 {
		t.Errorf("in silence: pieces from %v", from)
	}
}

// A line is missing between: the piece stands where the plan has its line behind that.
func TestLoosePieceBehindAMissingLine(t *testing.T) {
	list := listOf(cutEvent{"V", "1 TK 1", "A1", 0, 0, 7}, cutEvent{"V", "2", "B1", 7, 0, 2}, cutEvent{"V", "1 TK 2", "A2", 9, 300, 4})
	said := []any{1., 3., "You kept the lamp.", 4., 6., "It was never mine to keep."}
	planned := laid(list, srt(said...)).Lines[3].Start
	s := laid(list, srt(append(said, 10., 12., "My brother wrote it in winter.")...))
	if got := s.Lines[3].Start; !nearly(got, float64(planned)) || planned < 9 || !nearly(s.Pieces[1].From, float64(planned)-1) {
		t.Errorf("it is said at %v, want %v; pieces from %v", got, planned, pieceFrom(s))
	}
}

// A swapped piece of another take comes back before what follows it in the plan, and the
// shot begins with it.
func TestLoosePieceBeforeTheMainTake(t *testing.T) {
	main := cutEvent{"V", "1 TK 1", "A1", 0, 0, 8}
	list := listOf(main, cutEvent{"V", "2", "B1", 8, 0, 2}, cutEvent{"V", "1 TK 2", "A2", 10, 300, 4})
	s := laid(list, srt(1., 3., "My brother wrote it in winter.", 4., 5., "Put it out.", 11., 13., "You kept the lamp."))
	// The three lines that the cut lacks, or has later, end where it has the fourth.
	first, fourth := s.Lines[0], s.Lines[3]
	if first.Start >= fourth.Start || s.Pieces[1].From != 0 || !nearly(first.Start, 1) || s.Pieces[0].From <= 4 || !nearly(fourth.Start, float64(s.Pieces[0].From)+1) {
		t.Errorf("the first line is at %v, the fourth at %v; pieces from %v", first.Start, fourth.Start, pieceFrom(s))
	}
	if !nearly(s.Duration, float64(s.Pieces[0].To)) {
		t.Errorf("it lasts %v of %v", s.Duration, s.Pieces[0].To)
	}
}

// Two loose pieces: the second stands behind the first as the cut has that one's line.
func TestTwoLoosePieces(t *testing.T) {
	list := listOf(cutEvent{"V", "1 TK 1", "A1", 0, 0, 7}, cutEvent{"V", "2", "B1", 7, 0, 2}, cutEvent{"V", "1 TK 2", "A2", 9, 300, 6},
		cutEvent{"V", "2", "B1", 15, 0, 2}, cutEvent{"V", "1 TK 3", "A3", 17, 500, 4})
	s := laid(list, srt(1., 3., "You kept the lamp.", 4., 6., "It was never mine to keep.",
		10., 15., "Then whose name is on the paper?", 18., 20., "My brother wrote it in winter."))
	third, fourth := s.Lines[2], s.Lines[3]
	gap := float64(fourth.Start - third.End) // another speaker waits a little
	if !nearly(third.Start, 8) || !nearly(third.End, 13) || gap < 0.05 || gap > 0.6 || !nearly(s.Pieces[2].From, float64(fourth.Start)-1) {
		t.Errorf("the third line is at %v to %v, the fourth at %v; pieces from %v", third.Start, third.End, fourth.Start, pieceFrom(s))
	}
}
