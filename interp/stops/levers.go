// Levers: what opens a window where there is none. Every one is applied, and
// the search made anew, before it is said.

package stops

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"pullscore/interp/plan"
	"pullscore/interp/units"
)

// A Lever is one thing done differently that opens a window.
type Lever struct {
	Kind   string      `json:"kind"` // time, gear, wheel, distance, lens or sensor
	Text   string      `json:"text"`
	Value  plan.Number `json:"value"`
	Unit   string      `json:"unit"`
	Over   []RackTime  `json:"over,omitempty"` // of time: every rack that is to be longer
	Camera string      `json:"camera,omitempty"`
	Lens   string      `json:"lens,omitempty"`
	Back   plan.Number `json:"back_m,omitzero"` // how much farther the camera stands
	Window Window      `json:"window"`

	Change Change `json:"-"`
}

// A RackTime is a length that a rack is to have.
type RackTime struct {
	Pull int         `json:"pull"`
	Over plan.Number `json:"over_s"`
}

// levers returns those that open a window by themselves.
func (s *search) levers(kit Kit) []Lever {
	list := []Lever{}
	for _, find := range []func(Kit) (Lever, bool){s.timeLever, s.gearLever, s.wheelLever, s.distanceLever, s.lensLever, s.sensorLever} {
		if l, ok := find(kit); ok {
			list = append(list, l)
		}
	}
	return list
}

// try completes a lever with the window that it opens, if it opens one.
func (s *search) try(l Lever) (Lever, bool) {
	w, ok := s.opens(l.Change)
	l.Window = w
	if l.Kind != "distance" && l.Kind != "lens" {
		l.Back = plan.None()
	}
	return l, ok
}

// timeLever gives the racks that miss the time that they need, at the stop that
// needs the least: the smallest that meets all else.
func (s *search) timeLever(Kit) (Lever, bool) {
	butLanding := func(d demand) bool { return d.kind == Lands }
	c := s.change
	for _, v := range s.tried {
		if s.holds(v.met, butLanding) {
			c.Stop = float64(v.Number)
		}
	}
	if c.Stop == s.change.Stop {
		return Lever{}, false
	}
	c.Needs = true
	t, ok := s.retake(c)
	if !ok {
		return Lever{}, false
	}
	l := Lever{Kind: "time", Unit: "s", Change: s.change}
	l.Change.Over = map[int]float64{}
	for _, p := range t.Shot.Pulls {
		if p.Kind != "rack" || lands(t.Shot, p) {
			continue
		}
		if !p.Needed.Known() {
			return Lever{}, false // no time does
		}
		over := math.Ceil(float64(p.Needed)*10-slack) / 10
		l.Over = append(l.Over, RackTime{p.Number, plan.Number(over)})
		l.Change.Over[p.Number] = over
		l.Value = max(l.Value, plan.Number(over))
	}
	l.Text = timeText(l.Over)
	return s.try(l)
}

func timeText(list []RackTime) string {
	text := ""
	for i, r := range list {
		if i > 0 {
			text += ", "
		}
		text += fmt.Sprintf("rack %d over %s", r.Pull, words.Time(float64(r.Over)))
	}
	return text
}

// Gears and wheels that a follow focus may have (common practice, no source).
var (
	gears  = []float64{0.5, 0.75, 1, 1.25, 1.5, 2, 2.5, 3, 4}
	wheels = []float64{0.06, 0.08, 0.10, 0.12, 0.14, 0.16, 0.20}
)

// GearsFrom lists the usual gears other than g, the nearest first.
func GearsFrom(g float64) []float64 { return nearestFirst(gears, g) }

func nearestFirst(list []float64, to float64) []float64 {
	list = slices.DeleteFunc(slices.Clone(list), func(x float64) bool { return math.Abs(x-to) < 1e-9 })
	slices.SortStableFunc(list, func(x, y float64) int {
		return cmp.Compare(math.Abs(math.Log(x/to)), math.Abs(math.Log(y/to)))
	})
	return list
}

func (s *search) gearLever(Kit) (Lever, bool) {
	if s.shot.Optics.Ring == nil || s.shot.TravelDeg > 0 {
		return Lever{}, false
	}
	for _, g := range GearsFrom(float64(s.shot.Gear)) {
		l := Lever{Kind: "gear", Text: "gear " + units.Decimal(g, 2), Value: plan.Number(g), Unit: "gear", Change: s.change}
		l.Change.Gear = g
		if l, ok := s.try(l); ok {
			return l, true
		}
	}
	return Lever{}, false
}

// wheelLever tries other wheels where there is one.
func (s *search) wheelLever(Kit) (Lever, bool) {
	if s.shot.Optics.Ring == nil || !s.shot.WheelMM.Known() {
		return Lever{}, false
	}
	for _, w := range nearestFirst(wheels, float64(s.shot.WheelMM)/1000) {
		l := Lever{Kind: "wheel", Text: "wheel " + words.Millimetres(w), Value: plan.Number(w * 1000), Unit: "mm", Change: s.change}
		l.Change.Wheel = w
		if l, ok := s.try(l); ok {
			return l, true
		}
	}
	return Lever{}, false
}

// reference is the tape reading of what the shot is framed for: where the
// focus starts, or where that is infinity, what the first pull goes to.
func (s *search) reference() (metres float64, ok bool) {
	d := s.shot.ToTape(s.shot.Optics.Start.Distance, 0)
	for i := 0; !finite(d) && i < len(s.shot.Pulls); i++ {
		d = float64(s.shot.Pulls[i].ToM)
	}
	return d, finite(d) && d > 0
}

func finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }

// How far computed levers reach, and how finely they are tried: by tenths, and
// the factor is then closed in on to a two-hundredth.
const (
	most     = 2.5
	step     = 1.1
	fineStep = 1.005
)

// factor returns the factor nearest to 1, above it or else below, with which a
// lever opens a window.
func (s *search) factor(above, below float64, lever func(k float64) Lever) (Lever, bool) {
	for _, towards := range []float64{above, below} {
		if towards <= 0 {
			continue
		}
		by := step
		if towards < 1 {
			by = 1 / step
		}
		for k := by; math.Abs(math.Log(k)) <= math.Abs(math.Log(towards)); k *= by {
			if l, ok := s.try(lever(k)); ok {
				return s.nearer(k/by, k, l, lever), true
			}
		}
	}
	return Lever{}, false
}

// nearer closes in on the factor between one that opens nothing and one that
// opens a window, and keeps the nearest that does.
func (s *search) nearer(not, does float64, best Lever, lever func(k float64) Lever) Lever {
	for math.Abs(math.Log(does/not)) > math.Log(fineStep) {
		k := math.Sqrt(not * does)
		if l, ok := s.try(lever(k)); ok {
			does, best = k, l
		} else {
			not = k
		}
	}
	return best
}

// distanceLever takes the camera farther away, or else nearer, with the same
// lens: the picture then is wider or tighter.
func (s *search) distanceLever(Kit) (Lever, bool) {
	d, ok := s.reference()
	if !ok {
		return Lever{}, false
	}
	return s.factor(most, 1/most, func(k float64) Lever {
		back := awayFromZero(d * (k - 1))
		l := Lever{Kind: "distance", Text: "camera " + s.steps(back) + ", framing then changes", Value: plan.Number(back), Unit: "m", Back: plan.Number(back), Change: s.change}
		l.Change.Back += back
		return l
	})
}

// awayFromZero rounds a way to whole centimetres, never to a shorter one.
func awayFromZero(d float64) float64 {
	return math.Copysign(math.Ceil(math.Abs(d)*100-slack)/100, d)
}

// steps says where the camera goes.
func (s *search) steps(back float64) string {
	word := "back"
	if back < 0 {
		word = "nearer"
	}
	u := units.Style{}
	if s.shot.Imperial {
		u.System = units.Imperial
	}
	return u.Gap(math.Abs(back)) + " " + word
}
