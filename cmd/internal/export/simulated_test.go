package export

import (
	"bytes"
	"flag"
	"fmt"
	"io/fs"
	"math"
	"slices"
	"strings"
	"testing"

	"pullscore/interp"
	"pullscore/interp/plan"
	"pullscore/interp/testing/edits"
	"pullscore/lang"
	"pullscore/lang/edl"
	"pullscore/lang/lines"
	"pullscore/lang/otio"
	"pullscore/lang/timecode"
)

var allPairs = flag.Bool("pairs", false, "export each simulated edit at each rate")

// A simulated cut is an edit of the talk at a rate, and the shot that the plan has of it.
type simulatedCut struct {
	*edits.Edit
	rate timecode.Rate
	shot *plan.Shot
}

// talkAlong interprets the plan of the talk with a list.
func talkAlong(t *testing.T, e *edits.Edit, rate timecode.Rate, name string, list []byte) *plan.Plan {
	t.Helper()
	files := map[string][]byte{name: list, "cut.srt": []byte(e.Subtitles(rate))}
	res := interp.Interpret("talk.pull", []byte(edits.Plan(rate.String(), name)), interp.Options{ReadFile: func(path string) ([]byte, error) {
		if text, ok := files[path]; ok {
			return text, nil
		}
		return nil, fs.ErrNotExist
	}})
	for _, d := range res.Findings {
		if d.Severity == lang.Error {
			t.Fatalf("%d: %s: %s", d.Range.Start.Line, d.Code, d.Message)
		}
	}
	return res.Plan
}

// spans returns the times of the shot that each event shows, in seconds.
func (c *simulatedCut) spans() (list [][2]float64) {
	var end float64
	for i, event := range c.Events(c.rate) {
		s := c.Shows[i]
		from := c.rate.Seconds(c.rate.Frames(s.From)) - c.Origin(c.rate)
		if s.Again {
			from = end
		}
		end = from + c.rate.Seconds(event.RecordOut-event.RecordIn)*s.Speed
		list = append(list, [2]float64{from, end})
	}
	return list
}

// markers returns the markers that each event should have, from the times at which the
// plan has its racks: of every second line of three, the first that is the second.
func (c *simulatedCut) markers() [][]string {
	spans, events := c.spans(), c.Events(c.rate)
	marks := make([][]mark, len(events))
	_, heard := c.Heard(c.rate)
	for k, pull := range c.shot.Pulls {
		if !slices.Contains(heard, 3*k+1) {
			continue
		}
		start, land := float64(pull.Start), float64(pull.Land)
		at := func(t float64, text string) (n int) {
			for i, span := range spans {
				if t < span[0]-1e-6 || t > span[1]-1e-6 {
					continue
				}
				n++
				frames := math.Floor((t-span[0])/c.Shows[i].Speed*timecode.SpeedOf(c.rate, 0).PerSecond() + 0.5 + 1e-6)
				marks[i] = append(marks[i], mark{at: min(events[i].RecordIn+int64(frames), events[i].RecordOut-1), text: text})
			}
			return n
		}
		begins := fmt.Sprintf("%d rack to %s", k+1, pull.To)
		if at(start, begins) == 0 {
			for i, span := range spans {
				if span[0] < land && span[1] > start {
					before := math.Floor((span[0]-start)*timecode.SpeedOf(c.rate, 0).PerSecond() + 0.5 + 1e-6)
					marks[i] = append(marks[i], mark{at: events[i].RecordIn, text: fmt.Sprintf("%s, %.0f fr before the cut", begins, before)})
					break
				}
			}
		}
		at(land, fmt.Sprintf("%d lands on %s", k+1, pull.To))
	}
	texts := make([][]string, len(events))
	for i, list := range marks {
		slices.SortStableFunc(list, func(a, b mark) int { return int(a.at - b.at) })
		for _, m := range list {
			text := m.text
			if events[i].Clip != "1" {
				text = "1 " + text
			}
			texts[i] = append(texts[i], fmt.Sprintf("%d %s", m.at, text))
		}
	}
	return texts
}

// wanted returns the events that the edit has, with their markers.
func (c *simulatedCut) wanted() (list []event) {
	markers := c.markers()
	for i, e := range c.Events(c.rate) {
		list = append(list, event{e.Clip, e.Reel, e.RecordIn, e.RecordOut - e.RecordIn, e.SourceIn, c.Shows[i].Speed, markers[i]})
	}
	return list
}

// ourEDL reads a list with our reader.
func ourEDL(text []byte, rate timecode.Rate) (got []event) {
	source, _ := lines.Decode("back.edl", text)
	list, _ := edl.Read(source, rate)
	num, den := rate.Exact()
	for _, e := range list.Events {
		back := event{e.Clip, e.Reel, e.RecordIn, e.RecordOut - e.RecordIn, e.SourceIn, 1, nil}
		if e.Speed != nil {
			back.speed = e.Speed.FPS * float64(den) / float64(num)
		}
		for _, m := range e.Markers {
			back.markers = append(back.markers, fmt.Sprintf("%d %s", m.At, m.Text))
		}
		got = append(got, back)
	}
	return got
}

// ourOTIO reads a timeline with our reader.
func ourOTIO(text []byte) (got []event) {
	source, _ := lines.Decode("back.otio", text)
	line, _ := otio.Read(source)
	for _, track := range line.Tracks {
		for _, item := range track.Items {
			back := event{item.Name, item.Reel, line.Start + item.Record, item.Frames, item.Source, item.Runs(), nil}
			for _, m := range item.Markers {
				if at, ok := item.RecordOf(m, line.Start); ok {
					back.markers = append(back.markers, fmt.Sprintf("%d %s", line.Start+at, m.Name))
				}
			}
			got = append(got, back)
		}
	}
	return got
}

// told writes what a plan knows of its shot in a cut.
func told(p *plan.Plan) string {
	var b strings.Builder
	s := p.Shots[0]
	for _, u := range s.Pieces {
		fmt.Fprintf(&b, "%s %s %s %d %d %d %.4f %.4f to %.4f\n", u.Clip, u.Reel, u.Take, u.In, u.Out, u.Source, u.Speed, u.From, u.To)
	}
	for _, u := range s.Pulls {
		fmt.Fprintf(&b, "%s %.3f %.3f %s %s %s\n", u.To, u.Start, u.Land, u.State, u.StartRecord, u.StartSource)
	}
	return b.String()
}

// landings compares the markers of landings with when the words are heard: no more than
// 60 ms and a frame lie between.
func (c *simulatedCut) landings(t *testing.T, got []event) {
	t.Helper()
	all := strings.Join(texts(got), "\n")
	hour, err := c.rate.Parse("01:00:00:00")
	if err != nil {
		t.Fatal(err)
	}
	heard, numbers := c.Heard(c.rate)
	for i, n := range numbers {
		if n%3 != 1 || strings.HasPrefix(c.Write, "two in one") && i%2 == 1 {
			continue
		}
		near := int64(math.Ceil(0.06*timecode.SpeedOf(c.rate, 0).PerSecond())) + 1
		want, found := hour+c.rate.Frames(heard[i].Start), false
		for at := want - near; at <= want+near; at++ {
			found = found || strings.Contains(all, fmt.Sprintf("%d %d lands on", at, n/3+1)) || strings.Contains(all, fmt.Sprintf("%d 1 %d lands on", at, n/3+1))
		}
		if !found {
			t.Errorf("rack %d does not land at %d:\n%s", n/3+1, want, all)
		}
	}
}

// Every simulated edit is written as a list and as a timeline, and read back piece by
// piece and marker by marker by a second reader and by our own; and the plan along with
// what was written is the plan along with the edit.
func TestSimulatedEditsRoundTrip(t *testing.T) {
	rates := timecode.Rates()
	for i := range edits.All {
		e := &edits.All[i]
		for k, rate := range rates {
			if !*allPairs && (i+k)%6 != 0 && e.Rate != rate.String() && e.Name != "everything" {
				continue
			}
			t.Run(e.Name+" at "+rate.String(), func(t *testing.T) {
				text, err := e.List(rate)
				if err != nil {
					t.Fatal(err)
				}
				p := talkAlong(t, e, rate, "cut.edl", []byte(text))
				c := simulatedCut{e, rate, p.Shots[0]}
				var list, line bytes.Buffer
				if err := EDL(&list, p); err != nil {
					t.Fatal(err)
				}
				if err := OTIO(&line, p); err != nil {
					t.Fatal(err)
				}
				want := strings.Join(texts(c.wanted()), "\n")
				for reader, got := range map[string][]event{
					"the second reader of lists": otherEDL(list.String(), rate), "our reader of lists": ourEDL(list.Bytes(), rate),
					"the second reader of timelines": otherOTIO(t, line.Bytes()), "our reader of timelines": ourOTIO(line.Bytes()),
				} {
					if got := strings.Join(texts(got), "\n"); got != want {
						t.Errorf("%s has\n%s\nwant\n%s", reader, got, want)
					}
				}
				c.landings(t, otherEDL(list.String(), rate))
				for name, text := range map[string][]byte{"back.edl": list.Bytes(), "back.otio": line.Bytes()} {
					if got, want := told(talkAlong(t, e, rate, name, text)), told(p); got != want {
						t.Errorf("%s:\n%s\nwant\n%s", name, got, want)
					}
				}
			})
		}
	}
}
