// out-of-frame: the focus goes to somebody whom the lens does not see.

package checks

import (
	"fmt"
	"math"

	"pullscore/interp/checks/check"
	"pullscore/interp/checks/rig"

	"pullscore/interp/change"
	"pullscore/interp/stage"
	"pullscore/interp/units"
	"pullscore/lang"
	"pullscore/lang/rule"
)

var outOfFrame = Check{Codes: []rule.Code{rule.OutOfFrame}, Run: standsOutside}

// standsOutside tells, once of each subject, that the focus goes to it and it
// stands outside the frame. The camera looks straight ahead where the plan says
// nothing of pans and tilts; and a subject is the point that its place says, so that
// one told of may still show in part. One whose side nobody has given stands straight
// ahead of the camera at the start.
func standsOutside(b *Shot) (found []Finding) {
	told := map[*stage.Subject]bool{}
	look := func(g *stage.Goal, x, t float64) (fresh []Finding) {
		for _, u := range g.Members() {
			if told[u] || !u.Ok {
				continue
			}
			if b.Plan.Optics.Rig != nil {
				if f, out := rig.Outside(&b.Shot, u, g, x, t); out {
					told[u] = true
					fresh = append(fresh, f)
				}
				continue
			}
			if reach := b.sees(u, x, t); math.Abs(b.Plan.SideAt(u.Subject, t)) > reach*(1+1e-9) {
				told[u] = true
				fresh = append(fresh, b.unseen(u, g, reach, t))
			}
		}
		return fresh
	}
	if b.Start.Ok {
		found = append(found, look(&b.Start, b.LensDistance(&b.Start, 0), 0)...)
	}
	for _, p := range b.Pulls {
		if b.OutOfReach(p) {
			continue
		}
		for _, f := range look(&p.Rack.Aim, p.Plan.ToLens, p.Rack.LandS) {
			f.Range = lang.Range{} // the pull's
			found = append(found, b.About(p, f))
		}
	}
	return found
}

// sees is how far to either side the lens sees at the distance of a subject, in
// metres, with the focus at x from the lens at t. It is NaN where the lens forms
// no image.
func (b *Shot) sees(u *stage.Subject, x, t float64) float64 {
	side, _ := b.Plan.Reach(b.Plan.LensDistanceAt(u.Subject, t), x, t)
	return side
}

func (b *Shot) unseen(u *stage.Subject, g *stage.Goal, reach, t float64) Finding {
	side, d := b.Plan.SideAt(u.Subject, t), b.Plan.DistanceAt(u.Subject, t)
	return Finding{Who: u.Name, Diagnostic: lang.Diagnostic{
		Code: "out-of-frame", Severity: lang.Warning, Range: g.At, Time: t,
		Message: fmt.Sprintf("%s is out of the frame: %s %s at %s, and the lens sees %s to each side there", u.Name, b.Units.Gap(math.Abs(side)), sideOf(side), b.Units.Tape(d), b.Units.Gap(reach)),
		Detail:  "Pullscore assumes that the camera looks straight ahead.",
		Figures: []lang.Figure{check.Figure("side_m", side), check.Figure("sees_m", reach)},
		Related: []lang.Related{{Message: "where " + u.Name + " stands", Range: u.Decl.Stmt.Range()}},
	}, Tries: func() []change.Change { return b.sideTry(u, reach, t) }}
}

// atMost returns the longest length, in metres, that is not over another and is
// written to the bit: in the steps of the tape.
func (b *Shot) atMost(m float64) float64 {
	const inch = 0.0254
	switch in := m / inch; {
	case b.Units.System == units.Imperial && in < 120:
		return units.Down(in, 4) * inch
	case b.Units.System == units.Imperial && in < 1200:
		return units.Down(in, 1) * inch
	case b.Units.System == units.Imperial:
		return units.Down(in/12, 1) * 12 * inch
	case m < 10:
		return units.Down(m, 100)
	case m < 100:
		return units.Down(m, 10)
	}
	return units.Down(m, 1)
}

// sideTry offers the farthest place to the side that can be written, at which a
// subject is in the frame, where its own statement says the side as a length. It
// offers nothing where that side has no such place, as when somebody else's side
// already is too far.
func (b *Shot) sideTry(u *stage.Subject, reach, t float64) []change.Change {
	stmt := u.Decl.Stmt.(*lang.Subject)
	if stmt.Place.Side == nil || u.SlantDeg != 0 {
		return nil
	}
	side := b.Plan.SideAt(u.Subject, t)
	own := u.FirstAcross.V - side + math.Copysign(reach, side) // what its statement may say
	own = math.Copysign(b.atMost(math.Abs(own)), own)
	if own == 0 || own*u.FirstAcross.V < 0 || math.Abs(own) > math.Abs(u.FirstAcross.V) {
		return nil
	}
	return []change.Change{check.Edited(change.Edit{Kind: change.Side, Who: u.Name, Metres: own})}
}
