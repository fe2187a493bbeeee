// A floor as data: what a drawing of it needs, and nothing about the page.

package layout

import (
	"pullscore/interp/plan"
	"pullscore/interp/units"
)

// A Floor is what stands and moves on the ground. Lengths are in metres.
type Floor struct {
	Name     string // for people who cannot see the drawing
	Style    units.Style
	Cameras  []Camera // the first looks to the right of the page as it starts
	Places   []Place  // in the order of their letters
	Ways     []Way
	Notes    []string // sentences for the table
	Cautions []string
}

// A Spot is a point of the floor: so many metres to the right of the first camera as it
// starts, and so many ahead of it.
type Spot struct{ X, Y float64 }

// A Place is where somebody stands.
type Place struct {
	Letter string
	Name   string
	When   string // while or from when they stand there; empty: throughout
	At     Spot
	Later  bool    // they come there
	Deep   float64 // how deep they are
	Unsaid bool    // nobody says to which side they stand
	High   float64 // how far above or below the camera's mark the tape ends
	Up     float64 // how far over the lens of the start, where the floor says heights
	More   float64 // what tapes that were read add to those of the floor
	Slant  float64 // the tape as somebody read it at the start; NaN: nobody did
}

// A Way is where somebody goes.
type Way struct {
	Who string
	Run []Spot
}

// A Camera stands on a floor.
type Camera struct {
	Name   string
	States []State // the first is that of the start
	Tracks []Track
	Path   []Spot // of a camera that leaves its axis, or that somebody carries
	Turns  []Turn
	Words  []Word
	Zones  []Zone
}

// A State is how a camera stands and looks at a time.
type State struct {
	Words   string // when that is
	Pose    plan.Pose
	Lens    float64 // how far ahead of the tape's origin the field of view begins
	Focal   float64 // focal length
	PerSide float64 // how far it reaches to either side for a metre ahead of there
	Tapes   []Tape  // far to near; none where an earlier state has the same
	Shown   bool    // its view is drawn: no earlier one is the same from above
}

// A Tape is what there is to measure from a state of a camera to a place.
type Tape struct {
	Place        int     // its index
	Along        float64 // parallel to the lens's axis
	Slant        float64 // straight
	Aside        float64 // to the right of the axis
	SlantAssumed bool    // the side is assumed
}

// A Track is a straight way of a camera on its axis.
type Track struct {
	From, To Spot
	Words    string
}

// A Turn is a pan: degrees to the right of the way that the first camera looks.
type Turn struct {
	At       Spot // of the lens
	From, By float64
	Words    string
}

// A Word says something about a spot.
type Word struct {
	At   Spot
	Text string
}

// A Zone is what is sharp where the focus rests: metres along the axis of the lens from
// the tape's origin as the camera then stands.
type Zone struct {
	Seen          State
	At, Near, Far float64 // At and Far may be infinite
	Start         bool    // the focus starts here
	Pulls         []Pull  // that land here
	Name          string
	When          string // where somebody moves, or the camera
}

// A Pull is a move of the focus.
type Pull struct {
	Number int
	Follow bool
}
