// What the reading of a long file takes.

package edit

import (
	"fmt"
	"runtime"
	"strings"
	"testing"

	"pullscore/lang/lines"
	"pullscore/lang/timecode"
)

// shapes are files that are long in every way: what stands first, what is
// repeated (with a number that grows, where it has a verb), and what stands last.
var shapes = []struct {
	name, first, piece, last string
	most                     float64 // bytes that are in use for each of the file
}{
	{"film.srt", "", "%d\n00:00:01,000 --> 00:00:02,000\nWho is there, and where is everybody else\nthen?\n\n", "", 2},
	{"tags.srt", "", "%d\n00:00:01,000 --> 00:00:02,000\n<i>Who</i> is <b>there</b>?\n\n", "", 2},
	{"tiny.srt", "", "00:00:01,000 --> 00:00:02,000\na\n\n", "", 2},
	{"one.srt", "00:00:01,000 --> 00:00:02,000\n", "a\n", "", 0.1},
	{"faulty.srt", "", "00:00:01,0 --> 00:00:00\na\n\n", "", 0.6},
	{"junk.srt", "", "a\n", "", 0.5},
	{"film.vtt", "WEBVTT\n\n", "%d\n00:00:01.000 --> 00:00:02.000\n<v Ada>Who is there, and where is everybody else\nthen?\n\n", "", 2.3},
	{"note.vtt", "WEBVTT\n\nNOTE\n", "a\n", "", 0.1},
	{"film.edl", "", "%d A V C 00:00:00:00 00:00:01:00 01:00:00:00 01:00:01:00\n* FROM CLIP NAME: %[1]dX\n", "", 0.5},
	{"tiny.edl", "", "001 A V C 00:00:00:00 00:00:01:00 01:00:00:00 01:00:01:00\n", "", 0.5},
	{"marked.edl", "001 A V C 00:00:00:00 00:00:01:00 01:00:00:00 01:00:01:00\n", "* LOC: 01:00:00:00 RED a\n", "", 4},
	{"odd.edl", "", "%d A V C 00:00:00:00 00:00:02:00 01:00:00:00 01:00:01:00\n", "", 0.5},
	{"film.otio", before, `{"OTIO_SCHEMA":"Clip.2","name":"%d","metadata":{"a":["b",1,null,"a long story in many words, as programs like to keep them"]},` +
		`"source_range":{"OTIO_SCHEMA":"TimeRange.1","start_time":{"OTIO_SCHEMA":"RationalTime.1","value":0,"rate":24},"duration":{"OTIO_SCHEMA":"RationalTime.1","value":48,"rate":24}}},` + "\n", after, 1},
	{"nested.otio", before + nest, `{"OTIO_SCHEMA":"Clip.2","name":"%d","effects":[{"OTIO_SCHEMA":"LinearTimeWarp.1","time_scalar":2}],"metadata":{"a":"a long story in many words, as programs like to keep them"},` +
		`"source_range":{"OTIO_SCHEMA":"TimeRange.1","start_time":{"OTIO_SCHEMA":"RationalTime.1","value":0,"rate":24},"duration":{"OTIO_SCHEMA":"RationalTime.1","value":48,"rate":24}}},` + "\n", nested + after, 1},
	{"metadata.otio", before + `{"OTIO_SCHEMA":"Clip.1","metadata":[`, `{"a":NaN},`, `1]},` + after, 0.1},
	{"one.otio", before + `{"OTIO_SCHEMA":"Clip.1","name":"1","metadata":"`, `abcd`, `"},` + after, 0.1},
}

const (
	before = `{"OTIO_SCHEMA":"Timeline.1","tracks":{"OTIO_SCHEMA":"Stack.1","children":[{"OTIO_SCHEMA":"Track.1","kind":"Video","children":[`
	nest   = `{"OTIO_SCHEMA":"Stack.1","children":[{"OTIO_SCHEMA":"Track.1","children":[`
	nested = `{"OTIO_SCHEMA":"Gap.1","source_range":{"duration":{"value":1,"rate":24}}}]}]},`
	after  = `{"OTIO_SCHEMA":"Gap.1","source_range":{"duration":{"value":1,"rate":24}}}]}]}}`
)

// While a file is read and after it, what is in use beside its text is a small
// part of that, or about as much at worst.
func TestMemory(t *testing.T) {
	for _, shape := range shapes {
		t.Run(shape.name, func(t *testing.T) {
			var content strings.Builder
			content.WriteString(shape.first)
			for n := 1; content.Len() < 2<<20; n++ {
				if piece := shape.piece; strings.Contains(piece, "%") {
					fmt.Fprintf(&content, piece, n)
				} else {
					content.WriteString(piece)
				}
			}
			text := &lines.Text{Name: shape.name, Content: content.String() + shape.last}
			content.Reset()
			start, most := inUse(), 0
			look := func() { most = max(most, inUse()-start) }
			text.Progress = func(_, _ int) { look() }
			cut, diags := Read(text, timecode.Rate{}, all)
			look()
			if cut == nil || len(diags) > lines.MaxFaults+1 {
				t.Errorf("%d faults", len(diags))
			}
			if got := float64(most) / float64(len(text.Content)); got > shape.most {
				t.Errorf("%.2f bytes are in use for each of the file, and %g is the limit", got, shape.most)
			}
			runtime.KeepAlive(cut)
			runtime.KeepAlive(text)
		})
	}
}

// A list of clips keeps what is read of its rows, and shares their texts.
func TestMemoryOfLogs(t *testing.T) {
	row := "27A-3\tA007\t27A\t3\tA\t10:00:00:00\t10:00:10:00\tA007C003_140720_R2E4\tC003\tof the ferry at the quay\tand much more that is logged\n"
	text := &lines.Text{Name: "day.ale", Content: "Heading\nFIELD_DELIM\tTABS\nColumn\n" +
		"Name\tTape\tScene\tTake\tCamera\tStart\tEnd\tFilename\tClip\tDESCRIPT\tCOMMENTS\nData\n" + strings.Repeat(row, 2<<20/len(row))}
	start, most := inUse(), 0
	text.Progress = func(_, _ int) { most = max(most, inUse()-start) }
	log, diags := ReadLog(text, timecode.Rate{})
	most = max(most, inUse()-start)
	if got := float64(most) / float64(len(text.Content)); len(diags) > 0 || len(log.Rows) < 10_000 || got > 4 {
		t.Errorf("%.2f bytes are in use for each of the file; %d rows, %d faults", got, len(log.Rows), len(diags))
	}
	runtime.KeepAlive(log)
	runtime.KeepAlive(text)
}

// inUse returns how many bytes of memory are in use.
func inUse() int {
	runtime.GC()
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	return int(m.HeapAlloc)
}
