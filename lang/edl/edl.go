// Package edl reads and writes edit decision lists in the CMX 3600 form (SMPTE
// 258M-2004 has a strict variant). The form does not name its frame rate, so
// the reader is told; times are frames from 00:00:00:00, and out points are the
// first frame that is no longer there.
package edl

import (
	"iter"
	"strings"

	"pullscore/lang"
	"pullscore/lang/lines"
	"pullscore/lang/timecode"
)

// A List is an edit decision list.
type List struct {
	Title  string
	Events []Event // one a line: a dissolve has two with one number
}

// An Event is one line of the list, with what the lines below it say of it.
type Event struct {
	Number, Reel, Channels string
	Transition             string // "C", "D", "W001", "K", "K B" or "K O"
	Duration               int64  // of the transition, frames

	SourceIn, SourceOut int64 // frames at the list's rate
	RecordIn, RecordOut int64

	// Clip is the picture, or of a transition the one that goes out; ToClip comes in.
	// Out is the picture of the first line of a transition, where only the second names it.
	Clip, ToClip, KeyClip, SourceFile, Out string
	Notes                                  []string // comments for people, which are written and not read

	Speed   *Speed
	Markers []Marker
	Bare    bool       // it has markers, and nothing else is said of it
	Drop    bool       // its labels are drop-frame
	Range   lang.Range // of the line
}

// A Speed is a speed line (M2): how many source frames a second run from a
// source time on; negative runs backwards, 0 is a freeze frame.
type Speed struct {
	Reel   string
	FPS    float64
	Source int64
}

// A Marker is a place of the record with a colour and a text: a LOC line, or a line
// of fields between bars, which may have a note as well.
type Marker struct {
	At                 int64 // record frames
	Colour, Text, Note string
	Range              lang.Range
}

// Name returns what the picture that an event brings in is called: its clip, its
// file where no clip is named, or its reel. It is empty where the reel says only
// that there is none.
func (e Event) Name() string {
	switch {
	case e.Transition != cut && e.ToClip != "":
		return e.ToClip
	case e.Clip != "":
		return e.Clip
	case e.Out != "":
		return e.Out
	case e.SourceFile != "":
		return e.SourceFile
	case e.Nameless():
		return ""
	}
	return e.Reel
}

// Black reports whether the event shows black.
func (e Event) Black() bool {
	switch strings.ToUpper(e.Reel) {
	case "BL", "BLK", "BLACK":
		return true
	}
	return false
}

// Nameless reports whether the reel is no name: black, or a source without a reel.
func (e Event) Nameless() bool {
	switch strings.ToUpper(e.Reel) {
	case "AX", "AUX":
		return true
	}
	return e.Black()
}

const cut = "C"

// Read reads a whole list, as Events does.
func Read(t *lines.Text, rate timecode.Rate) (*List, []lang.Diagnostic) {
	list := &List{}
	var faults lines.Faults
	r := newReader(t, rate, &faults)
	for e := range r.events {
		list.Events = append(list.Events, e)
	}
	list.Title = r.title
	return list, faults.List()
}

// Events yields the events of a list whose labels count at rate. Of a rate that
// has drop-frame labels it does not matter which of the two is given: the FCM
// lines say which they are, and where there is none, semicolons. Lines that
// cannot be read are left out with an error each; what is odd but met in real
// lists is a warning.
func Events(t *lines.Text, rate timecode.Rate, faults *lines.Faults) iter.Seq[Event] {
	return newReader(t, rate, faults).events
}

// A pair is a rate with and without drop-frame labels; a rate without such
// labels is its own twin.
type pair struct {
	plain, drop timecode.Rate
	hasDrop     bool
}

const dropSuffix = "df"

func ratesOf(rate timecode.Rate) pair {
	name := strings.TrimSuffix(rate.String(), dropSuffix)
	p := pair{plain: rate, drop: rate}
	if plain, err := timecode.ParseRate(name); err == nil {
		p.plain = plain
	}
	if drop, err := timecode.ParseRate(name + dropSuffix); err == nil {
		p.drop, p.hasDrop = drop, true
	}
	return p
}
