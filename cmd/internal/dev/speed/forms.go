//go:build unix

package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"time"
)

// A shape is a long text of a form: what stands first, what is repeated with its number,
// and what stands last.
type shape struct {
	name, first, last string
	piece             func(w io.Writer, n int) (int, error)
}

// clock writes a number of seconds as subtitles and lists do.
func clock(n int) string { return fmt.Sprintf("%02d:%02d:%02d", n/3600, n/60%60, n%60) }

const talk = "You rowed out to the wreck alone,\nand nobody was there, I'm told, not even the harbour master."

// shapes are those of other people's texts.
var shapes = []shape{
	{"talk.srt", "", "", func(w io.Writer, n int) (int, error) {
		return fmt.Fprintf(w, "%d\n%s,000 --> %[2]s,900\n<i>HALDIS: %s</i>\n[a bell]\n\n", n, clock(2*n), talk)
	}},
	{"talk.vtt", "WEBVTT\n\n", "", func(w io.Writer, n int) (int, error) {
		return fmt.Fprintf(w, "%s.000 --> %[1]s.900 line:0\n<v Haldis>%s</v>\n\n", clock(2*n), talk)
	}},
	{"list.edl", "TITLE: FILM\n\n", "", func(w io.Writer, n int) (int, error) {
		at := clock(n % (24 * 3600))
		return fmt.Fprintf(w, "%03d  A%03d V     C        %[3]s:00 %[3]s:12 %[3]s:00 %[3]s:12\n* FROM CLIP NAME: %[4]dB-%d\n* SOURCE FILE: A%03[2]d\n", n, n%999, at, n%500, n%9)
	}},
	{"line.otio", `{"OTIO_SCHEMA":"Timeline.1","tracks":{"OTIO_SCHEMA":"Stack.1","children":[{"OTIO_SCHEMA":"Track.1","kind":"Video","children":[`,
		`{"OTIO_SCHEMA":"Gap.1","source_range":{"duration":{"value":1,"rate":24}}}]}]}}`, func(w io.Writer, n int) (int, error) {
			return fmt.Fprintf(w, `{"OTIO_SCHEMA":"Clip.2","name":"%dB-%d","metadata":{"log":["a story in words, as programs keep them",1,null]},"source_range":{"OTIO_SCHEMA":"TimeRange.1",`+
				`"start_time":{"OTIO_SCHEMA":"RationalTime.1","value":%d,"rate":24},"duration":{"OTIO_SCHEMA":"RationalTime.1","value":4,"rate":24}}},`+"\n", n%500, n%9, n)
		}},
	{"day.ale", "Heading\nFIELD_DELIM\tTABS\nFPS\t24\n\nColumn\nName\tTape\tScene\tTake\tStart\tEnd\tCOMMENTS\n\nData\n", "", func(w io.Writer, n int) (int, error) {
		row := "%dB-%d\tA%03d\t%[1]dB\t%[2]d\t10:00:00:00\t10:00:10:00\tof the ferry at the quay"
		for range 50 { // so that the list has no more rows than are kept
			row += ", and more"
		}
		return fmt.Fprintf(w, row+"\n", n%300, n%9, n%999)
	}},
	{"page.fdx", "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<FinalDraft DocumentType=\"Script\" Version=\"5\">\n  <Content>\n", "  </Content>\n</FinalDraft>\n", func(w io.Writer, n int) (int, error) {
		return fmt.Fprintf(w, "    <Paragraph Number=\"%d\" Type=\"Scene Heading\">\n      <Text>INT. DECK</Text>\n    </Paragraph>\n    <Paragraph Type=\"Character\">\n      <Text>HALDIS</Text>\n"+
			"    </Paragraph>\n    <Paragraph Type=\"Dialogue\">\n      <Text>You rowed &amp; </Text>\n      <Text Style=\"Italic\">rowed</Text>\n    </Paragraph>\n", n)
	}},
}

// formTasks are the tasks of reading long texts of each form: pages are turned into data,
// and all others are named by a plan.
func formTasks(program, dir string) (list []task, err error) {
	lines, err := os.ReadFile(filepath.Join(dir, small[0]))
	if err != nil {
		return nil, err
	}
	for _, s := range shapes {
		path := filepath.Join(dir, s.name)
		err = errors.Join(err, repeat(path, s))
		t := task{name: "100 MB of " + filepath.Ext(s.name)[1:], args: []string{program, "page", "--as", "json", path}, runs: 1, limit: 4 * time.Second, memory: longMemory}
		says := map[string]string{".ale": "clips %q\n", ".fdx": ""}
		statement, other := says[filepath.Ext(s.name)]
		if !other {
			statement = "edit %q from 00:00:00:00\n"
		}
		if statement != "" {
			plan := path + ".pull"
			err = errors.Join(err, os.WriteFile(plan, append(fmt.Appendf(nil, statement, s.name), lines...), 0o666))
			t.args = []string{program, "check", plan}
		}
		list = append(list, t)
	}
	return list, err
}
