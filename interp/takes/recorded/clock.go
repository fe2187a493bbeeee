// Which clock the timecode of a recording is of, and the shot time of its frames.
//
// What is hard. A table of frames says 14:20:10:00 and does not say whose that is. A
// recorder on the set counts with the camera: source. A curve that was taken from the
// edit counts with the cut: record. A camera that runs from zero counts shot time. A
// wrong guess would score another part of the shot without a word.
//
// What is done. The plan knows where the shot lies on each clock, by its pieces
// (plan/piece.go). A clock fits if the whole recording lies where the shot is by it. A
// recording by source may begin before the part that is used and end behind it, so the
// source of a take is widened: to the row that a list of clips has of it, else by a minute. Where both clocks fit and give other times, or none
// does, the user is asked. By source the whole take is scored, also what the cut has
// removed. By record the frames go through the pieces, and only what the cut shows is
// scored. The frames of a piece that runs backwards, or that shows a time again, are
// put into the order of the shot.
//
// What was rejected. To take the clock in which more pulls can be found: a hand makes
// similar movements all day.

package recorded

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"pullscore/interp/plan"
)

// The clocks that a recording may count by.
const (
	BySource = "source"
	ByRecord = "record"
	ByShot   = "shot"
)

// How far beyond what is used of it a recording may reach and still be of a shot, in
// seconds: of the source of a take, of the record, and of a shot that has no other clock.
// Our own choice.
const (
	handles = 60.0
	ragged  = 1.0
)

// A span is a stretch of timecode, in frames; its end is no longer in it.
type span struct{ from, to int64 }

func (s span) holds(first, last int64, slack float64) bool {
	return float64(first) >= float64(s.from)-slack && float64(last) < float64(s.to)+slack
}

// A clock gives the shot time of the frames of a recording, and their labels.
type clock struct {
	shot  *plan.Shot
	by    string
	first int64         // the first frame of the recording
	take  []*plan.Piece // by source: the pieces of the take that was recorded
}

// setClock returns the clock of a recording from its first and last frame. asked is
// the one that the user says, or "".
func setClock(shot *plan.Shot, first, last int64, asked string) (*clock, error) {
	k := &clock{shot: shot, first: first}
	take, sourceFits := k.takeOf(first, last)
	k.take = take
	listed := len(shot.Pieces) > 0
	switch {
	case asked == BySource && !listed:
		return nil, fmt.Errorf("shot %s is in no list, so nothing says what its source is", shot.ID)
	case asked == ByRecord && shot.BeginsAt == "" && !listed:
		return nil, k.nowhere()
	case asked != "":
		k.by = asked
		return k, nil
	case listed:
		return k.between(first, last, sourceFits)
	case shot.BeginsAt != "":
		k.by = ByRecord
		return k, nil
	case shot.Speed().Seconds(first) <= ragged:
		k.by = ByShot
		return k, nil
	}
	return nil, k.nowhere()
}

// nowhere says that nothing tells where a recording lies.
func (k *clock) nowhere() error {
	return fmt.Errorf("shot %s does not say when it begins: write `begins at` and the timecode of its first frame", k.shot.ID)
}

// between decides between source and record.
func (k *clock) between(first, last int64, sourceFits bool) (*clock, error) {
	record := k.record()
	recordFits := record.holds(first, last, k.frames(ragged))
	switch {
	case sourceFits && recordFits && !k.same(first, last):
		return nil, fmt.Errorf("both clocks fit: say --clock source or --clock record")
	case sourceFits:
		k.by = BySource
	case recordFits:
		k.by = ByRecord
	default:
		label := k.shot.Rate.Format
		var sources []string
		for _, take := range k.takes() {
			s, _ := k.reach(take)
			sources = append(sources, label(s.from)+" to "+label(s.to))
		}
		return nil, fmt.Errorf("the recording is %s to %s; %s is source %s, record %s to %s",
			label(first), label(last), k.shot.ID, strings.Join(sources, " and "), label(record.from), label(record.to))
	}
	return k, nil
}

// frames returns how many frames of timecode some seconds are.
func (k *clock) frames(seconds float64) float64 {
	num, den := k.shot.Rate.Exact()
	return seconds * float64(num) / float64(den)
}

// same reports whether source and record give the recording the same times.
func (k *clock) same(first, last int64) bool {
	other := *k
	k.by, other.by = BySource, ByRecord
	for _, n := range []int64{first, last} {
		a, okA := k.time(n)
		b, okB := other.time(n)
		if !okA || !okB || math.Abs(a-b) > 1e-6 {
			return false
		}
	}
	return !k.shot.Recut()
}

// record returns where the shot lies in the record.
func (k *clock) record() span {
	s := span{math.MaxInt64, math.MinInt64}
	for i := range k.shot.Pieces {
		s.from, s.to = min(s.from, k.shot.Pieces[i].In), max(s.to, k.shot.Pieces[i].Out)
	}
	return s
}

// takes returns the pieces of each take, in the order of the record.
func (k *clock) takes() (list [][]*plan.Piece) {
	for i := range k.shot.Pieces {
		p := &k.shot.Pieces[i]
		at := slices.IndexFunc(list, func(take []*plan.Piece) bool { return take[0].Take == p.Take && take[0].Main == p.Main })
		if at < 0 {
			list = append(list, nil)
			at = len(list) - 1
		}
		list[at] = append(list[at], p)
	}
	return list
}

// sourceOf returns what is used of a take.
func sourceOf(take []*plan.Piece) span {
	s := span{math.MaxInt64, math.MinInt64}
	for _, p := range take {
		for _, n := range []float64{0, float64(p.Frames()) * float64(p.Speed)} {
			at := p.Source + int64(math.Round(n))
			s.from, s.to = min(s.from, at), max(s.to, at)
		}
	}
	return s
}

// reach returns how far a recording of a take may reach: what a list of clips has of its
// source, else what is used of it, and so many frames beyond that.
func (k *clock) reach(take []*plan.Piece) (s span, slack float64) {
	s, slack = sourceOf(take), k.frames(handles)
	for _, p := range take {
		if p.TakeTo > 0 {
			s.from, s.to, slack = min(s.from, p.TakeFrom), max(s.to, p.TakeTo), k.frames(ragged)
		}
	}
	return s, slack
}

// takeOf returns the take that a recording by source is of: of those in which it lies,
// the one of which it holds most.
func (k *clock) takeOf(first, last int64) (take []*plan.Piece, fits bool) {
	most := int64(-1)
	for _, t := range k.takes() {
		s := sourceOf(t)
		reach, slack := k.reach(t)
		held := max(0, min(last+1, s.to)-max(first, s.from))
		in := reach.holds(first, last, slack)
		if held > most && (in || !fits) || in && !fits {
			take, most, fits = t, held, in
		}
	}
	return take, fits
}

// time returns the shot time of a frame, in seconds; ok is false for one that the cut
// does not show.
func (k *clock) time(n int64) (t float64, ok bool) {
	at := k.shot.Speed()
	switch {
	case k.by == BySource:
		p := k.near(n)
		return p.Begins + at.Of(float64(n-p.Source)), true
	case k.by == ByShot:
		return at.Of(float64(n)), true
	case len(k.shot.Pieces) > 0 && k.shot.Recut():
		return k.shot.ShotTime(n)
	}
	return at.Of(float64(n - k.shot.Begins)), true
}

// near returns the piece of the take whose source is nearest to a frame.
func (k *clock) near(n int64) *plan.Piece {
	far := func(p *plan.Piece) float64 {
		s := sourceOf([]*plan.Piece{p})
		return max(float64(s.from-n), float64(n-s.to), 0)
	}
	return slices.MinFunc(k.take, func(a, b *plan.Piece) int { return cmp.Compare(far(a), far(b)) })
}

// lasts returns how long a frame is shown, in seconds of the shot.
func (k *clock) lasts(n int64) float64 {
	one := k.shot.Speed().Of(1)
	if k.by != ByRecord || !k.shot.Recut() {
		return one
	}
	for i := range k.shot.Pieces {
		if p := &k.shot.Pieces[i]; n >= p.In && n < p.Out {
			return one * math.Abs(float64(p.Speed))
		}
	}
	return one
}

// label returns the timecode of a time of the shot on this clock; "" where the cut
// does not show it.
func (k *clock) label(t float64) string {
	at := k.shot.Speed()
	switch {
	case k.by == BySource:
		for _, p := range k.take {
			if p.Covers(t) {
				return k.shot.Rate.Format(p.Source + at.Frames(t) - at.Frames(p.Begins))
			}
		}
		return k.shot.Rate.Format(k.take[0].Source + at.Frames(t) - at.Frames(k.take[0].Begins))
	case k.by == ByShot:
		return k.shot.Rate.Format(at.Frames(t))
	case len(k.shot.Pieces) > 0 && k.shot.Recut():
		if n, ok := k.shot.RecordAt(t); ok {
			return k.shot.Rate.Format(n)
		}
		return ""
	}
	return k.shot.Rate.Format(k.shot.Begins + at.Frames(t))
}
