package setups

import (
	"cmp"

	"pullscore/interp/plan"
	"pullscore/interp/units"
	"pullscore/lang"
)

// A scene is one scene as the checks see it.
type scene struct {
	*plan.Scene
	shots []*plan.Shot // of it, in the order of the plan
	at    Lines
}

// Lines returns where a line of a file is.
type Lines func(file string, line int) lang.Range

// Of returns what is told of the set-ups of one scene of a plan. Each finding stands in one
// of them, and its time is of that shot.
func Of(p *plan.Plan, number int, at Lines) (told []lang.Diagnostic) {
	sc := &scene{Scene: p.Scenes[number], at: at}
	for _, s := range p.Shots {
		if s.Staging != nil && s.Staging.Of == number {
			sc.shots = append(sc.shots, s)
		}
	}
	told = append(told, crosses(sc)...)
	told = append(told, differs(sc)...)
	told = append(told, sees(sc)...)
	told = append(told, twoPulls(sc)...)
	for i := range told {
		told[i].Severity, told[i].Scene = lang.Warning, sc.Title
	}
	return told
}

// placed returns where the line is that places the camera of a shot, or where its header
// is.
func (sc *scene) placed(s *plan.Shot) lang.Range { return sc.line(s, s.Staging.Placer) }

// line returns where a line of a shot is; the header stands for a line that is not there.
func (sc *scene) line(s *plan.Shot, line int) lang.Range { return sc.at(s.File, cmp.Or(line, s.Line)) }

// style returns how the figures of a shot are written.
func style(s *plan.Shot) (u units.Style) {
	if s.Imperial {
		u.System = units.Imperial
	}
	return u
}

// byID returns the first of the shots with that ID; nil where there is none.
func (sc *scene) byID(id string) *plan.Shot {
	for _, s := range sc.shots {
		if s.ID == id {
			return s
		}
	}
	return nil
}

func figure(name string, v float64) lang.Figure { return lang.Figure{Name: name, Value: v} }

// word returns one word for what is below 0 and another for the rest.
func word(v float64, below, above string) string {
	if v < 0 {
		return below
	}
	return above
}
