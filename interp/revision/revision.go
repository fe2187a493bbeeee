// Package revision compares the spoken lines of a plan with those of a script
// page: which have changed, moved or gone, and which pulls hang on them.
package revision

import (
	"cmp"
	"slices"
	"strings"

	"pullscore/interp/plan"
	"pullscore/interp/speech"
	"pullscore/lang/fountain"
)

// A Kind is what has become of a line.
type Kind string

// The kinds.
const (
	Changed Kind = "changed" // other words
	Moved   Kind = "moved"   // the same words in another place
	Gone    Kind = "gone"    // the page does not have it
	New     Kind = "new"     // a speech that no line of the plan has
	Speaker Kind = "speaker" // somebody else says it
)

// A Change is one difference between a plan and a page. A line that is both
// moved and changed has two.
type Change struct {
	Kind Kind `json:"kind"`

	Shot  string `json:"shot,omitempty"` // the shot's ID; empty for a new speech
	Line  int    `json:"-"`              // the line's index in the shot; -1 for a new speech
	Who   string `json:"who,omitempty"`  // as in the plan
	Text  string `json:"text,omitempty"`
	Pulls []int  `json:"pulls,omitempty"` // the numbers of the shot's pulls that hang on the line

	PageWho  string `json:"page_who,omitempty"` // as on the page; empty where it is gone
	PageText string `json:"page_text,omitempty"`
	PageLine int    `json:"page_line,omitempty"` // of the character cue, from 1
	Page     string `json:"page,omitempty"`      // the path of the page

	// Scene is the number or the heading of the scene that a new speech is in.
	Scene string `json:"scene,omitempty"`
}

// A Speech is what somebody says on a page without a break.
type Speech struct {
	Who, Text string
	Line      int    // of the character cue, from 1
	Scene     string // its number, or its heading where it has none
	Page      string // the path of the page

	scene int // the number of the scene in the order of the pages
}

// Speeches returns the speeches of a script in their order: of all its scenes,
// or of those with a number, of which there may be none. path names the page
// in the changes.
func Speeches(s *fountain.Script, path, number string) []Speech {
	var list []Speech
	for i, scene := range s.Scenes {
		if number != "" && !strings.EqualFold(scene.Number, number) {
			continue
		}
		for _, b := range scene.Beats {
			if text := b.Text(); b.Who != "" && text != "" {
				list = append(list, Speech{
					Who: b.Who, Text: text, Line: b.Line, Page: path,
					Scene: cmp.Or(scene.Number, scene.Heading), scene: i,
				})
			}
		}
	}
	return list
}

// HasScene reports whether a script has a scene with a number.
func HasScene(s *fountain.Script, number string) bool {
	return slices.ContainsFunc(s.Scenes, func(scene fountain.Scene) bool { return strings.EqualFold(scene.Number, number) })
}

// Compare compares the lines of a plan with speeches, in the order of shots and
// lines; new speeches come last. Case and punctuation do not count, and a plan
// may have a speech in several lines, or in several shots.
func Compare(p *plan.Plan, speeches []Speech) []Change {
	c := newComparison(speeches)
	for _, s := range p.Shots {
		c.place(s)
	}
	c.rewritten()
	c.extend()
	var list []Change
	for _, l := range c.lines {
		list = append(list, c.changes(l)...)
	}
	return append(list, c.unheard()...)
}

// sameName reports whether a name on a page is one of a plan.
func sameName(a, b string) bool {
	return slices.Equal(speech.Fold(speech.Split(a)), speech.Fold(speech.Split(b)))
}
