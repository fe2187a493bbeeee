// Parts: what of the action of a scene a shot has.

package scene

import (
	"fmt"

	"pullscore/interp/away"
	"pullscore/interp/clock"
	"pullscore/interp/cut"
	"pullscore/interp/names"
	"pullscore/interp/units"
	"pullscore/lang"
)

// A Part is what of the action of a scene a shot has, in seconds of the scene.
type Part struct {
	From, To float64
	Action   bool   // lines, cues and moves come from the scene; else everyone stands as at From
	RunsWith string // the shot with which it runs; empty: none
}

// Part returns what of the scene a shot has. ok is false where it has nothing of it, or
// nobody knows what; mistakes go to a report.
func (s *Scene) Part(sec *lang.Section, shots Shots, to *names.Report) (p Part, ok bool) {
	circle, tell := InCircle(sec, shots, runs)
	if tell {
		s.Lex.Tells(to).Fail(runs(sec).Range(), "circle", "the shots run with one another", "Let one of them say what it covers.")
	}
	if circle {
		return p, false
	}
	return s.part(sec, shots, to)
}

// part goes by shots that lead into no circle.
func (s *Scene) part(sec *lang.Section, shots Shots, to *names.Report) (p Part, ok bool) {
	in := s.Lex.Tells(to)
	var said lang.Statement
	for _, stmt := range sec.Body {
		switch stmt := stmt.(type) {
		case *lang.Covers, *lang.PlacesAs, *lang.RunsWith:
			if said != nil && names.SettingKey(said) != names.SettingKey(stmt) {
				in.Fail(stmt.Range(), "conflicting-clauses", "`covers`, `runs` and `places` each say what is shot", "Keep one of them.")
				continue
			} else if said != nil {
				continue // told as said twice
			}
			said = stmt
		case *lang.CameraAt:
			ok = true
		}
	}
	switch said := said.(type) {
	case *lang.Covers:
		return s.covered(said, in)
	case *lang.PlacesAs:
		t, ok := s.Clock.Moment(said.At, in)
		return Part{From: t, To: t}, ok
	case *lang.RunsWith:
		return s.partOf(said, shots, to)
	}
	return p, ok
}

// partOf returns the part of the shot with which another runs.
func (s *Scene) partOf(said *lang.RunsWith, shots Shots, to *names.Report) (p Part, ok bool) {
	other, ok := s.Shot(said.Shot, shots, to)
	if !ok {
		return p, false
	}
	p, ok = s.part(other, shots, &names.Report{})
	p.RunsWith = said.Shot.ID
	if covers := names.Has[*lang.Covers](other) || names.Has[*lang.RunsWith](other); !covers {
		s.Lex.Tells(to).Fail(said.Shot.Range(), "covers-nothing", fmt.Sprintf("shot %s covers nothing of the scene", said.Shot.ID),
			"Let it say what it covers, or this shot in its place.")
		return p, false
	}
	return p, ok && p.Action
}

// covered returns the part that a `covers` names.
func (s *Scene) covered(c *lang.Covers, in names.Reader) (p Part, ok bool) {
	p = Part{To: s.Long, Action: true}
	if c.All {
		return p, true
	}
	edge := func(a *lang.Anchor, word string) (t float64, ok bool) {
		switch {
		case a != nil:
			return s.Clock.Moment(a, in)
		case word == "start":
			return 0, true
		}
		return s.Long, true
	}
	from, okFrom := edge(c.From, c.FromEdge)
	until, okTo := edge(c.To, c.ToEdge)
	if !okFrom || !okTo {
		return p, false
	}
	if !(until > from) {
		style := units.Style{}
		says := fmt.Sprintf("the part ends %s before it starts", style.Time(from-until))
		if from-until < 0.0005 {
			says = "the part ends as it starts"
		}
		in.Report(lang.Diagnostic{
			Code: "covers-nothing", Severity: lang.Error, Range: c.Range(), Message: says,
			Detail:  fmt.Sprintf("It would go from %s to %s of the scene.", style.Time(from), style.Time(until)),
			Figures: []lang.Figure{{Name: "from_s", Value: from}, {Name: "to_s", Value: until}},
		})
		return p, false
	}
	p.From, p.To = from, until
	return p, true
}

// ItemsFor returns the statements of the scene as a shot reads them, whose own subjects
// may stand in place of the scene's. Their mistakes are told with the scene.
func (s *Scene) ItemsFor(l *names.Lexicon) []names.Item {
	var list []names.Item
	for _, it := range l.ExpandQuietly(s.Section.Body) {
		if !ofShots(it.Stmt) || it.In.Call == nil {
			list = append(list, it)
		}
	}
	return list
}

// Given returns when a part has the items of the scene, in seconds of the shot.
func (s *Scene) Given(p Part) []clock.Given {
	list := make([]clock.Given, len(s.Items))
	for k := range s.Items {
		list[k] = s.given(k, p)
	}
	return list
}

// Heard returns when a part has the items of the scene in a shot that a cut has: the lines
// that the cut has are when that says, and what hangs on them goes along. later is by how
// many seconds the first of them comes later in the shot than the part has it. l has the
// names of the shot, which begins at an epoch, as frames.
func (s *Scene) Heard(l *names.Lexicon, p Part, found *cut.Shot, epoch int64) (list []clock.Given, later float64) {
	items := s.ItemsFor(l)
	build := func(by map[int]float64) *clock.Clock {
		c := clock.New(s.with(l, items, -p.From))
		c.Hear(found, epoch)
		c.Shift(by)
		c.Run()
		return c
	}
	c := build(nil)
	if c.LacksLines() {
		c = build(away.Shifts(build))
	}
	list = s.Given(p)
	first := true
	for k := range list {
		m, line := &c.At[k], c.Lines[k]
		if list[k].Out || !m.Known {
			continue
		}
		if line != nil && line.Heard != nil && first {
			later, first = m.StartS-list[k].Start, false
		}
		list[k].Start, list[k].End = m.StartS, m.EndS
		if line != nil {
			list[k].Words = line.Spread()
		}
	}
	return list, later
}

func (s *Scene) given(k int, p Part) (g clock.Given) {
	m := &s.Clock.At[k]
	if !m.Known {
		return clock.Given{Out: true}
	}
	g = clock.Given{Start: m.StartS - p.From, End: m.EndS - p.From, Known: true}
	_, walks := s.Items[k].Stmt.(*lang.Moves)
	long := p.To - p.From
	switch before, behind := g.End < 0 || g.End == 0 && g.Start < 0, g.Start > long || g.Start == long && g.End > long; {
	case walks && before: // where it leads still counts
	case before || behind:
		return clock.Given{Out: true}
	}
	if l := s.Clock.Lines[k]; l != nil {
		for _, w := range l.Spread() {
			w.Start, w.End = w.Start-p.From, w.End-p.From
			g.Words = append(g.Words, w)
		}
	}
	return g
}
