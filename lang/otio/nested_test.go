package otio

import (
	"fmt"
	"strings"
	"testing"

	"pullscore/lang/lines"
	"pullscore/lang/testing/samples"
)

// leaves returns the clips of items that are switched on, in the order of the file.
func leaves(items []Item) (list []Item) {
	for _, i := range items {
		switch {
		case i.Disabled:
		case i.Kind == aClip:
			list = append(list, i)
		default:
			list = append(list, leaves(i.Inside)...)
		}
	}
	return list
}

func TestNestedSamples(t *testing.T) {
	type expected struct {
		Start   int64   `json:"start_frames"`
		Visible [][]any `json:"visible_name_recordFrame_frames_sourceFrame"`
		Bell    int64   `json:"marker_bell_recordFrame"`
	}
	samples.EachCut(t, "otio/", func(t *testing.T, name string, src []byte, want expected) {
		text, _ := lines.Decode(name, src)
		line, diags := Read(text)
		if len(diags) > 0 || line.Start != want.Start {
			t.Errorf("start %d, want %d; %v", line.Start, want.Start, diags)
		}
		var got [][]any
		for _, track := range line.Tracks {
			for _, i := range leaves(track.Items) {
				got = append(got, []any{i.Name, i.Record, i.Frames, i.Source})
				for _, m := range i.Markers {
					if at, ok := i.RecordOf(m, line.Start); m.Name == "bell" && (!ok || at != want.Bell) {
						t.Errorf("bell at %d %v, want %d", at, ok, want.Bell)
					}
				}
				if wanted := map[string]float64{"27E-1": 2}; i.Runs() != max(1, wanted[i.Name]) {
					t.Errorf("%s runs at %g", i.Name, i.Runs())
				}
			}
		}
		if fmt.Sprint(got) != fmt.Sprint(want.Visible) {
			t.Errorf("got  %v\nwant %v", got, want.Visible)
		}
	})
}

func objectOf(schema, name, more string, children ...string) string {
	return fmt.Sprintf(`{"OTIO_SCHEMA":%q,"name":%q%s,"children":[%s]}`, schema+".1", name, more, strings.Join(children, ","))
}

func uses(from, frames int) string {
	return fmt.Sprintf(`,"source_range":{"start_time":{"value":%d,"rate":24},"duration":{"value":%d,"rate":24}}`, from, frames)
}

func warped(scalar string) string {
	return `,"effects":[{"OTIO_SCHEMA":"LinearTimeWarp.1","time_scalar":` + scalar + `}]`
}

// A rule each: what is shown of nested objects, where, and from which frame. A
// covered clip has a C behind it.
func TestNested(t *testing.T) {
	clip := func(name string, from, frames int, more ...string) string {
		return objectOf("Clip", name, uses(from, frames)+strings.Join(more, ""))
	}
	stack := func(more string, children ...string) string { return objectOf("Stack", "s", more, children...) }
	track := func(more string, children ...string) string { return objectOf("Track", "t", more, children...) }
	gap := func(frames int) string { return objectOf("Gap", "", uses(0, frames)) }
	const sound = `,"kind":"Audio"`
	for _, c := range []struct {
		name string
		rows []string // of the timeline
		want string
	}{
		{"a track that begins late", []string{track(uses(-7, 60), clip("A", 100, 9))}, "A 7+9 100"},
		{"a track cut at both ends", []string{track(uses(4, 10), clip("A", 100, 9), clip("B", 200, 9))}, "A 0+5 104; B 5+5 200"},
		{"a range before all of it", []string{track(uses(-86400, 9), clip("A", 100, 9))}, "A 0+9 100"},
		{"stack, track, stack, track", []string{track("", gap(10), stack(uses(5, 20), track(uses(3, 30), stack("", track("", clip("A", 100, 40))))))},
			"A 10+20 108"},
		{"what lies outside is not there", []string{track("", stack(uses(10, 5), track("", clip("A", 1, 10), clip("B", 2, 5), clip("C", 3, 9))))}, "B 0+5 2"},
		{"a range beyond what is there", []string{track("", stack(uses(-2, 20), track("", clip("A", 1, 10))), clip("B", 5, 5))}, "A 2+10 1; B 20+5 5"},
		{"a gap is nothing", []string{track("", clip("A", 1, 10)), track("", gap(10))}, "A 0+10 1"},
		{"covered", []string{track("", clip("A", 1, 10)), track("", clip("B", 2, 10))}, "A 0+10 1 C; B 0+10 2"},
		{"covered by two", []string{track("", clip("A", 1, 10)), track("", clip("B", 2, 4)), track("", gap(4), clip("C", 3, 9))}, "A 0+10 1 C; B 0+4 2; C 4+9 3"},
		{"a frame is left", []string{track("", clip("A", 1, 10)), track("", clip("B", 2, 9))}, "A 0+10 1; B 0+9 2"},
		{"what is off covers nothing", []string{track("", clip("A", 1, 10)), track("", clip("B", 2, 10, `,"enabled":false`))}, "A 0+10 1"},
		{"sound covers nothing", []string{track("", clip("A", 1, 10)), track(sound, clip("B", 2, 10)), track("", stack("", track(sound, clip("C", 3, 10))))},
			"A 0+10 1; B 0+10 2; C 0+10 3"},
		{"covered in a nested stack", []string{track("", stack("", clip("A", 1, 10), track("", clip("B", 2, 10))))}, "A 0+10 1 C; B 0+10 2"},
		{"a speed", []string{track("", clip("A", 100, 10, warped("0.5")))}, "A 0+10 100 x0.5"},
		{"speeds multiply, and the head is cut by them", []string{track("", stack(uses(4, 6)+warped("2"), track("", clip("A", 100, 10, warped("1.5")))))}, "A 0+6 112 x3"},
		{"a freeze", []string{track("", clip("A", 100, 10, `,"effects":[{"OTIO_SCHEMA":"FreezeFrame.1","time_scalar":0}]`))}, "A 0+10 100 x0"},
		{"backwards", []string{track("", stack(uses(2, 8), track("", clip("A", 100, 10, warped("-1")))))}, "A 0+8 107 x-1"},
		{"no speed", []string{track("", clip("A", 100, 10, `,"effects":[{"OTIO_SCHEMA":"Effect.1"},{"OTIO_SCHEMA":"LinearTimeWarp.1","enabled":false,"time_scalar":3},null]`))}, "A 0+10 100"},
		{"an endless speed", []string{track("", clip("A", 100, 10, warped("Infinity")))}, "A 0+10 100"},
	} {
		t.Run(c.name, func(t *testing.T) {
			src := `{"OTIO_SCHEMA":"Timeline.1","tracks":` + stack("", c.rows...) + `}`
			text, _ := lines.Decode("f.otio", []byte(src))
			line, diags := Read(text)
			var shown []string
			for _, track := range line.Tracks {
				for _, i := range leaves(track.Items) {
					s := fmt.Sprintf("%s %d+%d %d", i.Name, i.Record, i.Frames, i.Source)
					if i.Runs() != 1 {
						s += fmt.Sprintf(" x%g", i.Runs())
					}
					if i.Covered {
						s += " C"
					}
					shown = append(shown, s)
				}
			}
			if got := strings.Join(shown, "; "); got != c.want || len(diags) > 0 {
				t.Errorf("got  %s\nwant %s\n%v", got, c.want, diags)
			}
		})
	}
}

// Markers of the timeline, of tracks and of nested stacks lie where their own time
// is shown; those that count from the start of the record already stay there.
func TestMarkersOfNested(t *testing.T) {
	marker := func(name string, at int) string {
		return fmt.Sprintf(`{"name":%q,"marked_range":{"start_time":{"value":%d,"rate":24}}}`, name, at)
	}
	clip := objectOf("Clip", "A", uses(100, 20)+`,"markers":[`+marker("in", 106)+`,`+marker("cut", 101)+`]`)
	nest := objectOf("Stack", "N", uses(5, 10)+`,"markers":[`+marker("nest", 7)+`,`+marker("head", 2)+`]`, clip)
	row := objectOf("Track", "T", uses(-3, 30)+`,"markers":[`+marker("track", 4)+`,`+marker("label", 1010)+`,`+marker("gone", 99)+`]`, nest)
	src := `{"OTIO_SCHEMA":"Timeline.1","global_start_time":{"value":1000,"rate":24},"tracks":{"OTIO_SCHEMA":"Stack.1","markers":[` +
		marker("all", 2) + `],"children":[` + row + `]}}`
	text, _ := lines.Decode("f.otio", []byte(src))
	line, diags := Read(text)
	got := ""
	for _, m := range line.Markers {
		got += fmt.Sprintf("%s %d; ", m.Name, m.Start-line.Start)
	}
	var walk func([]Item)
	walk = func(items []Item) {
		for _, i := range items {
			for _, m := range i.Markers {
				if at, ok := i.RecordOf(m, line.Start); ok {
					got += fmt.Sprintf("%s %d; ", m.Name, at)
				}
			}
			walk(i.Inside)
		}
	}
	walk(line.Tracks[0].Items)
	if want := "all 2; track 7; label 10; nest 5; in 4; "; got != want || len(diags) > 0 {
		t.Errorf("got  %s\nwant %s\n%v", got, want, diags)
	}
}
