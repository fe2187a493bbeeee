package otio

import (
	"bytes"
	"encoding/json"
	"fmt"
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pullscore/lang/lines"
	"pullscore/lang/testing/samples"
	"pullscore/lang/timecode"
)

// expected is what a correct reader finds in a sample.
type expected struct {
	Start   *int64  `json:"global_start_frames"`
	Items   [][]any `json:"items_track_kind_name_recordStart_duration_sourceStart_enabled"`
	Markers []struct {
		Color, Name, Owner string
		Dur, Start         int64
	}
	Name, Rate string
	Tracks     []struct {
		Frames     int64
		Kind, Name string
	}
}

func TestSamples(t *testing.T) {
	samples.Each(t, "otio/", func(t *testing.T, name string, src []byte, want expected) {
		text, _ := lines.Decode(name, src)
		got, diags := Read(text)
		for _, d := range diags {
			t.Errorf("%d:%d %s", d.Range.Start.Line, d.Range.Start.Column, d.Message)
		}
		if got.Name != want.Name || got.Rate.String() != want.Rate || got.HasStart != (want.Start != nil) || len(got.Tracks) != len(want.Tracks) {
			t.Errorf("%q at %s, %d tracks, want %q at %s, %d", got.Name, got.Rate, len(got.Tracks), want.Name, want.Rate, len(want.Tracks))
		}
		var items [][]any
		markers := ""
		for i, track := range got.Tracks {
			if w := want.Tracks[i]; track.Frames != w.Frames || track.Kind != w.Kind || track.Name != w.Name {
				t.Errorf("track %+v, want %+v", track, w)
			}
			for _, item := range track.Items {
				items = append(items, []any{i, item.Kind, item.Name, item.Record, item.Frames, item.Source, !item.Disabled})
				for _, m := range item.Markers {
					markers += fmt.Sprintln(m.Colour, m.Name, item.Name, m.Frames, m.Start)
				}
			}
		}
		a, _ := json.Marshal(items)
		b, _ := json.Marshal(want.Items)
		if string(a) != string(b) {
			t.Errorf("items %s\nwant  %s", a, b)
		}
		wanted := ""
		for _, m := range want.Markers {
			wanted += fmt.Sprintln(m.Color, m.Name, m.Owner, m.Dur, m.Start)
		}
		if markers != wanted {
			t.Errorf("markers %s, want %s", markers, wanted)
		}
	})
}

const (
	second = `{"OTIO_SCHEMA":"TimeRange.1","start_time":{"OTIO_SCHEMA":"RationalTime.1","value":10,"rate":24},"duration":{"value":24,"rate":24}}`
	half   = `{"duration":{"value":30,"rate":59.94005994},"start_time":{"value":0,"rate":1}}`
)

func timeline(children string) string {
	return `{"OTIO_SCHEMA":"Timeline.1","name":"x","global_start_time":{"value":86400,"rate":24},"tracks":{"OTIO_SCHEMA":"Stack.1","children":[{"OTIO_SCHEMA":"Track.1","kind":"Video","children":[` + children + `]}]}}`
}

// Files of our own, a rule or a fault each.
func TestRules(t *testing.T) {
	for _, c := range []struct{ name, src, want string }{
		{"old names and gaps", timeline(`{"OTIO_SCHEMA":"Filler.1","source_range":` + second + `},{"OTIO_SCHEMA":"Clip.1","name":"A","media_reference":{"available_range":` + second + `}}`),
			"A 24+24 from 10"},
		{"active media", timeline(`{"OTIO_SCHEMA":"Clip.2","name":"A","active_media_reference_key":"hi","media_references":{"DEFAULT_MEDIA":{},"hi":{"available_range":` + second + `}}}`),
			"A 0+24 from 10"},
		{"another rate", timeline(`{"OTIO_SCHEMA":"Clip.1","name":"A","source_range":` + half + `},{"OTIO_SCHEMA":"Clip.1","name":"B","source_range":` + second + `}`),
			"A 0+12 from 0; B 12+24 from 10"},
		{"a transition takes no time", timeline(`{"OTIO_SCHEMA":"Clip.1","name":"A","source_range":` + second + `},{"OTIO_SCHEMA":"Transition.1","in_offset":{"value":3,"rate":24}},{"OTIO_SCHEMA":"Clip.1","name":"B","enabled":false,"source_range":` + second + `}`),
			"A 0+24 from 10; B 24+24 from 10 off"},
		{"a nested stack is as long as its longest", timeline(`{"OTIO_SCHEMA":"Stack.1","name":"S","children":[{"OTIO_SCHEMA":"Track.1","children":[{"OTIO_SCHEMA":"Clip.1","source_range":` + second + `}]}]}`),
			"S 0+24 from 0"},
		{"no length", timeline(`{"OTIO_SCHEMA":"Clip.1","name":"A"}`), "A 0+0 from 0 / error no-length"},
		{"unknown schema", timeline(`{"OTIO_SCHEMA":"Hologram.7","name":"A"},{"OTIO_SCHEMA":"Clip.1","name":"B","source_range":` + second + `}`),
			"B 0+24 from 10 / note unknown-schema"},
		{"no number", timeline(`{"OTIO_SCHEMA":"Clip.1","name":"A","source_range":{"duration":{"value":NaN,"rate":24}}}`), "A 0+0 from 0 / error no-time"},
		{"rate 0", timeline(`{"OTIO_SCHEMA":"Clip.1","name":"A","source_range":{"duration":{"value":1,"rate":0}}}`), "A 0+0 from 0 / error no-time"},
		{"endless numbers elsewhere", timeline(`{"OTIO_SCHEMA":"Clip.1","metadata":{"a":[Inf,-Infinity,NaN,1e999,"Inf"]},"name":"A","source_range":` + second + `}`), "A 0+24 from 10"},
		{"markers", timeline(`{"OTIO_SCHEMA":"Clip.1","name":"A","source_range":` + second + `,"markers":[{"name":"m","color":"RED","marked_range":` + second + `},{"name":"r","color":{"name":"PINK"},"marked_range":{"start_time":{"value":86412,"rate":24}}},{"name":"out","marked_range":{"start_time":{"value":1,"rate":24}}},{"name":"none"}]}`),
			"A 0+24 from 10 <m RED 0 true> <r PINK 12 true> <out  -86399 false> / error no-time"},
		{"a clip alone", `{"OTIO_SCHEMA":"Clip.1","name":"A","source_range":` + second + `}`, "A 0+24 from 10"},
		{"a collection", `{"OTIO_SCHEMA":"SerializableCollection.1","children":[` + timeline("") + `,` + timeline("") + `]}`, " / warning more-timelines"},
		{"something else", `{"OTIO_SCHEMA":"Hologram.1"}`, " / error no-timeline"},
		{"no schema", `{}`, " / error no-timeline"},
		{"a list", `[]`, " / error bad-json"},
		{"cut short", timeline("")[:60], " / error bad-json"},
		{"a comma too many", timeline(`,`), " / error bad-json"},
		{"something behind the end", timeline("") + "{}", " / error bad-json"},
		{"empty", "", " / error bad-json"},
		{"nested for ever", strings.Repeat(`{"tracks":`, 5000), " / error too-deep"},
	} {
		t.Run(c.name, func(t *testing.T) {
			text, _ := lines.Decode("f.otio", []byte(c.src))
			tl, diags := Read(text)
			var shown []string
			for _, track := range tl.Tracks {
				for _, i := range track.Items {
					s := fmt.Sprintf("%s %d+%d from %d", i.Name, i.Record, i.Frames, i.Source)
					if i.Disabled {
						s += " off"
					}
					for _, m := range i.Markers {
						at, ok := i.RecordOf(m, tl.Start)
						s += fmt.Sprintf(" <%s %s %d %v>", m.Name, m.Colour, at, ok)
					}
					shown = append(shown, s)
				}
			}
			got := strings.Join(shown, "; ")
			for _, d := range diags {
				got += fmt.Sprintf(" / %s %s", d.Severity, d.Code)
			}
			if got != c.want {
				t.Errorf("got  %s\nwant %s\n%v", got, c.want, diags)
			}
		})
	}
}

// A fault stands on its line and column.
func TestPlaces(t *testing.T) {
	text, _ := lines.Decode("f.otio", []byte("{\n  \"OTIO_SCHEMA\": \"Timeline.1\",\n  \"name\": oops\n}"))
	_, diags := Read(text)
	if len(diags) != 1 || diags[0].Range.Start.Line != 3 || diags[0].Range.Start.Column != 11 {
		t.Errorf("%+v", diags)
	}
}

// What is written is read back equal to the frame, at every rate.
func TestRoundTrip(t *testing.T) {
	for _, rate := range timecode.Rates() {
		if rate.Drop() { // labels only: a timeline has none
			continue
		}
		t.Run(rate.String(), func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				frames := rapid.Int64Range(0, 5_000_000)
				want := Timeline{Name: rapid.String().Draw(t, "name"), Rate: rate, Start: frames.Draw(t, "start"), HasStart: true}
				track := Track{Name: "V1", Kind: "Video"}
				for i := range rapid.IntRange(1, 5).Draw(t, "items") {
					track.Frames += rapid.Int64Range(0, 100).Draw(t, "gap")
					item := Item{Kind: aClip, Name: fmt.Sprint(i), Record: track.Frames, Frames: frames.Draw(t, "frames"), Source: frames.Draw(t, "source")}
					if speed := rapid.SampledFrom([]float64{1, 0, 0.5, 2, -1, -0.25}).Draw(t, "speed"); speed != 1 && item.Frames > 0 {
						item.Speed = &speed
						item.Source += 2 * item.Frames
					}
					for range rapid.IntRange(0, 3).Draw(t, "markers") {
						item.Markers = append(item.Markers, Marker{
							Name: rapid.String().Draw(t, "text"), Colour: "RED", Comment: "c", Start: frames.Draw(t, "at"), Frames: frames.Draw(t, "long"),
						})
					}
					track.Items = append(track.Items, item)
					track.Frames += item.Frames
				}
				want.Tracks = []Track{track}
				var b bytes.Buffer
				if err := Write(&b, &want); err != nil {
					t.Fatal(err)
				}
				text, _ := lines.Decode("f.otio", b.Bytes())
				got, diags := Read(text)
				if len(diags) > 0 {
					t.Fatalf("%v\n%s", diags, &b)
				}
				for i := range got.Tracks[0].Items {
					got.Tracks[0].Items[i].At, got.Tracks[0].Items[i].ahead = 0, 0
				}
				if !reflect.DeepEqual(*got, want) {
					t.Fatalf("got  %+v\nwant %+v", *got, want)
				}
			})
		})
	}
}

func FuzzRead(f *testing.F) {
	f.Add(timeline(`{"OTIO_SCHEMA":"Clip.2","media_references":{"a":{}},"markers":[{"name":"m"}],"source_range":` + second + `}`))
	f.Add(`{"OTIO_SCHEMA":"Stack.1","children":[{"value":-Inf}]}`)
	f.Fuzz(func(t *testing.T, src string) {
		text, _ := lines.Decode("f.otio", []byte(src))
		tl, diags := Read(text)
		if len(tl.Tracks) == 0 && tl.Name == "" && len(diags) == 0 && !strings.Contains(src, "{") {
			t.Error("nothing was read, and nothing is told")
		}
	})
}
