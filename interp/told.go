// What is told of a shot: findings with what may cure them, and what more
// than one check asks of it.

package interp

import (
	"fmt"
	"math"
	"slices"

	"pullscore/lang"
	"pullscore/optics"
)

// A finding is a diagnostic of a shot, with the changes that may cure it.
type finding struct {
	lang.Diagnostic
	item  int // the statement that it is about, from 1; 0: the shot
	tries func() []try
}

// A try is a change, as a cure words it.
type try struct {
	lang.Cure
	change
}

// tell notes a finding about the shot.
func (b *builder) tell(f finding) {
	f.Shot = b.head.ID
	f.Figures = slices.DeleteFunc(f.Figures, func(g lang.Figure) bool { return math.IsInf(g.Value, 0) || math.IsNaN(g.Value) })
	b.found = append(b.found, f)
}

// A fault is an error by its place, to tell old ones from new.
type fault struct {
	code string
	at   lang.Range
}

// faults are what cannot be done in the shot.
func (b *builder) faults() map[fault]bool {
	set := map[fault]bool{}
	for _, d := range b.diags {
		if d.Severity == lang.Error {
			set[fault{d.Code, d.Range}] = true
		}
	}
	for _, f := range b.found {
		if f.Severity == lang.Error {
			set[fault{f.Code, f.Range}] = true
		}
	}
	return set
}

// racks calls f for every rack in the order of time.
func (b *builder) racks(f func(*pull)) {
	for _, p := range b.pulls {
		if !p.follow {
			f(p)
		}
	}
}

func figure(name string, v float64) lang.Figure { return lang.Figure{Name: name, Value: v} }

// idleHold notes a hold that moves nothing: it counts from the landing, and
// people write it meaning "and so long from here".
func (b *builder) idleHold(s *lang.Hold, landed, long, now float64) {
	b.tell(finding{Diagnostic: lang.Diagnostic{
		Code: "no-effect", Severity: lang.Note, Range: s.Range(), Time: now,
		Message: fmt.Sprintf("this hold changes nothing: it counts from the landing at %s, and the clock stands at %s already", seconds(landed), seconds(now)),
		Detail:  "For a time from here, write a pause.",
		Figures: []lang.Figure{figure("landed_s", landed), figure("hold_s", long), figure("clock_s", now)},
	}})
}

// tooNear tells whether a goal at t is nearer than the lens focuses.
func (b *builder) tooNear(g *goal, t float64) bool {
	tape := b.nearest(g, t)
	if b.shot.Optics.FromLens && tape <= b.shot.Focal(t) {
		return true
	}
	return b.fromSensor(tape, t) < b.set.lens.closest*(1-1e-6)
}

// outOfReach tells whether nothing can be computed of a rack because of where
// it goes.
func (b *builder) outOfReach(p *pull) bool {
	return math.IsNaN(p.ToLens) || b.tooNear(&p.goal, p.land)
}

// fromSensor turns a tape reading into a distance from the sensor.
func (b *builder) fromSensor(tape, t float64) float64 {
	if b.shot.Optics.FromLens && tape > b.shot.Focal(t) {
		return optics.ToSensor(tape, b.shot.Focal(t))
	}
	return tape
}

// nearest is how near a goal comes, as the tape reads it: of a split, its
// nearest subject.
func (b *builder) nearest(g *goal, t float64) float64 {
	if g.split == nil {
		return b.tape(g, t)
	}
	near := math.Inf(1)
	for _, u := range g.split {
		near = min(near, b.shot.DistanceAt(u.Subject, t))
	}
	return near
}

// staysOn tells whether a rack stays with the one that the focus is on: a
// correction, not meant to be seen.
func (b *builder) staysOn(p *pull) bool {
	return slices.ContainsFunc(p.goal.members(), func(u *subject) bool {
		return slices.Contains(b.goalBefore(p).members(), u)
	})
}
