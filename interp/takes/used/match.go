// Whether a row of a log is of the take that a piece of the cut shows.
//
// What is hard. A list names clips as the editing room does, and a log as the set does.
// Often both say only the shot's own ID, which is the name of every take of it.
//
// What is done. A name counts where it tells takes apart: the take of the piece where the
// cut knows it, else a clip name that is more than the ID of the shot, else the reel. What
// names do not settle the timecode does: it is that of the landing on the clock of the
// camera, and so lies in the source of the piece. A hand lands late, and the cut may end
// before it does; so it counts also if it lies within two seconds of where the plan
// lands in that source.
//
// What was rejected. To take the only row that there is for the take in the cut: a log
// that lacks a take would then tell of another one, with no sign of it.

package used

import (
	"math"
	"path/filepath"
	"strings"

	"pullscore/interp/plan"
)

// sought is how far from its planned landing a take may have landed and be of the piece,
// in seconds: as far as a recording is searched for a pull.
const sought = 2.0

// A verdict says what is known of a row and a piece.
type verdict uint8

const (
	unknown verdict = iota
	other
	same
)

// A shown is a rack in one piece of the cut.
type shown struct {
	shot  *plan.Shot
	pull  *plan.Pull
	piece *plan.Piece
}

// verdict says whether a row is of the take that the piece shows.
func (s *shown) verdict(t *row) verdict {
	if v := s.byName(t); v != unknown {
		return v
	}
	n, err := s.shot.Rate.Parse(t.Timecode)
	if t.Timecode == "" || err != nil {
		return unknown
	}
	if from, to := s.source(); n >= from && n < to || s.late(n) <= s.frames(sought) {
		return same
	}
	return other
}

// byName is verdict by what the row and the list call the take.
func (s *shown) byName(t *row) verdict {
	p := s.piece
	if p.Take != "" && t.OnSet != "" {
		return verdictOf(takeName(p.Take) == takeName(t.OnSet))
	}
	row, clip, reel, id := clipName(t.Clip), clipName(p.Clip), clipName(p.Reel), clipName(s.shot.ID)
	switch {
	case row == "" || row == id:
		return unknown
	case row == clip || row == reel:
		return same
	case clip != id && clip != "":
		return other
	}
	return unknown
}

func verdictOf(equal bool) verdict {
	if equal {
		return same
	}
	return other
}

// source returns the frames of the source that the piece shows; to is not among them.
func (s *shown) source() (from, to int64) {
	p := s.piece
	from, to = p.Source, p.Source+int64(math.Round(float64(p.Frames())*float64(p.Speed)))
	switch {
	case to < from:
		return to + 1, from + 1
	case to == from:
		return from, from + 1
	}
	return from, to
}

// planned returns the frame of the source in which the plan lands.
func (s *shown) planned() int64 {
	at := s.shot.Speed()
	return s.piece.Source + at.Frames(float64(s.pull.Land)) - at.Frames(s.piece.Begins)
}

// late returns how many frames a frame of the source lies from the planned landing.
func (s *shown) late(n int64) float64 { return math.Abs(float64(n - s.planned())) }

// frames returns how many frames of timecode some seconds are.
func (s *shown) frames(seconds float64) float64 {
	num, den := s.shot.Rate.Exact()
	return seconds * float64(num) / float64(den)
}

// closed reports whether the piece ends before the take has landed: by the timecode of
// the take where it has one, else by the plan.
func (s *shown) closed(t *row) bool {
	if t != nil && s.piece.Speed > 0 {
		if n, err := s.shot.Rate.Parse(t.Timecode); t.Timecode != "" && err == nil {
			_, to := s.source()
			return n > to // one that lands as the cut comes has landed
		}
	}
	return s.shot.PieceAt(float64(s.pull.Land)) != s.piece && !s.piece.Covers(float64(s.pull.Land))
}

// clipName returns the name of a clip as names are compared: in capitals, without the
// ending of a file and stars behind it.
func clipName(name string) string {
	name = strings.ToUpper(strings.TrimRight(strings.TrimSpace(name), "* "))
	ext := strings.TrimPrefix(filepath.Ext(name), ".")
	if len(ext) >= 2 && len(ext) <= 5 && ext[0] >= 'A' && ext[0] <= 'Z' && len(ext)+1 < len(name) {
		name = name[:len(name)-len(ext)-1]
	}
	return name
}

// takeName returns the name of a take as names are compared: 03 is 3.
func takeName(name string) string {
	name = strings.ToUpper(strings.TrimSpace(name))
	if short := strings.TrimLeft(name, "0"); short != "" {
		return short
	}
	return name
}
