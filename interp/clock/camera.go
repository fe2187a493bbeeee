// Moves of the camera: what they say, and the moments that they start and land on.

package clock

import (
	"fmt"
	"math"

	"pullscore/interp/names"
	"pullscore/interp/stage"
	"pullscore/interp/units"
	"pullscore/lang"
)

// A timing is what a movement says of when it happens. A field is nil or "" where it says
// nothing.
type timing struct {
	on, landing, until *lang.Anchor
	lasts, speed       *lang.Expr
	alongside          string // the kind of the camera move with which it starts and lands
	profile            lang.Profile
}

// timingOf returns what a movement says of its times; ok is false for all other
// statements.
func timingOf(stmt lang.Statement) (t timing, ok bool) {
	switch s := stmt.(type) {
	case *lang.Moves:
		return timing{on: s.On, lasts: s.Over, speed: s.Speed, profile: s.Profile}, true
	case *lang.Dolly:
		return timing{on: s.On, landing: s.Landing, lasts: s.Over, speed: s.Speed, alongside: s.Alongside, profile: s.Profile}, true
	case *lang.Track:
		return timing{on: s.On, landing: s.Landing, lasts: s.Over, speed: s.Speed, alongside: s.Alongside, profile: s.Profile}, true
	case *lang.Boom:
		return timing{on: s.On, landing: s.Landing, lasts: s.Over, speed: s.Speed, alongside: s.Alongside, profile: s.Profile}, true
	case *lang.CameraMoves:
		return timing{on: s.On, landing: s.Landing, lasts: s.Over, speed: s.Speed, alongside: s.Alongside, profile: s.Profile}, true
	case *lang.Zoom:
		return timing{on: s.On, landing: s.Landing, lasts: s.Over, alongside: s.Alongside, profile: s.Profile}, true
	case *lang.Turn:
		return timing{on: s.On, landing: s.Landing, until: s.Until, lasts: s.Over, alongside: s.Alongside, profile: s.Profile}, true
	}
	return t, false
}

// hangsOn tells whether a movement says when it happens, and not only how long it
// takes; ok is false for all other statements.
func hangsOn(stmt lang.Statement) (hangs, ok bool) {
	t, ok := timingOf(stmt)
	return t.on != nil || t.landing != nil || t.alongside != "", ok
}

// readSlide reads where a dolly, a track or a boom goes.
func (c *Clock) readSlide(in *names.Reader, mv *movement) (ok bool) {
	by, back := (*lang.Expr)(nil), false
	switch s := mv.Stmt.(type) {
	case *lang.Dolly:
		mv.Kind, by, back = "dolly", s.By, !s.In
	case *lang.Track:
		mv.Kind, by, back = "track", s.By, s.Way == "left"
	case *lang.Boom:
		mv.Kind, by, back = "boom", s.By, s.Way == "down"
	}
	mv.By, ok = in.Within(by, names.DimLength, 1e-4, stage.MaxDistance, "a camera goes 0.1 mm to 1000 km")
	if back {
		mv.By = -mv.By
	}
	return ok
}

// readTurn reads where a pan or a tilt goes.
func (c *Clock) readTurn(in *names.Reader, s *lang.Turn, mv *movement) (ok bool) {
	mv.Kind, mv.both, mv.Keeps = "pan", s.Pan && s.Tilt, s.With != nil
	most, says := 720.0, "a camera pans 0.001 deg to 720 deg at once"
	if !s.Pan {
		mv.Kind, most, says = "tilt", 180, "a camera tilts 0.001 deg to 180 deg at once"
	}
	who := s.To
	if mv.Keeps {
		who = s.With
	}
	if who == nil {
		mv.By, ok = in.Within(s.By, names.DimAngle, 1e-3, most, says)
		if s.Way == "left" || s.Way == "down" {
			mv.By = -mv.By
		}
		return ok
	}
	d, ok := in.Who(who, names.DeclSubject)
	if !ok {
		return false
	}
	mv.Aim = c.with.Stage.Subjects[d.Name.Text]
	return mv.Aim != nil && mv.Aim.Ok
}

// moments returns when a movement starts, or lands where only that is said; and when it
// is over, NaN where its length has to be added first.
func (c *Clock) moments(k int, mv *movement, ahead bool) (w When, end float64) {
	end = math.NaN()
	if mv.alongside != "" {
		return c.alongside(k, mv.alongside, ahead, &mv.Smooth)
	}
	first, last := mv.on, mv.landing
	if first == nil && last != nil {
		first, last = last, nil
	}
	if w = c.when(k, first, ahead); w.State == Waits {
		return w, end
	}
	if mv.Keeps {
		last, end = mv.until, math.Inf(1)
	}
	if last == nil {
		return w, end
	}
	land := c.when(k, last, ahead)
	switch {
	case land.State != Found:
		return land, end
	case w.State != Found:
		return w, end
	case !(land.T > w.T):
		c.fail(k, "lands-too-early", fmt.Sprintf("this would end %s before it starts", units.Style{}.Time(w.T-land.T)), "")
		return failed, end
	}
	return w, land.T
}

// alongside returns when the last move of a kind above an item starts and lands, and
// whether it is smooth.
func (c *Clock) alongside(k int, kind string, ahead bool, smooth *bool) (w When, land float64) {
	i := c.lastOf(k, kind)
	switch {
	case i < 0 && (c.with.Alone || c.with.Lex.Here.Any(kind)): // it may be the one that could not be read
		return failed, 0
	case i < 0:
		c.fail(k, "unknown-name", fmt.Sprintf("no %s stands above to go with", kind), "It takes its start and its landing from the last one above.")
		return failed, 0
	}
	mv := c.movements[i]
	if w = c.movement(i, ahead); w.State != Found {
		return w, 0
	}
	if math.IsInf(mv.End, 0) {
		c.fail(k, "unknown-name", fmt.Sprintf("this %s says no end to land with", kind), "Give it one: until and a moment.")
		return failed, 0
	}
	*smooth = mv.Smooth
	return w, c.At[i].EndS
}

// lastOf returns the last movement of a kind above an item; -1 where there is none.
func (c *Clock) lastOf(k int, kind string) int {
	for i := k - 1; i >= 0; i-- {
		if mv := c.movements[i]; mv != nil && (mv.Kind == kind || mv.both && kind == "tilt") {
			return i
		}
	}
	return -1
}

// take keeps a movement that has its times for the stage.
func (c *Clock) take(mv *movement) {
	c.moved = append(c.moved, &mv.Move)
	if mv.both {
		tilt := mv.Move
		tilt.Kind = "tilt"
		c.moved = append(c.moved, &tilt)
	}
	if mv.Who != nil && !mv.FromSelf {
		mv.Who.StandsBy(mv.Along.On)
	}
}
