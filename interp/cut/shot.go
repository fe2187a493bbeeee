// What the cuts say of one shot: where it lies, which part of it is used, and
// when its cues and lines are.

package cut

import (
	"math"
	"slices"
	"strings"

	"pullscore/interp/edit"
	"pullscore/interp/speech"
	"pullscore/lang"
	"pullscore/lang/timecode"
)

// A Shot is what the cuts say of a shot.
type Shot struct {
	Lists bool  // the plan has lists
	List  *File // the list that has the shot; nil: none
	// The pieces of the shot that are used, and what counts as its start: the
	// first source frame of them, and where that lies in the record.
	Pieces []edit.Clip
	origin int64
	Begin  int64

	Cues map[string]float64 // seconds from the shot's start, by name in lower case

	match
	Placed bool    // the times of the lines are known from the shot's start; else from the first of them
	Slow   float64 // screen time over set time
	Adrift bool    // they lie elsewhere than the shot is said to begin
	// elsewhere is where the lines are that subtitles do not have beside the
	// clips of the shot; nil: nowhere.
	Elsewhere *match
}

// A lineKey is one use of a spoken line: a move may be used several times.
type lineKey struct {
	at  lang.Range // where the plan has it: a move fills its texts in anew for each use
	nth int
}

// A Stretch is a stretch of a shot that is in the cut, seconds from its start.
type Stretch struct{ From, To float64 }

// Asked is what a shot asks of the cuts.
type Asked struct {
	ID     string
	Speed  timecode.Speed // of the camera
	Begun  bool           // the plan says where the shot begins
	Begins int64          // there, as frames
	Lines  []Said
	Cuts   []*File
}

// A Said is a line of the shot in words.
type Said struct {
	Stmt   *lang.Speech
	Tokens []speech.Token
}

// FindShot finds a shot in the cuts.
func FindShot(a *Asked) *Shot {
	s := &Shot{Slow: a.Speed.Factor()}
	s.findPieces(a)
	s.findCues(a)
	s.findLines(a)
	return s
}

// KeysOf tells the uses of one line apart.
func KeysOf(lines []Said) []lineKey {
	uses := map[lang.Range]int{}
	keys := make([]lineKey, len(lines))
	for i, l := range lines {
		at := l.Stmt.Range()
		keys[i] = lineKey{at, uses[at]}
		uses[at]++
	}
	return keys
}

// findPieces looks for the shot in the lists; the first that has it counts.
func (s *Shot) findPieces(a *Asked) {
	for _, c := range a.Cuts {
		s.Lists = s.Lists || c.IsList
		if s.List == nil && c.IsList {
			if s.Pieces = c.Pieces(a.ID); len(s.Pieces) > 0 {
				s.List = c
			}
		}
	}
	for i, piece := range s.Pieces {
		if i == 0 || piece.SourceIn < s.origin {
			s.origin, s.Begin = piece.SourceIn, piece.RecordIn
		}
	}
}

// findCues looks for markers that are called like a cue, where the shot is in
// the picture.
func (s *Shot) findCues(a *Asked) {
	s.Cues = map[string]float64{}
	if s.List == nil {
		return
	}
	for _, m := range s.List.Markers {
		name := strings.ToLower(strings.TrimSpace(m.Text))
		inside := slices.ContainsFunc(s.Pieces, func(c edit.Clip) bool { return m.At >= c.RecordIn && m.At < c.RecordOut })
		if _, taken := s.Cues[name]; inside && !taken {
			s.Cues[name] = s.timeOf(float64(m.At), a)
		}
	}
}

// timeOf returns the time from the shot's start of a frame of the record: in
// the piece that it lies in, else reckoned from the nearest.
func (s *Shot) timeOf(record float64, a *Asked) float64 {
	perFrame := a.Speed.Of(1)
	if s.List == nil {
		return (record - float64(a.Begins)) * perFrame
	}
	best, nearest := 0.0, math.Inf(1)
	for _, c := range s.Pieces {
		in, out := float64(c.RecordIn), float64(c.RecordOut)
		away := max(in-record, record-out, 0)
		if away < nearest {
			speed := c.Speed
			if away > 0 {
				speed = 1 // beyond the piece only the clock goes on
			}
			nearest, best = away, float64(c.SourceIn-s.origin)+(record-in)*speed
		}
	}
	return best * perFrame
}

// InPicture returns the stretches of the shot that are used, in their order,
// those that touch made one. The camera ran at that speed.
func (s *Shot) InPicture(at timecode.Speed) (list []Stretch) {
	for _, c := range s.Pieces {
		from := at.Seconds(c.SourceIn - s.origin)
		to := from + at.Seconds(c.RecordOut-c.RecordIn)*c.Speed
		list = append(list, Stretch{min(from, to), max(from, to)})
	}
	slices.SortFunc(list, func(a, b Stretch) int {
		if a.From < b.From {
			return -1
		}
		return 1
	})
	var joined []Stretch
	for _, u := range list {
		if last := len(joined) - 1; last >= 0 && u.From <= joined[last].To+1e-9 {
			joined[last].To = max(joined[last].To, u.To)
			continue
		}
		joined = append(joined, u)
	}
	return joined
}
