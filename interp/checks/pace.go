// jarring, nothing-sharp, restless: the pace of a shot. A rack may be too quick
// for what it changes, so slow that nothing is sharp, or one of too many.

package checks

import (
	"fmt"
	"math"
	"slices"

	"pullscore/interp/checks/check"

	"pullscore/interp/change"
	"pullscore/interp/shot"
	"pullscore/interp/stage"
	"pullscore/interp/units"
	"pullscore/interp/viewer"
	"pullscore/lang"
	"pullscore/lang/rule"
)

// changeOf returns how much blur a rack brings or takes away, arc minutes: that
// of the one left, once it has landed, or that of the one reached, before it has
// set out, whichever is more. Where neither is known, it is a whole one.
func (b *Shot) changeOf(p *shot.Pull) float64 {
	most := math.Inf(-1)
	for _, blur := range []float64{float64(p.Plan.LeftBlur), b.Plan.Blur(p.Plan.ToLens, p.Plan.FromLens, p.Rack.StartS)} {
		if !math.IsNaN(blur) && !math.IsInf(blur, 0) { // of a place that the lens cannot focus on
			most = max(most, blur)
		}
	}
	if math.IsInf(most, -1) {
		return viewer.WholeChange
	}
	return most
}

var jarring = Check{Codes: []rule.Code{rule.Jarring}, Run: jars}

// jars tells of racks that are too quick for what they change. What the plan says
// of `quickest` is the most that is wanted of any rack; the default is that of a
// whole change, and a larger one wants more.
func jars(b *Shot) (found []Finding) {
	b.Racks(func(p *shot.Pull) {
		at := b.Plan.Speed()
		t, quickest, blur := at.Screen(p.Rack.LandS-p.Rack.StartS), b.Setup.View.Quickest, b.changeOf(p)
		wanted := quickest * viewer.Wants(blur)
		if b.Setup.View.QuickestSaid {
			wanted = min(wanted, quickest)
		}
		if t >= wanted-1e-9 || t < 0 {
			return
		}
		message := fmt.Sprintf("%s takes %s%s; a change of %s wants %s", b.Racked(p), b.Units.Time(t), b.OnScreen(), b.Units.Blur(blur), b.Units.Time(units.Up(wanted, 100)))
		if wanted == quickest && b.Setup.View.QuickestSaid {
			message = fmt.Sprintf("%s takes %s%s; you asked for at least %s", b.Racked(p), b.Units.Time(t), b.OnScreen(), b.Units.Time(quickest))
		}
		found = append(found, b.About(p, Finding{Diagnostic: lang.Diagnostic{
			Code: "jarring", Severity: lang.Warning, Message: message,
			Figures: []lang.Figure{check.Figure("time_s", t), check.Figure("quickest_s", quickest), check.Figure("wanted_s", wanted), check.Figure("change_arcmin", blur)},
		}, Tries: func() []change.Change { return b.OverTry(p, units.Up(at.Set(wanted), 10)) }}))
	})
	return found
}

// stillSoft is how much of the longest time without anything sharp a cure leaves.
const stillSoft = 0.95

var lingers = Check{Codes: []rule.Code{rule.NothingSharp}, Run: leavesNothingSharp}

// leavesNothingSharp tells of racks in which nothing looks sharp for over a
// second.
func leavesNothingSharp(b *Shot) (found []Finding) {
	b.Racks(func(p *shot.Pull) {
		at := b.Plan.Speed()
		long := at.Screen(p.Rack.LandS - p.Rack.StartS)
		before := b.GoalBefore(p)
		if !(long > viewer.LongestSoft) || p.Rack.Aim.Soft() || p.Plan.Stays || b.OutOfReach(p) || b.TooNear(before, p.Rack.StartS) {
			return
		}
		from, to := viewer.Softest(at.Screen(p.Rack.StartS), at.Screen(p.Rack.LandS), func(t float64) bool { return b.anySharp(p, at.Set(t)) })
		if to == from {
			return
		}
		found = append(found, b.About(p, Finding{Diagnostic: lang.Diagnostic{
			Code: "nothing-sharp", Severity: lang.Note, Time: at.Set(from),
			Message: fmt.Sprintf("nothing looks sharp for %s of this rack: %s takes %s%s", b.Units.Time(to-from), b.Racked(p), b.Units.Time(long), b.OnScreen()),
			Figures: []lang.Figure{check.Figure("soft_s", to-from), check.Figure("time_s", long)},
		}, Tries: func() []change.Change {
			faster := units.Down(at.Set(long)*stillSoft*viewer.LongestSoft/(to-from), 10)
			if p.Plan.Chance.Known() && !(faster >= float64(p.Plan.Needed)) {
				return nil // it would land less often than wanted, as it may now
			}
			return b.OverTry(p, faster)
		}}))
	})
	return found
}

// anySharp tells whether somebody looks sharp at t, within a rack, or the place
// that it left or goes to.
func (b *Shot) anySharp(p *shot.Pull, t float64) bool {
	x := b.Plan.FocusAt(t)
	from := viewer.SeenFrom(b.Plan.Diffraction(x, t))
	looks := func(d float64) bool { return !(b.Plan.Blur(d, x, t) > from) } // what is not known is no fault
	for _, g := range []*stage.Goal{b.GoalBefore(p), &p.Rack.Aim} {
		if near, far := b.Extent(g, t); looks(near) || looks(far) || near < x && x < far {
			return true
		}
	}
	for _, u := range b.Plan.Subjects {
		if looks(b.Plan.LensDistanceAt(u, t)) {
			return true
		}
	}
	return false
}

var restless = Check{Codes: []rule.Code{rule.Restless}, Run: goesToAndFro}

// goesToAndFro tells of a shot whose focus goes to and fro. A follow belongs to
// the rest on the one whom it follows.
func goesToAndFro(b *Shot) []Finding {
	var racks []*shot.Pull
	b.Racks(func(p *shot.Pull) {
		if !p.Plan.Stays {
			racks = append(racks, p)
		}
	})
	at := b.Plan.Speed()
	rests, landed := make([]float64, 0, len(racks)+1), 0.0
	for _, p := range racks {
		rests, landed = append(rests, at.Screen(p.Rack.StartS-landed)), p.Rack.LandS
	}
	rests = append(rests, at.Screen(float64(b.Plan.Duration)-landed))
	pace := viewer.PaceOf(rests, func(i, left int) bool {
		return b.samePlace(b.GoalBefore(racks[left]), &racks[i].Rack.Aim, racks[i].Rack.LandS)
	})
	if !pace.Restless() {
		return nil
	}
	longer := "no longer rest"
	if pace.Rests > 0 {
		longer = units.Count(pace.Rests, "longer rest")
	}
	return []Finding{b.About(racks[pace.First], Finding{Diagnostic: lang.Diagnostic{
		Code: "restless", Severity: lang.Note,
		Message: fmt.Sprintf("the focus goes to and fro: it goes back %d times after rests under %s%s, and has %s", pace.Returns, b.Units.Time(viewer.ShortRest), b.OnScreen(), longer),
		Detail:  "Common practice, no source. Rest longer where it matters, or leave racks out.",
		Figures: []lang.Figure{check.Figure("returns", float64(pace.Returns)), check.Figure("long_rests", float64(pace.Rests)), check.Figure("short_rest_s", viewer.ShortRest)},
	}})}
}

// samePlace tells whether two goals are one: the same people, or the same
// distance to a hundredth.
func (b *Shot) samePlace(one, other *stage.Goal, t float64) bool {
	a, c := one.Members(), other.Members()
	if len(a) > 0 || len(c) > 0 {
		return slices.Equal(a, c)
	}
	d, e := b.Tape(one, t), b.Tape(other, t)
	return d == e || math.Abs(d-e) <= 0.01*d
}
