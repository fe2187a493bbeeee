// Where the camera of a shot is, and what it sees then.
//
// The floor stays that of the start, so nobody on it moves when the camera does. Everyone
// is as high as the lens was at the start. So from above, the plane of focus of a camera
// that tilts or booms lies where it meets that height.

package layout

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"pullscore/interp/moments"
	"pullscore/interp/plan"
	"pullscore/optics"
	"pullscore/render/sheet"
)

// cameraOf returns the camera of a shot on the floor with those places.
func cameraOf(s *plan.Shot, places []Place) Camera {
	c := Camera{Name: s.Camera, States: statesOf(s, places)}
	c.Zones = seenIn(zonesOf(s), c.States)
	if s.Optics.Rig != nil {
		c.Path = pathOf(s)
		c.Turns = turnsOf(s)
		c.Words = wordsOf(s)
		return c
	}
	for _, b := range s.Blocking {
		if b.Kind == "dolly" {
			c.Tracks = append(c.Tracks, trackOf(s, b))
		}
	}
	if sheet.Carried(s) {
		c.Path, c.Words = pathOf(s), nil
		for _, t := range c.Tracks {
			c.Words = append(c.Words, Word{Spot{t.To.X, (t.From.Y + t.To.Y) / 2}, t.Words})
		}
		c.Tracks = nil
	}
	return c
}

func trackOf(s *plan.Shot, b plan.Blocking) Track {
	from, to := s.Optics.Camera.At(float64(b.Start)), s.Optics.Camera.At(float64(b.End))
	return Track{Spot{Y: from}, Spot{Y: to}, fmt.Sprintf("%s %s, %s to %s", b.Kind, sheet.Style(s).Gap(math.Abs(to-from)), sheet.When(s, float64(b.Start)), sheet.When(s, float64(b.End)))}
}

// MostViews is how many views of one camera are drawn at most.
const MostViews = 6

const (
	sameTurn = 0.5  // degrees
	sameTilt = 0.25 // degrees, for a tape
)

// statesOf returns the states of the camera: at the start, after each move, and at the
// end, each once.
func statesOf(s *plan.Shot, places []Place) []State {
	var states []State
	shown := 0
	for i, t := range stateTimes(s) {
		v := StateAt(s, t)
		v.Words = sheet.When(s, t)
		if i == 0 {
			v.Words = "start"
		}
		taped := !slices.ContainsFunc(states, func(o State) bool { return sameTapes(o.Pose, v.Pose) })
		v.Shown = shown < MostViews && !slices.ContainsFunc(states, func(o State) bool { return o.Shown && sameView(o, v) })
		if !taped && !v.Shown {
			continue
		}
		if v.Shown {
			shown++
		}
		if taped {
			v.Tapes = TapesTo(v.Pose, places, i == 0)
		}
		states = append(states, v)
	}
	return states
}

// stateTimes returns the times of the states, in order: 0, the ends of pans, the ends of
// other moves after which the camera rests, and the end of the shot.
func stateTimes(s *plan.Shot) []float64 {
	var moves [][2]float64
	for _, st := range s.Optics.Camera.Steps {
		moves = append(moves, [2]float64{st.Start, st.End})
	}
	times := []float64{0}
	if rig := s.Optics.Rig; rig != nil {
		for _, m := range rig.Slides {
			moves = append(moves, [2]float64{m.Start, m.End})
		}
		for _, m := range rig.Tilts {
			moves = append(moves, [2]float64{m.Start, m.End})
		}
		for _, m := range rig.Pans {
			moves = append(moves, [2]float64{m.Start, m.End})
			times = append(times, m.End)
		}
	}
	for _, m := range moves {
		goesOn := func(o [2]float64) bool { return o[0] < m[1]-1e-9 && o[1] > m[1]+1e-9 }
		if !slices.ContainsFunc(moves, goesOn) {
			times = append(times, m[1])
		}
	}
	end := float64(s.Duration)
	times = append(times, end)
	return plan.Sorted(slices.DeleteFunc(times, func(t float64) bool { return !(t >= 0 && t <= end) }))
}

// StateAt returns how the camera stands and what it sees at t, with the focus where it is
// then.
func StateAt(s *plan.Shot, t float64) State {
	x := s.FocusAt(t)
	focal := s.FocalTo(x, t)
	if !(x > focal) {
		x = math.Inf(1)
	}
	v := State{Pose: s.Optics.Pose(t), Focal: s.Focal(t)}
	image := optics.ImageDistance(focal, x)
	if !s.Optics.FromLens {
		v.Lens = image
	}
	v.PerSide = s.Optics.PictureW() / 2 / image
	return v
}

// Angle returns the horizontal field of view in degrees.
func (v State) Angle() float64 { return 2 * math.Atan(v.PerSide) * 180 / math.Pi }

// Spot returns the point of the floor that the state has so many metres along its axis,
// and so many times the half width of its picture to the right.
func (v State) Spot(along, side float64) Spot {
	st, ct := math.Sincos(v.Pose.Tilt * math.Pi / 180)
	level := (along + v.Pose.Z*st) / max(ct, 0.05) // the camera looks down on the floor
	return v.From(level, side*(along-v.Lens)*v.PerSide)
}

// From returns the point of the floor so many metres ahead of the camera and to the right.
func (v State) From(ahead, right float64) Spot {
	sp, cp := math.Sincos(v.Pose.Pan * math.Pi / 180)
	return Spot{v.Pose.X + ahead*sp + right*cp, v.Pose.Y + ahead*cp - right*sp}
}

// Apex returns where the field of view begins.
func (v State) Apex() Spot { return v.From(v.Lens, 0) }

// sameView reports whether two states are the same from above. What the lens breathes is
// left out: it is less than a line is wide.
func sameView(a, b State) bool {
	return math.Hypot(a.Pose.X-b.Pose.X, a.Pose.Y-b.Pose.Y) < SameSpot &&
		math.Abs(plan.Wrapped(a.Pose.Pan-b.Pose.Pan)) < sameTurn && a.Focal == b.Focal
}

// sameTapes reports whether the tapes of two poses are the same.
func sameTapes(a, b plan.Pose) bool {
	return math.Hypot(math.Hypot(a.X-b.X, a.Y-b.Y), a.Z-b.Z) < SameSpot &&
		math.Abs(plan.Wrapped(a.Pan-b.Pan)) < sameTurn && math.Abs(a.Tilt-b.Tilt) < sameTilt
}

// TapesTo returns what there is to measure from a pose to every place, far to near. At the
// start a slant that somebody read is given as read.
func TapesTo(pose plan.Pose, places []Place, start bool) []Tape {
	tapes := make([]Tape, len(places))
	for i, p := range places {
		v := pose.View(p.At.X, p.At.Y, p.Up)
		if tape := v.Tape(); p.More != 0 {
			by := (tape + p.More) / tape
			v.Along, v.Across, v.Above = v.Along*by, v.Across*by, v.Above*by
		}
		tapes[i] = Tape{Place: i, Along: v.Along, Slant: math.Hypot(v.Tape(), p.High), Aside: v.Across, SlantAssumed: p.Unsaid}
		if start && p.Slant > 0 {
			tapes[i].Slant, tapes[i].SlantAssumed = p.Slant, false
		}
	}
	slices.SortStableFunc(tapes, func(a, b Tape) int { return cmp.Compare(b.Along, a.Along) })
	return tapes
}

// pathOf returns where the camera goes; nothing if it stays.
func pathOf(s *plan.Shot) []Spot {
	const steps = 240
	var run []Spot
	far := 0.0
	for i := range steps + 1 {
		p := s.Optics.Place(float64(s.Duration) * float64(i) / steps)
		run = append(run, Spot{p.X, p.Y})
		far = max(far, Apart(run[0], run[i]))
	}
	if far < SameSpot {
		return nil
	}
	return run
}

const arcLeast = 1.0 // degrees

// turnsOf returns the pans of a shot.
func turnsOf(s *plan.Shot) (list []Turn) {
	for _, t := range s.Turns {
		if by := float64(t.To - t.From); t.Kind == "pan" && math.Abs(by) >= arcLeast {
			list = append(list, Turn{StateAt(s, float64(t.End)).Apex(), float64(t.From), by, turnWords(s, t)})
		}
	}
	return list
}

// turnWords says how far a turn goes and when.
func turnWords(s *plan.Shot, t plan.Turn) string {
	return fmt.Sprintf("%s %s, %s to %s", t.Kind, moments.Heading(t.Kind, float64(t.To-t.From), sheet.Figures),
		sheet.When(s, float64(t.Start)), sheet.When(s, float64(t.End)))
}

// wordsOf says what a camera does besides panning: half-way of a move that leaves its
// place, and where a tilt ends.
func wordsOf(s *plan.Shot) (list []Word) {
	for _, b := range s.Blocking {
		if goes := moments.Goes(&b, sheet.Style(s)); goes != "" {
			p := s.Optics.Place(float64(b.Start+b.End) / 2)
			list = append(list, Word{Spot{p.X, p.Y}, goes + ", from " + sheet.When(s, float64(b.Start))})
		}
	}
	for _, t := range s.Turns {
		if t.Kind == "tilt" {
			list = append(list, Word{StateAt(s, float64(t.End)).Apex(), turnWords(s, t)})
		}
	}
	return list
}
