// The pieces of a shot: its events in the lists, laid into the time of the shot.

package cut

import (
	"math"
	"slices"

	"pullscore/interp/edit"
	"pullscore/interp/plan"
	"pullscore/lang/timecode"
)

// piecesOf returns the events of a shot, which are in the order of the record, as pieces
// that are not laid yet. Those that go on without a jump are one, and so is an event that
// the list has twice.
func piecesOf(clips []edit.Piece, file string) []plan.Piece {
	pieces := make([]plan.Piece, 0, len(clips))
	for i := range clips {
		next := pieceOf(&clips[i], file)
		switch n := len(pieces) - 1; {
		case n < 0 || !goesOn(&pieces[n], &next) && !same(&pieces[n], &next):
			pieces = append(pieces, next)
		default:
			pieces[n].Out = next.Out
		}
	}
	return pieces
}

// lay lays the pieces of a shot into shot time. Those of the main take, which is the one
// with the most frames in the cut, of equals the first, lie to each other as their source
// does. Those of another take go on where the piece before them ends, but for those that
// stand elsewhere: so many seconds from the first frame that is used of the main take.
// Where another take comes first, it ends where the next piece begins.
//
// Shot time begins with the earliest frame that is shown: the first that is used of the
// main take, or where another take comes before that, the first of that. So no piece lies
// before 0, and what counts the frames of a shot from its start has them all. zero is when
// the first frame of the main take is, in seconds.
func lay(pieces []plan.Piece, at timecode.Speed, stand map[int]float64) (zero float64) {
	source := origin(pieces)
	first := slices.IndexFunc(pieces, func(p plan.Piece) bool { return p.Main })
	long := func(p *plan.Piece) float64 { return at.Of(float64(p.Frames()) * float64(p.Speed)) }
	for i := range pieces {
		p := &pieces[i]
		if t, stands := stand[i]; stands {
			p.Begins = t
		} else if p.Main {
			p.Begins = at.Of(float64(p.Source) - source)
		} else if i > first {
			p.Begins = pieces[i-1].End(at)
		}
	}
	of := looseOf(pieces)
	for i := first - 1; i >= 0; i-- { // of another take, and before the main one
		p := &pieces[i]
		t, stands := stand[max(of[i], 0)]
		if !stands || of[i] < 0 {
			p.Begins = pieces[i+1].Begins - long(p)
			continue
		}
		for k := of[i]; k < i; k++ {
			t += long(&pieces[k])
		}
		p.Begins = t
	}
	earliest := 0.0
	for i := range pieces {
		earliest = min(earliest, pieces[i].Begins, pieces[i].End(at))
	}
	for i := range pieces {
		pieces[i].Begins -= earliest
		label(&pieces[i], i+1, at)
	}
	return -earliest
}

// pieceOf returns an event as a piece that is not laid yet.
func pieceOf(c *edit.Piece, file string) plan.Piece {
	return plan.Piece{
		Take: c.Take, Clip: c.Name, Reel: c.Reel, Speed: plan.Number(c.Speed), Line: c.Range.Start.Line, File: file,
		In: c.RecordIn, Out: c.RecordOut, Source: c.SourceIn, TakeFrom: c.From, TakeTo: c.To,
	}
}

// goesOn reports whether an event goes on where a piece ends: in the record, in the
// source, in the take and in speed.
func goesOn(p, next *plan.Piece) bool {
	const half = 0.5 // of a frame: sources of other speeds end between two
	ends := float64(p.Source) + float64(p.Frames())*float64(p.Speed)
	return p.Joined(next) && p.Clip == next.Clip && p.Reel == next.Reel && p.Take == next.Take && p.Speed == next.Speed &&
		math.Abs(ends-float64(next.Source)) < half
}

// same reports whether an event is the same as a piece, but for its line.
func same(p, next *plan.Piece) bool {
	is := *next
	is.Line = p.Line
	return *p == is
}

// origin marks the pieces of the main take, and returns the first frame of the source
// that is used of it.
func origin(pieces []plan.Piece) float64 {
	used := map[string]int64{}
	for i := range pieces {
		used[pieces[i].Take] += pieces[i].Frames()
	}
	main, most := "", int64(-1)
	for i := range pieces {
		if n := used[pieces[i].Take]; n > most {
			main, most = pieces[i].Take, n
		}
	}
	zero := math.Inf(1)
	for i := range pieces {
		p := &pieces[i]
		if p.Main = p.Take == main; p.Main {
			last := float64(p.Source) + float64(p.Frames()-1)*min(float64(p.Speed), 0)
			zero = min(zero, float64(p.Source), math.Floor(last))
		}
	}
	return zero
}

// label fills in what a piece says in words, and what of the shot it shows.
func label(p *plan.Piece, number int, at timecode.Speed) {
	begins, ends := p.Begins, p.End(at)
	p.Number, p.From, p.To = number, plan.Number(min(begins, ends)), plan.Number(max(begins, ends))
	p.RecordIn, p.RecordOut, p.SourceIn = at.Rate.Format(p.In), at.Rate.Format(p.Out), at.Rate.Format(p.Source)
}

// begin returns the frame of the record at which the shot is at its start, by the piece
// that shows the earliest of it; of the main take, where several do.
func begin(pieces []plan.Piece, at timecode.Speed) int64 {
	first := &pieces[0]
	for i := range pieces {
		if p := &pieces[i]; p.From < first.From || p.From == first.From && p.Main && !first.Main {
			first = p
		}
	}
	if first.Speed == 0 {
		return first.In
	}
	return first.In - int64(math.Round(first.Begins*at.PerSecond()/float64(first.Speed)))
}

// Takes returns the takes that pieces are of, in the order of the record.
func Takes(pieces []plan.Piece) (takes []string) {
	for i := range pieces {
		if take := pieces[i].Take; take != "" && !slices.Contains(takes, take) {
			takes = append(takes, take)
		}
	}
	return takes
}
