// Changes: what is done differently in a shot, as plain data.

package change

import (
	"cmp"
	"fmt"
	"slices"

	"pullscore/lang"
)

// A Change is what is done differently. Zero fields change nothing.
type Change struct {
	Stop, Gear, Wheel float64 // f-number as written; hand to ring; metres
	TStop             float64 // the stop as a T-number, in place of Stop
	Number            float64 // an f-number, said on the scale that the shot speaks; no words say it
	ND                *float64
	Meter             float64 // the stop that the meter shows
	MeterT            bool    // it is a T-number
	ISO, Shutter      float64 // what the camera is set to for Meter to show that; only words say it

	Camera, Lens      string  // others of the kit
	Support           string  // what the camera is on
	BothWays          bool    // the ring is marked for both ways
	FromLens          bool    // distances are measured from the lens; only words say it
	Focal             float64 // that a zoom is set to, metres
	FocalBy, SensorBy float64 // what the focal lengths and the sensor are multiplied by
	Back              float64 // how much farther the camera stands, metres

	Edits []Edit // what is written otherwise in the shot
}

// With returns the set-up with what else of the kit is taken. A focal length
// that was written for another lens goes with it.
func (c Change) With(w lang.With) lang.With {
	if c.Camera != "" {
		w.Camera = &lang.Name{Text: c.Camera}
	}
	if c.Lens != "" {
		w.Lens, w.Focal = &lang.Name{Text: c.Lens}, nil
	}
	if c.Focal > 0 {
		w.Focal = &lang.Expr{Kind: lang.ExprNumber, Value: c.Focal, Unit: lang.UnitM}
	}
	return w
}

// And returns the change that makes another change on top of this one: where they differ
// the other wins. The edits of both count statements as the shot is without either.
func (c Change) And(d Change) Change {
	out := c
	if d.Stop > 0 || d.TStop > 0 || d.Number > 0 {
		out.Stop, out.TStop, out.Number = d.Stop, d.TStop, d.Number
	}
	if d.Meter > 0 {
		out.Meter, out.MeterT = d.Meter, d.MeterT
	}
	if d.ND != nil {
		out.ND = d.ND
	}
	out.Gear, out.Wheel = cmp.Or(d.Gear, c.Gear), cmp.Or(d.Wheel, c.Wheel)
	out.ISO, out.Shutter = cmp.Or(d.ISO, c.ISO), cmp.Or(d.Shutter, c.Shutter)
	out.Camera, out.Lens, out.Support = cmp.Or(d.Camera, c.Camera), cmp.Or(d.Lens, c.Lens), cmp.Or(d.Support, c.Support)
	out.Focal, out.FocalBy, out.SensorBy = cmp.Or(d.Focal, c.Focal), cmp.Or(d.FocalBy, c.FocalBy), cmp.Or(d.SensorBy, c.SensorBy)
	out.BothWays, out.FromLens, out.Back = c.BothWays || d.BothWays, c.FromLens || d.FromLens, cmp.Or(d.Back, c.Back)
	out.Edits = slices.DeleteFunc(slices.Clone(c.Edits), func(e Edit) bool {
		return slices.ContainsFunc(d.Edits, e.sameAs)
	})
	out.Edits = append(out.Edits, d.Edits...)
	return out
}

// sameAs reports whether an edit is about the same thing as another.
func (e Edit) sameAs(o Edit) bool {
	return e.Item == o.Item && e.Kind == o.Kind && e.Who == o.Who && e.What == o.What
}

// FocalFactor returns what focal lengths are multiplied by, those written
// included.
func (c Change) FocalFactor() float64 { return cmp.Or(c.FocalBy, 1) }

// SideOf returns where somebody stands to the side instead, as the statement
// that places them says it: metres, to the right positive.
func (c Change) SideOf(who string) (metres float64, ok bool) {
	for _, e := range c.Edits {
		if e.Kind == Side && e.Who == who {
			return e.Metres, true
		}
	}
	return 0, false
}

// Key returns a text that is equal for equal changes, in whatever order their
// edits stand, and for no others.
func (c Change) Key() string {
	nd := "as it is"
	if c.ND != nil {
		nd = fmt.Sprint(*c.ND)
	}
	edits := slices.SortedStableFunc(slices.Values(c.Edits), func(a, b Edit) int {
		return cmp.Or(cmp.Compare(a.Item, b.Item), cmp.Compare(a.Kind, b.Kind), cmp.Compare(a.Who, b.Who))
	})
	c.ND, c.Edits = nil, nil
	return fmt.Sprintf("%#v nd %s %#v", c, nd, edits)
}
