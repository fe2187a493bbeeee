// Package plan holds the computed plan as plain data. The checks read it, the
// drawings draw it, and `list --as json` writes it. It has no pointers back into
// the tree of the language.
//
// Lengths are in metres, angles in degrees, and times in seconds from the start of
// the shot. Fields whose name ends in MM are in millimetres. Distances are tape
// readings (see Plan.Tape), unless the name says that they are from the lens: from
// its front principal plane. Angles of the ring count from its near end. Angles at
// the hand are ring angles times the gear.
package plan

import (
	"pullscore/interp/hand"
	"pullscore/lang/timecode"
	"pullscore/optics/ring"
)

// A Plan is the computed plan of one file.
type Plan struct {
	Title    string    `json:"plan"`
	Rate     string    `json:"rate"` // as written: "24", "29.97df"
	Tape     string    `json:"tape"` // "sensor" or "lens"
	Units    string    `json:"units"`
	Shots    []*Shot   `json:"shots"`
	Scenes   []*Scene  `json:"scenes,omitempty"`
	Defaults []Default `json:"defaults"`

	File string `json:"-"` // the path that it was read from
}

// A Default is a value that the plan does not state, with the default used instead.
type Default struct {
	Name  string `json:"name"`
	Value string `json:"value"`
	Why   string `json:"why"`
	Shot  string `json:"shot,omitempty"` // the ID of the shot that it concerns; empty: all shots
}

// A Screen is the screen that the audience watches.
type Screen struct {
	Width  Number `json:"width_m"`
	Viewer Number `json:"viewer_m"` // how far the viewer sits
}

// A Sensor is the part of a sensor that the picture uses.
type Sensor struct {
	WidthMM  Number `json:"width_mm"`
	HeightMM Number `json:"height_mm"`
	Format   string `json:"format,omitempty"` // its name, where the plan gives one
	Source   string `json:"source,omitempty"` // the standard or table of that format
	Cropped  bool   `json:"-"`                // the plan gives the shape of the picture
}

// A Shot is one shot with all names resolved and all figures computed.
type Shot struct {
	ID       string   `json:"id"`
	Title    string   `json:"title,omitempty"`
	Notes    []string `json:"notes,omitempty"` // to be printed beside the shot, in their order
	Camera   string   `json:"camera"`
	Sensor   Sensor   `json:"sensor"`
	Lens     string   `json:"lens"`
	Support  string   `json:"support"` // tripod, dolly, shoulder or hand
	Puller   string   `json:"puller,omitempty"`
	Gear     Number   `json:"gear"`
	WheelMM  Number   `json:"wheel_mm,omitzero"` // with a gear only
	BeginsAt string   `json:"begins_at,omitempty"`

	// Where the camera runs at another speed than the film: frames a second, and how many
	// times as long everything takes on the screen.
	Shoots     Number `json:"shoots,omitzero"`
	SlowFactor Number `json:"slow_factor,omitzero"`

	Duration Number  `json:"duration_s"`
	Wanted   Number  `json:"wanted"`     // the chance of landing that the plan asks for, 0 to 1
	Quickest Number  `json:"quickest_s"` // the shortest rack wanted, seconds
	Screen   *Screen `json:"screen,omitempty"`
	Ring     *Ring   `json:"ring,omitempty"` // nil where the lens has none, or one by wire

	Stop        string `json:"stop"` // as written
	StopBehind  string `json:"-"`    // the same on the lens's other scale; empty if it has one
	FocalMM     Number `json:"focal_mm"`
	FNumber     Number `json:"f_number"`
	TNumber     Number `json:"t_number,omitzero"`
	SqueezeBy   Number `json:"squeeze,omitzero"`    // by which the picture is stretched across
	Diopter     Number `json:"diopter,omitzero"`    // power of the close-up lens, 1/m
	TubeMM      Number `json:"tube_mm,omitzero"`    // length of the extension tube
	TravelDeg   Number `json:"travel_deg,omitzero"` // of a hand wheel with ends
	CriterionMM Number `json:"criterion_mm"`        // the largest blur disc on the sensor that looks sharp
	Hyperfocal  Number `json:"hyperfocal_m"`        // from the lens

	Pieces    []Piece  `json:"pieces,omitempty"`     // what the cut shows of it, in the order of the record; none without a list
	TakesUsed []string `json:"takes_used,omitempty"` // by the pieces, in the order of the record

	Start    Start      `json:"start"`
	Subjects []*Subject `json:"subjects"`
	Lines    []Line     `json:"lines"`
	Cues     []Cue      `json:"cues"`
	Actions  []Action   `json:"actions"`
	Pauses   []Pause    `json:"pauses"`
	Blocking []Blocking `json:"blocking"`
	Pulls    []*Pull    `json:"pulls"`
	Rests    []Rest     `json:"rests"`
	Together []Tried    `json:"together,omitempty"` // the cures tried together; filled where somebody asks for them

	Operator   string    `json:"operator,omitempty"`    // who pans and tilts; empty: not said
	Turns      []Turn    `json:"turns,omitempty"`       // in the order of their starts
	CameraPath []Station `json:"camera_path,omitempty"` // of a camera that turns, leaves its axis, or has a place on the floor of a scene

	*Staging // nil for a shot that has nothing of a scene and no place for its camera

	File string `json:"file"`
	Line int    `json:"line"`

	// The data from which the figures above are computed, for the drawings.
	Optics        Optics        `json:"-"`
	Log           string        `json:"-"` // the path of the puller's log of takes; empty: none is named
	Flags         []Flag        `json:"-"` // the findings, for the drawings
	Held          []Pause       `json:"-"` // where the plan says hold, each from the landing before it
	Causes        []Cause       `json:"-"` // findings that have one cause, by their flags
	Hand          hand.Hand     `json:"-"` // the hand for which the chances hold
	Rate          timecode.Rate `json:"-"`
	Begins        int64         `json:"-"` // BeginsAt as frames
	Imperial      bool          `json:"-"` // display feet and inches first
	PlanName      string        `json:"-"` // the plan's title
	ScreenAssumed bool          `json:"-"` // the plan does not say which screen the audience watches

	Beat float64 `json:"-"` // the plan's `let beat`, seconds; 0: it has none that is a time
}

// Optics holds the camera and lens of a shot in numbers, over the time of the shot.
type Optics struct {
	SensorW, SensorH float64 // metres
	Focal            *Track  // metres, over a zoom
	Number           float64 // the f-number set
	Scale            Scale   // the f-numbers of a zoom; empty for a prime, which always has the one set
	Light            Light
	Pupil            float64 // exit over entrance pupil, 1 where not said
	Criterion        float64 // metres on the sensor
	FromLens         bool    // tape from lens: distances need no conversion
	ArcminPerBlur    float64 // arc minutes at the viewer for a metre of blur on the sensor

	Ring     *ring.Law // nil where the lens has no ring that can be pulled by angle
	Marked   bool      // the ring law comes from the lens's marks
	Engraved []string  // those marks as the kit writes them, in the order of Ring.Marks
	Diameter float64   // of the ring, metres; NaN where not said
	TurnsTo  string    // "left", "right" or "": which way the ring turns towards infinity
	Breathes float64   // percent over the whole ring; NaN: unit focusing
	Glass    Glass

	Camera *Track // the camera's way along the axis from where it starts, metres
	Rig    *Rig   // what else the camera does; nil: nothing
	Start  Target // where the focus is when the shot starts
}

// A Target is the place that a pull goes to: a distance from the lens in metres,
// which may follow a subject.
type Target struct {
	Name     string   // the subject, "" for a bare distance
	Text     string   // as written
	Distance float64  // from the lens, metres, at the time it is reached
	Soft     bool     // a bare length or an offset: no subject has to be sharp there
	Names    []string // the subjects of a split
}

// A Subject is a person or thing that the focus can be on. Its figures are those at
// the start of the shot.
type Subject struct {
	Name         string   `json:"name"`
	Distance     Number   `json:"distance_m"` // along the axis
	LensDistance Number   `json:"lens_distance_m,omitzero"`
	Side         Number   `json:"side_m"` // to the right positive
	Deep         Number   `json:"deep_m"`
	Sways        Number   `json:"sways_m,omitzero"`
	Near         Number   `json:"near_m,omitzero"` // sharp from here with the focus on it
	Far          Number   `json:"far_m,omitzero"`  // to here
	RingDeg      Number   `json:"ring_deg,omitzero"`
	Window       Interval `json:"window_deg,omitzero"` // ring settings that keep it sharp
	LawSigma     Number   `json:"law_sigma_deg,omitzero"`
	Path         []Point  `json:"path"`

	*Seen // nil for a camera that neither turns nor leaves its axis, and has no place

	Along    *Track  `json:"-"` // from the camera's first place, along the axis
	Across   *Track  `json:"-"`
	Deltas   *Deltas `json:"-"`                // what tapes that were read add to the distances of the floor; nil: none were
	Up       *Track  `json:"-"`                // over the lens as the shot starts; nil: level with it
	SlantDeg float64 `json:"-"`                // of the tape, 0 where read along the axis
	Slant    Number  `json:"slant_m,omitzero"` // the slant tape as read

	Beside      string `json:"-"` // whom the subject is placed by at first, as in NORA - 35 cm; "" for nobody
	SwayAssumed bool   `json:"-"` // the plan does not say how much the subject sways
	SideSaid    bool   `json:"-"` // the plan says to which side the subject stands
	Person      bool   `json:"-"` // of a scene: speaks or moves in it
}

// A Point is a place on a subject's path.
type Point struct {
	T        Number `json:"t_s"`
	Distance Number `json:"distance_m"`
	Side     Number `json:"side_m"`
}

// A Line is a spoken line.
type Line struct {
	Who       string `json:"who"`
	Text      string `json:"text"`
	Start     Number `json:"start_s"`
	End       Number `json:"end_s"`
	Estimated bool   `json:"estimated"`

	*InCut // nil where no list has the shot

	To    string `json:"-"` // whom it is said to; empty: not said
	Off   bool   `json:"-"` // it is only heard here, and nobody has to be seen
	Words []Word `json:"-"`
	Pulls []int  `json:"-"` // the numbers of the pulls that have the line as their cue, directly or by a cue statement
}

// A Word is one word of a line, with the times in seconds at which it sounds.
type Word struct {
	Text       string
	Start, End float64
	Hangs      bool // it is the cue of a move of the focus
	Joined     bool // no blank stands before it, as behind a hyphen
}

// A Cue is a named moment.
type Cue struct {
	Name string `json:"name"`
	T    Number `json:"t_s"`

	*InCut // nil where no list has the shot
}

// An Action is something that a person does in the shot.
type Action struct {
	Text  string `json:"text"`
	Start Number `json:"start_s"`
	End   Number `json:"end_s"`
}

// A Pause is a time in which nobody speaks.
type Pause struct {
	Start Number `json:"start_s"`
	End   Number `json:"end_s"`
}

// Blocking is a move of a person ("moves"), of the camera or of the zoom. From and To
// are distances of a person; the zoom ("zoom") has focal lengths. Of the camera they are
// how far it has gone by all its moves of that kind: forth ("dolly"), to the right
// ("track"), up ("boom"); straight to another place ("camera"), by that move alone. A
// turn ("pan" or "tilt") has degrees to the right or up.
type Blocking struct {
	Who     string `json:"who,omitempty"`
	Kind    string `json:"kind"`
	Start   Number `json:"start_s"`
	End     Number `json:"end_s"`
	From    Number `json:"from_m,omitzero"`
	To      Number `json:"to_m,omitzero"`
	FromMM  Number `json:"from_mm,omitzero"`
	ToMM    Number `json:"to_mm,omitzero"`
	FromDeg Number `json:"from_deg,omitzero"`
	ToDeg   Number `json:"to_deg,omitzero"`
	Profile string `json:"profile"` // smooth or even; of a turn that stays with somebody: with
}

// A Pull is a move of the focus: a rack, or a follow.
type Pull struct {
	Number      int    `json:"number"` // from 1 within the shot
	Kind        string `json:"kind"`   // rack or follow
	From        string `json:"from,omitempty"`
	To          string `json:"to,omitempty"`
	Target      string `json:"target"` // as written
	Profile     string `json:"profile"`
	Anchor      string `json:"anchor,omitempty"`
	Start       Number `json:"start_s"`
	Land        Number `json:"land_s"`                  // of a follow: when it ends
	ScreenStart Number `json:"screen_start_s,omitzero"` // on the screen, where the camera runs at another speed
	ScreenLand  Number `json:"screen_land_s,omitzero"`
	StartFrame  int64  `json:"start_frame"` // as shot
	LandFrame   int64  `json:"land_frame"`
	FromM       Number `json:"from_m"`
	ToM         Number `json:"to_m"`

	FromDeg    Number   `json:"from_deg,omitzero"` // on the ring
	ToDeg      Number   `json:"to_deg,omitzero"`
	HandDeg    Number   `json:"hand_deg,omitzero"` // travel at the hand, positive
	WindowHand Interval `json:"window_hand_deg,omitzero"`
	OpenNear   bool     `json:"open_near,omitempty"` // the ring's near stop bounds the window
	OpenFar    bool     `json:"open_far,omitempty"`  // its far stop does
	Peak       Number   `json:"peak_deg_s,omitzero"` // at the hand
	Regrips    int      `json:"regrips"`
	Needed     Number   `json:"needed_s,omitzero"` // the shortest time that lands with the wanted chance
	Spread     Number   `json:"spread_deg,omitzero"`
	Chance     Number   `json:"probability,omitzero"`
	Ceiling    Number   `json:"ceiling,omitzero"`  // the chance with unlimited time
	Firm       bool     `json:"firm,omitempty"`    // ChanceBand does not cross what is wanted
	AtStop     bool     `json:"at_stop,omitempty"` // turning until the ring stops lands best

	// ChanceBand and CeilingBand are the least and the most of Chance and Ceiling, by
	// what is not known of hand and ring. Of a ring of which nothing is known they stand
	// alone.
	ChanceBand  Interval `json:"probability_band,omitzero"`
	CeilingBand Interval `json:"ceiling_band,omitzero"`

	OnPaper  Number   `json:"probability_on_paper,omitzero"` // Chance with the mark taken from a printed tape or disc
	LawSigma Number   `json:"law_sigma_deg,omitzero"`        // how well the law of the ring knows the mark, one sigma, degrees of the ring
	LawBound Number   `json:"law_bound_deg,omitzero"`        // how far the law may be off between marks, nineteen times in twenty
	Factor   Interval `json:"window_factor,omitzero"`        // what the true window may be of the computed one

	Lag          Number `json:"lag_m,omitzero"`             // of a follow, at its worst
	LagDeg       Number `json:"lag_deg,omitzero"`           // at the hand
	SharpShare   Number `json:"sharp_share,omitzero"`       // of the time of a follow, in the mean
	WorstShare   Number `json:"worst_share,omitzero"`       // of the worst half second of a follow
	WorstAt      Number `json:"worst_s,omitzero"`           // when that begins
	SubjectSpeed Number `json:"subject_speed_m_s,omitzero"` // of whom a rack goes to, as it lands

	Miss *Miss `json:"miss,omitempty"` // where it goes to somebody

	*InCut             // nil where no list has the shot
	*Hold              // nil where nobody knows which way the hand turns, or how far
	Near        Number `json:"near_m,omitzero"` // sharp from here once landed
	Far         Number `json:"far_m,omitzero"`
	LeftBlur    Number `json:"left_blur_arcmin,omitzero"`
	ReachedBlur Number `json:"reached_blur_arcmin,omitzero"`
	SeenFrom    Number `json:"seen_from_arcmin,omitzero"` // the blur from which the one left shows

	DiffractionMM Number `json:"diffraction_mm,omitzero"`  // the disc of diffraction once landed
	NearLoss      Number `json:"near_loss_stops,omitzero"` // of light, against infinity, once landed
	PlayShift     Number `json:"play_shift_deg,omitzero"`  // how far the ring stays short of the mark by play, degrees of the ring
	Breathing     Number `json:"breathing_percent,omitzero"`
	Because       string `json:"because,omitempty"`

	File   string `json:"file"`
	Line   int    `json:"line"`
	Column int    `json:"column"`

	// Asks is what the rack asks of the hand; its Travel is NaN where Chance does not apply.
	Asks hand.Pull `json:"-"`

	Goal     Target    `json:"-"`
	FromLens float64   `json:"-"` // the focus at the start, from the lens, metres
	ToLens   float64   `json:"-"` // at the landing
	Grips    []float64 `json:"-"` // times at which the hand lets go, seconds
	LostEach float64   `json:"-"` // what a re-grip costs, seconds
	Sures    []Sure    `json:"-"` // of a follow: the chance of being sharp, moment by moment
	Untimed  bool      `json:"-"` // no line says how long it takes: it is the shortest that lands as wanted
	Stays    bool      `json:"-"` // with whom the focus is on: a correction, not meant to be seen
}

// A Hold says where the thumb is on the ring or wheel in a pull, in hours of a clock
// face, above 0 and up to 12. That of the ring is seen from behind the camera. That of
// a wheel is seen as you face the wheel, and is for a wheel that turns clockwise
// towards infinity: one that turns the other way has the mirror image, 12 less the hours.
type Hold struct {
	HoldSays string `json:"hold"`
	HoldOn   string `json:"hold_on"`                     // ring or wheel
	HoldFrom Number `json:"hold_from_clock"`             // as the pull starts
	HoldTo   Number `json:"hold_to_clock"`               // as it lands
	Regrip   Number `json:"regrip_clock,omitzero"`       // where the hand lets go
	RegripTo Number `json:"regrip_to_clock,omitzero"`    // where it takes hold at the last re-grip
	Kept     bool   `json:"hold_kept,omitempty"`         // there is no time to let go after the pull before
	Hurried  bool   `json:"hold_without_time,omitempty"` // nor here, but no hold reaches through both
}

// Mirrored returns the hold of a wheel that turns the other way.
func (h Hold) Mirrored() Hold {
	for _, at := range []*Number{&h.HoldFrom, &h.HoldTo, &h.Regrip, &h.RegripTo} {
		if *at = 12 - *at; *at == 0 {
			*at = 12
		}
	}
	return h
}

// A Rest is a time in which the focus stays on a person. It says how often the person
// is sharp while they and the camera sway.
type Rest struct {
	Subject string   `json:"subject"` // if there are several, the one who is sharp least often
	Start   Number   `json:"start_s"`
	End     Number   `json:"end_s"`
	Share   Number   `json:"sharp_share"` // of the time
	Stays   Number   `json:"stays_sharp"` // probability of being sharp throughout
	Sway    Number   `json:"sway_m"`      // of both together, RMS
	Zone    Interval `json:"zone_m"`      // how far before and behind they are sharp
}

// A Start is the focus at the start of the shot.
type Start struct {
	To     string `json:"to,omitempty"`    // the subject
	Target string `json:"target"`          // as written
	M      Number `json:"to_m"`            // as the tape reads it
	Deg    Number `json:"to_deg,omitzero"` // of the ring
	Miss   *Miss  `json:"miss,omitempty"`  // where the focus is on somebody
}

// A Miss says how far a person may stand from the mark that the focus is on. Lengths
// are in metres and not negative. They are infinite if the distance never matters.
// Left and right are as the camera sees them, and known only if the plan states a side
// for the person.
type Miss struct {
	SoftForward Number `json:"soft_forward_m"` // towards the camera, until they are soft
	SoftBack    Number `json:"soft_back_m"`
	SeenForward Number `json:"seen_forward_m"` // until the audience sees it
	SeenBack    Number `json:"seen_back_m"`
	Left        Number `json:"left_m,omitzero"` // until they are out of the picture
	Right       Number `json:"right_m,omitzero"`
	RingNear    Number `json:"ring_deg_10cm_near,omitzero"` // turn of the ring, degrees, for ten centimetres nearer
	RingFar     Number `json:"ring_deg_10cm_far,omitzero"`
}

// A Cause groups the findings of a shot that have one cause: two or more with the same
// code and severity.
type Cause struct {
	Code     string
	Severity string // note, warning or error
	Flags    []int  // their numbers, from 1
	Cure     string // the change of the whole shot that cures most of them; "" if none was found
	Mends    int    // how many findings it cures
}

// A Flag is a finding as a drawing shows it.
type Flag struct {
	Number   int    // from 1 within the shot
	Severity string // note, warning or error
	Code     string
	Text     string  // the message
	Cures    string  // the cures as one phrase; may be empty
	Time     float64 // where it lies in the shot, seconds
	Row      string  // the row that it belongs on: lines, camera, distance, sharp or hand; "" for the whole shot
	Pull     int     // the pull that it is about; 0: none
	Who      string  // the subject that it is about; "": none, or several

	Cause     string   // the letter of its cause
	CureTexts []string // the cures one by one: what to write
}
