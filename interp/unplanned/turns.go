// Who speaks: the turns of subtitles.
//
// What is hard. Subtitles name a speaker once and then no more until another speaks, and
// where two speak in one subtitle a dash alone often stands before each of them. A dash
// says that somebody else speaks, and not who.
//
// What is done. A name counts until the next sign of another speaker. Where the file
// names two speakers, a sign without a name means the other of them, and the sentence
// says that this was concluded. With more of them, or fewer, nobody is named.
//
// What was rejected. To give all of a subtitle to the speaker before it, which puts a
// question and its answer into one mouth.

package unplanned

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"pullscore/interp/subtitle"
	"pullscore/lang/captions"
)

// A stretch is what one speaker says in a subtitle.
type stretch struct {
	at    int    // byte of what is said in the subtitle
	label string // the name that stands there
	sign  bool   // a sign of another speaker stands there
}

// A shown is a subtitle as it is said.
type shown struct {
	text       string
	start, end float64 // seconds
	parts      []stretch
}

// A talk is what subtitles say, in the order of time.
type talk struct {
	shown []shown
	names []string          // of those who speak, each as it is written first
	known map[string]string // the same by what they fold to
}

// mostVoices is how many names of tags are known to be names where they stand: more than
// any talk has.
const mostVoices = 200

// listen takes subtitles apart.
func listen(cues []captions.Cue) *talk {
	slices.SortStableFunc(cues, func(a, b captions.Cue) int { return int(a.Start - b.Start) })
	t := &talk{known: map[string]string{}}
	for _, c := range cues {
		for _, v := range c.Voices {
			t.name(v)
		}
	}
	voices := min(len(t.names), mostVoices)
	clean := subtitle.New(slices.Clone(t.names[:voices]))
	for i := range cues {
		cues[i].Text = subtitle.Voiced(cues[i].Text, cues[i].Turns)
		clean.Learn(cues[i].Text)
	}
	for _, c := range cues {
		text, turns := clean.Said(c.Text)
		now := shown{text: text, start: float64(c.Start) / 1000, end: float64(c.End) / 1000, parts: []stretch{{}}}
		for _, turn := range turns {
			label := turn.Label
			if by := int(turn.By); by > 0 && by <= voices {
				label = t.names[by-1]
			} else if label != "" {
				label = t.name(label)
			}
			part := stretch{turn.At, label, true}
			if turn.At == 0 {
				now.parts[0] = part
			} else {
				now.parts = append(now.parts, part)
			}
		}
		t.shown = append(t.shown, now)
	}
	return t
}

// name returns a name as it was written first.
func (t *talk) name(label string) string {
	label = strings.Join(strings.Fields(label), " ")
	folded := strings.ToLower(label)
	if first, known := t.known[folded]; known {
		return first
	}
	if label != "" {
		t.names = append(t.names, label)
		t.known[folded] = label
	}
	return label
}

// A speaker is who speaks, as far as it is known.
type speaker struct {
	who       string
	concluded bool // from a sign without a name
}

// next returns who speaks behind a sign, and whether that is another than before. A
// sentence that goes on in small letters behind a sign at the start of a subtitle is of
// the same speaker.
func (t *talk) next(now speaker, part stretch, text string, open bool) (speaker, bool) {
	first, _ := utf8.DecodeRuneInString(strings.TrimLeftFunc(text, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) }))
	switch {
	case part.label != "":
		return speaker{who: part.label}, part.label != now.who
	case !part.sign, part.at == 0 && open && unicode.IsLower(first):
		return now, false
	case len(t.names) == 2 && now.who != "":
		other := t.names[0]
		if other == now.who {
			other = t.names[1]
		}
		return speaker{other, true}, true
	}
	return speaker{concluded: true}, true
}
