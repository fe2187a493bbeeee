// line-not-in-edit, line-differs, lines-elsewhere, cue-not-in-edit,
// shot-not-in-edit, moved-in-edit: what a plan has otherwise than the cut that it follows.

package edited

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"pullscore/interp/checks/check"

	"pullscore/interp/cut"
	"pullscore/interp/units"
	"pullscore/lang"
	"pullscore/lang/rule"
)

var InEdit = check.Check{Codes: []rule.Code{rule.LineNotInEdit, rule.LineDiffers, rule.LinesElsewhere, rule.CueNotInEdit, rule.ShotNotInEdit, rule.MovedInEdit}, Run: differsFromCut}

func differsFromCut(b *check.Shot) []check.Finding {
	if b.Cut == nil {
		return nil
	}
	return slices.Concat(edited{b}.place(), edited{b}.cues(), edited{b}.elsewhere(), edited{b}.lines())
}

// sooner says how much later or earlier something is, in whole seconds.
func (b edited) sooner(by float64) string {
	way := " later"
	if by < 0 {
		way = " earlier"
	}
	return b.Units.Time(units.Nearest(math.Abs(by), 1)) + way
}

// place tells of a shot that lists lack, or have in another place.
func (b edited) place() []check.Finding {
	cut := b.Cut
	switch {
	case cut.Lists && cut.List == nil:
		if len(cut.Missing) > 0 {
			return nil // told at the statement that names its clip
		}
		detail := "A clip is found by its name or its reel: the shot's ID, maybe with a take behind it. The shot stays where the plan has it."
		if len(cut.Near) > 0 {
			detail += fmt.Sprintf(" %s Write clip %q under the shot if it is one of them.", nearest("The nearest are", cut.Near), cut.Near[0])
		}
		message := fmt.Sprintf("no clip of the cut is called %s", b.Head.ID)
		if !cut.Clips {
			message, detail = "the cut has no clips", "None with a picture could be read. The shot stays where the plan has it."
		}
		return []check.Finding{{Diagnostic: lang.Diagnostic{
			Code: "shot-not-in-edit", Severity: lang.Warning, Range: b.Head.Range(),
			Message: message, Detail: detail,
		}}}
	case cut.List != nil:
		return b.moved()
	case cut.Adrift:
		s, away := b.Settings["begins"], cut.Away(b.Plan.Rate, float64(b.Plan.Begins))
		return []check.Finding{{Diagnostic: lang.Diagnostic{
			Code: "moved-in-edit", Severity: lang.Note, Range: s.Range(),
			Message: fmt.Sprintf("%s has the lines of this shot %s than the plan", cut.Subtitles.Base(), b.sooner(away)),
			Detail: fmt.Sprintf("Check the from of the subtitles, here %s. The lines are counted from the first of them, which is where the plan has it.",
				b.Plan.Rate.Format(cut.Subtitles.Picture)),
			Figures: []lang.Figure{check.Figure("away_s", away)},
			Related: []lang.Related{{Message: "the subtitles", Range: cut.Subtitles.Stmt.Range()}},
		}}}
	}
	return nil
}

// moved tells of a shot that the plan has elsewhere than the list.
func (b edited) moved() []check.Finding {
	s, ok := b.Settings["begins"].(*lang.Begins)
	by := b.Cut.Begin - b.Epoch
	if !ok || by == 0 {
		return nil
	}
	way := "later"
	if by < 0 {
		way, by = "earlier", -by
	}
	return []check.Finding{{Diagnostic: lang.Diagnostic{
		Code: "moved-in-edit", Severity: lang.Note, Range: s.Range(),
		Message: fmt.Sprintf("%s has this shot at %s, %s %s than the plan", b.Cut.List.Base(), b.Plan.BeginsAt, b.Units.Frames(by), way),
		Detail:  "The cut is followed.",
		Figures: []lang.Figure{check.Figure("frames", float64(b.Cut.Begin-b.Epoch))},
		Related: []lang.Related{{Message: "the clip", Range: b.Cut.Events[0].Range}},
	}}}
}

// cues tells of cues that the list of the shot lacks.
func (b edited) cues() (found []check.Finding) {
	if b.Cut.List == nil {
		return nil
	}
	for i, it := range b.Items {
		s, ok := it.Stmt.(*lang.Cue)
		if !ok {
			continue
		}
		if _, ok := b.Cut.Cues[strings.ToLower(s.Name.Text)]; !ok {
			found = append(found, check.Finding{Item: i + 1, Diagnostic: lang.Diagnostic{
				Code: "cue-not-in-edit", Severity: lang.Warning, Range: s.Range(), Time: b.Clock.At[i].StartS,
				Message: fmt.Sprintf("no marker of this shot in %s is called %s", b.Cut.List.Base(), s.Name.Text),
				Detail:  "The cue stays where the plan has it.",
			}})
		}
	}
	return found
}

// elsewhere tells of lines that the subtitles have, but far from the clips
// of the shot: mostly the start of their picture is wrong.
func (b edited) elsewhere() []check.Finding {
	m := b.Cut.Elsewhere
	if m == nil {
		return nil
	}
	away := m.Away(b.Plan.Rate, float64(b.Cut.Begin))
	first := m.Subtitles.Picture + b.Plan.Rate.Frames(m.First.Start())
	return []check.Finding{{Diagnostic: lang.Diagnostic{
		Code: "lines-elsewhere", Severity: lang.Warning, Range: b.Head.Range(),
		Message: fmt.Sprintf("%s has the lines of this shot %s than %s has the shot", m.Subtitles.Base(), b.sooner(away), b.Cut.List.Base()),
		Detail: fmt.Sprintf("The first is at %s, and the shot begins at %s: check the from of the subtitles, here %s. The lines keep the times of the plan.",
			b.Plan.Rate.Format(first), b.Plan.BeginsAt, b.Plan.Rate.Format(m.Subtitles.Picture)),
		Figures: []lang.Figure{check.Figure("away_s", away)},
		Related: []lang.Related{{Message: "the subtitles", Range: m.Subtitles.Stmt.Range()}},
	}}}
}

// lines tells of lines that the subtitles lack, or have in other words.
func (b edited) lines() (found []check.Finding) {
	name := b.Subtitles
	if b.Cut.Subtitles != nil {
		name = b.Cut.Subtitles.Base()
	}
	if name == "" {
		return nil
	}
	keys := cut.KeysOf(b.Clock.Said())
	var away []lang.Related // lines that have gone with their picture
	for i, l := range b.Clock.InOrder {
		d := lang.Diagnostic{Range: l.Stmt.Range(), Time: max(l.Start, 0)}
		switch {
		case len(l.Tokens) == 0: // without a word it cannot be looked for
			continue
		case l.Heard == nil && b.Cut.Elsewhere != nil && b.Cut.Elsewhere.Lines[keys[i]] != nil: // told with the shot
			continue
		case b.Clock.TakenAway(l):
			away = append(away, lang.Related{Message: "this line", Range: l.Stmt.Range()})
			continue
		case l.Heard == nil:
			d.Code, d.Severity = "line-not-in-edit", lang.Warning
			d.Message = fmt.Sprintf("%s does not have this line", name)
			d.Detail = "Its time stays that of the plan."
		case l.Heard.Likeness < 1:
			d.Code, d.Severity = "line-differs", lang.Note
			d.Message = fmt.Sprintf("%s has this line in other words", name)
			d.Detail = fmt.Sprintf("It says: “%s”. Pullscore uses its times anyway.", strings.TrimRight(l.Heard.Text, "."))
			d.Figures = []lang.Figure{check.Figure("likeness", l.Heard.Likeness)}
		default:
			continue
		}
		found = append(found, check.Finding{Item: l.Item + 1, Diagnostic: d})
	}
	if len(away) > 0 {
		found = append(found, b.takenAway(away))
	}
	return found
}

// takenAway tells of lines that have been cut out with their picture.
func (b edited) takenAway(lines []lang.Related) check.Finding {
	message, detail := fmt.Sprintf("%d lines were cut out with their picture", len(lines)), "Their times are those of the plan."
	if len(lines) == 1 {
		message, detail = "1 line was cut out with its picture", "Its time is that of the plan."
	}
	return check.Finding{Diagnostic: lang.Diagnostic{
		Code: "line-not-in-edit", Severity: lang.Note, Range: b.Head.Range(), Message: message,
		Detail:  detail,
		Figures: []lang.Figure{check.Figure("lines", float64(len(lines)))},
		Related: lines,
	}}
}
