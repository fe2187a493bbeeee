// Where a recording lies in a cut: which clips show it.

package unplanned

import (
	"fmt"
	"slices"
	"strings"

	"pullscore/interp/edit"
	"pullscore/interp/plan"
	"pullscore/interp/takes/recorded"
	"pullscore/lang/ale"
)

// handles is how far beyond what is used of its clip a recording may lie, in seconds,
// where no list of clips says how long the clip is. Our own choice.
const handles = 60.0

// Show takes the clips that show what was recorded out of those that are meant, which
// are one at least. A recording is of one clip: where it may be of several, or is of
// none, the error says where they lie. Rows of a list of clips say how long a clip is.
func (p *Place) Show(found []edit.Piece, rows []ale.Row, frames []recorded.Sample) error {
	first, last := frames[0].Number, frames[len(frames)-1].Number
	var names, called, lie []string
	for _, c := range found {
		from, to := p.reach(&c.Clip, rows)
		if text := fmt.Sprintf("%s is source %s to %s", c.Name, p.Rate.Format(from), p.Rate.Format(to)); !slices.Contains(lie, text) {
			lie = append(lie, text)
		}
		slack := p.Rate.Frames(handles)
		if last < from-slack || first >= to+slack {
			continue
		}
		p.Clips = append(p.Clips, c.Clip)
		if name := edit.Bare(c.Name) + "\x00" + edit.Fold(c.Reel); !slices.Contains(names, name) {
			names = append(names, name)
			called = append(called, fmt.Sprintf("%s of reel %s", c.Name, c.Reel))
		}
	}
	switch {
	case len(names) == 0:
		return fmt.Errorf("the recording is %s to %s; %s", p.Rate.Format(first), p.Rate.Format(last), strings.Join(lie, ", "))
	case len(names) > 1:
		return fmt.Errorf("the recording may be of %s: name one of them, or its reel, with --clip", strings.Join(called, ", or "))
	}
	p.Listed = true
	return nil
}

// reach returns which part of its source a clip shows, or has by its row in a list of
// clips: its first frame, and the first that is no longer there.
func (p *Place) reach(c *edit.Clip, rows []ale.Row) (from, to int64) {
	from = c.SourceIn
	to = from + int64(float64(c.RecordOut-c.RecordIn)*c.Speed)
	from, to = min(from, to), max(from, to)
	for i := range rows {
		if start, end, ok := c.Logged(&rows[i], p.Rate); ok {
			return min(from, start), max(to, end)
		}
	}
	return from, to
}

// Plan returns a plan with one shot, whose pieces are what the cut shows of a recording.
// Without a list that is all of it.
func (p *Place) Plan(name string, frames []recorded.Sample) *plan.Plan {
	clips := p.Clips
	if !p.Listed {
		first, last := frames[0].Number, frames[len(frames)-1].Number
		clips = []edit.Clip{{Name: name, RecordIn: first, RecordOut: last + 1, SourceIn: first, Speed: 1}}
	}
	s := &plan.Shot{ID: name, Title: name, Rate: p.Rate}
	for i, c := range clips {
		s.Pieces = append(s.Pieces, plan.Piece{
			Number: i + 1, Clip: c.Name, Reel: c.Reel, Speed: plan.Number(c.Speed),
			In: c.RecordIn, Out: c.RecordOut, Source: c.SourceIn,
		})
	}
	return &plan.Plan{Title: name, Shots: []*plan.Shot{s}}
}
