// Markers: LOC lines, and lines of fields between bars.

package edl

import (
	"fmt"
	"strings"

	"pullscore/lang"
	"pullscore/lang/lines"
)

// mostMarkers is how many markers an event may have: more than a film has.
const mostMarkers = 100_000

// marker reads a LOC line: a record time, a colour, a text.
func (r *reader) marker(l lines.Line, e *Event) {
	start := strings.Index(l.Text, ":") + 1
	words := fields(nil, l.Text[start:], start)
	if len(words) == 0 {
		r.tell(lang.Error, "bad-marker", l, 0, len(l.Text), "the marker has no time", "A marker is LOC:, a timecode, a colour and a text.")
		return
	}
	at, ok := r.read(l, words[0], e.Drop)
	if !ok {
		return
	}
	m := Marker{At: at}
	if len(words) > 1 {
		m.Colour = words[1].text
	}
	if len(words) > 2 {
		m.Text = l.Text[words[2].from:]
	}
	r.add(l, e, m)
}

// add adds the marker that a line holds to its event.
func (r *reader) add(l lines.Line, e *Event, m Marker) {
	if len(e.Markers) == mostMarkers {
		r.tell(lang.Error, "too-large", l, 0, len(l.Text), fmt.Sprintf("event %s has more than %d markers", e.Number, mostMarkers), "The line is left out.")
		return
	}
	m.Range = r.text.Whole(l)
	e.Markers = append(e.Markers, m)
}

var (
	barred = lines.Pattern(`(?:^|\s)\|[CDM]:`)
	bar    = lines.Pattern(`\s*\|([CDM]):`)
)

// bars reads a marker whose colour, name and length stand behind bars, perhaps with
// a note before them. It lies where its event begins.
func (r *reader) bars(l lines.Line) {
	if len(r.group) == 0 {
		r.tell(lang.Warning, "unknown-line", l, 0, len(l.Text), "no event stands above this marker", "Pullscore skips it.")
		return
	}
	e := &r.group[len(r.group)-1]
	places := bar().FindAllStringSubmatchIndex(l.Text, -1)
	m := Marker{At: e.RecordIn, Note: strings.TrimSpace(l.Text[:places[0][0]])}
	for i, place := range places {
		to := len(l.Text)
		if i+1 < len(places) {
			to = places[i+1][0]
		}
		switch value := strings.TrimSpace(l.Text[place[1]:to]); l.Text[place[2]] {
		case 'C':
			m.Colour = value
		case 'M':
			m.Text = value
		}
	}
	r.add(l, e, m)
	e.Bare = e.Clip == "" && e.ToClip == "" && e.KeyClip == "" && e.SourceFile == "" && e.Speed == nil
}
