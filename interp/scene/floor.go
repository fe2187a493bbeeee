// The floor as one shot has it, with what it places there itself.

package scene

import (
	"pullscore/interp/clock"
	"pullscore/interp/names"
	"pullscore/interp/stage"
	"pullscore/lang"
)

// Names returns the names of a shot that has the scene. What is wrong with its own goes to
// the lexicon's report.
func (s *Scene) Names(sec *lang.Section) *names.Lexicon {
	head, _ := sec.Head.(*lang.Shot)
	l := names.NewLexicon(head, s.film.Scope, s.film.Lets, s.film.Source, s.film.Rate)
	l.Staged = s.Scope
	for _, stmt := range sec.Body {
		l.Declare(stmt)
	}
	return l
}

// ownFloor returns the floor of the scene with whom a shot places there itself, and a
// reader of the shot that tells mistakes to a report.
func (s *Scene) ownFloor(sec *lang.Section, to *names.Report) (names.Reader, *stage.Stage) {
	if !names.Has[*lang.Subject](sec) {
		return s.Lex.Tells(to), s.Stage
	}
	l := s.Names(sec)
	with := s.with(l, s.ItemsFor(l), 0)
	with.Given = s.Given(Part{To: s.Long, Action: true})
	clock.New(with).Run()
	return l.Tells(to), with.Stage
}

func nobody(string) bool { return false }

// StandsAt returns where somebody stands at a time who moves in the scene; ok is false for
// anybody else.
func (s *Scene) StandsAt(name string, t float64) (out stage.FloorSite, ok bool) {
	u := s.Stage.Subjects[name]
	if u == nil || !u.Ok || len(u.Along.Steps)+len(u.Across.Steps)+len(u.Up.Steps) == 0 {
		return out, false
	}
	x, y, z, ground, _ := s.Stage.Site(u, t)
	return stage.FloorSite{Right: x, Upstage: y, High: z, Ground: ground}, true
}
