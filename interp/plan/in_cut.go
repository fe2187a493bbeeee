// What the cut shows of a move, a line or a cue.

package plan

import (
	"pullscore/lang/timecode"
)

// What the cut shows of something that takes time.
const (
	Whole   = "whole"
	Part    = "part"
	Removed = "removed" // no frame of it
)

// An InCut says what the cut shows of a pull, a line or a cue, and where that lies.
// What is not known is empty. Of a cue, start and landing are one. It is nil where the
// shot has no pieces.
type InCut struct {
	State       string   `json:"in_cut"`
	StartRecord string   `json:"start_record,omitempty"`
	LandRecord  string   `json:"land_record,omitempty"`
	StartSource string   `json:"start_source,omitempty"`
	LandSource  string   `json:"land_source,omitempty"`
	Frames      int64    `json:"frames_in_cut"`
	Again       []string `json:"again_record"` // where its start is shown after the first time
}

// IsRemoved reports whether the cut shows nothing of it.
func (c *InCut) IsRemoved() bool { return c != nil && c.State == Removed }

// Presence says how much of the time from start to land the pieces show: whole, part
// or removed, and how many frames. What takes no time is one frame.
func (s *Shot) Presence(start, land float64) (state string, frames int64) {
	at := s.Speed()
	if all := at.Frames(land - start); all > 0 {
		return presence(Shown(s.Pieces), start, land, at)
	}
	if s.PieceAt(start) == nil && s.PieceAt(land) == nil {
		return Removed, 0
	}
	return Whole, 1
}

// presence is Presence of what takes a frame or more.
func presence(shown []Stretch, start, land float64, at timecode.Speed) (state string, frames int64) {
	seen := 0.0
	for _, u := range shown {
		seen += max(0, min(land, u.To)-max(start, u.From))
	}
	all := at.Frames(land - start)
	switch frames = at.Frames(seen); {
	case frames == 0:
		return Removed, 0
	case frames < all:
		return Part, frames
	}
	return Whole, all
}

// InCut returns what the cut shows of something from start to land; nil where the shot
// has no pieces. cutOut tells that it is not in the cut whatever its time: what it
// hangs on is not there.
func (s *Shot) InCut(start, land float64, cutOut bool) *InCut {
	if len(s.Pieces) == 0 {
		return nil
	}
	c := &InCut{Again: []string{}}
	c.State, c.Frames = s.Presence(start, land)
	if n, ok := s.SourceAt(start); ok {
		c.StartSource = s.Rate.Format(n)
	}
	if n, ok := s.SourceAt(land); ok {
		c.LandSource = s.Rate.Format(n)
	}
	if cutOut {
		c.State, c.Frames = Removed, 0
	}
	if c.State == Removed {
		return c
	}
	for i, n := range s.RecordsAt(start) {
		if label := s.Rate.Format(n); i == 0 {
			c.StartRecord = label
		} else {
			c.Again = append(c.Again, label)
		}
	}
	if n, ok := s.RecordAt(land); ok {
		c.LandRecord = s.Rate.Format(n)
	}
	return c
}
