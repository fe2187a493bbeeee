// What stands on the floor of a scene, and what a shot has of it.

package editor

import (
	"strings"

	"pullscore/interp"
	"pullscore/interp/coverage"
	"pullscore/interp/mention"
	"pullscore/interp/moments"
	"pullscore/interp/plan"
	"pullscore/interp/units"
	"pullscore/lang"
)

// sceneAt returns the scene, by its place in the plan, whose section a byte of a file is
// in; -1 for none.
func (t *teller) sceneAt(d *document, offset int) int {
	line := 0
	for _, section := range d.tree().Sections {
		if section.Head.Range().Start.Offset > offset {
			break
		}
		line = 0
		if _, ok := section.Head.(*lang.Scene); ok {
			line = section.Head.Range().Start.Line
		}
	}
	for i, sc := range t.plan.result().Plan.Scenes {
		if line > 0 && sc.Line == line && t.plan.reals[sc.File] == d.real {
			return i
		}
	}
	return -1
}

// setups returns the shots of a scene whose cameras have a place in it.
func (t *teller) setups(scene int) (list []*plan.Shot) {
	for _, s := range t.plan.result().Plan.Shots {
		if s.Staging != nil && s.Of == scene && s.Placed {
			list = append(list, s)
		}
	}
	return list
}

// onFloor says where a mark or somebody of a scene is, and in a scene how each of its
// set-ups sees them as it starts.
func (t *teller) onFloor(m interp.Mention) []string {
	d, err := t.s.at(m.Of.File)
	if err != nil {
		return nil
	}
	at := t.sceneAt(d, m.Of.Start.Offset)
	if at < 0 {
		return nil
	}
	sc := t.plan.result().Plan.Scenes[at]
	if m.Kind == mention.Mark {
		for _, mark := range sc.Marks {
			if mark.Name == m.Name {
				return t.placed("mark "+m.Name, sc, plan.FloorPoint{Right: mark.Right, Upstage: mark.Upstage, High: mark.High})
			}
		}
		return nil
	}
	for i := range sc.Subjects {
		u := &sc.Subjects[i]
		if u.Name != m.Name || len(u.Path) == 0 {
			continue
		}
		first := u.Path[0]
		if u.Unknown {
			first.High = 0
		}
		lines := t.placed(m.Name, sc, first)
		for _, s := range t.setups(at) {
			if seen := s.Subject(m.Name); seen != nil {
				lines = append(lines, s.ID+" sees "+moments.SeenAt(s, seen, 0, t.s.style(s)))
			}
		}
		return lines
	}
	return nil
}

// placed says where something is from the zero point of a scene, in metres and in feet.
func (t *teller) placed(what string, sc *plan.Scene, p plan.FloorPoint) []string {
	first, other := units.ForTable(false), units.ForTable(true)
	if t.plan.result().Plan.Units == "imperial" || t.s.Units == "imperial" {
		first, other = other, first
	}
	lines := []string{what + ": " + moments.FloorPoint(&p, first), "= " + moments.FloorPoint(&p, other)}
	if sc.Origin != "" {
		lines = append(lines, fold("from "+sc.Origin, foldAt)...)
	}
	return lines
}

// staging says what a statement of a shot has of its scene; nil for other statements.
func (t *teller) staging(shot *plan.Shot, in units.Style) []string {
	if shot.Staging == nil {
		return nil
	}
	switch t.one.(type) {
	case *lang.Covers, *lang.PlacesAs, *lang.RunsWith:
		return fold(shot.ID+": "+moments.Stages(shot, in), foldAt)
	case *lang.Matches:
		var lines []string
		for _, sight := range moments.Sights(shot.Views, in) {
			lines = append(lines, fold(sight, foldAt)...)
		}
		return lines
	case *lang.CameraAt:
		if shot.Placed {
			return fold("camera of "+shot.ID+": "+moments.Stands(shot, 0, in), foldAt)
		}
	}
	return nil
}

// sceneLine says of a line of a scene when it is said, and which set-ups hold it.
func (t *teller) sceneLine() []string {
	said, ok := t.one.(*lang.Speech)
	at := t.sceneAt(t.doc, t.offset)
	if !ok || at < 0 {
		return nil
	}
	sc := t.plan.result().Plan.Scenes[at]
	line := lineOfScene(sc, said, t.doc)
	if line == nil {
		return nil
	}
	lines := []string{line.Who + " speaks from " + figures.Time(float64(line.Start)) + " to " + figures.Time(float64(line.End)) + " of the scene, " + t.source(line)}
	for _, l := range coverage.Staged(t.plan.result().Plan, at, false).Lines {
		if l.Who == line.Who && len(l.Words) > 0 && l.Words[0].Start == line.Start {
			return append(lines, heldBy(l)...)
		}
	}
	return lines
}

// heldBy says of every set-up that has words of a line whether it holds them.
func heldBy(l *coverage.Line) (lines []string) {
	var order []string
	held, has := map[string]int{}, map[string]int{}
	for _, w := range l.Words {
		for _, c := range w.Cells {
			if has[c.Shot] == 0 {
				order = append(order, c.Shot)
			}
			has[c.Shot]++
			if c.Held {
				held[c.Shot]++
			}
		}
	}
	if len(order) == 0 {
		return []string{"no set-up covers it"}
	}
	for _, id := range order {
		text := id + " holds "
		switch n := held[id]; {
		case n == len(l.Words):
			text += "all of it"
		case n == 0:
			text += "none of it"
		default:
			text += figures.Number(float64(n), 0) + " of " + units.Count(len(l.Words), "word")
		}
		if has[id] < len(l.Words) {
			text += ", and covers " + figures.Number(float64(has[id]), 0)
		}
		lines = append(lines, text)
	}
	return lines
}

// lineOfScene returns the line of a scene that a statement is: of those with the same
// speaker and words the one that has as many of them above it.
func lineOfScene(sc *plan.Scene, said *lang.Speech, d *document) *plan.Line {
	nth := 0
	for _, section := range d.tree().Sections {
		if section.Head.Range().Start.Line != sc.Line {
			continue
		}
		for _, one := range section.Body {
			other, ok := one.(*lang.Speech)
			if ok && other != said && other.Who.Text == said.Who.Text && other.Words.Value == said.Words.Value && other.Range().Start.Offset < said.Range().Start.Offset {
				nth++
			}
		}
	}
	for i := range sc.Lines {
		if line := &sc.Lines[i]; line.Who == said.Who.Text && line.Text == said.Words.Value {
			if nth == 0 {
				return line
			}
			nth--
		}
	}
	return nil
}

// sceneSays returns how long a scene is, and its set-ups.
func (t *teller) sceneSays() []string {
	at := t.sceneAt(t.doc, t.offset)
	if at < 0 {
		return nil
	}
	sc := t.plan.result().Plan.Scenes[at]
	lines := []string{strings.TrimSpace("scene " + sc.Title), "lasts " + figures.Time(float64(sc.Duration)) + ", " + units.Count(len(sc.Lines), "line")}
	if len(sc.Setups) > 0 {
		lines = append(lines, fold(units.Count(len(sc.Setups), "set-up")+": "+strings.Join(sc.Setups, ", "), foldAt)...)
	}
	return lines
}
