// out-of-frame: the focus goes to somebody whom the lens does not see.

package interp

import (
	"fmt"
	"math"

	"pullscore/interp/plan"
	"pullscore/lang"
	"pullscore/optics"
)

// checkOutOfFrame tells, once of each subject, that the focus goes to it and it
// stands outside the frame. The camera looks straight ahead, since a plan says
// nothing of pans; and a subject is the point that its place says, so that one
// told of may still show in part. One whose side nobody has given stands in the
// middle and is always seen.
func checkOutOfFrame(b run) {
	told := map[*subject]bool{}
	look := func(g *goal, x, t float64, tell func(finding)) {
		for _, u := range g.members() {
			if told[u] || !u.ok {
				continue
			}
			if reach := b.sees(u, x, t); math.Abs(u.Across.At(t)) > reach*(1+1e-9) {
				told[u] = true
				tell(b.outOfFrame(u, g, reach, t))
			}
		}
	}
	if b.start.ok {
		look(&b.start, b.lensDistance(&b.start, 0), 0, b.tell)
	}
	for _, p := range b.pulls {
		if !b.outOfReach(p) {
			look(&p.goal, p.ToLens, p.land, func(f finding) {
				f.Range = lang.Range{} // the pull's
				b.tellPull(p, f)
			})
		}
	}
}

// sees is how far to either side the lens sees at the distance of a subject, in
// metres, with the focus at x from the lens at t. It is NaN where the lens forms
// no image.
func (b run) sees(u *subject, x, t float64) float64 {
	angle := optics.FieldOfView(b.shot.Optics.SensorW, b.shot.Focal(t), x)
	if !(angle > 0) {
		return math.NaN()
	}
	return b.shot.LensDistanceAt(u.Subject, t) * math.Tan(angle/2*math.Pi/180)
}

func (b run) outOfFrame(u *subject, g *goal, reach, t float64) finding {
	side, d := u.Across.At(t), b.shot.DistanceAt(u.Subject, t)
	return finding{Diagnostic: lang.Diagnostic{
		Code: "out-of-frame", Severity: lang.Warning, Range: g.at, Time: t,
		Message: fmt.Sprintf("%s is out of the frame: %s %s at %s, and the lens sees %s to each side there", u.Name, metres(math.Abs(side)), sideOf(side), metres(d), metres(reach)),
		Detail:  "The camera is taken to look straight ahead.",
		Figures: []lang.Figure{figure("side_m", side), figure("sees_m", reach)},
		Related: []lang.Related{{Message: "where " + u.Name + " stands", Range: u.decl.stmt.Range()}},
	}, tries: func() []try { return b.sideTry(u, reach, t) }}
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
func (b run) sideTry(u *subject, reach, t float64) []try {
	stmt := u.decl.stmt.(*lang.Subject)
	if stmt.Place.Side == nil || u.SlantDeg != 0 {
		return nil
	}
	side := u.Across.At(t)
	own := u.across.v - side + math.Copysign(reach, side) // what its statement may say
	own = math.Copysign(math.Floor(math.Abs(own)*100+1e-9)/100, own)
	if own == 0 || own*u.across.v < 0 || math.Abs(own) > math.Abs(u.across.v) {
		return nil
	}
	text := fmt.Sprintf("%s %s cm %s", lang.WriteName(u.Name), plan.Decimal(math.Abs(own)*100, 0), sideOf(own))
	return []try{{lang.Cure{Text: text, Value: own, Unit: "m"}, change{Subject: u.Name, Side: own}}}
}
