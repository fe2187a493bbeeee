// Where things lie. An object holds others, to any depth, and each has a time of
// its own: that of its media, or of what it holds. Its source range is the part of
// its own time that is used; what lies outside is not shown, and neither is what
// lies outside the range of anything around it. Of an object whose first used
// frame lies at p in the record, the own time x lies at p + x - start, where start
// is where its source range begins.
//
// A track lays its children end to end from its own time 0, a stack begins all of
// them there. So a track whose range begins at -7 shows its first child 7 frames
// late.
//
// Effects that change the speed leave these places as they are: they say which
// frames of the media run there. The speeds of an object and of all around it
// multiply.

package otio

import (
	"fmt"
	"math"
	"strings"

	"pullscore/lang"
)

// A place is where an object lies in the record, in frames from the timeline's
// start: its own time 0, and what of the record the things around it leave to it.
type place struct {
	zero     float64
	from, to float64
	speed    float64
	warped   bool // something around it has a speed
}

// within returns the place of what an object holds: its first used frame lies at
// a time of the record.
func (r *reader) within(n *node, at float64, around place) place {
	p := around
	p.zero = at - r.first(n)
	p.from, p.to = max(p.from, at), min(p.to, at+r.length(n))
	if n.speed != nil {
		p.warped = true
		p.speed *= *n.speed
	}
	return p
}

// first returns where the used part of an object begins in its own time.
func (r *reader) first(n *node) float64 {
	if n.span != nil && n.span.start.given() {
		return r.exact(n.span.start)
	}
	return 0
}

// tracks lays out the stack of a timeline.
func (r *reader) tracks(stack *node) {
	t := r.timeline
	all := place{from: math.Inf(-1), to: math.Inf(1), speed: 1}
	markers := r.markers(stack)
	all = r.within(stack, 0, all)
	t.Markers = r.shown(markers, all)
	for i := range stack.children {
		c := &stack.children[i]
		switch {
		case c.is(aTrack, oldTrack):
		case c.is(aClip, aStack):
			c = &node{name: c.name, kind: "Video", children: []node{*c}}
			c.schema = aTrack
		default:
			r.unknown(c)
			continue
		}
		markers := r.markers(c)
		p := r.within(c, all.zero, all)
		if r.first(c)+r.length(c) <= 0 { // some programs write where the record begins, as minus its label
			p.zero = all.zero
		}
		track := Track{Name: c.name, Kind: c.kind, Disabled: c.disabled, Items: r.track(c, p)}
		if p.to > p.from {
			track.Frames = round(p.to - p.from)
		}
		t.Tracks = append(t.Tracks, track)
		t.Markers = append(t.Markers, r.shown(markers, p)...)
	}
}

// shown returns those markers of the timeline or a track that are shown, in record
// time. Some programs count them from the timeline's start already.
func (r *reader) shown(markers []Marker, p place) (list []Marker) {
	start := float64(r.timeline.Start)
	for _, m := range markers {
		own, label := float64(m.Start)+p.zero, float64(m.Start)-start
		switch {
		case own >= p.from && own < p.to:
			m.Start = round(own + start)
		case label >= p.from && label < p.to:
		default:
			continue
		}
		list = append(list, m)
	}
	return list
}

// track lays out the children of a track, end to end.
func (r *reader) track(n *node, p place) (items []Item) {
	at := p.zero
	for i := range n.children {
		switch c := &n.children[i]; {
		case c.is("Transition"): // overlaps its neighbours and takes no time
		case c.is("Gap", "Filler"):
			at += r.length(c)
		case c.is(aClip, aStack, aTrack, oldTrack):
			items = r.item(items, c, at, p)
			at += r.length(c)
		default:
			r.unknown(c)
		}
	}
	return items
}

// stack lays out the children of a stack within a track: all begin together.
func (r *reader) stack(n *node, p place) (items []Item) {
	for i := range n.children {
		switch c := &n.children[i]; {
		case c.is("Gap", "Filler", "Transition"):
		case c.is(aClip, aStack, aTrack, oldTrack):
			items = r.item(items, c, p.zero, p)
		default:
			r.unknown(c)
		}
	}
	return items
}

// item adds an object that begins at a time of the record, if anything of it is
// shown.
func (r *reader) item(items []Item, n *node, at float64, around place) []Item {
	length := r.length(n)
	first := r.first(n)
	p := r.within(n, at, around)
	from, to := max(at, p.from), p.to
	if length > 0 && to <= from || at < around.from && length <= 0 || at > around.to {
		return items
	}
	kind, _, _ := strings.Cut(n.schema, ".")
	i := Item{
		Kind: kind, Name: n.name, Reel: n.reel, Record: round(from), Disabled: n.disabled, At: n.at, Markers: r.markers(n),
		Sound: strings.EqualFold(n.kind, "Audio"), Source: round(first + from - at),
	}
	i.Frames = max(0, round(to)-i.Record)
	if p.warped {
		own := i.Source
		i.Speed, i.Source = &p.speed, firstRun(first, from-at, length, p.speed)
		i.ahead = own - i.Source
	}
	switch {
	case n.is(aStack):
		i.Inside = r.stack(n, p)
	case n.is(aTrack, oldTrack):
		i.Inside = r.track(n, p)
	}
	return append(items, i)
}

// firstRun returns the first frame of the media that is seen of a used part that
// begins at first and takes a length of the record, after its head was cut off.
// Of one that runs backwards that is near its end.
func firstRun(first, head, length, speed float64) int64 {
	if speed < 0 {
		return round(first-(length-head)*speed) - 1
	}
	return round(first + head*speed)
}

// length returns how long an object is, in frames. That it has none is told once.
func (r *reader) length(n *node) float64 {
	if n.length == nil {
		n.length = new(r.measure(n))
	}
	return *n.length
}

func (r *reader) measure(n *node) float64 {
	if n.span != nil && n.span.duration.given() {
		return r.exact(n.span.duration)
	}
	length := 0.0
	switch {
	case n.is(aTrack, oldTrack):
		for i := range n.children {
			if c := &n.children[i]; c.is(aClip, aStack, aTrack, oldTrack, "Gap", "Filler") {
				length += r.length(c)
			}
		}
	case n.is(aStack, ""):
		for i := range n.children {
			if c := &n.children[i]; c.is(aClip, aStack, aTrack, oldTrack, "Gap", "Filler") {
				length = max(length, r.length(c))
			}
		}
	default:
		r.tell(lang.Error, "no-length", n.at, fmt.Sprintf("%q has no length", n.name),
			"It has neither a source_range nor media with an available_range. What lies behind it in the track begins too early.")
	}
	return length
}
