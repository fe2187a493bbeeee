// Package captions reads subtitles: SubRip, which has no standard, and WebVTT
// (W3C, WebVTT: The Web Video Text Tracks Format). Times are milliseconds of
// running time from the start of the picture; neither form names a timecode.
package captions

import (
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
	Text       string     // without tags, lines divided by LF
	Range      lang.Range // of the timing line
}

// Read reads a file of subtitles. It is WebVTT where it begins with that
// word or its name ends in .vtt, else SubRip. A faulty cue is left out with an
// error on its place, except where the error says how it was taken.
func Read(t *lines.Text) ([]Cue, []lang.Diagnostic) {
	r := &reader{text: t}
	if signed(t.Content) || strings.EqualFold(filepath.Ext(t.Name), ".vtt") {
		r.webVTT()
	} else {
		r.subRip()
	}
	return r.cues, r.diags
}

// A reader collects cues and what is to be told of them.
type reader struct {
	text  *lines.Text
	cues  []Cue
	diags []lang.Diagnostic
}

// tell adds an error about the bytes from and up to to of a line.
func (r *reader) tell(code string, l lines.Line, from, to int, message, detail string) {
	r.diags = append(r.diags, lang.Diagnostic{
		Code: code, Severity: lang.Error, Message: message, Detail: detail, Range: r.text.At(l, from, to),
	})
}

// lost tells of a line that belongs to no cue.
func (r *reader) lost(l lines.Line) {
	r.diags = append(r.diags, lang.Diagnostic{
		Code: "text-outside-a-cue", Severity: lang.Warning,
		Message: "this line belongs to no cue", Detail: "A cue begins with its times.",
		Range: r.text.Whole(l),
	})
}

// add adds a cue whose times stand on l, unless it ends before it starts.
func (r *reader) add(l lines.Line, at timing, id string, payload []string, plain func(string) (string, []string)) {
	if at.end.ms < at.start.ms {
		r.tell("ends-before-it-starts", l, at.end.from, at.end.to, "the cue ends before it starts", "The end stands behind the arrow. The cue is left out.")
		return
	}
	if at.end.ms == at.start.ms {
		r.diags = append(r.diags, lang.Diagnostic{
			Code: "no-duration", Severity: lang.Warning, Message: "the cue ends when it starts",
			Range: r.text.At(l, at.end.from, at.end.to),
		})
	}
	text, voices := plain(strings.Join(payload, "\n"))
	r.cues = append(r.cues, Cue{
		ID: id, Start: at.start.ms, End: at.end.ms, Voices: voices, Text: text, Range: r.text.Whole(l),
	})
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
