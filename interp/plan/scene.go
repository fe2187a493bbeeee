// Scenes: action that is staged once, for several cameras.
//
// A scene has a floor of its own: metres to the right and upstage, as seen from the
// front, and up, from one zero point. A shot keeps the floor of its camera at the start
// (rig.go), whatever the scene. Its Staging says where that floor lies on the scene's.

package plan

import "math"

// A Scene is action that is staged once. Its times count from its own start.
type Scene struct {
	Title    string `json:"title,omitempty"`
	Origin   string `json:"origin,omitempty"` // what the zero point is on the set, in the plan's words
	Duration Number `json:"duration_s"`

	Marks    []FloorMark    `json:"marks"`
	Subjects []Staged       `json:"subjects"`
	Lines    []Line         `json:"lines"`
	Cues     []Cue          `json:"cues"`
	Cuts     []SceneCut     `json:"cuts"`
	Axes     []LineOfAction `json:"lines_of_action"`
	Setups   []string       `json:"setups"` // the shots of the scene, as written

	File string `json:"file"`
	Line int    `json:"line"`

	Flags []Flag `json:"-"` // the findings that stand on the scene's line
}

// A FloorMark is a mark on the floor of a scene, in metres.
type FloorMark struct {
	Name    string `json:"name"`
	Right   Number `json:"right_m"`
	Upstage Number `json:"upstage_m"`
	High    Number `json:"high_m"`
}

// Staged is a person or thing on the floor of a scene.
type Staged struct {
	Name string       `json:"name"`
	Path []FloorPoint `json:"path"` // of the focus point

	Person  bool    `json:"-"` // speaks or moves
	Eyes    float64 `json:"-"` // of a person at first: over what they stand on, metres
	Unknown bool    `json:"-"` // of a thing whose height no line says: level with each lens
	At      string  `json:"-"` // the place at first, as written
	Legs    []Leg   `json:"-"` // of the way, in the order of time
}

// A FloorPoint is where somebody is at a time. High is that of the focus point.
type FloorPoint struct {
	T       Number `json:"t_s"`
	Right   Number `json:"right_m"`
	Upstage Number `json:"upstage_m"`
	High    Number `json:"high_m"`
}

// A Leg is one walk of somebody, between two times in seconds.
type Leg struct {
	Start, End float64
	From, To   FloorPoint
	Anchor     string // the word or moment that starts it, as written; "" for none
}

// A SceneCut is a cut that the plan has, or that the edit has.
type SceneCut struct {
	To       string `json:"to"` // the shot
	T        Number `json:"t_s"`
	FromEdit bool   `json:"from_edit"`
	Because  string `json:"-"`
	At       int    `json:"-"` // the line of the plan; 0 for one of the edit
}

// A LineOfAction is a line between two people that no camera should cross, for as long
// as one speaks to the other.
type LineOfAction struct {
	From  string `json:"from"`
	To    string `json:"to"`
	Start Number `json:"start_s"`
	End   Number `json:"end_s"`
	Said  bool   `json:"-"` // a line of the plan says it; else the dialogue does
}

// Staging says how a shot lies in its scene; a shot that has nothing of a scene and no
// place for its camera has none.
type Staging struct {
	Scene    string      `json:"scene,omitempty"` // its title
	Covers   Interval    `json:"covers_s"`        // from when to when, of the scene's time
	RunsWith string      `json:"runs_with,omitempty"`
	Matches  string      `json:"matches,omitempty"`
	Aspect   Number      `json:"aspect"` // width over height of the picture, on the screen
	Views    []SightLine `json:"views,omitempty"`

	Of     int  `json:"-"` // the index of the scene in the plan
	Action bool `json:"-"` // the shot has the action of the scene; else its lines and times are its own
	Placed bool `json:"-"` // the camera has a place on the floor of the scene
	Home   Pose `json:"-"` // the camera as the shot starts, on the floor of the scene
	Placer int  `json:"-"` // the line of the plan that places the camera; 0: none

	Because  string    `json:"-"` // why the camera stands where it does; what it crosses is meant
	Runner   int       `json:"-"` // the line that says whom it runs with; 0: none
	Matcher  int       `json:"-"` // the line that says what it matches; 0: none
	Readings []Reading `json:"-"` // the tapes that were read, in the order of the plan
}

// A Reading is a tape as somebody read it, beside what the floor gives there, in metres
// from the sensor mark.
type Reading struct {
	Who, At     string // At: the mark; "" for the first place in the shot
	Tape, Floor float64
	Line        int // of the plan
}

// A SightLine says how the camera stands to two people as the shot starts.
type SightLine struct {
	A       string `json:"a"`
	B       string `json:"b"`
	EyeLine Number `json:"eye_line_deg"` // of A to B: above 0 A looks to the right of the picture
	Side    Number `json:"line_side_m"`  // of the camera to the line from A to B: right of it above 0
}

// OnFloor returns where a point of the floor of the shot is on the floor of its scene,
// metres.
func (g *Staging) OnFloor(x, y, z float64) (right, upstage, high float64) {
	sin, cos := math.Sincos(g.Home.Pan * math.Pi / 180)
	return g.Home.X + x*cos + y*sin, g.Home.Y - x*sin + y*cos, g.Home.Z + z
}

// Heading returns how many degrees of pan on the floor of the scene the camera of the shot
// has as the shot starts, to which its own turns are added; 0 where it has no place there.
func (s *Shot) Heading() float64 {
	if s.Staging == nil || !s.Staging.Placed {
		return 0
	}
	return s.Staging.Home.Pan
}

// FromFloor returns where a point of the floor of the scene is on the floor of the shot,
// metres.
func (g *Staging) FromFloor(right, upstage, high float64) (x, y, z float64) {
	sin, cos := math.Sincos(g.Home.Pan * math.Pi / 180)
	x, y = right-g.Home.X, upstage-g.Home.Y
	return x*cos - y*sin, x*sin + y*cos, high - g.Home.Z
}

// Stands returns the camera at t on the floor of the scene, or on that of the shot where
// the camera has no place.
func (s *Shot) Stands(t float64) Pose {
	p := s.Optics.Pose(t)
	if s.Staging == nil || !s.Staging.Placed {
		return p
	}
	p.X, p.Y, p.Z = s.Staging.OnFloor(p.X, p.Y, p.Z)
	p.Pan += s.Staging.Home.Pan
	return p
}

// OnFloor returns where a subject is at t on the floor of the scene, in metres, or on
// that of the shot where the camera has no place.
func (s *Shot) OnFloor(u *Subject, t float64) (right, upstage, high float64) {
	x, y, z := u.Across.At(t), u.Along.At(t), u.Height(t)
	if s.Staging == nil || !s.Staging.Placed {
		return x, y, z
	}
	return s.Staging.OnFloor(x, y, z)
}
