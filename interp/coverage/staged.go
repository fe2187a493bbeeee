// A scene that is staged: its lines are its own, and one clock holds for all its set-ups.
//
// A time of the scene is the time of a shot and that at which the shot's part of it
// begins. So no words are matched: each word is looked at in every set-up whose part has
// any of it.

package coverage

import (
	"cmp"
	"math"
	"slices"

	"pullscore/interp/plan"
	"pullscore/interp/staging"
)

// noTime is a time of which only the error of the computation is left, seconds.
const noTime = 1e-9

// Staged returns what the set-ups of one of the scenes of a plan have of its lines.
func Staged(p *plan.Plan, scene int, cuts bool) *Scene {
	from := p.Scenes[scene]
	sc := newScene(p, setupsOf(p, scene))
	sc.Staged = from
	if from.Title != "" {
		sc.Title = from.Title
	}
	people, cast := map[string]bool{}, map[string]bool{}
	for i := range from.Subjects {
		u := &from.Subjects[i]
		people[u.Name], cast[u.Name] = u.Person, true
	}
	lookers := make([]*looker, len(sc.Shots))
	for i, s := range sc.Shots {
		lookers[i] = newLooker(s, i, people)
		sc.folk = append(sc.folk, lookers[i].folk)
		for _, u := range s.Subjects {
			cast[u.Name] = true
		}
	}
	shown := cutting{}
	if cuts {
		shown = cuttingOf(from)
	}
	for _, l := range inOrder(from.Lines) {
		line := &Line{Number: len(sc.Lines) + 1, Who: l.Who, Voice: !cast[l.Who], Off: l.Off, Words: make([]Word, 0, len(l.Words))}
		room := make([]Cell, 0, len(l.Words)*len(lookers))
		for i := range l.Words {
			first := len(room)
			for _, k := range lookers {
				if c, ok := k.staged(l.Who, &l.Words[i]); ok {
					c.InCut = shown.of(k.shot, &l.Words[i])
					room = append(room, c)
					sc.Setups[k.setup].Words++
				}
			}
			line.Words = append(line.Words, Word{
				Text: l.Words[i].Text, Cells: room[first:len(room):len(room)], Start: plan.Number(l.Words[i].Start), End: plan.Number(l.Words[i].End),
			})
		}
		sc.Lines = append(sc.Lines, line)
	}
	sc.sum(cuts)
	return sc
}

// setupsOf returns the shots that have the action of a scene.
func setupsOf(p *plan.Plan, scene int) (list []*plan.Shot) {
	for _, s := range p.Shots {
		if s.Staging != nil && s.Action && s.Of == scene {
			list = append(list, s)
		}
	}
	return list
}

// inOrder returns the lines that have words, in the order of time.
func inOrder(lines []plan.Line) (list []*plan.Line) {
	for i := range lines {
		if len(lines[i].Words) > 0 {
			list = append(list, &lines[i])
		}
	}
	slices.SortStableFunc(list, func(a, b *plan.Line) int { return cmp.Compare(a.Start, b.Start) })
	return list
}

// staged returns what the set-up has of a word of its scene; ok is false where its part
// of the scene has nothing of the word.
func (k *looker) staged(who string, w *plan.Word) (c Cell, ok bool) {
	from, to := float64(k.shot.Covers[0]), float64(k.shot.Covers[1])
	if w.Start >= to-noTime || w.End <= from+noTime {
		return c, false
	}
	c, ok = k.cell(who, &plan.Word{Text: w.Text, Start: max(w.Start, from) - from, End: min(w.End, to) - from})
	c.Start, c.End = plan.None(), plan.None()
	return c, ok
}

// FrameIn returns where a subject is to the picture of a set-up of a staged scene, at a
// time of the shot: in, edge, out or blocked. It is empty where nobody knows to which side
// the subject stands.
func (sc *Scene) FrameIn(setup int, u *plan.Subject, t float64) string {
	s := sc.Shots[setup]
	if !hasSide(s, u) {
		return ""
	}
	frame := s.FrameAt(u, t)
	if frame != plan.OutOfFrame && staging.InTheWay(s, sc.folk[setup], u, t).By != nil {
		return Blocked
	}
	return frame.String()
}

// cutting is from when to when the cut shows which set-up, in the time of the scene.
type cutting struct {
	to    []string
	times []float64 // one more than set-ups: the last ends there
}

// cuttingOf returns what the cut shows of a scene. What it shows before the first cut is
// not said.
func cuttingOf(sc *plan.Scene) (c cutting) {
	cuts := slices.Clone(sc.Cuts)
	slices.SortStableFunc(cuts, func(a, b plan.SceneCut) int { return cmp.Compare(a.T, b.T) })
	for _, cut := range cuts {
		c.to, c.times = append(c.to, cut.To), append(c.times, float64(cut.T))
	}
	c.times = append(c.times, math.Inf(1))
	return c
}

// of says what the cut shows of a word in a set-up, as of a line: whole, part or removed;
// empty where there are no cuts.
func (c *cutting) of(s *plan.Shot, w *plan.Word) string {
	if len(c.to) == 0 {
		return ""
	}
	from, to := max(w.Start, float64(s.Covers[0])), min(w.End, float64(s.Covers[1]))
	seen := 0.0
	for i, id := range c.to {
		if id == s.ID {
			seen += max(0, min(to, c.times[i+1])-max(from, c.times[i]))
		}
	}
	switch {
	case seen <= noTime:
		return plan.Removed
	case seen < to-from-noTime:
		return plan.Part
	}
	return plan.Whole
}
