// What the stage draws: a shot in numbers, frame by frame.

package preview

import (
	"math"
	"net/http"
	"strconv"

	"pullscore/cmd/internal/preview/sampled"
	"pullscore/cmd/internal/rebuild"
	"pullscore/interp/plan"
	"pullscore/interp/units"
	"pullscore/interp/viewer"
	"pullscore/optics"
)

// lawSamples is into how many steps the law of a ring is cut.
const lawSamples = 1024

// A toldStage is a shot as the stage draws it. A series has a figure a sample,
// or one alone where all are the same; null stands for infinity. Distances are
// metres from the lens unless they say otherwise.
type toldStage struct {
	Plan     string      `json:"plan"`
	Shot     string      `json:"shot"`
	Version  uint64      `json:"version"` // of the plan
	Rate     [2]int64    `json:"rate"`    // frames a second of set time, a fraction
	Every    int64       `json:"every"`   // frames from sample to sample
	Samples  int64       `json:"samples"`
	Duration plan.Number `json:"duration_s"`
	Beat     plan.Number `json:"beat_s"` // of a count-in

	Stop  string      `json:"stop"`  // that the figures are for
	Stops []toldStop  `json:"stops"` // that the lens has
	Sharp plan.Number `json:"sharp_arcmin"`
	Seen  plan.Number `json:"seen_arcmin"` // from here on blur is noticed
	// ArcminPerWidth is the blur, arc minutes, whose disc is as wide as the
	// picture: it ties what the eye sees to what is drawn.
	ArcminPerWidth plan.Number  `json:"arcmin_per_width"`
	Screen         *plan.Screen `json:"screen,omitempty"`
	SensorW        plan.Number  `json:"sensor_width_mm"`
	SensorH        plan.Number  `json:"sensor_height_mm"`

	Focal  sampled.Series `json:"focal_m"`
	Number sampled.Series `json:"f_number"`
	Pupil  sampled.Series `json:"pupil_behind_m"` // the entrance pupil behind the front principal plane
	Focus  sampled.Series `json:"focus_m"`
	// Scale is how large a thing is drawn: metres on the sensor for a metre at
	// a metre from the entrance pupil. It changes as the lens breathes.
	Scale sampled.Series `json:"scale_m"`

	Imperial bool            `json:"imperial,omitempty"` // the plan speaks of feet and inches
	Camera   *toldCamera     `json:"camera,omitempty"`   // nil where it only goes along its axis
	Subjects []toldSubject   `json:"subjects"`
	Lines    []toldLine      `json:"lines"`
	Cues     []plan.Cue      `json:"cues"`
	Actions  []plan.Action   `json:"actions"`
	Pulls    []toldStagePull `json:"pulls"`
	Ring     *toldRing       `json:"ring,omitempty"`
	Puller   string          `json:"puller,omitempty"`
	Moments  []toldMoment    `json:"moments,omitempty"` // at the plan's own stop alone
}

// A toldStop is a stop by its name and its number, on the scale that the shot speaks.
type toldStop struct {
	Name string      `json:"name"`
	Mark plan.Number `json:"mark"`
}

type toldSubject struct {
	Name     string         `json:"name"`
	Person   bool           `json:"person"` // speaks or moves somewhere in the plan
	Deep     plan.Number    `json:"deep_m"`
	Distance sampled.Series `json:"lens_distance_m"`
	Side     sampled.Series `json:"side_m"`
	Above    sampled.Series `json:"above_m,omitempty"` // of a camera that turns or leaves its axis
	Eyes     sampled.Series `json:"eyes_m,omitempty"`  // of a person in a scene: over what they stand on
	Blur     sampled.Series `json:"blur_arcmin"`
}

type toldLine struct {
	Who   string      `json:"who"`
	Start plan.Number `json:"start_s"`
	End   plan.Number `json:"end_s"`
	Words []toldWord  `json:"words"`
}

type toldWord struct {
	Text  string      `json:"text"`
	Start plan.Number `json:"start_s"`
	End   plan.Number `json:"end_s"`
}

// A toldStagePull is a pull with what a rehearsal needs. Degrees are at the
// hand; those of a pull that is not made by angle are left out.
type toldStagePull struct {
	Number int `json:"number"`
	// Sign is the same as long as a try at the pull means the same.
	Sign    string      `json:"sign"`
	Kind    string      `json:"kind"`
	From    string      `json:"from,omitempty"`
	To      string      `json:"to,omitempty"`
	Target  string      `json:"target"`
	Anchor  string      `json:"anchor,omitempty"`
	Start   plan.Number `json:"start_s"`
	Land    plan.Number `json:"land_s"`
	FromDeg plan.Number `json:"from_deg,omitzero"`
	ToDeg   plan.Number `json:"to_deg,omitzero"`
	// Window are the settings that keep the goal sharp; an edge that is open
	// has nothing behind it but the ring's stop.
	Window   plan.Interval `json:"window_deg,omitzero"`
	OpenNear bool          `json:"open_near,omitempty"`
	OpenFar  bool          `json:"open_far,omitempty"`
	// Chance and Wanted are how likely the landing model has it land, and how likely the
	// plan wants it.
	Chance plan.Number `json:"probability,omitzero"`
	Wanted plan.Number `json:"wanted,omitzero"`
}

// A toldRing is the focus ring as the hand has it: the law from the near stop
// to the far one in even steps.
type toldRing struct {
	Throw    plan.Number    `json:"throw_deg"`       // at the hand
	Sensor   sampled.Series `json:"from_sensor_m"`   // the distance that each step sets, from the sensor
	TurnsTo  string         `json:"turns,omitempty"` // left or right, to infinity
	Breathes plan.Number    `json:"breathes_percent,omitzero"`
	Hand     sampled.Series `json:"hand_deg"` // as planned, a figure a sample
}

// getStage answers with a shot for the stage, at the plan's stop or at another
// of the lens: plan=KEY, shot=ID, stop=MARK.
func (s *Server) getStage(w http.ResponseWriter, r *http.Request) {
	query := r.URL.Query()
	p := s.shown.Load().state.Plan(query.Get("plan"))
	if p == nil {
		http.Error(w, "No such plan is watched.", http.StatusNotFound)
		return
	}
	drawn := drawnOf(p)
	shot := shotOf(drawn, query.Get("shot"))
	if shot == nil || !stageable(shot) {
		http.Error(w, "That shot cannot be shown.", http.StatusNotFound)
		return
	}
	mark := query.Get("stop")
	if mark != "" {
		n, err := strconv.ParseFloat(mark, 64)
		if err != nil || !hasStop(shot, n) {
			http.Error(w, "The lens has no such stop.", http.StatusBadRequest)
			return
		}
		shot = atStop(shot, n)
	}
	t := tellStage(shot, people(drawn), standsOn(drawn, shot))
	t.Plan, t.Version = p.Key, p.Version
	if mark == "" {
		t.Moments = tellMoments(shot)
	}
	reply(w, t)
}

// drawnOf returns what the page shows of a plan: its last reading without
// errors, or as far as it could be computed where there has been none.
func drawnOf(p *rebuild.Plan) *plan.Plan {
	if p.Good != nil {
		return p.Good
	}
	return p.Latest
}

func shotOf(p *plan.Plan, id string) *plan.Shot {
	for _, s := range p.Shots {
		if s.ID == id {
			return s
		}
	}
	return nil
}

// stageable reports whether a shot was computed as far as the stage needs.
func stageable(s *plan.Shot) bool {
	return s.Optics.Focal != nil && s.Optics.Camera != nil && s.Optics.Number > 0 && finite(s.Duration)
}

// atStop returns the shot at another stop: the focus and all that moves stay.
func atStop(s *plan.Shot, mark float64) *plan.Shot {
	other := *s
	other.Optics.Number = s.Spoken().Number(mark)
	other.Stop = stopName(s, mark)
	return &other
}

// slack is how far beyond a lens's stops a mark may lie, since marks are
// rounded: a twelfth of a stop.
const slack = 1.03

func hasStop(s *plan.Shot, mark float64) bool {
	in := s.Spoken()
	return mark*slack >= in.Widest && mark <= in.Smallest*slack
}

func stopName(s *plan.Shot, mark float64) string {
	return units.Style{}.Stop(mark, s.Spoken().T, units.Exact)
}

// people returns who of the plan's subjects speaks, walks or sways: the
// language names subjects and does not say which are persons.
func people(p *plan.Plan) map[string]bool {
	who := map[string]bool{}
	for _, s := range p.Shots {
		for _, l := range s.Lines {
			who[l.Who] = true
		}
		for _, b := range s.Blocking {
			if b.Kind == "moves" { // else it is the camera that does
				who[b.Who] = true
			}
		}
		for _, u := range s.Subjects {
			if u.Sways > 0 {
				who[u.Name] = true
			}
		}
	}
	return who
}

func tellStage(s *plan.Shot, people map[string]bool, on map[string]float64) *toldStage {
	o := &s.Optics
	times := sampled.Of(s)
	t := &toldStage{
		Shot: s.ID, Every: times.Every, Samples: times.N, Duration: s.Duration, Beat: plan.Number(s.Tick()),
		Stop: s.Stop, Stops: stopsOf(s), Screen: s.Screen,
		Sharp: plan.Number(o.Criterion * o.ArcminPerBlur), Seen: viewer.Seen,
		ArcminPerWidth: plan.Number(o.ArcminPerBlur * o.PictureW()),
		SensorW:        plan.Number(o.PictureW() * 1000), SensorH: plan.Number(o.SensorH * 1000),
		Focal:    times.Figure(s.Focal),
		Number:   times.Figure(func(t float64) float64 { return s.Setting(t).Number }),
		Pupil:    times.Figure(func(t float64) float64 { return pupilBehind(s, t) }),
		Focus:    times.Figure(s.FocusAt),
		Scale:    times.Figure(func(t float64) float64 { return scaleAt(s, t) }),
		Camera:   tellCamera(s, times),
		Subjects: []toldSubject{}, Lines: tellLines(s), Cues: s.Cues, Actions: s.Actions, Pulls: tellStagePulls(s),
		Ring: tellRing(s, times), Puller: s.Puller, Imperial: s.Imperial,
	}
	t.Rate[0], t.Rate[1] = perSecond(s)
	for _, u := range s.Subjects {
		told := tellSubject(s, u, people[u.Name], times)
		if on, ok := on[u.Name]; ok && u.Up != nil {
			told.Eyes = tellEyes(s, u, on, times)
		}
		t.Subjects = append(t.Subjects, told)
	}
	return t
}

// stopsOf returns the third stops that the lens has, and the plan's own.
func stopsOf(s *plan.Shot) []toldStop {
	list := []toldStop{}
	for _, stop := range optics.ThirdStops() {
		if hasStop(s, stop.Mark) {
			list = append(list, toldStop{Name: stopName(s, stop.Mark), Mark: plan.Number(stop.Mark)})
		}
	}
	return list
}

// pupilBehind is how far the entrance pupil, from which the lens sees, lies
// behind the front principal plane, metres.
func pupilBehind(s *plan.Shot, t float64) float64 {
	p := s.Optics.Pupil
	if p == 0 {
		p = 1
	}
	return s.Focal(t) * (1/p - 1)
}

// scaleAt is the size of the picture. A plane in focus at x is imaged at
// f/(x-f) of its size and lies x+z from the entrance pupil, so a thing at a
// metre from there comes to f(x+z)/(x-f); one whose breathing is known, to its
// focal length and the share of that which the ring has turned from infinity.
// That the picture grows as the focus comes nearer is an assumption there: the
// lens says how much only.
func scaleAt(s *plan.Shot, t float64) float64 {
	f, x := s.Focal(t), s.FocusAt(t)
	if o := &s.Optics; o.Ring != nil && !math.IsNaN(o.Breathes) {
		if deg := s.RingDeg(x, t); !math.IsNaN(deg) {
			return f * (1 + o.Breathes/100*(1-deg/o.Ring.Throw()))
		}
	}
	if grown := s.Grown(x, t); !math.IsNaN(grown) {
		return f * (1 + grown/100)
	}
	if math.IsInf(x, 1) {
		return f
	}
	return f * (x + pupilBehind(s, t)) / (x - f)
}

func tellLines(s *plan.Shot) []toldLine {
	lines := []toldLine{}
	for _, l := range s.Lines {
		t := toldLine{Who: l.Who, Start: l.Start, End: l.End, Words: []toldWord{}}
		for _, word := range l.Words {
			t.Words = append(t.Words, toldWord{Text: word.Text, Start: plan.Number(word.Start), End: plan.Number(word.End)})
		}
		lines = append(lines, t)
	}
	return lines
}

func tellStagePulls(s *plan.Shot) []toldStagePull {
	pulls := []toldStagePull{}
	for _, p := range s.Pulls {
		if !finite(p.Start) || !finite(p.Land) {
			continue
		}
		pulls = append(pulls, toldStagePull{
			Number: p.Number, Sign: signOf(s, p), Kind: p.Kind, From: p.From, To: p.To, Target: p.Target, Anchor: p.Anchor,
			Start: p.Start, Land: p.Land,
			FromDeg: p.FromDeg * s.Gear, ToDeg: p.ToDeg * s.Gear,
			Window: p.WindowHand, OpenNear: p.OpenNear, OpenFar: p.OpenFar, Chance: p.Chance, Wanted: s.Wanted,
		})
	}
	return pulls
}

// tellRing returns the ring of a lens that is pulled by angle, or nil.
func tellRing(s *plan.Shot, times sampled.Samples) *toldRing {
	law := s.Optics.Ring
	if law == nil {
		return nil
	}
	r := &toldRing{
		Throw: plan.Number(law.Throw()) * s.Gear, TurnsTo: s.Optics.TurnsTo, Breathes: plan.Number(s.Optics.Breathes),
		Sensor: make(sampled.Series, lawSamples+1), Hand: times.Figure(s.HandAt),
	}
	for i := range r.Sensor {
		r.Sensor[i] = law.Distance(law.Throw() * float64(i) / lawSamples)
	}
	return r
}
