// What a plan holds of the times: lines, cues, actions and pauses.

package clock

import (
	"pullscore/interp/names"
	"pullscore/interp/plan"
	"pullscore/lang"
)

// Finish writes lines, cues, actions, pauses and holds into a shot.
func (c *Clock) Finish(sh *plan.Shot) {
	for i, it := range c.items {
		m := c.At[i]
		if !m.Known {
			continue
		}
		start, end := plan.Number(m.StartS), plan.Number(m.EndS)
		switch s := it.Stmt.(type) {
		case *lang.Speech:
			l := c.Lines[i]
			l.Listed = len(sh.Lines)
			sh.Lines = append(sh.Lines, plan.Line{
				Who: l.Who, Text: names.ValueOf(s.Words), Start: start, End: end,
				Estimated: s.Lasting == nil && s.To == nil && l.Heard == nil, Words: l.Drawn(),
				InCut: sh.InCut(m.StartS, m.EndS, c.CutOut(l)),
				Off:   s.Off, To: c.whom(it.In, s.Whom),
			})
		case *lang.Cue:
			sh.Cues = append(sh.Cues, plan.Cue{Name: s.Name.Text, T: start, InCut: sh.InCut(m.StartS, m.StartS, c.ItemCutOut(i))})
		case *lang.Action:
			sh.Actions = append(sh.Actions, plan.Action{Text: names.ValueOf(s.What), Start: start, End: end})
		case *lang.Pause:
			sh.Pauses = append(sh.Pauses, plan.Pause{Start: start, End: end})
		case *lang.Hold:
			if long, ok := it.In.NotNegative(s.Time, names.DimTime); ok && long > 0 {
				sh.Held = append(sh.Held, plan.Pause{Start: start, End: start + plan.Number(long)})
			}
		}
	}
}

// whom returns to whom a line is said; empty where that is not said.
func (c *Clock) whom(in names.Reader, n *lang.Name) string {
	if n == nil {
		return ""
	}
	d, ok := in.Who(n, names.DeclSubject, names.DeclVoice)
	if !ok {
		return ""
	}
	return d.Name.Text
}
