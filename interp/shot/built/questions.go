// What is asked of a built shot: where the focus is, and what its lens can do.

package built

import (
	"math"
	"slices"

	"pullscore/interp/clock"
	"pullscore/interp/stage"
	"pullscore/optics"
)

// Racks calls f for every rack in the order of time.
func (b *Shot) Racks(f func(*Pull)) {
	for _, p := range b.Pulls {
		if !p.Rack.Follow {
			f(p)
		}
	}
}

// sight returns the shot as its lens sees it.
func (b *Shot) sight() stage.Sight { return stage.Sight{Shot: b.Plan} }

// Tape returns the distance of a goal at t as the tape reads it, LensDistance
// the same from the lens; Extent returns the nearest and the farthest of a split
// from the lens. All are metres.
func (b *Shot) Tape(g *stage.Goal, t float64) float64         { return b.sight().Tape(g, t) }
func (b *Shot) LensDistance(g *stage.Goal, t float64) float64 { return b.sight().LensDistance(g, t) }
func (b *Shot) Extent(g *stage.Goal, t float64) (near, far float64) {
	return b.sight().Extent(g, t)
}

// AtStop returns the shot as if it were taken at another f-number. Its times and
// the figures of its pulls are those of the shot as it is.
func (b *Shot) AtStop(n float64) *Shot {
	other := *b
	other.Plan = b.Plan.AtStop(n)
	return &other
}

// FitsFrom returns the first marked third of the shot's own scale, whether or not the
// lens has it, at which all of a subject's depth is sharp at t; 0 where there is none.
func (b *Shot) FitsFrom(u *stage.Subject, t float64) float64 {
	for _, s := range optics.ThirdStops() {
		if n := b.Setup.Spoken.Number(s.Mark); n > b.Setup.Number && b.AtStop(n).Plan.Fits(u.Subject, t) {
			return s.Mark
		}
	}
	return 0
}

// MoveFollowed returns the one move that falls into a follow, of whom it follows or
// of the camera; nil where none does, or several do. others tells whether
// the shot has more moves of the same.
func (b *Shot) MoveFollowed(p *Pull) (only *stage.Move, others bool) {
	for _, m := range b.Stage.MovesIn(p.Rack.StartS, p.Rack.LandS) {
		if m.Kind == "zoom" || m.Keeps || m.Kind == "moves" && m.Who != p.Rack.Aim.Subject {
			continue
		}
		if only != nil && only.Item == m.Item { // a pan and its tilt
			continue
		}
		if only != nil {
			return nil, false
		}
		only = m
	}
	for _, m := range b.Stage.MovesIn(math.Inf(-1), math.Inf(1)) {
		others = others || only != nil && m != only && m.Kind == only.Kind && m.Who == only.Who
	}
	return only, others
}

// FocusBefore returns the focus, from the lens, as the pull before p leaves it at
// t.
func (b *Shot) FocusBefore(p *Pull, t float64) float64 { return b.focusAfter(p.Before, t) }

// focusAfter returns the focus, from the lens, as a pull leaves it at t; nil is
// the shot's start.
func (b *Shot) focusAfter(prev *clock.Pull, t float64) float64 {
	if prev == nil {
		return b.Plan.Carried(b.Plan.Optics.Start.Distance, 0, t)
	}
	set := prev.LandS
	if prev.Follow {
		set = min(t, prev.LandS)
	}
	return b.Plan.Carried(b.LensDistance(&prev.Aim, set), set, t)
}

// tapeBefore is where the focus is when p starts, as the tape reads it.
func (b *Shot) tapeBefore(p *Pull) float64 {
	switch prev := p.Before; {
	case p.Rack.Follow:
		return b.Tape(&p.Rack.Aim, p.Rack.StartS)
	case prev == nil:
		return b.Tape(&b.Start, 0)
	case prev.Follow:
		return b.Tape(&prev.Aim, min(p.Rack.StartS, prev.LandS))
	default:
		return b.Tape(&prev.Aim, prev.LandS)
	}
}

// GoalBefore returns the goal that the focus is on before p.
func (b *Shot) GoalBefore(p *Pull) *stage.Goal {
	if p.Before == nil {
		return &b.Start
	}
	return &p.Before.Aim
}

// TooNear tells whether a goal at t is nearer than the lens focuses.
func (b *Shot) TooNear(g *stage.Goal, t float64) bool {
	tape := b.Nearest(g, t)
	if b.Plan.Optics.FromLens && tape <= b.Plan.Focal(t) {
		return true
	}
	closest := b.Setup.Lens.Closest * (1 - 1e-6)
	if glass := &b.Plan.Optics.Glass; glass.Diopter > 0 || glass.Tube > 0 {
		x := b.Plan.FromTape(tape, t)
		return math.IsNaN(x) || b.Plan.RingTape(x, t) < closest
	}
	return b.FromSensor(tape, t) < closest
}

// OutOfReach tells whether nothing can be computed of a pull because of where
// it goes.
func (b *Shot) OutOfReach(p *Pull) bool {
	return math.IsNaN(p.Plan.ToLens) || b.TooNear(&p.Rack.Aim, p.Rack.LandS) || b.OutsideTravel(&p.Rack.Aim, p.Rack.LandS)
}

// FromSensor turns a tape reading into a distance from the sensor.
func (b *Shot) FromSensor(tape, t float64) float64 {
	if b.Plan.Optics.FromLens && tape > b.Plan.Focal(t) {
		return b.Plan.SensorTape(tape, t)
	}
	return tape
}

// Nearest is how near a goal comes, as the tape reads it: of a split, its
// nearest subject.
func (b *Shot) Nearest(g *stage.Goal, t float64) float64 {
	if g.Split == nil {
		return b.Tape(g, t)
	}
	near := math.Inf(1)
	for _, u := range g.Split {
		near = min(near, b.Plan.DistanceAt(u.Subject, t))
	}
	return near
}

// StaysOn tells whether a rack stays with the one that the focus is on: a
// correction, not meant to be seen.
func (b *Shot) StaysOn(p *Pull) bool {
	return slices.ContainsFunc(p.Rack.Aim.Members(), func(u *stage.Subject) bool {
		return slices.Contains(b.GoalBefore(p).Members(), u)
	})
}
