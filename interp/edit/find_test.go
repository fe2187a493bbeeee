package edit_test

import (
	"fmt"
	"strings"
	"testing"

	"pullscore/interp/edit"
	"pullscore/lang/lines"
	"pullscore/lang/timecode"
)

// A clip is found without a plan as a shot is in one.
func TestFind(t *testing.T) {
	rate, err := timecode.ParseRate("24")
	if err != nil {
		t.Fatal(err)
	}
	list := "TITLE: T\n"
	for i, name := range []string{"27A-3", "27A-4.MOV", "27B TK 2 B", "27AB-1", "9", "the quay, wide", "27A-3"} {
		list += fmt.Sprintf("%03d  A%d  V  C  10:%02d:00:00 10:%02d:02:00 01:00:%02d:00 01:00:%02d:00\n* FROM CLIP NAME: %s\n", i+1, i, i, i, 2*i, 2*i+2, name)
	}
	for name, want := range map[string]string{
		"27A-3": "27A-3,27A-3", "27a-3.mov": "27A-3,27A-3", "27A TK 3": "27A-3,27A-3", "27A_4": "27A-4.MOV", "27A": "27A-3,27A-4.MOV,27A-3",
		"27B-2": "27B TK 2 B", "27B-2_A": "", "27B-3": "", "27": "", "the quay*": "the quay, wide", "9": "9", "A5": "the quay, wide", "28A-3": "",
	} {
		c, found, diags := edit.Find(&lines.Text{Name: "t.edl", Content: list}, rate, name)
		var got []string
		for _, p := range found {
			got = append(got, p.Name)
		}
		if strings.Join(got, ",") != want || len(diags) > 0 || c == nil {
			t.Errorf("%s: %q, want %s: %v", name, got, want, diags)
		}
	}
	c, _, _ := edit.Find(&lines.Text{Name: "t.edl", Content: list}, rate, "28A-3")
	if near := strings.Join(c.Near("28A-3"), ","); near != "27A-3" {
		t.Errorf("near 28A-3 is %q", near)
	}
	if c, _, diags := edit.Find(&lines.Text{Name: "t", Content: "nothing"}, rate, "9"); c != nil || len(diags) != 1 {
		t.Errorf("%+v, %v", c, diags)
	}
}

// Some files say their rate.
func TestRateOf(t *testing.T) {
	for _, c := range []struct{ name, content, want string }{
		{"t.ale", "Heading\nFIELD_DELIM\tTABS\nFPS\t25\n\nColumn\nName\tStart\tEnd\n\nData\n27A-3\t10:00:00:00\t10:00:05:00\n", "25"},
		{"t.otio", `{"OTIO_SCHEMA":"Timeline.1","tracks":{"OTIO_SCHEMA":"Stack.1","children":[{"OTIO_SCHEMA":"Track.1","kind":"Video","children":[` +
			`{"OTIO_SCHEMA":"Clip.1","name":"27A","source_range":{"OTIO_SCHEMA":"TimeRange.1","start_time":{"OTIO_SCHEMA":"RationalTime.1","rate":25,"value":0},` +
			`"duration":{"OTIO_SCHEMA":"RationalTime.1","rate":25,"value":50}}}]}]}}`, "25"},
		{"t.edl", "TITLE: T\n001  A1  V  C  10:00:00:00 10:00:02:00 01:00:00:00 01:00:02:00\n", ""},
		{"t.ale", "Heading\n", ""},
		{"t.ale", "Heading\nFIELD_DELIM\tTABS\n\nColumn\nName\tStart\tEnd\n\nData\n27A-3\t10:00:00:00\t10:00:05:00\n", ""},
		{"t.otio", "{}", ""},
	} {
		rate, ok := edit.RateOf(&lines.Text{Name: c.name, Content: c.content})
		if got := rate.String(); ok != (c.want != "") || ok && got != c.want {
			t.Errorf("%s: %s, %v", c.name, got, ok)
		}
	}
}
