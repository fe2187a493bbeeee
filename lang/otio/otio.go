// Package otio reads and writes OpenTimelineIO files (.otio, JSON; Academy
// Software Foundation): where clips lie in the record, and the markers on them.
//
// A timeline may hold others, to any depth: Read lays out what is shown of them.
//
// Times are frames at the timeline's rate, which is the rate of the first time
// in it. Records start at 0 unless the timeline has a global start.
package otio

import (
	"fmt"
	"math"
	"strings"

	"pullscore/lang"
	"pullscore/lang/jsontext"
	"pullscore/lang/lines"
	"pullscore/lang/timecode"
)

// A Timeline is what a file comes to.
type Timeline struct {
	Name     string
	Rate     timecode.Rate
	Start    int64 // the record time of its first frame
	HasStart bool
	Tracks   []Track
	Markers  []Marker // of the timeline and its tracks, in record time
}

// A Track is a row of the timeline.
type Track struct {
	Name, Kind string // Kind is Video or Audio
	Frames     int64  // how long it is shown
	Disabled   bool
	Items      []Item
}

// An Item is a clip, or a stack or track within a track, as far as it is shown;
// gaps and transitions are left out.
type Item struct {
	Kind     string // Clip, Stack or Track
	Name     string
	Reel     string // of its source; "" where nobody says
	Record   int64  // its first frame, from the start of the timeline
	Frames   int64
	Source   int64    // its first frame in the source's own time
	Speed    *float64 // source frames for one of the record; nil: 1
	Disabled bool
	Sound    bool   // a track of sound
	Covered  bool   // a clip of which other pictures leave nothing to see
	Inside   []Item // what a stack or track holds
	Markers  []Marker

	Metadata map[string]any // what this program alone knows: written under its name, not read

	At int // the byte of the file that it begins at; see lines.Text.Place

	ahead int64 // by how much its own time at Record is ahead of Source, where the speed parts them
}

// Runs returns the speed: source frames for one of the record, 0 of a picture
// that stands still, and less for one that runs backwards.
func (i Item) Runs() float64 {
	if i.Speed == nil {
		return 1
	}
	return *i.Speed
}

// A Marker is a place or a stretch.
type Marker struct {
	Name, Colour, Comment string
	Start, Frames         int64 // in its owner's own time
}

// RecordOf returns where a marker of an item lies in the record, from the start
// of the timeline. Markers that came from an edit decision list hold record time
// already, and lie outside the source: with start, the timeline's, they are
// counted from it. ok is false for one that lies neither in the source nor in
// the record of the item.
func (i Item) RecordOf(m Marker, start int64) (at int64, ok bool) {
	if in := m.Start - i.Source - i.ahead; in >= 0 && in < max(i.Frames, 1) {
		return i.Record + in, true
	}
	at = m.Start - start
	return at, at >= i.Record && at < i.Record+i.Frames
}

// Read reads a timeline. What it does not know is passed over; a clip without a
// length, and a file that is no JSON, are errors on their place.
func Read(t *lines.Text) (*Timeline, []lang.Diagnostic) {
	var faults lines.Faults
	r := &reader{text: t, timeline: &Timeline{}, faults: &faults}
	d := &decoder{Scanner: jsontext.Scanner{Text: t.Content, Progress: t.Progress}}
	root, err := d.read()
	if err == nil && d.Next() != 0 {
		err = &jsontext.Fault{At: d.At, Code: "bad-json", Message: "there is more text after the end"}
	}
	if err != nil {
		at := err.(*jsontext.Fault) // there are no other errors
		r.tell(lang.Error, at.Code, at.At, at.Message, "")
	} else {
		r.root(root)
	}
	return r.timeline, faults.List()
}

// A reader turns nodes into a timeline.
type reader struct {
	text     *lines.Text
	timeline *Timeline
	faults   *lines.Faults
	hasRate  bool
	latest   struct { // what was snapped last
		rate  float64
		exact timecode.Rate
		ok    bool
	}
}

// tell adds what is to be told of a byte of the file.
func (r *reader) tell(severity lang.Severity, code string, at int, message, detail string) {
	r.faults.Add(lang.Diagnostic{Code: code, Severity: severity, Message: message, Detail: detail, Range: r.text.Place(at)})
}

// is reports whether a node has a schema, of whatever version.
func (n node) is(schemas ...string) bool {
	name, _, _ := strings.Cut(n.schema, ".")
	for _, s := range schemas {
		if name == s {
			return true
		}
	}
	return false
}

const (
	aTrack    = "Track"
	oldTrack  = "Sequence"
	aStack    = "Stack"
	aClip     = "Clip"
	aTimeline = "Timeline"
)

// root reads the outermost object, which need not be a timeline.
func (r *reader) root(o *object) {
	n := o.reduced()
	switch {
	case n.is(aTimeline):
		r.read(n)
	case n.is(aStack):
		r.read(node{name: n.name, line: &line{tracks: &n}})
	case n.is(aTrack, oldTrack, aClip):
		r.read(node{name: n.name, line: &line{tracks: &node{children: []node{n}}}})
	case n.is("SerializableCollection"):
		r.collection(n)
	case n.schema == "":
		r.tell(lang.Error, "no-timeline", n.at, "this object has no OTIO_SCHEMA", "A timeline's first object says that it is one.")
	default:
		r.tell(lang.Error, "no-timeline", n.at, fmt.Sprintf("the file holds a %s and no timeline", n.schema), "")
	}
}

// collection reads the first timeline of several.
func (r *reader) collection(n node) {
	var timelines []node
	for _, c := range n.children {
		if c.is(aTimeline) {
			timelines = append(timelines, c)
		}
	}
	if len(timelines) == 0 {
		r.tell(lang.Error, "no-timeline", n.at, "the file holds no timeline", "")
		return
	}
	if len(timelines) > 1 {
		r.tell(lang.Warning, "more-timelines", timelines[1].at, fmt.Sprintf("of %d timelines the first is read", len(timelines)), "")
	}
	r.read(timelines[0])
}

// read reads a timeline.
func (r *reader) read(n node) {
	t := r.timeline
	t.Name = n.name
	if n.line == nil {
		return
	}
	if global := n.line.global; !math.IsNaN(global.value) && global.given() {
		t.Start, t.HasStart = r.frames(global), true
	}
	if n.line.tracks == nil {
		return
	}
	r.tracks(n.line.tracks)
	cover(t.Tracks)
}

func (r *reader) unknown(n *node) {
	r.tell(lang.Note, "unknown-schema", n.at, fmt.Sprintf("%q is passed over", n.schema), "It is no part of a timeline that is known here.")
}

// markers reads the markers of an object.
func (r *reader) markers(n *node) (list []Marker) {
	for _, m := range n.markers {
		if m.marked == nil || !m.marked.start.given() {
			r.tell(lang.Error, "no-time", m.at, fmt.Sprintf("marker %q has no time", m.name), "")
			continue
		}
		marker := Marker{Name: m.name, Colour: m.colour, Comment: m.comment, Start: r.frames(m.marked.start)}
		if m.marked.duration.given() {
			marker.Frames = r.frames(m.marked.duration)
		}
		list = append(list, marker)
	}
	return list
}

func (r *reader) frames(i instant) int64 { return round(r.exact(i)) }

// exact returns a time in frames of the timeline's rate, which the first time
// read sets.
func (r *reader) exact(i instant) float64 {
	if math.IsNaN(i.value) || !(i.rate > 0) {
		r.tell(lang.Error, "no-time", i.at, "this time has no value or no rate", "It is taken as 0.")
		return 0
	}
	own, snapped := r.snap(i.rate)
	if !r.hasRate && snapped {
		r.hasRate, r.timeline.Rate = true, own
	}
	if snapped && own == r.timeline.Rate {
		return i.value
	}
	num, den := r.timeline.Rate.Exact()
	perSecond := i.rate
	if snapped {
		n, d := own.Exact()
		perSecond = float64(n) / float64(d)
	}
	return i.value / perSecond * float64(num) / float64(den)
}

// snap is snap for a rate that is mostly the one before.
func (r *reader) snap(rate float64) (timecode.Rate, bool) {
	if rate != r.latest.rate {
		r.latest.rate = rate
		r.latest.exact, r.latest.ok = snap(rate)
	}
	return r.latest.exact, r.latest.ok
}

// near is how far a rate may lie from an exact one: 23.98 is 24000/1001.
const near = 0.005

// snap returns the exact rate nearest to one written as a decimal.
func snap(rate float64) (exact timecode.Rate, ok bool) {
	best := near
	for _, r := range timecode.Rates() {
		num, den := r.Exact()
		if off := math.Abs(float64(num)/float64(den) - rate); off < best && !r.Drop() {
			exact, ok, best = r, true, off
		}
	}
	return exact, ok
}

// largest bounds times: beyond it a float64 no longer tells frames apart.
const largest = 1 << 53

func round(frames float64) int64 {
	if math.IsNaN(frames) {
		return 0
	}
	return int64(math.Round(max(-largest, min(largest, frames))))
}
