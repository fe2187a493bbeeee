// Package edit reads the files of a cut: subtitles (SubRip, WebVTT), edit
// decision lists and OpenTimelineIO timelines, as far as a plan follows them:
// where its shots, cues and lines lie.
//
// Places in the record are frames at the plan's rate, counted from the label
// 00:00:00:00; times of subtitles are seconds from the start of the picture.
//
// edit.go says what a cut is; lists.go reads lists and timelines, captions.go subtitles,
// clips.go lists of clips; naming.go tells by its name which shot and take a clip is of,
// asked.go by what the shot itself says. find.go finds clips without a plan, by a name.
package edit

import (
	"fmt"
	"path/filepath"
	"regexp"
	"slices"
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
	Sounds  []Clip // that are heard of them, whether or not they are also seen
	Markers []Marker
	want    wanting
	Others  []string // names of clips that are of no shot of the plan, each once, the first of them
	seen    map[string]bool
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
	Of                  []Match // the shots that it is of: one, but for clips that several name
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

// A Match says that a clip is of a shot, and of which take.
type Match struct {
	Shot   string // its ID
	Take   string // "" where nothing says it
	Camera string
	Named  bool // the name of the clip is the shot's ID
	reel   bool // it is its reel alone that says so
}

// A Piece is a clip of a shot.
type Piece struct {
	Clip
	Match
	From, To int64 // the source that a list of clips has of it, frames; both 0 where none has it
}

// Pieces returns the clips of a shot in the order of the record: those whose name says so,
// or where there is none those whose reel does.
func (c *Cut) Pieces(shot string) (list []Piece) { return ofShot(c.Clips, shot) }

// Heard returns those of them that are heard, likewise.
func (c *Cut) Heard(shot string) (list []Piece) { return ofShot(c.Sounds, shot) }

func ofShot(clips []Clip, shot string) (list []Piece) {
	named := false
	for _, clip := range clips {
		for _, m := range clip.Of {
			if Fold(m.Shot) == Fold(shot) {
				list = append(list, Piece{Clip: clip, Match: m})
				named = named || !m.reel
			}
		}
	}
	if !named {
		return list
	}
	return slices.DeleteFunc(list, func(p Piece) bool { return p.reel })
}

// Wanted is what a plan looks for in a cut. Nothing else of a file is kept, which
// can be that of a whole film.
type Wanted struct {
	Shots []string           // the IDs of those that are known by the names of clips
	Asked []Ask              // clips that shots name themselves
	Words wording.Vocabulary // the terms of all lines; nil: any
	Names []string           // of those who may speak
}

// Matters says what of the wanted, and of the rate of a plan, what is read of a text hangs
// on, besides the words of lines. Two that are the same read the same.
func (w Wanted) Matters(t *lines.Text, rate timecode.Rate) string {
	switch kindOf(t) {
	case ".srt", ".vtt":
		return fmt.Sprintf("%q", w.Names)
	}
	return fmt.Sprintf("%s %q %+v", rate, w.Shots, w.Asked)
}

// Copy returns a cut that can be moved without the other; nil of nil.
func (c *Cut) Copy() *Cut {
	if c == nil {
		return nil
	}
	other := *c
	other.Clips, other.Markers = slices.Clone(c.Clips), slices.Clone(c.Markers)
	if c.Said != nil {
		said := *c.Said // it remembers what was wanted last
		other.Said = &said
	}
	return &other
}

// maxPieces is how many pieces of the plan's shots are kept: more than a film is
// cut into.
const maxPieces = 200_000

// Read reads a file of a cut. Its ending says what it is, or where that says
// nothing its first line. What is wrong in it is told at its place, and the
// rest is read; cut is nil where nobody can tell what the file is.
func Read(t *lines.Text, rate timecode.Rate, want Wanted) (cut *Cut, diags []lang.Diagnostic) {
	c := &Cut{Name: t.Name, want: newWanting(want)}
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
