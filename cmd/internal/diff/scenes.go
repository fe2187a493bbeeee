// What is different in a scene. It is told once, and not of every shot of the scene.

package diff

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"pullscore/interp/plan"
	"pullscore/interp/units"
)

// A Scene is what changed in a scene that is staged.
type Scene struct {
	Change   Change    `json:"change"`
	Title    string    `json:"scene"`
	Details  []Detail  `json:"details"`
	Marks    []Piece   `json:"marks"`
	Subjects []Piece   `json:"subjects"`
	Events   []Piece   `json:"events"` // lines, cues, moves of people, cuts and lines of action
	Held     []Piece   `json:"held"`   // words that other set-ups hold now
	Findings []Finding `json:"findings"`
	Groups   []Group   `json:"groups"` // of findings that are told together

	was, is *plan.Scene // nil where there was, or is, none
	setups  []string    // the shots of both
	rate    float64
}

func (s *Scene) holdsChange() bool {
	return len(s.Details)+len(s.Marks)+len(s.Subjects)+len(s.Events)+len(s.Held)+len(s.Findings) > 0
}

// titled reports whether a finding that came, or is gone, is about the scene of that title.
func (s *Scene) titled(title string, change Change) bool {
	if change == Gone {
		return s.was != nil && s.was.Title == title
	}
	return s.is != nil && s.is.Title == title
}

// told says what is told of the scenes of a plan, so that no shot tells it again.
type told struct {
	list []once
}

// once is what is told of one scene, by the indices that the scene has.
type once struct {
	was, is int // -1: none
	labels  map[label]bool
	moves   map[string]bool // who has another way on the floor, told or following from a mark
	before  *plan.Scene
	after   *plan.Scene
}

// of returns what is told of the scene of a shot; nil where a shot has none before or
// after, or another.
func (t told) of(before, after *plan.Shot) *once {
	if before == nil || after == nil || before.Staging == nil || after.Staging == nil {
		return nil
	}
	for i := range t.list {
		if o := &t.list[i]; o.was == before.Of && o.is == after.Of {
			return o
		}
	}
	return nil
}

// compareScenes compares the scenes of a plan, and says what is told of each.
func compareScenes(before, after *plan.Plan) (list []Scene, t told) {
	for _, m := range matchScenes(before.Scenes, after.Scenes) {
		c := staged{before: before, after: after, was: m.before, is: m.after}
		s := c.scene()
		o := once{was: m.before, is: m.after, labels: map[label]bool{}, moves: map[string]bool{}, before: s.was, after: s.is}
		for _, p := range slices.Concat(s.Marks, s.Subjects, s.Events) {
			o.labels[label{p.Kind, p.Name}] = true
		}
		if s.was != nil && s.is != nil {
			for _, u := range s.is.Subjects {
				i := slices.IndexFunc(s.was.Subjects, func(b plan.Staged) bool { return b.Name == u.Name })
				o.moves[u.Name] = i < 0 || !slices.EqualFunc(s.was.Subjects[i].Path, u.Path, samePoint)
			}
		}
		list, t.list = append(list, s), append(t.list, o)
	}
	return list, t
}

// samePoint compares points of two ways.
func samePoint(a, b plan.FloorPoint) bool { return a.T == b.T && spotOf(a) == spotOf(b) }

// matchScenes matches scenes by their titles, else by the shots that they have, in their
// order after the change, those that are gone last.
func matchScenes(before, after []*plan.Scene) (list []match) {
	taken := make([]bool, len(before))
	of := make([]int, len(after))
	find := func(same func(b, a *plan.Scene) bool) {
		for k, a := range after {
			for i, b := range before {
				if of[k] < 0 && !taken[i] && same(b, a) {
					of[k], taken[i] = i, true
				}
			}
		}
	}
	for k := range of {
		of[k] = -1
	}
	find(func(b, a *plan.Scene) bool { return b.Title == a.Title })
	find(func(b, a *plan.Scene) bool {
		return slices.ContainsFunc(b.Setups, func(id string) bool { return slices.Contains(a.Setups, id) })
	})
	for k := range after {
		list = append(list, match{of[k], k})
	}
	for i := range before {
		if !taken[i] {
			list = append(list, match{i, -1})
		}
	}
	return list
}

// staged compares one scene of two plans, by its indices; -1: it came, or is gone.
type staged struct {
	before, after *plan.Plan
	was, is       int
}

func (c staged) scene() Scene {
	s := Scene{
		Change: Same, Details: []Detail{}, Marks: []Piece{}, Subjects: []Piece{}, Events: []Piece{}, Held: []Piece{},
		Findings: []Finding{}, Groups: []Group{}, rate: c.rate(),
	}
	if c.was >= 0 {
		s.was = c.before.Scenes[c.was]
		s.Title, s.setups = s.was.Title, slices.Clone(s.was.Setups)
	}
	if c.is >= 0 {
		s.is = c.after.Scenes[c.is]
		s.Title, s.setups = s.is.Title, append(s.setups, s.is.Setups...)
	}
	switch {
	case s.was == nil:
		s.Change = New
	case s.is == nil:
		s.Change = Gone
	default:
		s.Details, s.Marks, s.Subjects, s.Events = c.details(s.was, s.is), c.marks(s.was, s.is), c.subjects(s.was, s.is), c.events(s.was, s.is)
	}
	return s
}

// rate is that of the film, in frames a second.
func (c staged) rate() float64 {
	for _, p := range []*plan.Plan{c.after, c.before} {
		if len(p.Shots) > 0 {
			num, den := p.Shots[0].Rate.Exact()
			return float64(num) / float64(den)
		}
	}
	return 0
}

// style writes figures as the plan has them after.
func (c staged) style() units.Style {
	p := c.after
	if len(p.Shots) == 0 {
		p = c.before
	}
	return units.ForTable(len(p.Shots) > 0 && p.Shots[0].Imperial)
}

func (c staged) details(was, is *plan.Scene) []Detail {
	l := newList(c.rate())
	l.word("title", "title", was.Title, is.Title)
	l.word("origin", "zero point", was.Origin, is.Origin)
	l.length("duration_s", "lasts", was.Duration, is.Duration)
	return l.details
}

func (c staged) marks(was, is *plan.Scene) []Piece {
	return pieces(was.Marks, is.Marks,
		func(m plan.FloorMark) label { return label{"mark", m.Name} },
		func(b, a plan.FloorMark) []Detail {
			l := newList(c.rate())
			l.moved(markAt(b), markAt(a), c.style())
			return l.details
		})
}

func markAt(m plan.FloorMark) spot {
	return spot{float64(m.Right), float64(m.Upstage), known(m.High)}
}

// subjects compares where everyone is at first, and how high their eyes are. Who stands at
// a mark that moved goes with it, which the mark tells.
func (c staged) subjects(was, is *plan.Scene) []Piece {
	in := c.style()
	return pieces(was.Subjects, is.Subjects,
		func(u plan.Staged) label { return label{"subject", u.Name} },
		func(b, a plan.Staged) []Detail {
			l := newList(c.rate())
			from, to := stood(b), stood(a)
			follows := b.At == a.At && a.At != "" && c.basis(was, is, a) || from.level(was, in) == to.level(is, in)
			if follows {
				from.right, from.upstage = to.right, to.upstage
			}
			if follows && a.Person && b.Person {
				from.high = to.high
			}
			l.moved(from, to, in)
			l.figure("eyes-changed", "eyes", eyesOf(b), eyesOf(a), func(n plan.Number) string { return in.Tape(float64(n)) })
			c.depth(l, a.Name)
			return l.details
		})
}

// basis reports whether the place of somebody is written by a mark or a person that has
// moved itself.
func (c staged) basis(was, is *plan.Scene, u plan.Staged) bool {
	for _, m := range is.Marks {
		i := slices.IndexFunc(was.Marks, func(b plan.FloorMark) bool { return b.Name == m.Name })
		if i >= 0 && markAt(was.Marks[i]) != markAt(m) && mentions(u.At, m.Name) {
			return true
		}
	}
	for _, o := range is.Subjects {
		i := slices.IndexFunc(was.Subjects, func(b plan.Staged) bool { return b.Name == o.Name })
		if i >= 0 && o.Name != u.Name && stood(was.Subjects[i]) != stood(o) && mentions(u.At, o.Name) {
			return true
		}
	}
	return false
}

// mentions reports whether a text has a name, and not as a part of another.
func mentions(text, name string) bool {
	for at := 0; ; {
		i := strings.Index(text[at:], name)
		if i < 0 || name == "" {
			return false
		}
		before, _ := utf8.DecodeLastRuneInString(text[:at+i])
		after, _ := utf8.DecodeRuneInString(text[at+i+len(name):])
		if !inName(before) && !inName(after) {
			return true
		}
		at += i + len(name)
	}
}

func inName(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) || r == '_' }

// depth compares how deep somebody is and how much they sway, which the set-ups have: as
// the first that has them says it.
func (c staged) depth(l *list, name string) {
	b, a := firstOf(c.before, c.was, name), firstOf(c.after, c.is, name)
	if b == nil || a == nil {
		return
	}
	in := c.style()
	tape := func(n plan.Number) string { return in.Tape(float64(n)) }
	l.figure("deep_m", "deep", b.Deep, a.Deep, tape)
	l.figure("sways_m", "sways", b.Sways, a.Sways, tape)
}

// firstOf returns somebody as the first shot of a scene has them; nil where none has.
func firstOf(p *plan.Plan, scene int, name string) *plan.Subject {
	for _, s := range p.Shots {
		if s.Staging != nil && s.Of == scene {
			if u := s.Subject(name); u != nil {
				return u
			}
		}
	}
	return nil
}

// stood is where somebody is at first: of a person what they stand on.
func stood(u plan.Staged) spot {
	if len(u.Path) == 0 {
		return spot{}
	}
	at := spotOf(u.Path[0])
	at.high -= u.Eyes
	if u.Unknown {
		at.high = 0
	}
	return at
}

func eyesOf(u plan.Staged) plan.Number {
	if u.Eyes > 0 {
		return plan.Number(u.Eyes)
	}
	return plan.None()
}

// A stagedEvent is anything that happens in a scene.
type stagedEvent struct {
	label
	start, end plan.Number
	to         string // the place that a walk goes to, or whom a line is said to
	off        string // of a line that is only heard
}

// events compares what happens in a scene.
func (c staged) events(was, is *plan.Scene) []Piece {
	return pieces(c.happens(was), c.happens(is),
		func(e stagedEvent) label { return e.label },
		func(b, a stagedEvent) []Detail {
			l := newList(c.rate())
			l.word("to", "to", b.to, a.to)
			l.word("off", "", b.off, a.off)
			l.times(b.start, b.end, a.start, a.end)
			for i := range l.details {
				if a.kind == "cut" {
					l.details[i].Name = "cut-moved"
				}
			}
			return l.details
		})
}

// happens lists what happens in a scene, kind by kind.
func (c staged) happens(s *plan.Scene) (list []stagedEvent) {
	for _, n := range s.Lines {
		list = append(list, stagedEvent{label{"line", fmt.Sprintf("%s “%s”", n.Who, n.Text)}, n.Start, n.End, n.To, heard(n.Off)})
	}
	for _, q := range s.Cues {
		list = append(list, stagedEvent{label{"cue", q.Name}, q.T, q.T, "", ""})
	}
	for _, u := range s.Subjects {
		for _, g := range u.Legs {
			list = append(list, stagedEvent{label{"moves", u.Name}, plan.Number(g.Start), plan.Number(g.End), spotOf(g.To).level(s, c.style()), ""})
		}
	}
	for _, cut := range s.Cuts {
		list = append(list, stagedEvent{label{"cut", "to " + cut.To}, cut.T, cut.T, "", ""})
	}
	none := plan.None()
	for _, x := range s.Axes {
		if x.Said {
			list = append(list, stagedEvent{label{"line of action", x.From + " to " + x.To}, none, none, "", ""})
		}
	}
	return list
}

func heard(off bool) string {
	if off {
		return "only heard"
	}
	return "seen"
}

// name says which scene it is.
func (s *Scene) name() string { return "scene “" + cmp.Or(s.Title, "without a title") + "”" }

// Phrases says all that changed in a scene. With all it tells every note, else those that
// are alike together.
func (s *Scene) Phrases(all bool) []string {
	var list []string
	switch s.Change {
	case New:
		list = append(list, fmt.Sprintf("new, %s, %s", units.Count(len(s.is.Setups), "set-up"), units.Count(len(s.is.Lines), "line")))
	case Gone:
		list = append(list, "gone")
	}
	if text := says(s.Details); text != "" {
		list = append(list, text)
	}
	for _, p := range slices.Concat(s.Marks, s.Subjects) {
		list = append(list, p.phrase())
	}
	list = append(list, eventPhrases(s.Events, func() float64 { return s.rate })...)
	for _, p := range s.Held {
		list = append(list, p.phrase())
	}
	return append(list, findingPhrases(s.Findings, all)...)
}

// prefixed is Phrases, each with the name of the scene; none where nothing changed.
func (s *Scene) prefixed(all bool) (list []string) {
	if s.Change == Same {
		return nil
	}
	for _, text := range s.Phrases(all) {
		list = append(list, s.name()+": "+text)
	}
	return list
}

// SceneNotes says what changed in the scene of a shot, with notes that are alike together.
func (p Plan) SceneNotes(id string) (list []string) {
	const all = false
	for i := range p.Scenes {
		if s := &p.Scenes[i]; slices.Contains(s.setups, id) {
			list = append(list, s.prefixed(all)...)
		}
	}
	return list
}
