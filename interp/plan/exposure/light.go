// The light of a shot, and what of it is lost near the lens.

package exposure

import "pullscore/optics"

// Light holds the light of a shot and the settings that can change it. A value that
// the plan does not state is NaN; ISO and Shutter are then 0, and so is how far they
// may go.
type Light struct {
	Meter   float64 // the stop that the meter shows at the camera's iso and shutter, as marked
	ND      float64 // density of the filter that is on
	Spoken  Spoken  // the scale of the stop that is set
	ISO     float64
	Shutter float64 // degrees
	Loss    Loss    // near the lens

	ISOTo, ShutterTo float64
}

// A Loss is the light lost where the focus rests, in stops against infinity: the
// least and the most of all places, and where it is the most, as written.
type Loss struct {
	Least, Most float64
	At          string
}

// Middle is half-way between the least and the most that is lost, stops.
func (l Loss) Middle() float64 { return (l.Least + l.Most) / 2 }

// Spread is how far the places are from that middle at most, stops.
func (l Loss) Spread() float64 { return (l.Most - l.Least) / 2 }

// Tells reports whether so much is lost that it is worth a word: a tenth of a stop.
func (l Loss) Tells() bool { return l.Most > 0.1 }

// Over returns how many stops too much light falls on the sensor at an
// f-number as marked, behind a filter of that density, half-way between where the
// most and where the least is lost near the lens: below 0 it is too little. NaN
// without a meter.
func (l Light) Over(number, nd float64) float64 {
	return optics.StopsBetween(optics.ExactStop(l.Meter), l.Spoken.Passes(number)) - optics.NDStops(nd) - l.Loss.Middle()
}
