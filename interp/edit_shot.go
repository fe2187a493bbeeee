// What the cuts say of one shot: where it lies, which part of it is used, and
// when its cues and lines are.

package interp

import (
	"math"
	"slices"
	"strings"

	"pullscore/interp/edit"
	"pullscore/interp/speech"
	"pullscore/lang"
	"pullscore/lang/timecode"
)

// A shotCut is what the cuts say of a shot.
type shotCut struct {
	lists bool     // the plan has lists
	list  *cutFile // the list that has the shot; nil: none
	// The pieces of the shot that are used, and what counts as its start: the
	// first source frame of them, and where that lies in the record.
	pieces []edit.Clip
	origin int64
	begin  int64

	cues map[string]float64 // seconds from the shot's start, by name in lower case

	match
	placed bool // the times of the lines are known from the shot's start; else from the first of them
	adrift bool // they lie elsewhere than the shot is said to begin
	// elsewhere is where the lines are that subtitles do not have beside the
	// clips of the shot; nil: nowhere.
	elsewhere *match
}

// A lineKey is one use of a spoken line: a move may be used several times.
type lineKey struct {
	stmt *lang.Speech
	nth  int
}

// A stretch is a stretch of a shot that is in the cut, seconds from its start.
type stretch struct{ from, to float64 }

// asked is what a shot asks of the cuts.
type asked struct {
	id     string
	rate   timecode.Rate
	begun  bool  // the plan says where the shot begins
	begins int64 // there, as frames
	lines  []said
	cuts   []*cutFile
}

// A said is a line of the shot in words.
type said struct {
	stmt   *lang.Speech
	tokens []speech.Token
}

// findShot finds a shot in the cuts.
func findShot(a *asked) *shotCut {
	s := &shotCut{}
	s.findPieces(a)
	s.findCues(a)
	s.findLines(a)
	return s
}

// keysOf tells the uses of one line apart.
func keysOf(lines []said) []lineKey {
	uses := map[*lang.Speech]int{}
	keys := make([]lineKey, len(lines))
	for i, l := range lines {
		keys[i] = lineKey{l.stmt, uses[l.stmt]}
		uses[l.stmt]++
	}
	return keys
}

// findPieces looks for the shot in the lists; the first that has it counts.
func (s *shotCut) findPieces(a *asked) {
	for _, c := range a.cuts {
		s.lists = s.lists || c.IsList
		if s.list == nil && c.IsList {
			if s.pieces = c.Pieces(a.id); len(s.pieces) > 0 {
				s.list = c
			}
		}
	}
	for i, piece := range s.pieces {
		if i == 0 || piece.SourceIn < s.origin {
			s.origin, s.begin = piece.SourceIn, piece.RecordIn
		}
	}
}

// findCues looks for markers that are called like a cue, where the shot is in
// the picture.
func (s *shotCut) findCues(a *asked) {
	s.cues = map[string]float64{}
	if s.list == nil {
		return
	}
	for _, m := range s.list.Markers {
		name := strings.ToLower(strings.TrimSpace(m.Text))
		inside := slices.ContainsFunc(s.pieces, func(c edit.Clip) bool { return m.At >= c.RecordIn && m.At < c.RecordOut })
		if _, taken := s.cues[name]; inside && !taken {
			s.cues[name] = s.timeOf(float64(m.At), a)
		}
	}
}

// timeOf returns the time from the shot's start of a frame of the record: in
// the piece that it lies in, else reckoned from the nearest.
func (s *shotCut) timeOf(record float64, a *asked) float64 {
	num, den := a.rate.Exact()
	perFrame := float64(den) / float64(num)
	if s.list == nil {
		return (record - float64(a.begins)) * perFrame
	}
	best, nearest := 0.0, math.Inf(1)
	for _, c := range s.pieces {
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

// inPicture returns the stretches of the shot that are used, in their order,
// those that touch made one.
func (s *shotCut) inPicture(rate timecode.Rate) (list []stretch) {
	for _, c := range s.pieces {
		from := rate.Seconds(c.SourceIn - s.origin)
		to := from + rate.Seconds(c.RecordOut-c.RecordIn)*c.Speed
		list = append(list, stretch{min(from, to), max(from, to)})
	}
	slices.SortFunc(list, func(a, b stretch) int {
		if a.from < b.from {
			return -1
		}
		return 1
	})
	var joined []stretch
	for _, u := range list {
		if last := len(joined) - 1; last >= 0 && u.from <= joined[last].to+1e-9 {
			joined[last].to = max(joined[last].to, u.to)
			continue
		}
		joined = append(joined, u)
	}
	return joined
}
