// Timelines written.

package otio

import (
	"encoding/json"
	"io"

	"pullscore/lang/timecode"
)

// fields are the fields of an object; encoding/json writes them sorted, so that
// the same timeline always gives the same bytes.
type fields map[string]any

// Write writes a timeline as version 1 of its objects, and Clip.2 and Marker.2,
// which every reader since 2022 takes.
func Write(w io.Writer, t *Timeline) error {
	out := json.NewEncoder(w)
	out.SetEscapeHTML(false)
	out.SetIndent("", "  ")
	return out.Encode(t.fields())
}

func (t *Timeline) fields() fields {
	tracks := make([]any, len(t.Tracks))
	for i, track := range t.Tracks {
		tracks[i] = track.fields(t.Rate)
	}
	f := fields{
		"OTIO_SCHEMA": "Timeline.1", "name": t.Name, "metadata": fields{}, "global_start_time": nil,
		"tracks": fields{
			"OTIO_SCHEMA": "Stack.1", "name": "tracks", "metadata": fields{}, "effects": []any{},
			"source_range": nil, "markers": markers(t.Markers, t.Rate), "children": tracks,
		},
	}
	if t.HasStart {
		f["global_start_time"] = rational(t.Start, t.Rate)
	}
	return f
}

// fields lays the items out, with gaps where nothing lies.
func (t Track) fields(rate timecode.Rate) fields {
	children := []any{}
	at := int64(0)
	for _, item := range t.Items {
		if item.Record > at {
			children = append(children, gap(item.Record-at, rate))
		}
		children = append(children, item.fields(rate))
		at = item.Record + item.Frames
	}
	if t.Frames > at {
		children = append(children, gap(t.Frames-at, rate))
	}
	return fields{
		"OTIO_SCHEMA": "Track.1", "name": t.Name, "kind": t.Kind, "metadata": fields{}, "effects": []any{},
		"source_range": nil, "markers": []any{}, "children": children,
	}
}

func gap(frames int64, rate timecode.Rate) fields {
	return fields{
		"OTIO_SCHEMA": "Gap.1", "name": "", "metadata": fields{}, "effects": []any{}, "markers": []any{},
		"source_range": timeRange(0, frames, rate),
	}
}

func (i Item) fields(rate timecode.Rate) fields {
	return fields{
		"OTIO_SCHEMA": "Clip.2", "name": i.Name, "metadata": i.metadata(), "effects": i.effects(), "enabled": !i.Disabled,
		"source_range": timeRange(i.begins(), i.Frames, rate), "markers": markers(i.Markers, rate),
		"active_media_reference_key": "DEFAULT_MEDIA",
		"media_references": fields{"DEFAULT_MEDIA": fields{
			"OTIO_SCHEMA": "MissingReference.1", "name": "", "metadata": fields{}, "available_range": nil,
		}},
	}
}

// begins returns where the part of the source that is used begins.
func (i Item) begins() int64 {
	if speed := i.Runs(); speed < 0 {
		return i.Source + 1 - round(-float64(i.Frames)*speed)
	}
	return i.Source
}

// effects returns the effect that changes the speed, if one does.
func (i Item) effects() []any {
	if i.Speed == nil {
		return []any{}
	}
	kind := "LinearTimeWarp"
	if *i.Speed == 0 {
		kind = "FreezeFrame"
	}
	return []any{fields{
		"OTIO_SCHEMA": kind + ".1", "name": "", "effect_name": kind, "metadata": fields{}, "time_scalar": *i.Speed,
	}}
}

// ours is the name of this program in metadata.
const ours = "pullscore"

// metadata puts the metadata under the name of this program, as the form asks of everybody.
func (i Item) metadata() fields {
	data := fields{}
	for key, value := range i.Metadata {
		data[key] = value
	}
	if i.Reel != "" {
		data["reel"] = i.Reel
	}
	if len(data) == 0 {
		return fields{}
	}
	return fields{ours: data}
}

func markers(list []Marker, rate timecode.Rate) []any {
	written := make([]any, len(list))
	for i, m := range list {
		written[i] = fields{
			"OTIO_SCHEMA": "Marker.2", "name": m.Name, "color": m.Colour, "comment": m.Comment, "metadata": fields{},
			"marked_range": timeRange(m.Start, m.Frames, rate),
		}
	}
	return written
}

func timeRange(start, frames int64, rate timecode.Rate) fields {
	return fields{"OTIO_SCHEMA": "TimeRange.1", "start_time": rational(start, rate), "duration": rational(frames, rate)}
}

func rational(frames int64, rate timecode.Rate) fields {
	num, den := rate.Exact()
	return fields{"OTIO_SCHEMA": "RationalTime.1", "value": frames, "rate": float64(num) / float64(den)}
}
