// Package captions reads subtitles: SubRip, which has no standard, and WebVTT
// (W3C, WebVTT: The Web Video Text Tracks Format). Times are milliseconds of
// running time from the start of the picture; neither form names a timecode.
package captions

import (
	"fmt"
	"iter"
	"path/filepath"
	"slices"
	"strings"

	"pullscore/lang"
	"pullscore/lang/lines"
)

// A Cue is one subtitle.
type Cue struct {
	ID         string     // number or identifier; may be empty
	Start, End int64      // milliseconds
	Voices     []string   // who speaks, where a WebVTT voice tag says it
	Turns      []Turn     // where those tags stand
	Text       string     // without tags, lines divided by LF
	Range      lang.Range // of the timing line
}

// A Turn is where a voice begins in the text of a cue.
type Turn struct {
	At    int // byte
	Voice string
}

// MaxCue is how much text a cue may hold, in bytes: hours of talk.
const MaxCue = 1 << 20

// Read reads a file of subtitles, as Cues does.
func Read(t *lines.Text) ([]Cue, []lang.Diagnostic) {
	var faults lines.Faults
	list := slices.Collect(Cues(t, &faults))
	return list, faults.List()
}

// Cues yields the cues of a file of subtitles in their order. It is WebVTT where
// it begins with that word or its name ends in .vtt, else SubRip. A faulty cue
// is left out with an error on its place, except where the error says how it
// was taken.
func Cues(t *lines.Text, faults *lines.Faults) iter.Seq[Cue] {
	return func(yield func(Cue) bool) {
		vtt := signed(t.Content) || strings.EqualFold(filepath.Ext(t.Name), ".vtt")
		if len(t.Content) >= long && (!vtt || signed(t.Content)) {
			sideBySide(t, partsOf(t, vtt, partSize), vtt, faults, yield)
			return
		}
		r := reader{text: t, lines: t.All(), faults: faults, yield: yield}
		r.read(vtt)
	}
}

// A reader yields cues and collects what is to be told of them.
type reader struct {
	text    *lines.Text
	lines   iter.Seq[lines.Line] // to be read
	later   bool                 // other lines stand before them
	faults  *lines.Faults
	yield   func(Cue) bool
	stopped bool // no more is wanted
}

func (r *reader) read(vtt bool) {
	if vtt {
		r.webVTT()
	} else {
		r.subRip()
	}
}

// tell adds an error about the bytes from and up to to of a line.
func (r *reader) tell(code string, l lines.Line, from, to int, message, detail string) {
	r.faults.Add(lang.Diagnostic{
		Code: code, Severity: lang.Error, Message: message, Detail: detail, Range: r.text.At(l, from, to),
	})
}

// lost tells of a line that belongs to no cue.
func (r *reader) lost(l lines.Line) {
	r.faults.Add(lang.Diagnostic{
		Code: "text-outside-a-cue", Severity: lang.Warning,
		Message: "this line belongs to no cue", Detail: "A cue begins with its times.",
		Range: r.text.Whole(l),
	})
}

// A payload is the text of a cue, by its place: lines that follow one another.
type payload struct{ from, to int }

// add adds a line.
func (p *payload) add(l lines.Line) {
	if *p == (payload{}) { // no text begins a file
		p.from = l.Offset
	}
	p.to = l.Offset + len(l.Text)
}

// A cue is one as it is being read.
type cue struct {
	id   string
	line lines.Line // of its times
	at   timing
	payload
}

// add yields a cue, unless it ends before it starts or has no measure.
func (r *reader) add(c cue, plain func(string) (string, []Turn)) {
	l, at := c.line, c.at
	switch size := c.to - c.from; {
	case at.end.ms < at.start.ms:
		r.tell("ends-before-it-starts", l, at.end.from, at.end.to, "the cue ends before it starts", "The end stands behind the arrow. The cue is left out.")
		return
	case size > MaxCue:
		r.tell("too-long", l, 0, len(l.Text), fmt.Sprintf("this cue has %d kB of text", size>>10),
			fmt.Sprintf("More than %d kB are hours of talk. The cue is left out.", MaxCue>>10))
		return
	case at.end.ms == at.start.ms:
		r.faults.Add(lang.Diagnostic{
			Code: "no-duration", Severity: lang.Warning, Message: "the cue ends when it starts",
			Range: r.text.At(l, at.end.from, at.end.to),
		})
	}
	text, turns := plain(r.text.Content[c.from:c.to])
	r.stopped = !r.yield(Cue{
		ID: c.id, Start: at.start.ms, End: at.end.ms, Voices: voicesOf(turns), Turns: turns, Text: text, Range: r.text.Whole(l),
	})
}

// voicesOf returns the voices of some turns, each once.
func voicesOf(turns []Turn) (names []string) {
	for _, t := range turns {
		if !slices.Contains(names, t.Voice) {
			names = append(names, t.Voice)
		}
	}
	return names
}

// Voices returns everybody whom the cues name, in the order of their first cue.
func Voices(cues []Cue) (names []string) {
	for _, c := range cues {
		for _, v := range c.Voices {
			if !slices.Contains(names, v) {
				names = append(names, v)
			}
		}
	}
	return names
}
