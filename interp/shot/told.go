// What is told of a shot: findings with what may cure them, and what more
// than one check asks of it.

package shot

import (
	"fmt"
	"math"
	"slices"

	"pullscore/interp/change"
	"pullscore/interp/clock"
	"pullscore/interp/inwords"
	"pullscore/interp/stage"
	"pullscore/lang"
	"pullscore/optics"
)

// A Finding is a diagnostic of a shot, with the changes that may cure it.
type Finding struct {
	lang.Diagnostic
	Item  int // the statement that it is about, from 1; 0: the shot
	Tries func() []change.Change
}

// Tell notes a finding about the shot.
func (b *Builder) Tell(f Finding) {
	f.Shot = b.Head.ID
	f.Figures = slices.DeleteFunc(f.Figures, func(g lang.Figure) bool { return math.IsInf(g.Value, 0) || math.IsNaN(g.Value) })
	b.Found = append(b.Found, f)
}

// A Fault is an error by its place, to tell old ones from new.
type Fault struct {
	Code string
	At   lang.Range
}

// Faults are what cannot be done in the shot.
func (b *Builder) Faults() map[Fault]bool {
	set := map[Fault]bool{}
	for _, d := range b.Diags {
		if d.Severity == lang.Error {
			set[Fault{d.Code, d.Range}] = true
		}
	}
	for _, f := range b.Found {
		if f.Severity == lang.Error {
			set[Fault{f.Code, f.Range}] = true
		}
	}
	return set
}

// Racks calls f for every rack in the order of time.
func (b *Builder) Racks(f func(*clock.Pull)) {
	for _, p := range b.Pulls {
		if !p.Follow {
			f(p)
		}
	}
}

// Figure is a number behind a finding.
func Figure(name string, v float64) lang.Figure { return lang.Figure{Name: name, Value: v} }

// idleHold notes a hold that moves nothing: it counts from the landing, and
// people write it meaning "and so long from here".
func (b *Builder) idleHold(s *lang.Hold, landed, long, now float64) {
	b.Tell(Finding{Diagnostic: lang.Diagnostic{
		Code: "no-effect", Severity: lang.Note, Range: s.Range(), Time: now,
		Message: fmt.Sprintf("this hold changes nothing: it counts from the landing at %s, and the clock stands at %s already", inwords.Seconds(landed), inwords.Seconds(now)),
		Detail:  "For a time from here, write a pause.",
		Figures: []lang.Figure{Figure("landed_s", landed), Figure("hold_s", long), Figure("clock_s", now)},
	}})
}

// TooNear tells whether a goal at t is nearer than the lens focuses.
func (b *Builder) TooNear(g *stage.Goal, t float64) bool {
	tape := b.Nearest(g, t)
	if b.Shot.Optics.FromLens && tape <= b.Shot.Focal(t) {
		return true
	}
	return b.FromSensor(tape, t) < b.Set.Lens.Closest*(1-1e-6)
}

// OutOfReach tells whether nothing can be computed of a rack because of where
// it goes.
func (b *Builder) OutOfReach(p *clock.Pull) bool {
	return math.IsNaN(p.ToLens) || b.TooNear(&p.Aim, p.LandS)
}

// FromSensor turns a tape reading into a distance from the sensor.
func (b *Builder) FromSensor(tape, t float64) float64 {
	if b.Shot.Optics.FromLens && tape > b.Shot.Focal(t) {
		return optics.ToSensor(tape, b.Shot.Focal(t))
	}
	return tape
}

// Nearest is how near a goal comes, as the tape reads it: of a split, its
// nearest subject.
func (b *Builder) Nearest(g *stage.Goal, t float64) float64 {
	if g.Split == nil {
		return b.Tape(g, t)
	}
	near := math.Inf(1)
	for _, u := range g.Split {
		near = min(near, b.Shot.DistanceAt(u.Subject, t))
	}
	return near
}

// StaysOn tells whether a rack stays with the one that the focus is on: a
// correction, not meant to be seen.
func (b *Builder) StaysOn(p *clock.Pull) bool {
	return slices.ContainsFunc(p.Aim.Members(), func(u *stage.Subject) bool {
		return slices.Contains(b.GoalBefore(p).Members(), u)
	})
}
