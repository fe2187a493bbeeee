// Which clip a pull was recorded in, so that its take is found again in a cut.

package recorded

import (
	"pullscore/interp/plan"
	"pullscore/interp/takes"
)

// Stamp writes into a take of a scored pull where it landed on the clock of the camera,
// and of which clip and take of the cut that is, as far as both are known. A recording
// that begins at zero has no such clock.
func (c *Curve) Stamp(t *takes.Take, s *Score) {
	shot := c.Shot
	if len(shot.Pieces) == 0 {
		if c.By != ByShot {
			t.Timecode = s.LandingCode
		}
		return
	}
	t.Timecode = s.LandingCode
	at := float64(s.Landing)
	p := shot.PieceAt(at)
	if c.By == ByRecord {
		n, ok := shot.SourceAt(at)
		if t.Timecode = ""; ok {
			t.Timecode = shot.Rate.Format(n)
		}
	} else {
		p = c.pieceOfTake(at)
	}
	if p != nil {
		t.Clip, t.OnSet = p.Clip, p.Take
	}
}

// pieceOfTake returns the piece of the recorded take that shows a time of the shot, and
// where none does its first one: nil where nothing says which take it is.
func (c *Curve) pieceOfTake(at float64) *plan.Piece {
	for _, p := range c.clock.take {
		if p.Covers(at) {
			return p
		}
	}
	if len(c.clock.take) == 0 {
		return nil
	}
	return c.clock.take[0]
}
