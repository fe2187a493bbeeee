// What the camera does, as curves: a lane for each way in which it turns or goes. A lane
// has a scale of its own. 0 is where the camera starts, but of a camera that has a place in
// a scene a pan is told from upstage and a tilt from level. A camera that is taken straight
// to another place has a lane for how far it has gone.

package lanes

import (
	"math"
	"slices"
	"strings"

	"pullscore/interp/plan"
	"pullscore/render/score/bands"
	"pullscore/render/sheet"
)

// A Lane is one way in which the camera turns or goes.
type Lane struct {
	Name      string
	note      string                  // which way up is, where it does not say so itself
	more      string                  // the word of a move to a greater value
	less      string                  // and to a smaller one
	angle     bool                    // degrees; else metres
	At        func(t float64) float64 // the value at a time, in seconds
	Moves     []Move
	Low, High float64 // what it shows
	First     float64 // the value at the start
}

// A Move is a move of the camera in its lane. Seconds; degrees or metres.
type Move struct {
	Start, End float64
	who        string     // to whom it goes, or with whom
	By         float64    // how far, in all
	Peak       float64    // the greatest speed, a second
	At         float64    // when it is reached
	angle      bool       // degrees
	parts      [3]float64 // of a camera taken straight to another place: in, right and up, metres
}

// Of returns the lanes of a shot: none of a camera that only goes along its
// axis, which the row of moves says.
func Of(s *plan.Shot) []Lane {
	if s.Optics.Rig == nil {
		return nil
	}
	o := &s.Optics
	free, bound := parted(s)
	slides := func(part func(plan.Slide) float64) (func(float64) float64, []Move) { return slidesOf(bound, part) }
	push, ins := slides(func(c plan.Slide) float64 { return along(o, c) })
	track, sides := slides(func(c plan.Slide) float64 { return across(o, c) })
	boom, ups := slides(func(c plan.Slide) float64 { return c.Z })
	way, ways := slidesOf(free, length)
	for i := range ways {
		ways[i].parts = [3]float64{along(o, free[i]), across(o, free[i]), free[i].Z}
	}
	all := []Lane{
		{Name: "pan", note: "right is up", more: "right", less: "left", angle: true, At: func(t float64) float64 { return s.Stands(t).Pan }, Moves: turnsOf(s, "pan")},
		{Name: "tilt", more: "up", less: "down", angle: true, At: func(t float64) float64 { return o.Pose(t).Tilt }, Moves: turnsOf(s, "tilt")},
		{Name: "boom", more: "up", less: "down", At: boom, Moves: ups},
		{Name: "track", note: "right is up", more: "right", less: "left", At: track, Moves: sides},
		{Name: "dolly", note: "in is up", more: "in", less: "out", At: func(t float64) float64 { return push(t) + o.Camera.At(t) - o.Camera.At(0) }, Moves: append(ins, stepsOf(o)...)},
		{Name: "way", note: "how far gone", At: way, Moves: ways},
	}
	all = slices.DeleteFunc(all, func(l Lane) bool { return len(l.Moves) == 0 })
	for i := range all {
		all[i].fit(s)
	}
	return all
}

// parted returns the slides that take the camera straight to another place, which the plan
// has as moves of the camera, and all others.
func parted(s *plan.Shot) (free, bound []plan.Slide) {
	for _, c := range s.Optics.Rig.Slides {
		if isFree(s, c) {
			free = append(free, c)
		} else {
			bound = append(bound, c)
		}
	}
	return free, bound
}

// isFree reports whether a slide is such a move: one that starts, lands and goes as far.
func isFree(s *plan.Shot, c plan.Slide) bool {
	const least = 1e-4 // seconds, and metres: less is rounding
	if length(c) < least {
		return false
	}
	near := func(a plan.Number, b float64) bool { return math.Abs(float64(a)-b) < least }
	return slices.ContainsFunc(s.Blocking, func(b plan.Blocking) bool {
		return b.Kind == "camera" && near(b.Start, c.Start) && near(b.End, c.End) && near(b.To-b.From, length(c))
	})
}

// length returns how far a slide takes the camera.
func length(c plan.Slide) float64 { return math.Sqrt(c.X*c.X + c.Y*c.Y + c.Z*c.Z) }

// along returns how far a slide takes the camera the way it looks as the slide starts.
func along(o *plan.Optics, c plan.Slide) float64 {
	sin, cos := math.Sincos(o.Pose(c.Start).Pan * math.Pi / 180)
	return c.X*sin + c.Y*cos
}

// across returns how far a slide takes the camera to its right.
func across(o *plan.Optics, c plan.Slide) float64 {
	sin, cos := math.Sincos(o.Pose(c.Start).Pan * math.Pi / 180)
	return c.X*cos - c.Y*sin
}

// slidesOf returns the sum of one part of slides as a function of time, in metres, and the
// slides that have any of it.
func slidesOf(list []plan.Slide, part func(plan.Slide) float64) (at func(t float64) float64, moves []Move) {
	const least = 1e-4 // a tenth of a millimetre is rounding
	var own []plan.Slide
	var by []float64
	for _, c := range list {
		if v := part(c); math.Abs(v) >= least {
			own, by = append(own, c), append(by, v)
			moves = append(moves, newMove(c.Start, c.End, v, c.Smooth))
		}
	}
	return func(t float64) (sum float64) {
		for i, c := range own {
			sum += by[i] * plan.Ease((t-c.Start)/(c.End-c.Start), c.Smooth)
		}
		return sum
	}, moves
}

// stepsOf returns the moves of a camera along the axis of its start.
func stepsOf(o *plan.Optics) (moves []Move) {
	for _, st := range o.Camera.Steps {
		if by := o.Camera.At(st.End) - o.Camera.At(st.Start); by != 0 {
			moves = append(moves, newMove(st.Start, st.End, by, st.Smooth))
		}
	}
	return moves
}

// Alike reports whether two moves are the same to a hundredth of a second, and to a
// hundredth of a degree or a tenth of a millimetre.
func (m Move) Alike(o Move) bool {
	off := 1e-4
	if m.angle {
		off = 0.01
	}
	for i := range m.parts {
		if math.Abs(m.parts[i]-o.parts[i]) >= 1e-4 {
			return false
		}
	}
	return m.who == o.who && math.Abs(m.Start-o.Start) < 0.01 && math.Abs(m.End-o.End) < 0.01 && math.Abs(m.By-o.By) < off
}

// peakOfSmooth is the greatest speed of a minimum-jerk move over its mean speed.
const peakOfSmooth = 1.875

func newMove(start, end, by float64, smooth bool) Move {
	m := Move{Start: start, End: end, By: by, At: (start + end) / 2, Peak: math.Abs(by) / (end - start)}
	if smooth {
		m.Peak *= peakOfSmooth
	}
	return m
}

// turnsOf returns the turns of a kind.
func turnsOf(s *plan.Shot, kind string) (moves []Move) {
	for _, t := range s.Turns {
		if t.Kind != kind {
			continue
		}
		m := Move{angle: true, Start: float64(t.Start), End: float64(t.End), By: float64(t.To - t.From), Peak: float64(t.Peak)}
		m.At = (m.Start + m.End) / 2
		switch {
		case t.Profile == "with":
			m.who, m.At = "with "+t.Target, fastest(s, kind, m.Start, m.End)
		case t.Target != "":
			m.who = "to " + t.Target
		}
		moves = append(moves, m)
	}
	return moves
}

// fastest returns the time between two at which the camera turns fastest, to about a
// frame.
func fastest(s *plan.Shot, kind string, from, to float64) float64 {
	deg := func(t float64) float64 {
		if kind == "tilt" {
			return s.Optics.Pose(t).Tilt
		}
		return s.Optics.Pose(t).Pan
	}
	n := max(1, min(int((to-from)*24), 2000))
	best, at, each := -1.0, (from+to)/2, (to-from)/float64(n)
	for i := range n {
		t := from + each*float64(i)
		if v := math.Abs(deg(t+each) - deg(t)); v > best {
			best, at = v, t+each/2
		}
	}
	return at
}

// fit sets what the lane shows: every value of the shot, and where the camera starts.
func (l *Lane) fit(s *plan.Shot) {
	const samples = 600
	if s.Staging != nil && s.Placed {
		l.First = l.At(0)
		l.Low, l.High = l.First, l.First
	}
	take := func(t float64) {
		if v := l.At(t); sheet.Finite(v) {
			l.Low, l.High = min(l.Low, v), max(l.High, v)
		}
	}
	for i := range samples + 1 {
		take(bands.Lasting(s) * float64(i) / samples)
	}
	for _, t := range s.Optics.Keys() {
		if t >= 0 && t <= bands.Lasting(s) {
			take(t)
		}
	}
	if l.High == l.Low {
		l.High++
	}
}

// value writes a value of the lane with its unit.
func (l *Lane) value(s *plan.Shot, v float64) string {
	switch {
	case v == 0:
		return "0"
	case l.angle:
		return sheet.Figures.Angle(v)
	}
	return sheet.Style(s).Gap(v)
}

// Words returns what is said of a move, from the fullest to the shortest.
func (l *Lane) Words(s *plan.Shot, m Move) []string {
	way, peak := l.more, sheet.Figures.Speed(m.Peak)
	if m.By < 0 {
		way = l.less
	}
	if m.parts != [3]float64{} {
		peak = sheet.Style(s).Walk(m.Peak)
		return []string{partsOf(s, m) + ", peak " + peak, l.value(s, m.By) + ", peak " + peak, peak}
	}
	if !l.angle {
		peak = sheet.Style(s).Walk(m.Peak)
	}
	far := l.value(s, math.Abs(m.By)) + " " + way + ", peak " + peak
	if m.who == "" {
		return []string{far, peak}
	}
	return []string{m.who + ", " + far, far, peak}
}

// partsOf says how far a camera goes that is taken straight to another place: in or out, to
// its side and up or down, what it has of each.
func partsOf(s *plan.Shot, m Move) string {
	const least = 0.005 // metres: less is not written
	var parts []string
	for i, ways := range [][2]string{{"out", "in"}, {"left", "right"}, {"down", "up"}} {
		switch v := m.parts[i]; {
		case v >= least:
			parts = append(parts, sheet.Style(s).Gap(v)+" "+ways[1])
		case v <= -least:
			parts = append(parts, sheet.Style(s).Gap(-v)+" "+ways[0])
		}
	}
	if len(parts) == 0 {
		return sheet.Style(s).Gap(m.By)
	}
	return strings.Join(parts, ", ")
}
