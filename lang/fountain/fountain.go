// Package fountain reads script pages in Fountain 1.1 (fountain.io/syntax, by
// its authors; IANA registers it as a variant of Markdown).
//
// Of a page it keeps what a plan can use: scenes, who says what on which line,
// and the action. Where readers of the form differ, the choice is said beside
// the rule.
package fountain

import (
	"iter"

	"pullscore/lang"
	"pullscore/lang/lines"
)

// A Kind is what an element of a script is.
type Kind uint8

// The kinds.
const (
	Heading Kind = iota
	Action
	Cue // the name above a speech
	Dialogue
	Parenthetical
	Lyric
	Transition
	Centred
	Section
	Synopsis
	PageBreak
)

// An Element is one line of a script that says something.
type Element struct {
	Kind   Kind
	Text   string // without its markers, with its emphasis
	Number string // of a scene heading; may be empty
	Dual   bool   // of a cue: spoken at the same time as the speech before
	Off    bool   // of a cue: heard and not seen (V.O., O.S., O.C.)
	Line   int

	Revision Revision // that it was last changed in, where the form tells it
}

// A Revision is a set of changes to a script that was sent out. Later sets have
// higher numbers. The zero value is none.
type Revision struct {
	Number int
	Name   string // mostly the colour of its paper
}

// A Field is an entry of the title page.
type Field struct{ Key, Value string }

// A Script is a page or a whole script.
type Script struct {
	Title     []Field
	Scenes    []Scene // what stands before the first heading is in a scene without one
	Notes     int     // how many were taken out
	Boneyards int
}

// A Scene is a heading and what happens until the next.
type Scene struct {
	Number, Heading string
	Line            int
	Position        int // among the scenes, from 1
	Beats           []Beat
}

// Read reads a script. Everything is some element of a script, so the only
// faults are a comment without an end, a speech beyond all measure, and bytes
// that the text's decoder found.
func Read(t *lines.Text) (*Script, []lang.Diagnostic) {
	s := &Script{}
	var faults lines.Faults
	s.Scenes = Collect(beats(t, s, &faults))
	return s, faults.List()
}

// Collect returns the scenes of beats, with those beats in them.
func Collect(beats iter.Seq2[Scene, Beat]) (scenes []Scene) {
	position := 0
	for scene, beat := range beats {
		if scene.Position != position {
			scenes, position = append(scenes, scene), scene.Position
		}
		if !beat.Empty() {
			last := &scenes[len(scenes)-1]
			last.Beats = append(last.Beats, beat)
		}
	}
	return scenes
}

// TitlePage returns the entries of the title page.
func TitlePage(t *lines.Text) []Field {
	s := &Script{}
	for range elements(t, s, &lines.Faults{}) {
		break // behind it
	}
	return s.Title
}

// Elements yields the elements of a script one after another, the title page
// left out.
func Elements(t *lines.Text) iter.Seq[Element] {
	return elements(t, &Script{}, &lines.Faults{})
}
