package plans

import (
	"fmt"

	"pgregory.net/rapid"

	"pullscore/interp/plan"
)

// Recut is ThreeRacks as a cut shows it that has taken out the second rack with its cue,
// and a part of the last one's hold, in three pieces.
func Recut() *plan.Shot { return Pieces(ThreeRacks(), 0, 4.75, 8.25, 10.5, 11, 11.9) }

// Pieces has the cut show a shot from the first of each two times to the second, one piece
// behind the other in the record from one o'clock, and returns the shot.
func Pieces(s *plan.Shot, times ...float64) *plan.Shot {
	at := s.Speed()
	record := 3600 * s.Rate.Base()
	s.Begins, s.BeginsAt = record, s.Rate.Format(record)
	for i := 0; i+1 < len(times); i += 2 {
		from, to := at.Seconds(at.Frames(times[i])), at.Seconds(at.Frames(times[i+1]))
		long := at.Frames(to - from)
		p := plan.Piece{
			Number: i/2 + 1, Clip: s.ID, Speed: 1, Main: true, Line: 3 + i, From: plan.Number(from), To: plan.Number(to), Begins: from,
			In: record, Out: record + long, Source: 10*record + at.Frames(from),
		}
		record += long
		p.RecordIn, p.RecordOut, p.SourceIn = s.Rate.Format(p.In), s.Rate.Format(p.Out), s.Rate.Format(p.Source)
		s.Pieces = append(s.Pieces, p)
	}
	for i, p := range s.Pulls {
		s.Pulls[i].InCut = s.InCut(float64(p.Start), float64(p.Land), false)
	}
	for i, l := range s.Lines {
		s.Lines[i].InCut = s.InCut(float64(l.Start), float64(l.End), false)
	}
	for i, c := range s.Cues {
		s.Cues[i].InCut = s.InCut(float64(c.T), float64(c.T), false)
	}
	if !s.Recut() {
		panic(fmt.Sprint("the cut shows all of it: ", times))
	}
	return s
}

// DrawCut has a cut show some of a shot, where it is long enough, and returns the shot.
func DrawCut(t *rapid.T, s *plan.Shot) *plan.Shot {
	var times []float64
	at := 0.0
	for range rapid.IntRange(1, 4).Draw(t, "pieces") {
		from := at + rapid.Float64Range(0, 0.4).Draw(t, "removed")*float64(s.Duration)
		to := from + rapid.Float64Range(0.02, 0.5).Draw(t, "shown")*float64(s.Duration)
		if from = max(from, at+0.2); to > from+0.2 && to < float64(s.Duration) {
			times, at = append(times, from, to), to
		}
	}
	if len(times) < 4 {
		return s
	}
	return Pieces(s, times...)
}
