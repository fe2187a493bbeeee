// Rests: how often somebody is sharp while the focus stands on them.
//
// A hand that has landed on the mark is judged as a landing. What is left then is
// that the subject sways, and the camera does where somebody holds it, in a zone
// that may be a few millimetres deep. So a rest takes the focus as exactly on the
// mark, and a miss is not counted twice.

package built

import (
	"math"
	"slices"

	"pullscore/interp/hand"
	"pullscore/interp/plan"
	"pullscore/interp/stage"
)

// shortestRest is the shortest rest that is judged, seconds: about as long as the eye
// needs to jump to somebody and to see them (viewer.EyeNeeds), on the screen.
const shortestRest = 0.53

// A Rest is a time in which the focus stands on somebody.
type Rest struct {
	Plan     plan.Rest
	Goal     *stage.Goal
	Who      *stage.Subject // the worst of those that it is on
	From, To float64
	After    *Pull // what it comes after; nil: the shot's start
	Sway     float64
}

// rests returns the rests of the shot, in the order of time.
func (b *Shot) rests() (list []Rest) {
	end := float64(b.Plan.Duration)
	keys := Keys{}
	for i := -1; i < len(b.Pulls); i++ {
		r := Rest{Goal: &b.Start, To: end}
		if i >= 0 {
			r.After = b.Pulls[i]
			r.Goal, r.From = &r.After.Rack.Aim, r.After.Rack.LandS
		}
		if i+1 < len(b.Pulls) {
			r.To = b.Pulls[i+1].Rack.StartS
		}
		if !r.Goal.Ok || r.Goal.Soft() || len(r.Goal.Members()) == 0 || b.Plan.Speed().Screen(r.To-r.From) < shortestRest {
			continue
		}
		if r.After != nil && (r.After.Rack.Failed || b.OutOfReach(r.After)) || math.IsNaN(b.LensDistance(r.Goal, r.From)) {
			continue
		}
		if b.judge(&r, keys) {
			list = append(list, r)
		}
	}
	return list
}

// judge fills in a rest; false where nothing can be computed.
func (b *Shot) judge(r *Rest, keys Keys) bool {
	share, stays := 2.0, 2.0
	for _, u := range r.Goal.Members() {
		sway := math.Hypot(swayOfSubject(u), b.supportSway())
		zone, f := b.zoneOf(r, u, b.Turns(u, r.From, r.To, keys), sway)
		if math.IsNaN(zone[0]) || math.IsNaN(zone[1]) {
			return false
		}
		stays = min(stays, hand.Stays(zone[0], zone[1], sway, r.To-r.From))
		if f < share {
			share, r.Who, r.Sway = f, u, sway
			r.Plan = plan.Rest{
				Subject: u.Name, Start: plan.Number(r.From), End: plan.Number(r.To), Share: plan.Number(f),
				Sway: plan.Number(sway), Zone: plan.Interval{plan.Number(zone[0]), plan.Number(zone[1])},
			}
		}
	}
	r.Plan.Stays = plan.Number(stays)
	return true
}

// restSteps is at how many moments a second a rest is looked at while something
// moves, and restMost at how many between two turns at most.
const restSteps, restMost = 24, 2000

// zoneOf returns the narrowest zone in which somebody is sharp during a rest, metres
// from where they stand, and in what share of the time they are in theirs: of one
// who moves within the rest the mean over the time.
func (b *Shot) zoneOf(r *Rest, u *stage.Subject, turns []float64, sway float64) (zone [2]float64, share float64) {
	zone = [2]float64{math.Inf(-1), math.Inf(1)}
	at := func(t float64) float64 {
		x, d := b.RestingAt(r.Goal, r.From, t), b.Plan.LensDistanceAt(u.Subject, t)
		set := b.Plan.Judged(x, t)
		near, far := set.Near(x)-d, set.Far(x)-d
		zone[0], zone[1] = max(zone[0], near), min(zone[1], far)
		return hand.Within(near, far, sway, 0)
	}
	before := at(turns[0])
	for i, end := range turns[1:] {
		from := turns[i]
		steps := b.Steps(u, from, end, restSteps, restMost)
		for k := 1; k <= steps; k++ {
			now := at(from + (end-from)*float64(k)/float64(steps))
			share += (before + now) / 2 * (end - from) / float64(steps)
			before = now
		}
	}
	return zone, min(share/(r.To-r.From), 1)
}

// Keys holds when a subject, the camera or the zoom starts or stops, for those
// that have been asked for.
type Keys map[*stage.Subject][]float64

// Turns returns two times and those between them at which the distance of a subject,
// or the lens, starts or stops changing.
func (b *Shot) Turns(u *stage.Subject, from, to float64, keys Keys) []float64 {
	times, ok := keys[u]
	if !ok {
		o := &b.Plan.Optics
		times = append(append(u.Along.Keys(), o.Keys()...), o.Focal.Keys()...)
		if o.Rig != nil {
			times = append(times, u.Across.Keys()...)
		}
		times = plan.Sorted(times)
		keys[u] = times
	}
	first, _ := slices.BinarySearch(times, from)
	last, _ := slices.BinarySearch(times, to)
	return append(append([]float64{from}, times[first:last]...), to)
}

// Steps returns in how many steps the time between two turns is looked at: one where
// the distance of a subject and the lens stay as they are, else so many a second, and
// so many at most.
func (b *Shot) Steps(u *stage.Subject, from, to, each, most float64) int {
	mid := (from + to) / 2
	if b.Plan.Optics.Stirs(from, to) { // which may bring them back to where they were
		return int(min(math.Ceil((to-from)*each), most))
	}
	d, f := b.Plan.DistanceAt(u.Subject, from), b.Plan.Focal(from)
	if d != b.Plan.DistanceAt(u.Subject, to) || d != b.Plan.DistanceAt(u.Subject, mid) || f != b.Plan.Focal(to) || f != b.Plan.Focal(mid) {
		return int(min(math.Ceil((to-from)*each), most))
	}
	return 1
}

// RestingAt is the focus, from the lens at t, that was set on a goal earlier.
func (b *Shot) RestingAt(g *stage.Goal, set, t float64) float64 {
	return b.Plan.Carried(b.LensDistance(g, set), set, t)
}

// JudgeAgain returns the figures of a rest in this shot, as it is or at another stop.
func (b *Shot) JudgeAgain(r Rest) plan.Rest {
	b.judge(&r, Keys{})
	return r.Plan
}
