// What the cuts say of one shot: where it lies, which part of it is used, and
// when its cues and lines are.

package interp

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"pullscore/interp/edit"
	"pullscore/lang"
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

// readCut finds the shot in the cuts, once for all that is tried on it, and
// takes its place from them.
func (b *builder) readCut() {
	if len(b.p.cuts) == 0 {
		return
	}
	cut, ok := b.p.shotCuts[b.section]
	if !ok {
		cut = &shotCut{}
		b.p.shotCuts[b.section] = cut
		cut.findPieces(b)
		cut.findCues(b)
		cut.findLines(b)
	}
	b.cut = cut
	if cut.list != nil {
		if b.shot.BeginsAt == "" {
			b.epoch = cut.begin
		}
		b.shot.Begins, b.shot.BeginsAt = cut.begin, b.rate.Format(cut.begin)
	}
	for i, key := range keysOf(b.clock.inOrder) {
		b.clock.inOrder[i].heard = cut.lines[key]
	}
	b.sayCut()
}

// keysOf tells the uses of one line apart.
func keysOf(lines []*line) []lineKey {
	uses := map[*lang.Speech]int{}
	keys := make([]lineKey, len(lines))
	for i, l := range lines {
		keys[i] = lineKey{l.stmt, uses[l.stmt]}
		uses[l.stmt]++
	}
	return keys
}

// findPieces looks for the shot in the lists; the first that has it counts.
func (s *shotCut) findPieces(b *builder) {
	for _, c := range b.p.cuts {
		s.lists = s.lists || c.IsList
		if s.list == nil && c.IsList {
			if s.pieces = c.Pieces(b.head.ID); len(s.pieces) > 0 {
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
func (s *shotCut) findCues(b *builder) {
	s.cues = map[string]float64{}
	if s.list == nil {
		return
	}
	for _, m := range s.list.Markers {
		name := strings.ToLower(strings.TrimSpace(m.Text))
		inside := slices.ContainsFunc(s.pieces, func(c edit.Clip) bool { return m.At >= c.RecordIn && m.At < c.RecordOut })
		if _, taken := s.cues[name]; inside && !taken {
			s.cues[name] = s.timeOf(float64(m.At), b)
		}
	}
}

// timeOf returns the time from the shot's start of a frame of the record: in
// the piece that it lies in, else reckoned from the nearest.
func (s *shotCut) timeOf(record float64, b *builder) float64 {
	num, den := b.rate.Exact()
	perFrame := float64(den) / float64(num)
	if s.list == nil {
		return (record - float64(b.shot.Begins)) * perFrame
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
func (s *shotCut) inPicture(b *builder) (list []stretch) {
	for _, c := range s.pieces {
		from := b.rate.Seconds(c.SourceIn - s.origin)
		to := from + b.rate.Seconds(c.RecordOut-c.RecordIn)*c.Speed
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

// sayCut lists where times come from.
func (b *builder) sayCut() {
	if c := b.cut; c.list != nil && (b.settings["begins"] == nil || b.epoch != c.begin) {
		b.byDefault("begins at", b.shot.BeginsAt, fmt.Sprintf("clip %s of %s", b.head.ID, c.list.base()))
	}
	if c := b.cut; c.subtitles != nil {
		why := fmt.Sprintf("it has %d of %s", len(c.lines), count(len(b.clock.inOrder), "line"))
		if !c.placed {
			why += "; the first of them is where the plan has it"
		}
		b.byDefault("line times", "from "+c.subtitles.base(), why)
	}
}

// cueInCut is the time that a list gives a cue.
func (b *builder) cueInCut(name string) (t float64, ok bool) {
	if b.cut == nil {
		return 0, false
	}
	t, ok = b.cut.cues[strings.ToLower(name)]
	return t, ok
}

// timedByCut reports whether the cut gives item k its time.
func (b *builder) timedByCut(k int) bool {
	switch s := b.items[k].stmt.(type) {
	case *lang.Speech:
		l := b.clock.lines[k]
		return l != nil && l.heard != nil
	case *lang.Cue:
		_, ok := b.cueInCut(s.Name.Text)
		return ok
	}
	return false
}
