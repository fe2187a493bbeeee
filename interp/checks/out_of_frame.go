// out-of-frame: the focus goes to somebody whom the lens does not see.

package checks

import (
	"fmt"
	"math"

	"pullscore/interp/change"
	"pullscore/interp/inwords"
	"pullscore/interp/shot"
	"pullscore/interp/stage"
	"pullscore/lang"
	"pullscore/optics"
)

// checkOutOfFrame tells, once of each subject, that the focus goes to it and it
// stands outside the frame. The camera looks straight ahead, since a plan says
// nothing of pans; and a subject is the point that its place says, so that one
// told of may still show in part. One whose side nobody has given stands in the
// middle and is always seen.
func checkOutOfFrame(b Run) {
	told := map[*stage.Subject]bool{}
	look := func(g *stage.Goal, x, t float64, tell func(shot.Finding)) {
		for _, u := range g.Members() {
			if told[u] || !u.Ok {
				continue
			}
			if reach := b.sees(u, x, t); math.Abs(u.Across.At(t)) > reach*(1+1e-9) {
				told[u] = true
				tell(b.outOfFrame(u, g, reach, t))
			}
		}
	}
	if b.Start.Ok {
		look(&b.Start, b.LensDistance(&b.Start, 0), 0, b.Tell)
	}
	for _, p := range b.Pulls {
		if !b.OutOfReach(p) {
			look(&p.Aim, p.ToLens, p.LandS, func(f shot.Finding) {
				f.Range = lang.Range{} // the pull's
				b.tellPull(p, f)
			})
		}
	}
}

// sees is how far to either side the lens sees at the distance of a subject, in
// metres, with the focus at x from the lens at t. It is NaN where the lens forms
// no image.
func (b Run) sees(u *stage.Subject, x, t float64) float64 {
	angle := optics.FieldOfView(b.Shot.Optics.SensorW, b.Shot.Focal(t), x)
	if !(angle > 0) {
		return math.NaN()
	}
	return b.Shot.LensDistanceAt(u.Subject, t) * math.Tan(angle/2*math.Pi/180)
}

func (b Run) outOfFrame(u *stage.Subject, g *stage.Goal, reach, t float64) shot.Finding {
	side, d := u.Across.At(t), b.Shot.DistanceAt(u.Subject, t)
	return shot.Finding{Diagnostic: lang.Diagnostic{
		Code: "out-of-frame", Severity: lang.Warning, Range: g.At, Time: t,
		Message: fmt.Sprintf("%s is out of the frame: %s %s at %s, and the lens sees %s to each side there", u.Name, inwords.Metres(math.Abs(side)), sideOf(side), inwords.Metres(d), inwords.Metres(reach)),
		Detail:  "The camera is taken to look straight ahead.",
		Figures: []lang.Figure{shot.Figure("side_m", side), shot.Figure("sees_m", reach)},
		Related: []lang.Related{{Message: "where " + u.Name + " stands", Range: u.Decl.Stmt.Range()}},
	}, Tries: func() []change.Change { return b.sideTry(u, reach, t) }}
}

func sideOf(side float64) string {
	if side < 0 {
		return "left"
	}
	return "right"
}

// sideTry offers the farthest whole centimetre to the side at which a subject
// is in the frame, where its own statement says the side as a length. It
// offers nothing where that side has no such place, as when somebody else's side
// already is too far.
func (b Run) sideTry(u *stage.Subject, reach, t float64) []change.Change {
	stmt := u.Decl.Stmt.(*lang.Subject)
	if stmt.Place.Side == nil || u.SlantDeg != 0 {
		return nil
	}
	side := u.Across.At(t)
	own := u.FirstAcross.V - side + math.Copysign(reach, side) // what its statement may say
	own = math.Copysign(math.Floor(math.Abs(own)*100+1e-9)/100, own)
	if own == 0 || own*u.FirstAcross.V < 0 || math.Abs(own) > math.Abs(u.FirstAcross.V) {
		return nil
	}
	return []change.Change{edited(change.Edit{Kind: change.Side, Who: u.Name, Metres: own})}
}
