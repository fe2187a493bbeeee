// Package fountain reads script pages in Fountain 1.1 (fountain.io/syntax, by
// its authors; IANA registers it as a variant of Markdown).
//
// Of a page it keeps what a plan can use: scenes, who says what on which line,
// and the action. Where readers of the form differ, the choice is said beside
// the rule.
package fountain

import (
	"iter"
	"strings"

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
	Line   int
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
	Beats           []Beat
}

// A Beat is a speech or a line of action, as they follow each other.
type Beat struct {
	Who  string   // empty: action
	Said []string // lines of dialogue, or one of action, with their emphasis
	Sung []string // lyrics
	Dual bool
	Line int // of the cue
}

// Text returns what is said and sung, or done, as plain words.
func (b Beat) Text() string {
	plain := make([]string, 0, len(b.Said)+len(b.Sung))
	for _, part := range [][]string{b.Said, b.Sung} {
		for _, s := range part {
			if s := strings.TrimSpace(Plain(s)); s != "" {
				plain = append(plain, s)
			}
		}
	}
	return strings.Join(plain, " ")
}

// Read reads a script. Everything is some element of a script, so the only
// faults are a comment without an end, and bytes that the text's decoder found.
func Read(t *lines.Text) (*Script, []lang.Diagnostic) {
	s := &Script{}
	var diags []lang.Diagnostic
	for e := range elements(t, s, &diags) {
		s.add(e)
	}
	return s, diags
}

// Elements yields the elements of a script one after another, the title page
// left out.
func Elements(t *lines.Text) iter.Seq[Element] {
	return elements(t, &Script{}, new([]lang.Diagnostic))
}

// add puts an element into the last scene.
func (s *Script) add(e Element) {
	if e.Kind == Heading {
		s.Scenes = append(s.Scenes, Scene{Number: e.Number, Heading: e.Text, Line: e.Line})
		return
	}
	if e.Kind != Action && e.Kind != Cue && e.Kind != Dialogue && e.Kind != Lyric {
		return
	}
	if len(s.Scenes) == 0 {
		s.Scenes = append(s.Scenes, Scene{Line: 1})
	}
	scene := &s.Scenes[len(s.Scenes)-1]
	switch last := len(scene.Beats) - 1; {
	case e.Kind == Cue:
		scene.Beats = append(scene.Beats, Beat{Who: e.Text, Dual: e.Dual, Line: e.Line})
	case e.Kind == Action:
		scene.Beats = append(scene.Beats, Beat{Said: []string{e.Text}, Line: e.Line})
	case last >= 0 && scene.Beats[last].Who != "" && e.Kind == Lyric:
		scene.Beats[last].Sung = append(scene.Beats[last].Sung, e.Text)
	case last >= 0 && scene.Beats[last].Who != "":
		scene.Beats[last].Said = append(scene.Beats[last].Said, e.Text)
	default: // sung by nobody
		scene.Beats = append(scene.Beats, Beat{Said: []string{e.Text}, Line: e.Line})
	}
}
