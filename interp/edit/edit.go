// Package edit reads the files of a cut: subtitles (SubRip, WebVTT), edit
// decision lists and OpenTimelineIO timelines, as far as a plan follows them:
// where its shots, cues and lines lie.
//
// Places in the record are frames at the plan's rate, counted from the label
// 00:00:00:00; times of subtitles are seconds from the start of the picture.
package edit

import (
	"fmt"
	"path/filepath"
	"regexp"
	"strings"

	"pullscore/interp/wording"
	"pullscore/lang"
	"pullscore/lang/lines"
	"pullscore/lang/timecode"
)

// A Cut is one file of a cut.
type Cut struct {
	Name string // the path, as in ranges
	// Start is the label of the first frame of the picture, where the file
	// says it.
	Start    int64
	HasStart bool
	// FromZero tells that its record counts from 0 and from no label.
	FromZero bool

	IsList  bool   // it holds clips and markers; else subtitles
	Clips   []Clip // of the shots that are wanted
	Markers []Marker
	shots   map[string]bool // as names are compared
	// HasClips tells that it has clips, wanted or not.
	HasClips bool

	Said *Subtitles // nil in a list
}

// MarkersAlone reports whether it is a list that has nothing but markers.
func (c *Cut) MarkersAlone() bool { return c.IsList && !c.HasClips && len(c.Markers) > 0 }

// A Clip is a piece of a shot as it lies in the record. Out points are the
// first frame that is no longer there.
type Clip struct {
	Name, Reel          string
	RecordIn, RecordOut int64
	SourceIn            int64   // the source frame at RecordIn
	Speed               float64 // source frames that run in one of the record: 1 is normal, 0 stands still, less runs backwards
	Range               lang.Range
}

// A Marker is a named place in the record.
type Marker struct {
	Text string
	At   int64
}

// Pieces returns the clips of a shot in the order of the record: those whose
// name is the shot's ID, or where there is none those whose reel is. Case does
// not count.
func (c *Cut) Pieces(shot string) []Clip {
	by := func(name func(Clip) string) (list []Clip) {
		for _, clip := range c.Clips {
			if strings.EqualFold(strings.TrimSpace(name(clip)), shot) {
				list = append(list, clip)
			}
		}
		return list
	}
	if list := by(func(c Clip) string { return c.Name }); len(list) > 0 {
		return list
	}
	return by(func(c Clip) string { return c.Reel })
}

// Wanted is what a plan looks for in a cut. Nothing else of a file is kept, which
// can be that of a whole film.
type Wanted struct {
	Shots []string           // their IDs
	Words wording.Vocabulary // the terms of all lines
	Names []string           // of those who may speak
}

// maxPieces is how many pieces of the plan's shots are kept: more than a film is
// cut into.
const maxPieces = 200_000

// Read reads a file of a cut. Its ending says what it is, or where that says
// nothing its first line. What is wrong in it is told at its place, and the
// rest is read; cut is nil where nobody can tell what the file is.
func Read(t *lines.Text, rate timecode.Rate, want Wanted) (cut *Cut, diags []lang.Diagnostic) {
	c := &Cut{Name: t.Name, shots: map[string]bool{}}
	for _, id := range want.Shots {
		c.shots[called(id)] = true
	}
	switch kindOf(t) {
	case ".srt", ".vtt":
		return c, c.captions(t, want)
	case ".edl":
		c.IsList = true
		return c, c.list(t, rate)
	case ".otio":
		c.IsList = true
		return c, c.timeline(t, rate)
	}
	return nil, []lang.Diagnostic{{
		Code: "unknown-cut", Severity: lang.Error, Range: t.Start(),
		Message: fmt.Sprintf("%s is neither subtitles nor an edit list", filepath.Base(t.Name)),
		Detail:  "SubRip, WebVTT, CMX 3600 edit lists and OpenTimelineIO are read.",
	}}
}

var (
	captionTime = lines.Pattern(`\d:\d\d(?:[,.]\d+)?[ \t]*-->`)
	listLine    = lines.Pattern(`(?m)^(?:TITLE:|FCM:|\d{3,6}[ \t].*\d\d:\d\d:\d\d[:;]\d\d)`)
)

// beginning is how much of a file is looked at to tell what it is.
const beginning = 4096

// kindOf returns the ending that tells what a file is.
func kindOf(t *lines.Text) string {
	switch ext := strings.ToLower(filepath.Ext(t.Name)); ext {
	case ".srt", ".vtt", ".edl", ".otio":
		return ext
	case ".pull":
		return ""
	}
	head := t.Content[:min(len(t.Content), beginning)]
	has := func(form func() *regexp.Regexp) bool { return form().MatchString(head) }
	switch {
	case strings.HasPrefix(head, "WEBVTT"), has(captionTime):
		return ".srt" // its reader knows WebVTT by its first word
	case strings.HasPrefix(strings.TrimSpace(head), "{"):
		return ".otio"
	case has(listLine):
		return ".edl"
	}
	return ""
}
