// A second reader of lists and timelines, which shares no code with ours.

package export

import (
	"encoding/json"
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"pullscore/lang/timecode"
)

// An event is one of a cut as a reader has it: record and source in frames, its speed,
// and the markers, each with its frame in the record.
type event struct {
	clip, reel             string
	record, frames, source int64
	speed                  float64
	markers                []string
}

func (e event) String() string {
	return fmt.Sprintf("%s %s %d+%d source %d at %.3f %s", e.clip, e.reel, e.record, e.frames, e.source, e.speed, strings.Join(e.markers, "; "))
}

// texts writes events.
func texts(list []event) (lines []string) {
	for _, e := range list {
		lines = append(lines, e.String())
	}
	return lines
}

// counted turns a label into frames, second by second, without the code under test.
func counted(label string, base int64, drop bool) int64 {
	parts := strings.FieldsFunc(label, func(r rune) bool { return r == ':' || r == ';' })
	var f [4]int64
	for i, p := range parts {
		f[i], _ = strconv.ParseInt(p, 10, 64)
	}
	minutes := f[0]*60 + f[1]
	n := (minutes*60+f[2])*base + f[3]
	if drop {
		n -= (minutes - minutes/10) * base / 15
	}
	return n
}

// The lines of a list as another program would read them.
var (
	eventLine  = regexp.MustCompile(`(?m)^\d+ +(\S+) +V +C +(\S+) (\S+) (\S+) (\S+)$`)
	clipLine   = regexp.MustCompile(`(?m)^\* FROM CLIP NAME: (.*)$`)
	speedLine  = regexp.MustCompile(`(?m)^M2 +\S+ +(-?[\d.]+) `)
	markerLine = regexp.MustCompile(`(?m)^\* LOC: (\S+) \S+ +(.*)$`)
)

// otherEDL reads a list without our reader.
func otherEDL(text string, rate timecode.Rate) (got []event) {
	num, den := rate.Exact()
	at := func(label string) int64 { return counted(label, rate.Base(), rate.Drop()) }
	starts := eventLine.FindAllStringSubmatchIndex(text, -1)
	for i, m := range starts {
		end := len(text)
		if i+1 < len(starts) {
			end = starts[i+1][0]
		}
		lines := text[m[0]:end]
		f := eventLine.FindStringSubmatch(lines)
		source, speed := at(f[2]), 1.
		if s := speedLine.FindStringSubmatch(lines); s != nil {
			fps, _ := strconv.ParseFloat(s[1], 64)
			speed = fps * float64(den) / float64(num)
			if speed < 0 {
				source = at(f[3]) - 1
			}
		}
		var markers []string
		for _, s := range markerLine.FindAllStringSubmatch(lines, -1) {
			markers = append(markers, fmt.Sprintf("%d %s", at(s[1]), s[2]))
		}
		got = append(got, event{clipLine.FindStringSubmatch(lines)[1], f[1], at(f[4]), at(f[5]) - at(f[4]), source, speed, markers})
	}
	return got
}

// otherOTIO reads a timeline without our reader.
func otherOTIO(t *testing.T, text []byte) (got []event) {
	type object = map[string]any
	var root object
	if err := json.Unmarshal(text, &root); err != nil {
		t.Fatal(err)
	}
	value := func(o any, path ...string) float64 {
		for _, key := range path {
			o = o.(object)[key]
		}
		return o.(float64)
	}
	for _, track := range root["tracks"].(object)["children"].([]any) {
		record := value(root, "global_start_time", "value")
		for _, c := range track.(object)["children"].([]any) {
			clip := c.(object)
			start, long := value(clip, "source_range", "start_time", "value"), value(clip, "source_range", "duration", "value")
			if clip["OTIO_SCHEMA"] == "Clip.2" {
				source, speed := start, 1.
				for _, e := range clip["effects"].([]any) {
					speed = value(e, "time_scalar")
				}
				if speed < 0 {
					source = start - long*speed - 1
				}
				var markers []string
				for _, m := range clip["markers"].([]any) {
					at := record + value(m, "marked_range", "start_time", "value") - start
					markers = append(markers, fmt.Sprintf("%.0f %s", at, m.(object)["name"]))
				}
				reel := clip["metadata"].(object)["pullscore"].(object)["reel"].(string)
				got = append(got, event{clip["name"].(string), reel, int64(record), int64(long), int64(source), speed, markers})
			}
			record += long
		}
	}
	return got
}
