package stops

import "pullscore/interp/plan"

// A Change is what is done differently when a shot is computed anew. Zero
// fields change nothing. Lengths are metres, times seconds.
type Change struct {
	Stop  float64         // f-number
	Over  map[int]float64 // lengths of racks, by the pull's number
	Gear  float64         // degrees at the hand for a degree of ring
	Wheel float64         // diameter
	Back  float64         // how much farther the camera stands; below 0 nearer

	Camera, Lens      string  // others of the kit
	Focal             float64 // that a zoom is set to
	FocalBy, SensorBy float64 // what focal lengths and the sensor are multiplied by

	// Bare leaves out the faults, which take half as long again.
	Bare bool
	// Needs asks also for the time that every rack needs, which takes longer.
	Needs bool
}

// A Take is a shot computed anew.
type Take struct {
	Shot *plan.Shot
	// Faults names the errors that the shot then has, each by its code and
	// place.
	Faults []string
}

// A Retake computes one shot anew with a change; ok is false where it then
// cannot be computed. What racks do not say of their time stays as it is in the
// plan. The findings and the drawings of the shot are not filled
// in.
type Retake func(Change) (t Take, ok bool)

// A Kit is the cameras and lenses that a plan may name, in the order of their
// names.
type Kit struct {
	Cameras []Camera
	Lenses  []Lens
}

// A Camera is one by its name. Width returns the width in metres of what the picture uses
// of its sensor, through a lens with a given squeeze.
type Camera struct {
	Name  string
	Width func(squeeze float64) float64
}

// A Lens is one by its name and focal lengths, metres, of which a prime has one, and
// by its stops at the shortest: as a shot speaks of them that writes f-numbers, and as
// one that writes T-numbers.
type Lens struct {
	Name              string
	Shortest, Longest float64
	Spoken            [2]plan.Spoken
}

func (l Lens) spoken(t bool) plan.Spoken {
	if t {
		return l.Spoken[1]
	}
	return l.Spoken[0]
}
