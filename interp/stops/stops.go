// Package stops finds the window of stops of a shot: the stretch of f-numbers
// over which every rack lands with the wanted chance and is seen by the
// audience, the subjects are as sharp as they are deep, and the light can be
// had. Where there is none it looks for what opens one.
//
// It computes no figure of its own: every verdict rests on the shot taken anew
// at that stop, so it is what the pull list says once that stop is written into
// the plan. Lengths are metres, angles degrees, times seconds, blur arc minutes
// at the viewer; the distance between two f-numbers is counted in stops.
package stops

import (
	"math"

	"pullscore/interp/plan"
)

// A Report is the windows of all shots of a plan.
type Report struct {
	Plan  string    `json:"plan"`
	Shots []*Answer `json:"shots"`
}

// An Answer is what is to be said of the stops of one shot.
type Answer struct {
	ID      string      `json:"id"`
	Title   string      `json:"title,omitempty"`
	Camera  string      `json:"camera"`
	Lens    string      `json:"lens"`
	FocalMM plan.Number `json:"focal_mm"`
	Wanted  plan.Number `json:"wanted"`
	Seen    plan.Number `json:"seen_arcmin"` // above it blur shows
	Set     string      `json:"set"`         // the stop, as written
	SetF    plan.Number `json:"set_f_number"`

	// Racks are the racks that are judged; Landing tells whether their landing
	// is: a ring by wire, or none, has no chances.
	Racks   []Rack    `json:"racks"`
	Landing bool      `json:"landing_judged"`
	Light   bool      `json:"light_judged"`
	Tried   []Verdict `json:"tried"`

	Window *Window  `json:"window,omitempty"`        // the widest
	Others []Window `json:"other_windows,omitempty"` // the rest, from wide stops to small

	// Where there is no window: what stands in its way, and what opens one.
	Obstacles []Obstacle `json:"obstacles,omitempty"`
	Levers    []Lever    `json:"levers"`

	TOnly bool `json:"-"` // the lens has T-numbers alone

	// For drawings: the verdicts on every sixth of a stop, and the f-numbers
	// over which depth and light are had.
	Curve []Verdict       `json:"-"`
	Spans map[Kind][]Span `json:"-"`
}

// A Rack is one whose landing and showing is judged.
type Rack struct {
	Pull   int    `json:"pull"` // its number in the shot
	From   string `json:"from,omitempty"`
	Target string `json:"target"`
	Stays  bool   `json:"stays,omitempty"` // a correction, not meant to be seen

	// Over is the time that it keeps at every stop, seconds; Untimed tells that
	// the plan does not say it.
	Over    float64 `json:"-"`
	Untimed bool    `json:"-"`
}

// A Verdict is one stop tried.
type Verdict struct {
	Stop     string      `json:"stop"`
	Number   plan.Number `json:"f_number"`
	Holds    bool        `json:"holds"`
	Racks    []RackAt    `json:"racks"`
	Fits     bool        `json:"fits"`            // every subject's depth is sharp
	Exposure *Exposure   `json:"light,omitempty"` // without a meter: none
	Faults   []string    `json:"errors,omitempty"`

	met []bool // by the search's demands
}

// A RackAt is a rack at a stop, in the figures of the pull list.
type RackAt struct {
	Pull        int         `json:"pull"`
	Lands       bool        `json:"lands"`
	Seen        bool        `json:"seen"`
	Probability plan.Number `json:"probability,omitzero"`
	Ceiling     plan.Number `json:"ceiling,omitzero"`
	LeftBlur    plan.Number `json:"left_blur_arcmin,omitzero"`
	ReachedBlur plan.Number `json:"reached_blur_arcmin,omitzero"`
}

// A Window is a stretch of f-numbers that holds.
type Window struct {
	From   plan.Number `json:"from_f"`
	To     plan.Number `json:"to_f"`
	Width  plan.Number `json:"width_stops"`
	Middle plan.Number `json:"best_f"` // half-way, in stops

	// Best is the marked stop nearest to the middle, or where no mark lies in
	// the window the middle itself; AtBest is what then comes of the shot.
	Best   string   `json:"best"`
	AtBest *Verdict `json:"at_best,omitempty"`

	Wide  End `json:"wide_end"`
	Small End `json:"small_end"`
}

// A Span is a stretch of f-numbers, from wide to small.
type Span struct{ From, To float64 }

// An End is what ends a window.
type End struct {
	Kind Kind `json:"kind"`
	Pull int  `json:"pull,omitempty"` // the rack, where it is one

	// Stop is the next stop tried beyond the end, with the figures there.
	Stop        string      `json:"stop,omitempty"`
	Probability plan.Number `json:"probability,omitzero"`
	LeftBlur    plan.Number `json:"left_blur_arcmin,omitzero"`
	Left        plan.Number `json:"left_stops,omitzero"` // of light, above 0 too much
}

// A Kind is a demand on a stop.
type Kind string

// The demands.
const (
	TheLens Kind = "lens"   // it has no stops beyond; a demand on nothing else
	Lands   Kind = "lands"  // a rack lands with the wanted chance
	Seen    Kind = "seen"   // what a rack leaves is blurred enough to show
	Reached Kind = "sharp"  // what a rack reaches is sharp
	Depth   Kind = "fits"   // the subjects are sharp in all their depth
	Light   Kind = "light"  // it can be had
	Zoom    Kind = "zoom"   // the stop stays as it is through the zoom
	Done    Kind = "errors" // nothing in the shot becomes impossible
)

// between returns the distance from one f-number to another, in stops.
func between(a, b float64) float64 { return 2 * math.Log2(b/a) }

// middle returns the f-number half-way between two, in stops.
func middle(a, b float64) float64 { return math.Sqrt(a * b) }
