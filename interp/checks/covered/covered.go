package covered

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"pullscore/interp/coverage"
	"pullscore/interp/plan"
	"pullscore/interp/units"
	"pullscore/lang"
	"pullscore/lang/rule"
)

// Moved returns the edits that have the cut on a line of the plan at another moment, which
// is written as a clause; none where that cannot be.
type Moved func(line int, on string) []lang.Edit

// Of returns what is wrong with the words of one of the scenes of a plan, and with its
// cuts, in the order of time. at is where the file says that the scene begins.
func Of(p *plan.Plan, scene int, at lang.Range, moved Moved) []lang.Diagnostic {
	f := &finder{
		Scene: coverage.Staged(p, scene, true), at: at, rewrite: moved,
		units: units.Style{System: systemOf(p)},
	}
	f.cuts = cutsOf(f.Scene)
	f.held()
	f.onScreen()
	f.jumps()
	slices.SortStableFunc(f.found, func(a, b lang.Diagnostic) int { return cmp.Compare(a.Time, b.Time) })
	return f.found
}

// Flags returns findings of a scene as drawings show them, with the letters of their
// causes, and writes these into the findings.
func Flags(found []lang.Diagnostic) []plan.Flag {
	flags := make([]plan.Flag, len(found))
	for i, d := range found {
		var says, texts []string
		for _, c := range d.Cures {
			says, texts = append(says, c.Says()), append(texts, c.Text)
		}
		flags[i] = plan.Flag{
			Number: i + 1, Severity: d.Severity.String(), Code: d.Code, Text: d.Message,
			Cures: strings.Join(says, ", or "), CureTexts: texts, Time: d.Time,
		}
	}
	plan.Letter(flags)
	for i := range flags {
		found[i].Cause = flags[i].Cause
	}
	return flags
}

// A finder collects what it finds in a scene.
type finder struct {
	*coverage.Scene
	at      lang.Range
	units   units.Style
	cuts    []cut
	rewrite Moved
	found   []lang.Diagnostic
}

// tell adds a finding at a time of the scene.
func (f *finder) tell(code rule.Code, severity lang.Severity, t float64, message, detail string, figures ...lang.Figure) *lang.Diagnostic {
	figures = slices.DeleteFunc(figures, func(g lang.Figure) bool { return math.IsNaN(g.Value) || math.IsInf(g.Value, 0) })
	f.found = append(f.found, lang.Diagnostic{
		Code: code.String(), Severity: severity, Message: message, Detail: detail,
		Range: f.at, Scene: f.Staged.Title, Time: t, Figures: figures,
	})
	return &f.found[len(f.found)-1]
}

// systemOf returns the units of a plan.
func systemOf(p *plan.Plan) units.System {
	for _, s := range p.Shots {
		if s.Imperial {
			return units.Imperial
		}
	}
	return units.Metric
}

// joinedWith returns words as a list: "12A", "12A and 12B", "12A, 12B and 12C".
func joinedWith(and string, words []string) string {
	switch n := len(words); n {
	case 0:
		return ""
	case 1:
		return words[0]
	default:
		return strings.Join(words[:n-1], ", ") + and + words[n-1]
	}
}
