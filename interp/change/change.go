// Changes: one thing of a shot done differently, to see whether that cures a
// finding.

package change

import (
	"cmp"
	"slices"

	"pullscore/interp/names"
	"pullscore/lang"
)

// A Change is what is done differently. Zero fields change nothing.
type Change struct {
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

// Apply makes the changes of statements.
func (ch *Change) Apply(items []names.Item) []names.Item {
	if ch.Rack != nil {
		it := &items[ch.Item-1]
		rack := *it.Stmt.(*lang.Rack)
		ch.Rack(&rack)
		it.Stmt = &rack
	}
	for n, t := range ch.Over {
		it := &items[n-1]
		rack := *it.Stmt.(*lang.Rack)
		WithOver(t)(&rack)
		it.Stmt = &rack
	}
	if ch.Insert != nil {
		return slices.Insert(items, ch.Item-1, names.Item{Stmt: ch.Insert})
	}
	return items
}

// With names what else of the kit is taken. A focal length that was written for
// another lens goes with it.
func (ch *Change) With(w lang.With) lang.With {
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
func (ch *Change) FocalFactor() float64 { return cmp.Or(ch.FocalBy, 1) }

// Moved is where a statement stands once the change is made.
func (ch *Change) Moved(item int) int {
	if ch.Insert != nil && item >= ch.Item {
		return item + 1
	}
	return item
}

// SecondsExpr is a time as a plan would write it.
func SecondsExpr(t float64) *lang.Expr {
	return &lang.Expr{Kind: lang.ExprNumber, Value: t, Unit: lang.UnitS}
}

// WithOver gives a rack another length.
func WithOver(t float64) func(*lang.Rack) {
	return func(r *lang.Rack) { r.Over = SecondsExpr(t) }
}

// WithReason gives a rack a reason.
func WithReason(r *lang.Rack) { r.Because = &lang.Text{Value: "why"} }

// OnEndOf hangs a rack on the end of a speaker's line.
func OnEndOf(who string) func(*lang.Rack) {
	return func(r *lang.Rack) {
		r.On, r.Landing = &lang.Anchor{Kind: lang.AnchorEnd, Name: &lang.Name{Text: who}}, nil
	}
}

// Later moves the one moment that a rack hangs on.
func Later(t float64) func(*lang.Rack) {
	move := func(a *lang.Anchor) *lang.Anchor {
		if a == nil {
			return nil
		}
		moved := *a
		moved.Offset = SecondsExpr(t)
		return &moved
	}
	return func(r *lang.Rack) { r.On, r.Landing = move(r.On), move(r.Landing) }
}
