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

// list reads an edit decision list, which counts at the plan's rate.
func (c *Cut) list(t *lines.Text, rate timecode.Rate) []lang.Diagnostic {
	list, diags := edl.Read(t, rate)
	for _, e := range list.Events {
		for _, m := range e.Markers {
			c.Markers = append(c.Markers, Marker{Text: m.Text, At: m.At})
		}
		if e.RecordOut == e.RecordIn || !strings.ContainsAny(e.Channels, "VB") {
			continue
		}
		c.Clips = append(c.Clips, Clip{
			Name: e.Name(), Reel: e.Reel, RecordIn: e.RecordIn, RecordOut: e.RecordOut, SourceIn: e.SourceIn,
			Speed: speed(e, rate), Range: e.Range,
		})
	}
	c.inOrder()
	if len(c.Clips) > 0 {
		c.Start, c.HasStart = c.Clips[0].RecordIn, true
	}
	return diags
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

// timeline reads a timeline. Where its rate is not the plan's, its frames are
// taken as the time that they last.
func (c *Cut) timeline(t *lines.Text, rate timecode.Rate) []lang.Diagnostic {
	line, diags := otio.Read(t)
	frames := func(n int64) int64 { return n }
	if !sameSpeed(line.Rate, rate) && len(line.Tracks) > 0 {
		frames = func(n int64) int64 { return rate.Frames(line.Rate.Seconds(n)) }
		diags = append(diags, lang.Diagnostic{
			Code: "other-rate", Severity: lang.Warning, Range: t.Start(),
			Message: fmt.Sprintf("the timeline runs at %s frames a second and the plan at %s", line.Rate, rate),
			Detail:  "Its times are taken in seconds.",
		})
	}
	c.Start, c.HasStart = frames(line.Start), line.HasStart
	for _, m := range line.Markers {
		c.mark(m, frames(m.Start))
	}
	for _, track := range line.Tracks {
		for _, item := range track.Items {
			c.item(item, track, line, frames)
		}
	}
	c.inOrder()
	return diags
}

// item takes a clip of a timeline with its markers.
func (c *Cut) item(item otio.Item, track otio.Track, line *otio.Timeline, frames func(int64) int64) {
	if item.Disabled {
		return
	}
	for _, m := range item.Markers {
		if at, ok := item.RecordOf(m, line.Start); ok {
			c.mark(m, frames(line.Start+at))
		}
	}
	in, out := frames(line.Start+item.Record), frames(line.Start+item.Record+item.Frames)
	if out <= in || strings.EqualFold(track.Kind, "Audio") {
		return
	}
	c.Clips = append(c.Clips, Clip{
		Name: item.Name, RecordIn: in, RecordOut: out, SourceIn: frames(item.Source), Speed: 1, Range: item.Range,
	})
}

// mark takes a marker; some programs keep its text in the comment.
func (c *Cut) mark(m otio.Marker, at int64) {
	for _, text := range []string{m.Name, m.Comment} {
		if text != "" {
			c.Markers = append(c.Markers, Marker{Text: text, At: at})
		}
	}
}

func (c *Cut) inOrder() {
	slices.SortStableFunc(c.Clips, func(a, b Clip) int { return cmp.Compare(a.RecordIn, b.RecordIn) })
	slices.SortStableFunc(c.Markers, func(a, b Marker) int { return cmp.Compare(a.At, b.At) })
}

// Move shifts the record so that it starts at a label.
func (c *Cut) Move(start int64) {
	by := start - c.Start
	for i := range c.Clips {
		c.Clips[i].RecordIn += by
		c.Clips[i].RecordOut += by
	}
	for i := range c.Markers {
		c.Markers[i].At += by
	}
	c.Start, c.HasStart = start, true
}

// sameSpeed reports whether two rates have the same frames: drop-frame is only
// another way to write their labels.
func sameSpeed(a, b timecode.Rate) bool {
	an, ad := a.Exact()
	bn, bd := b.Exact()
	return an == bn && ad == bd
}
