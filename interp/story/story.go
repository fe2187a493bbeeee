package story

import (
	"cmp"
	"slices"

	"pullscore/interp/plan"
)

// A Scene is the story of the focus in one plan.
type Scene struct {
	Title    string      `json:"title"`
	File     string      `json:"file"`
	Duration plan.Number `json:"duration_s"` // of all its shots
	Stations []Station   `json:"stations"`   // far to near
	Shots    []Shot      `json:"shots"`
	Figures
}

// A Station is somebody or something that the focus stays on in a scene.
type Station struct {
	Name     string      `json:"name"`
	Distance plan.Number `json:"distance_m"` // where it is first, by the tape
	Stays    int         `json:"stays"`
	Held     plan.Number `json:"held_s"`
}

// A Shot is a shot as stays and racks, which fill it from its start to its end. Times are
// those of the shot.
type Shot struct {
	ID       string      `json:"id"`
	Duration plan.Number `json:"duration_s"`
	Stays    []Stay      `json:"stays"`
	Racks    []Rack      `json:"racks"`
}

// A Stay is a time in which the focus stays on somebody, also while it follows them: from
// a landing to the next start.
type Stay struct {
	On    string      `json:"on"`
	Start plan.Number `json:"start_s"`
	End   plan.Number `json:"end_s"`
}

// Length returns how long it is, in seconds.
func (s Stay) Length() float64 { return float64(s.End - s.Start) }

// What a rack hangs on.
const (
	OnWord  = "word"
	OnCue   = "cue"    // or on anything else that is no word
	Because = "reason" // the plan gives a reason in words, and no moment
	NoCause = "none"
)

// Which way a rack goes.
const (
	ToNear = "near"
	ToFar  = "far"
	Level  = "level" // as far from the lens
)

// A Rack is a rack of the focus.
type Rack struct {
	Number int         `json:"number"`
	From   string      `json:"from"`
	To     string      `json:"to"`
	Start  plan.Number `json:"start_s"`
	Land   plan.Number `json:"land_s"`
	Way    string      `json:"way"`
	On     string      `json:"on"`
}

// Figures are those of a scene or of the whole film.
type Figures struct {
	Racks   int         `json:"racks"`
	Near    int         `json:"to_near"`
	Far     int         `json:"to_far"`
	Word    int         `json:"on_word"`
	Cue     int         `json:"on_cue"`
	Reason  int         `json:"with_reason"`
	None    int         `json:"without_reason"`
	Count   int         `json:"stays"`
	Bins    []int       `json:"stays_by_length"`        // as Edges part them
	Median  plan.Number `json:"median_stay_s,omitzero"` // half of the stays are shorter
	Longest plan.Number `json:"longest_stay_s,omitzero"`
	RackMid plan.Number `json:"median_rack_s,omitzero"`
	RackMax plan.Number `json:"longest_rack_s,omitzero"`
	Lines   plan.Number `json:"lines_s"`                  // of speakers who can be in focus
	Sharp   plan.Number `json:"lines_sharp_s"`            // with the speaker sharp, weighted by the chance
	Own     plan.Number `json:"own_lines_share,omitzero"` // the second of the first
	Holders []Holder    `json:"holders"`
}

// A Holder is who holds the focus, and for how long.
type Holder struct {
	Name   string      `json:"name"`
	Held   plan.Number `json:"held_s"`
	Share  plan.Number `json:"share"` // of all stays
	Speaks bool        `json:"speaks"`
}

// Of returns the story of a plan.
func Of(p *plan.Plan) *Scene {
	sc := &Scene{Title: p.Title, File: p.File, Shots: []Shot{}}
	t := newTally()
	for _, s := range p.Shots {
		shot := shotOf(s)
		sc.Duration += shot.Duration
		sc.Shots = append(sc.Shots, shot)
		t.add(s, &shot)
	}
	sc.Figures = t.figures()
	sc.Stations = stations(p, sc.Shots)
	return sc
}

// stations returns on whom the focus stays in a scene, far to near by where they are in
// the first shot in which it does, then by their side and their name.
func stations(p *plan.Plan, shots []Shot) []Station {
	list := []Station{}
	sides := map[string]float64{}
	for i, s := range shots {
		for _, stay := range s.Stays {
			k := slices.IndexFunc(list, func(st Station) bool { return st.Name == stay.On })
			if k < 0 {
				k = len(list)
				distance, side := placeOf(p.Shots[i], stay)
				sides[stay.On] = side
				list = append(list, Station{Name: stay.On, Distance: distance})
			}
			list[k].Stays++
			list[k].Held += stay.End - stay.Start
		}
	}
	slices.SortStableFunc(list, func(a, b Station) int {
		return cmp.Or(cmp.Compare(b.Distance, a.Distance), cmp.Compare(sides[a.Name], sides[b.Name]), cmp.Compare(a.Name, b.Name))
	})
	return list
}

// placeOf returns how far from the camera who is stayed on is at the start of a shot, by
// the tape, and how far to the right, in metres. Of a place that is no subject it is
// where the focus is.
func placeOf(s *plan.Shot, stay Stay) (distance plan.Number, side float64) {
	if u := s.Subject(stay.On); u != nil {
		return u.Distance, float64(u.Side)
	}
	t := float64(stay.Start)
	return plan.Number(s.ToTape(s.FocusAt(t), t)), 0
}
