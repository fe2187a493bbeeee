// Edit decision lists and timelines.

package edit

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"pullscore/lang"
	"pullscore/lang/edl"
	"pullscore/lang/lines"
	"pullscore/lang/otio"
	"pullscore/lang/timecode"
)

// list reads an edit decision list, which counts at the plan's rate. Some programs
// write markers alone as a list whose events are nothing else: it has no clips.
func (c *Cut) list(t *lines.Text, rate timecode.Rate) []lang.Diagnostic {
	var faults lines.Faults
	pictures := false
	for e := range edl.Events(t, rate, &faults) {
		pictures = pictures || !e.Bare
		for _, m := range e.Markers {
			c.named(m.At, m.Text, m.Note)
		}
		seen, heard := strings.ContainsAny(e.Channels, "VB"), strings.ContainsAny(e.Channels, "AB")
		if e.RecordOut == e.RecordIn || !seen && !heard {
			continue
		}
		if seen {
			c.startsBy(e.RecordIn)
		}
		if e.Black() {
			continue
		}
		clip := Clip{
			Name: e.Name(), RecordIn: e.RecordIn, RecordOut: e.RecordOut, SourceIn: e.SourceIn,
			Speed: speed(e, rate), Range: e.Range,
		}
		if !e.Nameless() {
			clip.Reel = e.Reel
		}
		if clip.Speed < 0 && e.SourceOut > e.SourceIn {
			clip.SourceIn = e.SourceOut - 1 // it begins with its last frame
		}
		if seen && c.wants(&clip) {
			c.keep(clip, &faults)
		}
		if heard {
			c.hear(clip)
		}
	}
	if !pictures {
		c.Clips, c.Sounds, c.HasClips, c.Start, c.HasStart = nil, nil, false, 0, false
	}
	c.inOrder()
	return faults.List()
}

// startsBy takes a place in the record for its start, unless an earlier is
// known.
func (c *Cut) startsBy(at int64) {
	if !c.HasStart || at < c.Start {
		c.Start, c.HasStart = at, true
	}
}

// wants finds the shots that a clip is of, and reports whether there are any.
func (c *Cut) wants(clip *Clip) bool {
	c.HasClips = true
	clip.Of = c.want.of(clip)
	if len(clip.Of) == 0 {
		c.other(clip.Name)
	}
	return len(clip.Of) > 0
}

// mostOthers is how many names of clips of no shot are kept, to find near misses in.
const mostOthers = 2000

// other keeps the name of a clip that is of no shot.
func (c *Cut) other(name string) {
	if name == "" || len(c.Others) == mostOthers || c.seen[name] {
		return
	}
	if c.seen == nil {
		c.seen = map[string]bool{}
	}
	c.seen[name] = true
	c.Others = append(c.Others, strings.Clone(name)) // and not the whole list with it
}

// aDay is the most frames that a clip may last, show of its source, or lie behind 0: a
// day at 60 a second. Whoever writes a row for every frame of a shot counts on it.
const aDay = 24 * 3600 * 60

// within reports whether a clip is of a film, and not of numbers without sense.
func (c *Clip) within() bool {
	long := float64(c.RecordOut) - float64(c.RecordIn)
	return long <= aDay && long*math.Abs(c.Speed) <= aDay && max(c.RecordIn, -c.RecordIn) <= 2*aDay && max(c.SourceIn, -c.SourceIn) <= aDay
}

// keep keeps a clip.
func (c *Cut) keep(clip Clip, faults *lines.Faults) {
	if !clip.within() {
		faults.Add(lang.Diagnostic{
			Code: "too-large", Severity: lang.Error, Range: clip.Range,
			Message: fmt.Sprintf("the times of %q go beyond a day", clip.Name),
			Detail:  "Timecodes do not. The clip is left out.",
		})
		return
	}
	if len(c.Clips) < maxPieces {
		c.Clips = append(c.Clips, clip)
		return
	}
	faults.Add(lang.Diagnostic{
		Code: "too-large", Severity: lang.Error, Range: clip.Range,
		Message: fmt.Sprintf("there are more than %d pieces of the plan's shots", maxPieces), Detail: "This one is left out.",
	})
}

// hear keeps a clip that is heard, if it is of a shot that is wanted.
func (c *Cut) hear(clip Clip) {
	if clip.Of == nil {
		clip.Of = c.want.of(&clip)
	}
	if len(clip.Of) > 0 && clip.within() && len(c.Sounds) < maxPieces {
		c.Sounds = append(c.Sounds, clip)
	}
}

// speed returns how fast an event runs. Without a speed line it runs as it was
// taken, whatever its lengths say.
func speed(e edl.Event, rate timecode.Rate) float64 {
	if e.Speed == nil {
		return 1
	}
	num, den := rate.Exact()
	v := e.Speed.FPS * float64(den) / float64(num)
	if math.IsNaN(v) || math.Abs(v) > 1000 {
		return 1
	}
	return v
}

// timeline reads a timeline, nested ones in it too. Where its rate is not the plan's, its frames are
// taken as the time that they last.
func (c *Cut) timeline(t *lines.Text, rate timecode.Rate) []lang.Diagnostic {
	line, diags := otio.Read(t)
	l := laying{Cut: c, text: t, line: line, frames: func(n int64) int64 { return n }}
	if !sameSpeed(line.Rate, rate) && len(line.Tracks) > 0 {
		l.frames = func(n int64) int64 { return rate.Frames(line.Rate.Seconds(n)) }
		diags = append(diags, lang.Diagnostic{
			Code: "other-rate", Severity: lang.Warning, Range: t.Start(),
			Message: fmt.Sprintf("the timeline runs at %s frames a second and the plan at %s", line.Rate, rate),
			Detail:  "Pullscore takes its times in seconds.",
		})
	}
	c.Start, c.HasStart, c.FromZero = l.frames(line.Start), line.HasStart, !line.HasStart
	for _, m := range line.Markers {
		c.mark(m, l.frames(m.Start))
	}
	for i := range line.Tracks {
		if track := &line.Tracks[i]; !track.Disabled {
			l.items(track.Items, strings.EqualFold(track.Kind, "Audio"))
		}
	}
	c.inOrder()
	return append(diags, l.faults.List()...)
}

// A laying lays the items of a timeline into a cut.
type laying struct {
	*Cut
	text   *lines.Text
	line   *otio.Timeline
	frames func(int64) int64 // in frames of the plan
	faults lines.Faults
}

// items takes the clips of items, and reports whether one of them is of a shot that
// is wanted.
func (l *laying) items(items []otio.Item, heard bool) (wanted bool) {
	for i := range items {
		if l.item(&items[i], heard) {
			wanted = true
		}
	}
	return wanted
}

// item takes an item of a timeline with its markers and what is in it. A stack or
// track that is called as a shot is a clip if nothing in it is one.
func (l *laying) item(item *otio.Item, heard bool) (wanted bool) {
	if item.Disabled {
		return false
	}
	for _, m := range item.Markers {
		if at, ok := item.RecordOf(m, l.line.Start); ok {
			l.mark(m, l.frames(l.line.Start+at))
		}
	}
	heard = heard || item.Sound
	if l.items(item.Inside, heard) {
		return true
	}
	at := l.line.Start + item.Record
	in, out := l.frames(at), l.frames(at+item.Frames)
	if out <= in {
		return false
	}
	clip := Clip{Name: item.Name, RecordIn: in, RecordOut: out, SourceIn: l.frames(item.Source), Speed: item.Runs()}
	if heard {
		l.hear(clip)
		return false
	}
	if e := (edl.Event{Reel: item.Reel}); !e.Nameless() {
		clip.Reel = item.Reel
	}
	if !l.wants(&clip) {
		return false
	}
	clip.Range = l.text.Place(item.At)
	if covered(item) {
		l.faults.Add(lang.Diagnostic{
			Code: "covered", Severity: lang.Note, Range: clip.Range,
			Message: fmt.Sprintf("%q lies wholly under other pictures", item.Name),
			Detail:  "Nothing of it is seen, so this clip is not in the cut.",
		})
		return true
	}
	l.keep(clip, &l.faults)
	return true
}

// covered reports whether nothing is seen of an item, or of all clips in it.
func covered(item *otio.Item) bool {
	if item.Kind == "Clip" {
		return item.Covered
	}
	return len(item.Inside) > 0 && !slices.ContainsFunc(item.Inside, func(in otio.Item) bool { return !covered(&in) })
}

// mark takes a marker; some programs keep its text in the comment.
func (c *Cut) mark(m otio.Marker, at int64) {
	c.named(at, m.Name, m.Comment)
}

// named takes a marker by each of its texts.
func (c *Cut) named(at int64, texts ...string) {
	for _, text := range texts {
		if text != "" {
			c.Markers = append(c.Markers, Marker{Text: text, At: at})
		}
	}
}

func (c *Cut) inOrder() {
	slices.SortStableFunc(c.Clips, func(a, b Clip) int { return cmp.Compare(a.RecordIn, b.RecordIn) })
	slices.SortStableFunc(c.Sounds, func(a, b Clip) int { return cmp.Compare(a.RecordIn, b.RecordIn) })
	slices.SortStableFunc(c.Markers, func(a, b Marker) int { return cmp.Compare(a.At, b.At) })
}

// Move shifts the record so that it starts at a label.
func (c *Cut) Move(start int64) {
	by := start - c.Start
	for i := range c.Clips {
		c.Clips[i].RecordIn += by
		c.Clips[i].RecordOut += by
	}
	for i := range c.Sounds {
		c.Sounds[i].RecordIn += by
		c.Sounds[i].RecordOut += by
	}
	for i := range c.Markers {
		c.Markers[i].At += by
	}
	c.Start, c.HasStart, c.FromZero = start, true, false
}

// sameSpeed reports whether two rates have the same frames: drop-frame is only
// another way to write their labels.
func sameSpeed(a, b timecode.Rate) bool {
	an, ad := a.Exact()
	bn, bd := b.Exact()
	return an == bn && ad == bd
}
