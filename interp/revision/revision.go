// Package revision compares the spoken lines of a plan with those of a script
// page: which have changed, moved or gone, and which pulls hang on them.
package revision

import (
	"cmp"
	"iter"
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

	// Revision is the set of changes that the page says the speech is of, where it
	// says one: mostly a colour.
	Revision string `json:"revision,omitempty"`

	// Scene is the number or the heading of the scene that a new speech is in.
	Scene string `json:"scene,omitempty"`
}

// MostSpeeches is how many speeches are compared: more than in the scripts of a
// hundred films.
const MostSpeeches = 2_000_000

// Pages are the speeches of script pages, in their order.
type Pages struct {
	speeches []said
	scenes   []Scene
	names    []string           // of the speakers
	several  map[int32][]string // the names in those that are several
	known    map[string]int32
	sets     []string // the names of revisions
	full     bool     // not all is compared
}

// A Scene is a scene of a page.
type Scene struct {
	Name string // its number, or its heading where it has none
	Page string // the path of the page
}

// A said is what somebody says on a page without a break.
type said struct {
	text     string
	who      int32 // the speaker's place in the names
	line     int32 // of the character cue, from 1
	scene    int32 // its place in the scenes
	from, to int32 // its words in the stream
	revision int32 // its place in the names of sets, from 1; 0: none
	touched  bool  // a line of the plan is in it
}

// Add adds the speeches of a page: of all its scenes, or of those with a number;
// any reports whether there are such scenes. path names the page in the changes.
func (p *Pages) Add(beats iter.Seq2[fountain.Scene, fountain.Beat], path, number string) (any bool) {
	for scene, beat := range beats {
		if number != "" && !strings.EqualFold(scene.Number, number) {
			continue
		}
		if any = true; beat.Empty() {
			p.scenes = append(p.scenes, Scene{cmp.Or(scene.Number, scene.Heading), path})
			continue
		}
		if beat.Who == "" {
			continue
		}
		if text := beat.Text(); text != "" {
			if p.full = len(p.speeches) == MostSpeeches; p.full {
				return true
			}
			p.speeches = append(p.speeches, said{who: p.name(beat.Who), text: text, line: int32(beat.Line), scene: int32(len(p.scenes) - 1), revision: p.set(beat.Revision.Name)})
		}
	}
	return any
}

// set returns the place of a revision in the names of sets, from 1; 0 for none.
func (p *Pages) set(name string) int32 {
	if name == "" {
		return 0
	}
	i := slices.Index(p.sets, name)
	if i < 0 {
		i = len(p.sets)
		p.sets = append(p.sets, name)
	}
	return int32(i + 1)
}

// setOf returns the name of the revision of a speech; empty for none.
func (p *Pages) setOf(s *said) string {
	if s.revision == 0 {
		return ""
	}
	return p.sets[s.revision-1]
}

// name returns the place of a speaker in the names.
func (p *Pages) name(who string) int32 {
	n, ok := p.known[who]
	if !ok {
		if p.known == nil {
			p.known = map[string]int32{}
		}
		n = int32(len(p.names))
		p.known[who] = n
		p.names = append(p.names, who)
		if names := fountain.Speakers(who); len(names) > 1 {
			if p.several == nil {
				p.several = map[int32][]string{}
			}
			p.several[n] = names
		}
	}
	return n
}

// speaks reports whether somebody of a plan is the speaker at a place in the
// names, or one of several who speak together.
func (p *Pages) speaks(who int32, name string) bool {
	return sameName(p.names[who], name) ||
		slices.ContainsFunc(p.several[who], func(one string) bool { return sameName(one, name) })
}

// Full returns the page of which not all is compared, since it is beyond all
// measure; ok is false where there is none.
func (p *Pages) Full() (path string, ok bool) {
	if p.full {
		path = p.scenes[len(p.scenes)-1].Page
	}
	return path, p.full
}

// Compare compares the lines of shots with speeches, in the order of shots and
// lines; new speeches come last. Case and punctuation do not count, and a plan
// may have a speech in several lines, or in several shots. Of a line its words,
// its speaker and its pulls count: it needs no time.
func Compare(shots []*plan.Shot, pages *Pages) []Change {
	c := newComparison(shots, pages)
	behind := 0
	for _, s := range shots {
		if end := c.place(s, behind); end > 0 {
			behind = end
		}
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
	return slices.Equal(speech.Fold(speech.Tokens(a)), speech.Fold(speech.Tokens(b)))
}
