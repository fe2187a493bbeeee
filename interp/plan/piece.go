// Where the times of a shot lie in the cut and on the camera's own clock.

package plan

// PieceAt returns the piece in which the audience sees a time of the shot first; nil
// where none shows it.
func (s *Shot) PieceAt(t float64) *Piece {
	for i := range s.Pieces {
		if s.Pieces[i].Covers(t) {
			return &s.Pieces[i]
		}
	}
	for i := range s.Pieces {
		if s.Pieces[i].EndsAt(t, s.Speed()) {
			return &s.Pieces[i]
		}
	}
	return nil
}

// RecordAt returns the frame of the record at which the audience sees a time of the
// shot first. ok is false where the cut does not show it, or the shot has no pieces.
func (s *Shot) RecordAt(t float64) (frame int64, ok bool) {
	p := s.PieceAt(t)
	if p == nil {
		return 0, false
	}
	return p.RecordOf(t, s.Speed()), true
}

// RecordsAt returns every frame of the record that shows a time of the shot, in the
// order of the record.
func (s *Shot) RecordsAt(t float64) (frames []int64) {
	for i := range s.Pieces {
		if s.Pieces[i].Covers(t) {
			frames = append(frames, s.Pieces[i].RecordOf(t, s.Speed()))
		}
	}
	if at, ok := s.RecordAt(t); ok && len(frames) == 0 {
		frames = append(frames, at)
	}
	return frames
}

// SourceAt returns the frame of the source nearest to a time of the shot: in the take
// that shows it, and where none does in the main take. ok is false where the shot has
// no pieces.
func (s *Shot) SourceAt(t float64) (frame int64, ok bool) {
	p := s.PieceAt(t)
	for i := 0; p == nil && i < len(s.Pieces); i++ {
		if s.Pieces[i].Main {
			p = &s.Pieces[i]
		}
	}
	if p == nil {
		return 0, false
	}
	return p.SourceOf(t, s.Speed()), true
}

// ShotTime returns the time of the shot that a frame of the record shows, in seconds.
// ok is false where the frame shows something else.
func (s *Shot) ShotTime(record int64) (t float64, ok bool) {
	for i := range s.Pieces {
		if p := &s.Pieces[i]; record >= p.In && record < p.Out {
			return p.ShotTime(float64(record), s.Speed()), true
		}
	}
	return 0, false
}

// Recut reports whether the record of the shot is more than one run of it: it has
// several pieces, or one at another speed.
func (s *Shot) Recut() bool {
	return len(s.Pieces) > 1 || len(s.Pieces) == 1 && s.Pieces[0].Speed != 1
}
