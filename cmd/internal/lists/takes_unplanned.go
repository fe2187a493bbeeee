// The moves of a recording without a plan, as text.

package lists

import (
	"fmt"

	"pullscore/cmd/internal/console"
	"pullscore/interp/units"
	"pullscore/interp/unplanned"
)

// Unplanned is what is known of a recording without a plan.
type Unplanned struct {
	Recording      string
	Frames         int
	Rate, RateFrom string // frames a second, and the file that says it; "" where the user did
	Clip           string // of the list, that was recorded; "" for none
	Begins         string // the timecode of the record that the subtitles count from
}

// WriteUnplanned writes the moves of a recording, with what was said meanwhile.
func WriteUnplanned(screen console.Screen, of Unplanned, moves []unplanned.Told) error {
	w := &takeWriter{console.Lines{Screen: screen}}
	w.Line(screen.Paint(console.Bold, console.Clean(of.Recording)))
	w.Wrapped(console.Dim, margin, fmt.Sprintf("%s, %s; the subtitles count from %s", units.Count(of.Frames, "frame"), units.Count(len(moves), "focus move"), of.Begins))
	if of.RateFrom != "" {
		w.Wrapped(console.Dim, margin, fmt.Sprintf("%s frames a second, as %s says", of.Rate, console.Clean(of.RateFrom)))
	}
	if of.Clip != "" {
		w.Wrapped(console.Dim, margin, fmt.Sprintf("the clip in the cut is %s", console.Clean(of.Clip)))
	}
	inside := 0
	for i := range moves {
		w.unplanned(&moves[i])
		if moves[i].Within {
			inside++
		}
	}
	w.Line("")
	w.Wrapped(console.Plain, "", fmt.Sprintf("%d of %s left inside a sentence. What was in front of the lens is not known.", inside, units.Count(len(moves), "move")))
	return w.Flush()
}

func (w *takeWriter) unplanned(m *unplanned.Told) {
	style := units.Style{}
	w.title(fmt.Sprintf("move %d  %s to %s", m.Number, style.Gap(float64(m.From)), style.Gap(float64(m.To))))
	lands := "landed"
	if !m.Rests {
		lands = "moving at the end"
	}
	w.table([][]string{
		{"set out", stamped(m.RecordStart, m.SourceStart), said(m.WordStart)},
		{lands, stamped(m.RecordLand, m.SourceLand), said(m.WordLand)},
		{"moved for", takeFigure(float64(m.Seconds), false) + " s", ""},
	})
	switch {
	case m.Within:
		w.Wrapped(console.Yellow, margin, fmt.Sprintf("It left inside a sentence, with %s s of it to come: “%s”", takeFigure(float64(m.ToCome), false), m.Sentence))
	case m.Sentence != "":
		w.Wrapped(console.Plain, margin, fmt.Sprintf("It left at the end of a sentence: “%s”", m.Sentence))
	}
}

// stamped writes where a moment lies.
func stamped(record, source string) string {
	if record == "" {
		record = "not in the cut"
	} else {
		record = "rec " + record
	}
	if source != "" {
		record += ", source " + source
	}
	return record
}

// said writes which word is being said.
func said(word string) string {
	if word == "" {
		return "nobody speaks"
	}
	return "“" + word + "”"
}
