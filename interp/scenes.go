// Scenes: what their shots make of them, once all of those are built.

package interp

import (
	"cmp"
	"fmt"
	"slices"

	"pullscore/interp/checks/covered"
	"pullscore/interp/checks/setups"
	"pullscore/interp/film"
	"pullscore/interp/names"
	"pullscore/interp/plan"
	"pullscore/interp/scene"
	"pullscore/interp/staging"
	"pullscore/interp/units"
	"pullscore/lang"
)

// finishScenes says of every scene which shots it has, and how their cameras stand to its
// people.
func (p *program) finishScenes() {
	for i, sc := range p.plan.Scenes {
		sc.Cuts = append(sc.Cuts, p.cutsOf(i, p.film.Scenes[i])...)
		sc.Axes = staging.LinesOfAction(sc, sc.Axes)
		for _, s := range p.plan.Shots {
			if s.Staging == nil || s.Of != i {
				continue
			}
			sc.Setups = append(sc.Setups, s.ID)
			if s.Placed {
				s.Views = staging.Views(sc, s)
				staging.FillBlocked(s)
			}
		}
	}
	for i, sc := range p.plan.Scenes {
		if len(sc.Setups) > film.MostSetups {
			continue // which is told; each is compared with every other
		}
		found := covered.Of(p.plan, i, p.film.Scenes[i].Head.Range(), p.movedCut(p.film.Scenes[i]))
		sc.Flags = covered.Flags(found)
		p.To.Diags = append(p.To.Diags, found...)
		p.tellSetups(setups.Of(p.plan, i, p.lineOf))
	}
}

// lineOf returns where the statement on a line of a file stands.
func (p *program) lineOf(file string, line int) lang.Range {
	for _, sec := range p.film.Sections {
		for _, s := range append([]lang.Statement{sec.Head}, sec.Body...) {
			if at := s.Range(); at.File == file && at.Start.Line == line {
				return at
			}
		}
	}
	at := lang.Pos{Line: line, Column: 1}
	return lang.Range{File: file, Start: at, End: at}
}

// cutsOf returns the cuts of a scene: those of the edit where that has its shots, else
// those that the plan says.
func (p *program) cutsOf(scene int, from *scene.Scene) []plan.SceneCut {
	if list := p.editOf(scene); len(list) > 0 {
		return list
	}
	var list []plan.SceneCut
	for _, c := range from.Cuts {
		if c.Stmt.Shot == nil {
			continue
		}
		id := c.Stmt.Shot.ID
		if p.film.ShotOf(id) == nil && c.Stmt.Range().File != p.plan.File {
			continue // the scene is of another plan, and shots are not used with it
		}
		_, ok := from.Shot(c.Stmt.Shot, p.film, p.To)
		if to := p.shot(id); !ok || !c.Known || to == nil {
			continue // which has been told
		} else if detail := notCovered(to, c.T); detail != "" {
			in := names.Reporter{To: p.To}
			in.Fail(c.Stmt.Range(), "cut-not-covered", id+" does not cover this moment", detail)
			continue
		}
		list = append(list, plan.SceneCut{To: id, T: plan.Number(c.T), Because: names.ValueOf(c.Stmt.Because), At: c.Stmt.Pos.Line})
	}
	slices.SortStableFunc(list, func(a, b plan.SceneCut) int { return cmp.Compare(a.T, b.T) })
	return list
}

// notCovered says why a shot does not cover a moment of its scene; "" where it does.
func notCovered(s *plan.Shot, t float64) string {
	style := units.Style{}
	switch {
	case s.Staging == nil || !s.Action:
		return "It has nothing of the action."
	case t < float64(s.Covers[0])-aFrame || t > float64(s.Covers[1])+aFrame:
		return fmt.Sprintf("It has the scene from %s to %s, and this is %s.", style.Time(float64(s.Covers[0])), style.Time(float64(s.Covers[1])), style.Time(t))
	}
	return ""
}

// movedCut returns what moves the cuts of a scene in the plan file.
func (p *program) movedCut(from *scene.Scene) covered.Moved {
	return func(line int, on string) []lang.Edit {
		for _, c := range from.Cuts {
			file := c.Stmt.Pos.Filename
			if c.Stmt.Pos.Line != line || file != p.plan.File {
				continue
			}
			if e, ok := lang.Amend(&lang.File{Path: file, Source: p.film.Source(file)}, c.Stmt, "on", on); ok {
				return []lang.Edit{e}
			}
		}
		return nil
	}
}

// aFrame is what a moment may lie outside of what a shot covers: what is left of the
// computation of times, seconds.
const aFrame = 1e-6

// shot returns the shot of an ID that could be built; nil where there is none.
func (p *program) shot(id string) *plan.Shot {
	for _, s := range p.plan.Shots {
		if s.ID == id {
			return s
		}
	}
	return nil
}

// editOf returns the cuts of a scene that the edit has, in the time of the scene: where
// each piece of one of its shots begins, in the order of the record.
func (p *program) editOf(scene int) (list []plan.SceneCut) {
	type piece struct {
		shot *plan.Shot
		of   *plan.Piece
	}
	var pieces []piece
	for _, s := range p.plan.Shots {
		if s.Staging == nil || !s.Action || s.Of != scene {
			continue
		}
		for i := range s.Pieces {
			pieces = append(pieces, piece{s, &s.Pieces[i]})
		}
	}
	slices.SortStableFunc(pieces, func(a, b piece) int {
		return cmp.Compare(a.of.In, b.of.In)
	})
	for _, c := range pieces {
		if n := len(list); n > 0 && list[n-1].To == c.shot.ID {
			continue
		}
		list = append(list, plan.SceneCut{To: c.shot.ID, T: c.of.From + c.shot.Covers[0], FromEdit: true})
	}
	return list
}
