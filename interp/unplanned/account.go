// Each move with its times in the cut and the words about it.

package unplanned

import (
	"slices"

	"pullscore/interp/edit"
	"pullscore/interp/plan"
	"pullscore/interp/takes/recorded"
	"pullscore/lang/timecode"
)

// late is how much of a sentence is still to come, in seconds, if a move that leaves has
// cut into it.
const late = 0.3

// A Told is a move as it is told. What is not known is empty.
type Told struct {
	Number      int         `json:"number"`
	RecordStart string      `json:"record_start,omitempty"`
	RecordLand  string      `json:"record_land,omitempty"`
	SourceStart string      `json:"source_start,omitempty"`
	SourceLand  string      `json:"source_land,omitempty"`
	From        plan.Number `json:"from_m"`
	To          plan.Number `json:"to_m"`
	Seconds     plan.Number `json:"seconds"`
	Rests       bool        `json:"rests"` // it came to rest in the recording

	WordStart string      `json:"word_at_start,omitempty"`
	WordLand  string      `json:"word_at_landing,omitempty"`
	Within    bool        `json:"within_a_sentence"` // it left with more than 0.3 s of one to come
	Sentence  string      `json:"sentence,omitempty"`
	ToCome    plan.Number `json:"to_come_s,omitzero"` // of that sentence

	Start, Land int64 `json:"-"` // frames of the record; meaningful where their labels are not empty
}

// A Place says where a recording lies in a cut.
type Place struct {
	Rate   timecode.Rate
	Start  int64       // the first frame of the picture in the record
	Clips  []edit.Clip // that show what was recorded; none: the recording is in record time
	Listed bool        // the recording is in the time of the source
}

// record returns the frame of the record that shows a frame of the recording first.
func (p *Place) record(n int64) (int64, bool) {
	if !p.Listed {
		return n, true
	}
	for _, c := range p.Clips {
		if c.Speed <= 0 {
			continue
		}
		at := c.RecordIn + int64(float64(n-c.SourceIn)/c.Speed+0.5)
		if n >= c.SourceIn && at < c.RecordOut {
			return at, true
		}
	}
	return 0, false
}

// Account returns the moves of a recording with what was said meanwhile.
func Account(frames []recorded.Sample, at *Place, said []Sentence) (list []Told) {
	metres := make([]float64, len(frames))
	for i, f := range frames {
		metres[i] = f.Metres
	}
	rested := 0
	for i, m := range Moves(metres) {
		start, land := frames[m.Start], frames[m.Land]
		t := Told{Number: i + 1, Rests: m.Rests, ToCome: plan.None(),
			From:    plan.Number(median(metres[max(rested, m.Start-still):m.Start])),
			To:      plan.Number(median(metres[m.Land:min(len(metres), m.Land+still)])),
			Seconds: plan.Number(at.Rate.Seconds(land.Number - start.Number))}
		rested = m.Land
		if at.Listed {
			t.SourceStart, t.SourceLand = at.Rate.Format(start.Number), at.Rate.Format(land.Number)
		}
		if n, ok := at.record(start.Number); ok {
			t.Start, t.RecordStart = n, at.Rate.Format(n)
			now := at.Rate.Seconds(n - at.Start)
			t.WordStart = wordAt(said, now)
			t.within(said, now)
		}
		if n, ok := at.record(land.Number); ok {
			t.Land, t.RecordLand = n, at.Rate.Format(n)
			t.WordLand = wordAt(said, at.Rate.Seconds(n-at.Start))
		}
		list = append(list, t)
	}
	return list
}

// within notes the sentence that is being said at a time, if the move cut into it.
func (t *Told) within(said []Sentence, now float64) {
	for _, s := range said {
		if s.Start < now && now < s.End {
			t.Sentence, t.ToCome = s.Text, plan.Number(s.End-now)
			t.Within = t.ToCome > late
		}
	}
}

// wordAt returns the word that is said at a time; "" between words.
func wordAt(said []Sentence, now float64) string {
	for _, s := range said {
		if i := slices.IndexFunc(s.Words, func(w Word) bool { return w.Start <= now && now < w.End }); i >= 0 {
			return s.Words[i].Text
		}
	}
	return ""
}
