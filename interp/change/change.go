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
