// What the cuts say of one shot: where it lies, which part of it is used, and
// when its cues and lines are.

package cut

import (
	"math"
	"slices"
	"strings"

	"pullscore/interp/edit"
	"pullscore/interp/plan"
	"pullscore/interp/speech"
	"pullscore/lang"
	"pullscore/lang/timecode"
)

// A Shot is what the cuts say of a shot.
type Shot struct {
	Lists bool  // the plan has lists
	Clips bool  // which have clips, of whatever shot
	List  *File // the list that has the shot; nil: none
	// The events of the shot, the pieces that they make, and where the start of the
	// shot lies in the record, as the piece that shows the earliest of it runs.
	Events []edit.Piece
	Pieces []plan.Piece
	Begin  int64
	// Guessed tells that takes are told apart by their source alone.
	Guessed bool
	// Missing are the clip statements that name no clip of any list.
	Missing []Named
	// Near are names of clips that resemble its ID, where lists lack it or a clip.
	Near []string

	Cues map[string]float64 // seconds from the shot's start, by name in lower case

	match
	Placed bool    // the times of the lines are known from the shot's start; else from the first of them
	Slow   float64 // screen time over set time
	Adrift bool    // they lie elsewhere than the shot is said to begin
	// elsewhere is where the lines are that subtitles do not have beside the
	// clips of the shot; nil: nowhere.
	Elsewhere *match

	asked  *Asked
	zero   float64 // when the first frame is that is used of the main take, in seconds
	sounds []sound
}

// A lineKey is one use of a spoken line: a move may be used several times.
type lineKey struct {
	at  lang.Range // where the plan has it: a move fills its texts in anew for each use
	nth int
}

// Asked is what a shot asks of the cuts.
type Asked struct {
	ID     string
	Speed  timecode.Speed // of the camera
	Begun  bool           // the plan says where the shot begins
	Begins int64          // there, as frames
	Lines  []Said
	Cuts   []*File
	Clips  []Named // what the shot itself names
	Logs   []*edit.Log
	Long   float64 // how long it is by the plan alone, about, in seconds
}

// A Named is what a clip statement of a shot names.
type Named struct {
	Stmt *lang.Clip
	edit.Ask
}

// Reversed reports whether the source that it names ends before it begins, so that no
// clip can be meant.
func (n *Named) Reversed() bool { return n.Within && n.To <= n.From }

// A Said is a line of the shot in words.
type Said struct {
	Stmt   *lang.Speech
	Who    string // whose it is; empty where nobody knows
	Tokens []speech.Token
}

// FindShot finds a shot in the cuts.
func FindShot(a *Asked) *Shot {
	s := &Shot{Slow: a.Speed.Factor(), asked: a}
	s.findPieces(a)
	s.findMissing(a)
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

// Recut reports whether the cut shows the shot otherwise than in one run.
func (s *Shot) Recut() bool { return (&plan.Shot{Pieces: s.Pieces}).Recut() }

// findPieces looks for the shot in the lists; the first that has it counts.
func (s *Shot) findPieces(a *Asked) {
	for _, c := range a.Cuts {
		s.Lists = s.Lists || c.IsList && !c.MarkersAlone()
		s.Clips = s.Clips || c.IsList && c.HasClips
		if s.List == nil && c.IsList {
			if s.Events = c.Pieces(a.ID); len(s.Events) > 0 {
				s.List = c
				s.Guessed = tellTakes(s.Events, a)
				s.Pieces = piecesOf(s.Events, c.Name)
				s.settle(nil)
				s.findSounds()
			}
		}
	}
}

// settle lays the pieces into shot time, some of them where they are known to stand.
func (s *Shot) settle(stand map[int]float64) {
	s.zero = lay(s.Pieces, s.asked.Speed, stand)
	s.Begin = begin(s.Pieces, s.asked.Speed)
}

// findCues looks for markers that are called like a cue, where the shot is in
// the picture: in its list, then in lists of markers alone.
func (s *Shot) findCues(a *Asked) {
	s.Cues = map[string]float64{}
	if s.List == nil {
		return
	}
	s.cuesOf(s.List, a)
	for _, c := range a.Cuts {
		if c.MarkersAlone() {
			s.cuesOf(c, a)
		}
	}
}

// cuesOf takes those of a list that are not known yet.
func (s *Shot) cuesOf(list *File, a *Asked) {
	for _, m := range list.Markers {
		name := strings.ToLower(strings.TrimSpace(m.Text))
		inside := slices.ContainsFunc(s.Pieces, func(p plan.Piece) bool { return m.At >= p.In && m.At < p.Out })
		if _, taken := s.Cues[name]; inside && !taken {
			s.Cues[name] = s.timeOf(float64(m.At))
		}
	}
}

// timeOf returns the time from the shot's start of a frame of the record: in the piece
// that it lies in, else reckoned from the nearest.
func (s *Shot) timeOf(record float64) float64 {
	best, nearest := -1, math.Inf(1)
	for i := range s.Pieces {
		if away := max(float64(s.Pieces[i].In)-record, record-float64(s.Pieces[i].Out), 0); away < nearest {
			best, nearest = i, away
		}
	}
	return s.timeIn(best, record)
}
