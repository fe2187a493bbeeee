// Changes: one thing of a shot done differently, to see whether that cures a
// finding.

package interp

import (
	"cmp"
	"slices"

	"pullscore/lang"
)

// A change is what is done differently. Zero fields change nothing.
type change struct {
	Stop, Gear, Wheel, Meter float64
	ND                       *float64

	Camera, Lens      string          // others of the kit
	Focal             float64         // that a zoom is set to, metres
	FocalBy, SensorBy float64         // what the focal lengths and the sensor are multiplied by
	Back              float64         // how much farther the camera stands, metres
	Over              map[int]float64 // lengths of racks in seconds, by their statement from 1

	Subject string  // who stands elsewhere
	Side    float64 // to the side, as its statement says it: metres, to the right positive

	Item   int              // the statement that the following are about, from 1
	Rack   func(*lang.Rack) // rewrites a copy of that rack
	Insert lang.Statement   // stands above it
}

// apply makes the changes of statements.
func (ch *change) apply(items []item) []item {
	if ch.Rack != nil {
		it := &items[ch.Item-1]
		rack := *it.stmt.(*lang.Rack)
		ch.Rack(&rack)
		it.stmt = &rack
	}
	for n, t := range ch.Over {
		it := &items[n-1]
		rack := *it.stmt.(*lang.Rack)
		withOver(t)(&rack)
		it.stmt = &rack
	}
	if ch.Insert != nil {
		return slices.Insert(items, ch.Item-1, item{stmt: ch.Insert})
	}
	return items
}

// with names what else of the kit is taken. A focal length that was written for
// another lens goes with it.
func (ch *change) with(w lang.With) lang.With {
	if ch.Camera != "" {
		w.Camera = &lang.Name{Text: ch.Camera}
	}
	if ch.Lens != "" {
		w.Lens, w.Focal = &lang.Name{Text: ch.Lens}, nil
	}
	if ch.Focal > 0 {
		w.Focal = &lang.Expr{Kind: lang.ExprNumber, Value: ch.Focal, Unit: lang.UnitM}
	}
	return w
}

// focalBy is what focal lengths are multiplied by, those written included.
func (ch *change) focalBy() float64 { return cmp.Or(ch.FocalBy, 1) }

// moved is where a statement stands once the change is made.
func (ch *change) moved(item int) int {
	if ch.Insert != nil && item >= ch.Item {
		return item + 1
	}
	return item
}

// secondsExpr is a time as a plan would write it.
func secondsExpr(t float64) *lang.Expr {
	return &lang.Expr{Kind: lang.ExprNumber, Value: t, Unit: lang.UnitS}
}

// withOver gives a rack another length.
func withOver(t float64) func(*lang.Rack) {
	return func(r *lang.Rack) { r.Over = secondsExpr(t) }
}

// withReason gives a rack a reason.
func withReason(r *lang.Rack) { r.Because = &lang.Text{Value: "why"} }

// onEndOf hangs a rack on the end of a speaker's line.
func onEndOf(who string) func(*lang.Rack) {
	return func(r *lang.Rack) {
		r.On, r.Landing = &lang.Anchor{Kind: lang.AnchorEnd, Name: &lang.Name{Text: who}}, nil
	}
}

// later moves the one moment that a rack hangs on.
func later(t float64) func(*lang.Rack) {
	move := func(a *lang.Anchor) *lang.Anchor {
		if a == nil {
			return nil
		}
		moved := *a
		moved.Offset = secondsExpr(t)
		return &moved
	}
	return func(r *lang.Rack) { r.On, r.Landing = move(r.On), move(r.Landing) }
}
