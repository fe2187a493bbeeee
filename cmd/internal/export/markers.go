// Markers for the cutting room: where each move of the focus starts and lands,
// where the cues fall, and where a camera that turns starts and lands.

package export

import (
	"cmp"
	"fmt"
	"io"
	"slices"

	"pullscore/interp/moments"
	"pullscore/interp/plan"
	"pullscore/lang/edl"
	"pullscore/lang/otio"
	"pullscore/lang/timecode"
)

// A placed shot is a shot in the record.
type placed struct {
	*plan.Shot
	in, out int64 // frames
}

// A mark is one marker.
type mark struct {
	at     int64 // frames in the record
	colour string
	text   string
}

// The colours are names that both forms know.
const (
	startColour = "CYAN"
	landColour  = "GREEN"
	cueColour   = "YELLOW"

	cameraStartColour = "MAGENTA"
	cameraLandColour  = "BLUE"
)

// place lays the shots of a plan into the record: where they begin, if all of
// them say so, else one behind the other from 00:00:00:00.
func place(p *plan.Plan) (list []placed) {
	timed := !slices.ContainsFunc(p.Shots, func(s *plan.Shot) bool { return s.BeginsAt == "" })
	at := int64(0)
	for _, s := range p.Shots {
		length := max(1, int64(len(Frames(s))))
		if timed {
			at = s.Begins
		}
		list = append(list, placed{s, at, at + length})
		at += length
	}
	slices.SortStableFunc(list, func(a, b placed) int { return cmp.Compare(a.in, b.in) })
	return list
}

// marks returns the markers of a shot in the order of their time; what falls
// before the picture is marked on its first frame.
func (s placed) marks() (list []mark) {
	add := func(t plan.Number, colour, format string, args ...any) {
		at, text := s.Speed().Frames(float64(t)), fmt.Sprintf(format, args...)
		if at < 0 { // the cut begins later, and no marker can lie before its clip
			at, text = 0, fmt.Sprintf("%s, %d fr before the cut", text, -at)
		}
		list = append(list, mark{s.in + at, colour, text})
	}
	for _, c := range s.Cues {
		add(c.T, cueColour, "%s", c.Name)
	}
	for _, p := range s.Pulls {
		to := cmp.Or(p.To, p.Target)
		if p.Kind == "follow" {
			add(p.Start, startColour, "%d follow %s", p.Number, to)
			continue
		}
		add(p.Start, startColour, "%d rack to %s", p.Number, to)
		add(p.Land, landColour, "%d lands on %s", p.Number, to)
	}
	for _, m := range cameraMoves(s.Shot) {
		add(m.start, cameraStartColour, "%s", m.starts)
		add(m.land, cameraLandColour, "%s", m.lands)
	}
	slices.SortStableFunc(list, func(a, b mark) int { return cmp.Compare(a.at, b.at) })
	return list
}

// EDL writes a list of the shots with a LOC line a marker.
func EDL(w io.Writer, p *plan.Plan) error {
	list := edl.List{Title: p.Title}
	rate := rateOf(p)
	for i, s := range place(p) {
		e := edl.Event{
			Number: fmt.Sprintf("%03d", i+1), Reel: "AX", Channels: "V", Transition: "C", Clip: s.ID,
			SourceIn: s.in, SourceOut: s.out, RecordIn: s.in, RecordOut: s.out,
		}
		if text := moments.Provenance(s.Shot); text != "" {
			e.Notes = []string{text}
		}
		for _, m := range s.marks() {
			e.Markers = append(e.Markers, edl.Marker{At: m.at, Colour: m.colour, Text: m.text})
		}
		list.Events = append(list.Events, e)
	}
	return edl.Write(w, &list, rate)
}

// OTIO writes a timeline of the shots with a marker for each. Shots that lie
// over one another go on tracks of their own.
func OTIO(w io.Writer, p *plan.Plan) error {
	shots := place(p)
	t := otio.Timeline{Name: p.Title, Rate: rateOf(p), HasStart: true}
	if len(shots) > 0 {
		t.Start = shots[0].in
	}
	for _, s := range shots {
		item := otio.Item{Kind: "Clip", Name: s.ID, Record: s.in - t.Start, Frames: s.out - s.in, Source: s.in}
		if text := moments.Provenance(s.Shot); text != "" {
			item.Metadata = map[string]string{"ring": text}
		}
		for _, m := range s.marks() {
			item.Markers = append(item.Markers, otio.Marker{Name: m.text, Colour: m.colour, Start: m.at})
		}
		track := freeTrack(&t, item.Record)
		track.Items = append(track.Items, item)
		track.Frames = item.Record + item.Frames
	}
	return otio.Write(w, &t)
}

// freeTrack returns the first track that is free from a record time on.
func freeTrack(t *otio.Timeline, from int64) *otio.Track {
	for i := range t.Tracks {
		if t.Tracks[i].Frames <= from {
			return &t.Tracks[i]
		}
	}
	t.Tracks = append(t.Tracks, otio.Track{Name: fmt.Sprintf("V%d", len(t.Tracks)+1), Kind: "Video"})
	return &t.Tracks[len(t.Tracks)-1]
}

func rateOf(p *plan.Plan) timecode.Rate {
	if len(p.Shots) == 0 {
		return timecode.Rate{}
	}
	return p.Shots[0].Rate
}
