// A lens of the kit, and what it is judged by.

package lenses

import (
	"pullscore/interp/kit"
	"pullscore/interp/plan"
	"pullscore/interp/units"
	"pullscore/optics/ring"
)

// A Kit is what lenses are judged by.
type Kit struct {
	Cameras  []kit.Camera
	View     kit.Viewing
	Imperial bool
	OwnUnits bool // each lens is told in the units that it is written in, whatever Imperial is
}

// A Stop is a stop to measure a lens for. The zero Stop is the widest of the lens.
type Stop struct {
	Number float64
	T      bool // a T-number
}

// A Lens is what is known of a lens.
type Lens struct {
	Name     string        `json:"name"`
	Ring     *plan.Ring    `json:"ring,omitempty"` // nil where there is nothing to measure
	Steps    []Step        `json:"steps"`
	Sheet    []plan.Number `json:"sheet_m"`             // the distances to measure; infinity last
	Infinity plan.Number   `json:"infinity_m,omitzero"` // how far away a thing must be to stand for infinity
	Next     plan.Number   `json:"next_m,omitzero"`     // where one more mark would help most

	Focal     string         `json:"-"` // the focal lengths, in words
	Closest   float64        `json:"-"` // metres from the sensor
	At        string         `json:"-"` // the focal length to measure at; empty where there is one alone
	Stop      string         `json:"-"` // for which Sheet is enough
	Widest    bool           `json:"-"` // that is the widest of the lens, since none was named
	Criterion float64        `json:"-"` // of sharpness, metres on the sensor
	Imperial  bool           `json:"-"`
	Ringless  string         `json:"-"` // why there is nothing to measure; empty where there is
	Defaults  []plan.Default `json:"-"` // what stands in for what nobody said

	Law    *ring.Law  `json:"-"` // nil where nothing says how the ring turns
	Factor [2]float64 `json:"-"` // of the computed width of a window, where no mark says better; else 0
}

// Of returns what is known of a lens that can be used.
func Of(l *kit.Lens, k Kit, stop Stop) *Lens {
	of := &Lens{Name: l.Name, Focal: l.FocalText(), Closest: l.Closest, Imperial: k.Imperial}
	if k.OwnUnits {
		of.Imperial = l.Imperial
	}
	of.Steps, of.Sheet, of.Infinity, of.Next = []Step{}, []plan.Number{}, plan.None(), plan.None()
	for _, d := range l.Defaults {
		of.Defaults = append(of.Defaults, plan.Default{Name: d.Name, Value: d.Value, Why: d.Why})
	}
	if of.Ring = l.RingKnown(); of.Ring == nil {
		of.Ringless = "it has no ring"
		if l.RingKind == "wire" {
			of.Ringless = "its ring works by wire and repeats no mark"
		}
		return of
	}
	if l.Zoom() {
		of.At = units.Style{}.Millimetres(l.Longest)
	}
	of.measure(l, k, stop)
	of.take(l.Law)
	return of
}
