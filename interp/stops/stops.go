// Package stops finds the window of stops of a shot: the stretch of f-numbers
// over which every rack lands with the wanted chance and is seen by the audience,
// every follow and every rest is sharp as often as wanted, the subjects are as sharp
// as they are deep, diffraction leaves them so, and the light can be had. It
// recommends a stop by what it costs. Where there is no window it looks for what
// opens one.
//
// find.go gives the answer for a shot, search.go tries the stops, verdict.go judges
// one, light.go has its light, recommend.go says which to take and obstacles.go what
// stands in the way; levers.go and framing.go look for what opens a window, lenses.go
// compares the lenses of the kit, take.go says what a shot taken anew is, words.go
// puts answers into sentences.
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
	Set     string      `json:"set"` // the stop, as written
	SetF    plan.Number `json:"set_f_number"`

	// Racks and Follows are those that are judged, Rests the times in which the focus
	// stands on somebody; Landing tells whether landing and following are: a ring by
	// wire, or none, has no chances.
	Racks   []Rack   `json:"racks"`
	Follows []Follow `json:"follows"`
	Rests   []Rest   `json:"rests"`
	Landing bool     `json:"landing_judged"`
	Light   bool     `json:"light_judged"`
	// RingUnknown tells that the lens has a ring of which nothing says how far it turns.
	// Then a stop fails where a pull fails on every ring, and holds where all hold on
	// all; windows reach over all that do not fail.
	RingUnknown bool      `json:"ring_unknown,omitempty"`
	Tried       []Verdict `json:"tried"`

	// Recommended are the stop that is set, the widest and the one of the light.
	Recommended []Recommendation `json:"recommended"`

	Window *Window  `json:"window,omitempty"`        // the one with the best stop
	Others []Window `json:"other_windows,omitempty"` // the rest, from wide stops to small

	// Where there is no window: what stands in its way, and what opens one.
	Obstacles []Obstacle `json:"obstacles,omitempty"`
	Levers    []Lever    `json:"levers"`

	set plan.Light // what is known of the light, as it is set

	// For drawings: the verdicts on every sixth of a stop, and the f-numbers over which
	// rests and follows (as Rests), depth and light are had.
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

// A Follow is one whose sharpness is judged.
type Follow struct {
	Pull   int    `json:"pull"` // its number in the shot
	Target string `json:"target"`
}

// A Rest is a time in which the focus stands on somebody, after a pull; after none,
// 0, it is from the start of the shot.
type Rest struct {
	After   int         `json:"after_pull"`
	Subject string      `json:"subject"`
	Start   plan.Number `json:"start_s"`
	End     plan.Number `json:"end_s"`
}

// A Verdict is one stop tried.
type Verdict struct {
	Stop     string      `json:"stop"`
	Number   plan.Number `json:"f_number"`
	Holds    bool        `json:"holds"`
	Unsure   bool        `json:"ring_not_known,omitempty"` // the ring decides, of which nothing is known
	Racks    []RackAt    `json:"racks"`
	Follows  []FollowAt  `json:"follows,omitempty"`
	Rests    []RestAt    `json:"rests,omitempty"`
	Fits     bool        `json:"fits"`            // every subject's depth is sharp
	Sharp    bool        `json:"sharp"`           // diffraction alone stays within what is sharp
	Exposure *Exposure   `json:"light,omitempty"` // without a meter: none
	Faults   []string    `json:"errors,omitempty"`

	open bool   // no demand fails: it holds, or may
	met  []bool // by the search's demands
}

// A RackAt is a rack at a stop, in the figures of the pull list.
type RackAt struct {
	Pull        int         `json:"pull"`
	Lands       bool        `json:"lands"`
	Seen        bool        `json:"seen"`
	Probability plan.Number `json:"probability,omitzero"`
	Ceiling     plan.Number `json:"ceiling,omitzero"`

	Band plan.Interval `json:"probability_band,omitzero"` // of a ring of which nothing is known

	LeftBlur    plan.Number `json:"left_blur_arcmin,omitzero"`
	ReachedBlur plan.Number `json:"reached_blur_arcmin,omitzero"`
	SeenFrom    plan.Number `json:"seen_from_arcmin,omitzero"` // above it the blur that is left shows
}

// A FollowAt is a follow at a stop, in the figures of the pull list.
type FollowAt struct {
	Pull        int         `json:"pull"`
	Holds       bool        `json:"holds"`
	Worst       plan.Number `json:"worst_share,omitzero"` // of its worst half second
	Probability plan.Number `json:"probability,omitzero"` // of being sharp where it ends
	Ceiling     plan.Number `json:"ceiling,omitzero"`

	Band plan.Interval `json:"probability_band,omitzero"` // of a ring of which nothing is known
}

// A RestAt is a rest at a stop: how often whom it is on is sharp.
type RestAt struct {
	Rest
	Holds bool        `json:"holds"`
	Share plan.Number `json:"sharp_share"`
}

// A Window is a stretch of f-numbers that holds.
type Window struct {
	From   plan.Number `json:"from_f"`
	To     plan.Number `json:"to_f"`
	Width  plan.Number `json:"width_stops"`
	Middle plan.Number `json:"middle_f"` // half-way, in stops

	// Best is the stop that costs the least: the one that is set where it holds as
	// everything is, else the marked one that asks for the least iso, filters and way
	// from it; where none lies in the window its middle. AtBest is what then comes of
	// the shot.
	Best   string      `json:"best"`
	BestF  plan.Number `json:"best_f"`
	AtBest *Verdict    `json:"at_best,omitempty"`

	cost float64 // of the best, in stops of iso raised

	Wide  End `json:"wide_end"`
	Small End `json:"small_end"`
}

// A Span is a stretch of f-numbers, from wide to small.
type Span struct{ From, To float64 }

// An End is what ends a window.
type End struct {
	Kind Kind `json:"kind"`
	Pull int  `json:"pull,omitempty"` // the pull; of a rest the one before it

	// Stop is the next stop tried beyond the end, with the figures there.
	Stop        string      `json:"stop,omitempty"`
	Probability plan.Number `json:"probability,omitzero"` // of a ring of which nothing is known, on the best
	LeftBlur    plan.Number `json:"left_blur_arcmin,omitzero"`
	SeenFrom    plan.Number `json:"seen_from_arcmin,omitzero"`
	Share       plan.Number `json:"sharp_share,omitzero"` // of a rest, or of the worst half second of a follow
	Subject     string      `json:"subject,omitempty"`    // of a rest
	Left        plan.Number `json:"left_stops,omitzero"`  // of light, above 0 too much
}

// A Kind is a demand on a stop.
type Kind string

// The demands.
const (
	TheLens   Kind = "lens"        // it has no stops beyond; a demand on nothing else
	Lands     Kind = "lands"       // a rack lands with the wanted chance
	Seen      Kind = "seen"        // what a rack leaves is blurred enough to show
	Reached   Kind = "sharp"       // what a rack reaches is sharp
	Follows   Kind = "follows"     // a follow is as sharp as wanted, at its worst and at its end
	Rests     Kind = "rests"       // whom the focus rests on is sharp as often as wanted
	Depth     Kind = "fits"        // the subjects are sharp in all their depth
	Diffracts Kind = "diffraction" // it alone blurs no more than is sharp
	Light     Kind = "light"       // it can be had
	Zoom      Kind = "zoom"        // the stop stays as it is through the zoom
	Done      Kind = "errors"      // nothing in the shot becomes impossible
)

// between returns the distance from one f-number to another, in stops.
func between(a, b float64) float64 { return 2 * math.Log2(b/a) }

// middle returns the f-number half-way between two, in stops.
func middle(a, b float64) float64 { return math.Sqrt(a * b) }
