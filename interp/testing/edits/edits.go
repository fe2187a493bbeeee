package edits

import (
	"bytes"
	"cmp"
	"fmt"
	"math"
	"slices"

	"pullscore/lang/edl"
	"pullscore/lang/timecode"
)

// A Show is a stretch of the take of the talk that an edit shows: From and To in
// seconds of the take, at Speed, after Gap seconds of something else in the record.
type Show struct {
	From, To, Speed, Gap float64
	Again                bool // of a second take of the same talk
}

// pause returns the middle of the pause behind a line of the talk, by its number from
// 1; 0 is before the first.
func pause(after int) float64 {
	list := Talk()
	switch {
	case after == 0:
		return list[0].Start - 0.5
	case after == len(list):
		return list[after-1].End + 0.5
	}
	return (list[after-1].End + list[after].Start) / 2
}

// part shows some lines, from one up to and with another.
func part(from, to int) Show { return Show{From: pause(from - 1), To: pause(to), Speed: 1} }

func (s Show) at(speed float64) Show   { s.Speed = speed; return s }
func (s Show) after(gap float64) Show  { s.Gap = gap; return s }
func (s Show) later(sec float64) Show  { s.From += sec; return s }
func (s Show) longer(sec float64) Show { s.To += sec; return s }
func (s Show) retaken() Show           { s.Again = true; return s }

// An Edit is a cut of the talk.
type Edit struct {
	Name  string
	Rate  string // at which it is cut
	Shows []Show
	Write string // the variant in which its subtitles are written
	Early int    // a line of which the sound begins before its picture: J and L cuts; 0: none
}

// All are the edits.
var All = []Edit{
	{"whole", "24", []Show{part(1, 12)}, "plain", 0},
	{"head trimmed", "24", []Show{part(3, 12)}, "plain", 0},
	{"tail trimmed", "25", []Show{part(1, 8)}, "plain", 0},
	{"both trimmed", "24", []Show{part(4, 9)}, "labels", 0},
	{"a lift", "24", []Show{part(1, 4), part(8, 12)}, "plain", 0},
	{"two lifts", "30", []Show{part(1, 3), part(5, 7), part(10, 12)}, "remarks", 0},
	{"a lift and a gap", "24", []Show{part(1, 5), part(7, 12).after(4)}, "written out", 0},
	{"swapped", "24", []Show{part(5, 8), part(1, 4)}, "plain", 0},
	{"swapped with a rest", "25", []Show{part(9, 12), part(1, 3)}, "dashes", 0},
	{"shown again", "24", []Show{part(1, 8), part(5, 12).after(10)}, "plain", 0},
	{"faster", "24", []Show{part(1, 12).at(1.25)}, "plain", 0},
	{"slower after a lift", "24", []Show{part(1, 4), part(7, 12).at(0.5)}, "upper case", 0},
	{"sound before the picture", "24", []Show{part(4, 12).later(0.6)}, "plain", 4},
	{"sound behind the picture", "24", []Show{part(1, 7).longer(-0.6)}, "plain", 7},
	{"contracted", "24", []Show{part(1, 6), part(9, 12)}, "contracted", 0},
	{"for the hard of hearing", "23.976", []Show{part(2, 12)}, "labels with a remark", 0},
	{"sounds between", "48", []Show{part(1, 9), part(11, 12)}, "sounds between", 0},
	{"digits", "50", []Show{part(3, 11)}, "digits", 0},
	{"drop-frame", "29.97df", []Show{part(1, 5), part(8, 12)}, "without apostrophes", 0},
	{"drop-frame and a trim", "59.94df", []Show{part(2, 12)}, "tags", 0},
	{"sung", "60", []Show{part(1, 2), part(4, 5), part(7, 12)}, "music", 0},
	{"a retake", "24", []Show{part(1, 7), part(8, 12).retaken()}, "plain", 0},
	{"a retake and a lift", "29.97", []Show{part(1, 8), part(10, 12).retaken()}, "labels", 0},
	{"two in a caption", "25", []Show{part(1, 4), part(7, 12)}, "two in one with labels", 0},
	{"two in a caption, with dashes", "24", []Show{part(3, 12)}, "two in one with dashes", 0},
	{"misspelt", "24", []Show{part(1, 4), part(6, 12)}, "a word misspelt", 0},
	{"everything", "30", []Show{part(6, 6), part(3, 4).after(2), part(5, 5).at(0.5), part(7, 8).at(1.25), part(5, 5).after(1), part(9, 10), part(11, 12).retaken()}, "plain", 0},
}

// Where the talk lies in the record and in its source, in seconds behind a full hour.
// Both pass the next minute, at which drop-frame labels leave some out.
const (
	lead   = 48 // of another shot before it
	rolled = 40 // of the camera before the take
	retake = 900
)

// Hours returns the first frame of the record and of the source's hour at a rate.
func hours(rate timecode.Rate) (record, source int64) {
	hour := 3600 * rate.Base()
	if rate.Drop() {
		hour -= 6 * 9 * rate.Base() / 15
	}
	return hour, 10 * hour
}

// Events returns the events of the list that shows the talk, without the other shot
// before it.
func (e *Edit) Events(rate timecode.Rate) (list []edl.Event) {
	start, source := hours(rate)
	source += rate.Frames(rolled)
	record := start + rate.Frames(lead)
	for i, s := range e.Shows {
		in, out := rate.Frames(s.From), rate.Frames(s.To)
		record += rate.Frames(s.Gap)
		long := int64(math.Round(float64(out-in) / s.Speed))
		event := edl.Event{Number: fmt.Sprintf("%03d", i+2), Reel: "A1", Channels: "V", Transition: "C", Clip: "1",
			SourceIn: source + in, SourceOut: source + out, RecordIn: record, RecordOut: record + long}
		if s.Again {
			event.Clip, event.Reel = "1 TK 2", "A2"
			event.SourceIn, event.SourceOut = event.SourceIn+rate.Frames(retake), event.SourceOut+rate.Frames(retake)
		}
		if s.Speed != 1 {
			num, den := rate.Exact()
			event.Speed = &edl.Speed{Reel: "A1", FPS: s.Speed * float64(num) / float64(den), Source: source + in}
		}
		list = append(list, event)
		record += long
	}
	return list
}

// List writes the edit as a list.
func (e *Edit) List(rate timecode.Rate) (string, error) {
	start, source := hours(rate)
	long := rate.Frames(lead)
	other := edl.Event{Number: "001", Reel: "A0", Channels: "V", Transition: "C", Clip: "OTHER", SourceIn: source, SourceOut: source + long,
		RecordIn: start, RecordOut: start + long}
	var text bytes.Buffer
	err := edl.Write(&text, &edl.List{Title: "SIMULATED", Events: append([]edl.Event{other}, e.Events(rate)...)}, rate)
	return text.String(), err
}

// Heard returns the captions of the lines that are heard in the edit, in seconds from
// the start of the record, and the number of each line in the talk, from 0.
func (e *Edit) Heard(rate timecode.Rate) (heard []Caption, lines []int) {
	start, _ := hours(rate)
	for i, event := range e.Events(rate) {
		s, begin := e.Shows[i], rate.Seconds(event.RecordIn-start)
		t0, t1 := rate.Seconds(rate.Frames(s.From)), rate.Seconds(rate.Frames(s.To))
		where := func(at float64) float64 { // beyond the piece only the clock goes on
			inside := max(t0, min(at, t1))
			return begin + (inside-t0)/s.Speed + at - inside
		}
		for n, c := range Talk() {
			if c.Start < s.From && n+1 != e.Early || c.End > s.To && n+1 != e.Early || c.Start > s.To || c.End < s.From {
				continue
			}
			heard = append(heard, Caption{where(c.Start), where(c.End), c.Who, c.Text})
			lines = append(lines, n)
		}
	}
	return heard, lines
}

// Subtitles writes what is heard in the edit as a subtitle file.
func (e *Edit) Subtitles(rate timecode.Rate) string {
	heard, _ := e.Heard(rate)
	i := slices.IndexFunc(Variants, func(v Variant) bool { return v.Name == e.Write })
	return SubRip(Variants[i].Write(heard))
}

// Origin is what the shot's time counts from: the first frame that is used, in seconds
// of the take.
func (e *Edit) Origin(rate timecode.Rate) float64 {
	first := slices.MinFunc(e.Shows, func(a, b Show) int { return cmp.Compare(a.From, b.From) })
	return rate.Seconds(rate.Frames(first.From))
}

// CutOut is how much of the take lies between what an edit shows of it, up to where the
// second take begins that has a line, in seconds; that take goes on where the first ends.
func (e *Edit) CutOut(line int) (sec float64) {
	for i, s := range e.Shows {
		if s.Again && Talk()[line].Start >= s.From {
			sec += s.From - e.Shows[i-1].To
		}
	}
	return sec
}
