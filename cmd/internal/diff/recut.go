// What is different in how the cut shows a pull.

package diff

import (
	"fmt"
	"math"

	"pullscore/interp/plan"
)

// cut compares what the cut shows of a pull: whether it is there, in which take, and where
// in the record, beside where the shot as a whole has gone.
func (c comparison) cut(l *list, b, a *plan.Pull) {
	if b.InCut == nil || a.InCut == nil {
		return
	}
	if was, is := b.IsRemoved(), a.IsRemoved(); was != is {
		says := "in the cut again"
		if is {
			says = "out of the cut"
		}
		l.word("in_cut", "", b.State, a.State)
		l.details[len(l.details)-1].Says = says
		return
	}
	was, is := c.before.PieceAt(float64(b.Start)), c.after.PieceAt(float64(a.Start))
	if was == nil || is == nil || a.IsRemoved() {
		return
	}
	if was.Take != is.Take && was.Take != "" && is.Take != "" {
		l.word("take", "", was.Take, is.Take)
		l.details[len(l.details)-1].Says = fmt.Sprintf("from take %s (was take %s)", is.Take, was.Take)
	}
	if by := c.inRecord(b, a); math.Abs(by) >= 1 {
		d := l.number("start_record", plan.None(), plan.None(), later(by, c.rate)+" in the cut")
		d.Before, d.After = word(b.StartRecord), word(a.StartRecord)
		d.Frames, d.moved = int64(by), true
	}
}

// inRecord returns by how many frames a pull starts later in the record than the shot as a
// whole and its own time in the shot tell.
func (c comparison) inRecord(b, a *plan.Pull) float64 {
	was, ok := c.before.RecordAt(float64(b.Start))
	is, okToo := c.after.RecordAt(float64(a.Start))
	if !ok || !okToo || c.before.Rate != c.after.Rate {
		return 0
	}
	shot := c.after.Begins - c.before.Begins
	at := c.after.Speed()
	own := at.Frames(float64(a.Start)) - at.Frames(float64(b.Start)) // rounded as the record is
	return float64(is - was - shot - own)
}

// leaves returns how the cut shows a pull now and did not before, or the other way round;
// "" where that has not changed.
func (p Pull) leaves() string {
	for _, d := range p.Details {
		if d.Name == "in_cut" {
			return d.Says
		}
	}
	return ""
}
