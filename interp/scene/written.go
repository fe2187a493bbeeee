// A scene as the plan has it.

package scene

import (
	"math"

	"pullscore/interp/names"
	"pullscore/interp/plan"
	"pullscore/interp/stage"
	"pullscore/lang"
)

// Plan returns the scene as plain data, without what its shots make of it.
func (s *Scene) Plan() *plan.Scene {
	out := &plan.Scene{
		Title: names.ValueOf(s.Head.Title), File: s.Head.Pos.Filename, Line: s.Head.Pos.Line, Duration: plan.Number(s.Long),
		Marks: []plan.FloorMark{}, Subjects: []plan.Staged{}, Lines: []plan.Line{}, Cues: []plan.Cue{}, Cuts: []plan.SceneCut{},
		Axes: []plan.LineOfAction{}, Setups: []string{},
	}
	for _, stmt := range s.Section.Body {
		switch stmt := stmt.(type) {
		case *lang.Origin:
			out.Origin = names.ValueOf(stmt.Words)
		case *lang.FloorMark:
			out.Marks = append(out.Marks, s.floorMark(stmt)...)
		case *lang.Line:
			out.Axes = append(out.Axes, s.axis(stmt)...)
		}
	}
	for _, u := range s.Stage.Order {
		out.Subjects = append(out.Subjects, s.staged(u))
	}
	sh := &plan.Shot{}
	s.Clock.Finish(sh)
	out.Lines, out.Cues = append(out.Lines, sh.Lines...), append(out.Cues, sh.Cues...)
	return out
}

func (s *Scene) floorMark(stmt *lang.FloorMark) []plan.FloorMark {
	d := s.Scope.Find(names.DeclSubject, stmt.Name.Text)
	if d == nil || d.Stmt != stmt {
		return nil
	}
	x, y, z, ok := s.Stage.MarkAt(d)
	if !ok {
		return nil
	}
	return []plan.FloorMark{{Name: stmt.Name.Text, Right: plan.Number(x), Upstage: plan.Number(y), High: plan.Number(z)}}
}

// axis returns a line of action that the plan says.
func (s *Scene) axis(stmt *lang.Line) []plan.LineOfAction {
	in := s.Lex.Outside().Quietly()
	from, okFrom := in.Who(stmt.From, names.DeclSubject)
	to, okTo := in.Who(stmt.To, names.DeclSubject)
	if !okFrom || !okTo || from == to {
		return nil
	}
	return []plan.LineOfAction{{From: from.Name.Text, To: to.Name.Text, Start: 0, End: plan.Number(s.Long), Said: true}}
}

// staged returns somebody with the way that they go.
func (s *Scene) staged(u *stage.Subject) plan.Staged {
	out := plan.Staged{Name: u.Name, Person: s.film.People[u.Name], Unknown: u.Level, Path: []plan.FloorPoint{}}
	at := func(t float64) plan.FloorPoint {
		x, y, z, _, level := s.Stage.Site(u, t)
		p := plan.FloorPoint{T: plan.Number(t), Right: plan.Number(x), Upstage: plan.Number(y), High: plan.Number(z)}
		if level {
			p.High = plan.None()
		}
		return p
	}
	if s.Stage.HasEyes(u) {
		_, _, z, ground, _ := s.Stage.Site(u, 0)
		out.Eyes = z - ground
	}
	if stmt, ok := u.Decl.Stmt.(*lang.Actor); ok {
		out.At = s.Lex.Outside().SourceText(stmt.At.Range())
	}
	keys := append([]float64{0, s.Long}, u.Along.Keys()...)
	times := plan.Straight(append(append(keys, u.Across.Keys()...), u.HeightKeys()...), s.Long, func(t float64) []float64 {
		x, y, z, _, _ := s.Stage.Site(u, t)
		return []float64{x, y, z}
	})
	for _, t := range times {
		out.Path = append(out.Path, at(t))
	}
	if n := len(out.Path); n > 1 && still(out.Path) {
		out.Path = out.Path[:1]
	}
	for _, m := range s.Stage.InTime() {
		if m.Who == u {
			out.Legs = append(out.Legs, plan.Leg{Start: m.Start, End: m.End, From: at(m.Start), To: at(m.End), Anchor: s.anchorOf(m)})
		}
	}
	return out
}

// still reports whether a path stays where it begins.
func still(path []plan.FloorPoint) bool {
	for _, p := range path {
		d := math.Hypot(float64(p.Right-path[0].Right), float64(p.Upstage-path[0].Upstage))
		if d > 1e-9 || math.Abs(float64(p.High-path[0].High)) > 1e-9 {
			return false
		}
	}
	return true
}

// anchorOf returns what a walk hangs on, as written; empty where the line says nothing.
func (s *Scene) anchorOf(m *stage.Move) string {
	if stmt, ok := m.Stmt.(*lang.Moves); ok && stmt.On != nil {
		return s.Items[m.Item].In.AnchorText(stmt.On, nil)
	}
	return ""
}
