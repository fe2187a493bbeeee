// Who is out of the picture of a camera that turns or leaves its axis, and by how much,
// for out-of-frame.

package rig

import (
	"fmt"
	"math"

	"pullscore/interp/checks/check"
	"pullscore/interp/plan"
	"pullscore/interp/stage"
	"pullscore/lang"
)

// Outside tells of a subject of a goal that is out of the picture at t with the focus at
// x metres from the lens; out is false where it is in the picture.
func Outside(b *check.Shot, u *stage.Subject, g *stage.Goal, x, t float64) (f check.Finding, out bool) {
	v := b.Plan.ViewOf(u.Subject, t)
	side, up := b.Plan.Reach(b.Plan.FromTape(v.Along, t), x, t)
	behind := v.Along <= 4*b.Plan.FocalTo(x, t)
	if math.IsNaN(side) && !behind || b.Plan.Place(v, x, t) != plan.OutOfFrame { // that no image forms is told elsewhere
		return f, false
	}
	where, figures := "", []lang.Figure(nil)
	switch {
	case behind:
		where = b.Units.Angle(v.OffAxis()) + " off the way that the lens looks"
		figures = []lang.Figure{check.Figure("off_axis_deg", v.OffAxis())}
	case math.Abs(v.Above)/up > math.Abs(v.Across)/side:
		where = fmt.Sprintf("%s %s the middle at %s, and the lens sees %s up and down there",
			b.Units.Gap(math.Abs(v.Above)), word(v.Above, "below", "above"), b.Units.Tape(v.Along), b.Units.Gap(up))
		figures = []lang.Figure{check.Figure("above_m", v.Above), check.Figure("sees_m", up)}
	default:
		where = fmt.Sprintf("%s %s at %s, and the lens sees %s to each side there",
			b.Units.Gap(math.Abs(v.Across)), word(v.Across, "left", "right"), b.Units.Tape(v.Along), b.Units.Gap(side))
		figures = []lang.Figure{check.Figure("side_m", v.Across), check.Figure("sees_m", side)}
	}
	return check.Finding{Who: u.Name, Diagnostic: lang.Diagnostic{
		Code: "out-of-frame", Severity: lang.Warning, Range: g.At, Time: t,
		Message: fmt.Sprintf("%s is out of the frame: %s", u.Name, where), Figures: figures,
		Related: []lang.Related{{Message: "where " + u.Name + " stands", Range: u.Decl.Stmt.Range()}},
	}}, true
}

// word returns one word for what is below 0 and another for the rest.
func word(v float64, below, above string) string {
	if v < 0 {
		return below
	}
	return above
}
