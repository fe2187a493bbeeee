// The frame: who is in the picture.
//
// A point is in the picture where the lens sees as far to its side, and above or below.
// How far that is at a distance hangs on the distance of the focus, as a lens that
// focuses near sees less.

package plan

import (
	"math"
	"slices"

	"pullscore/optics"
)

// SafeAction is the share of the picture, from its middle, in which an action is safe
// from the edges of a screen. SMPTE ST 2046-1, from memory.
const SafeAction = 0.93

// A Frame says where a point is to the picture.
type Frame uint8

// The places of a point to the picture.
const (
	OutOfFrame Frame = iota
	EdgeOfFrame
	InFrame
)

// String returns the word of a place: out, edge or in.
func (f Frame) String() string { return [...]string{"out", "edge", "in"}[f] }

// Reach returns how far the lens sees at d metres from it with the focus at x metres
// from it at t: to either side of the axis, and up and down, in metres. Both are NaN
// where the lens forms no image.
func (s *Shot) Reach(d, x, t float64) (side, up float64) {
	f := s.FocalTo(x, t)
	half := func(size float64) float64 {
		angle := optics.FieldOfView(size, f, x)
		if !(angle > 0) {
			return math.NaN()
		}
		return d * math.Tan(angle/2*math.Pi/180)
	}
	return half(s.Optics.PictureW()), half(s.Optics.SensorH)
}

// Place returns where a point that the lens sees at v is to a picture whose focus is at
// x metres from the lens at t. So near that no lens could show it, at four focal lengths
// from the sensor, everything is out.
func (s *Shot) Place(v View, x, t float64) Frame {
	if v.Along <= 4*s.FocalTo(x, t) {
		return OutOfFrame
	}
	side, up := s.Reach(s.FromTape(v.Along, t), x, t)
	switch far := max(math.Abs(v.Across)/side, math.Abs(v.Above)/up); {
	case far <= SafeAction:
		return InFrame
	case far <= 1+1e-9:
		return EdgeOfFrame
	}
	return OutOfFrame
}

// FrameAt returns where a subject is to the picture at t, with the focus where the plan
// has it then.
func (s *Shot) FrameAt(u *Subject, t float64) Frame {
	x := s.FocusAt(t)
	if !(x > s.FocalTo(x, t)) { // which is told elsewhere
		x = math.Inf(1)
	}
	return s.Place(s.ViewOf(u, t), x, t)
}

// How closely the frame is looked at.
const (
	frameSteps = 48     // a second
	frameMost  = 20_000 // in a shot, beside the ends of moves
	frameExact = 0.001  // seconds
)

// Looks returns how often a second a shot is looked at for what moves in it: a long one
// less often, so that it takes no longer.
func (s *Shot) Looks() float64 { return min(frameSteps, frameMost/float64(s.Duration)) }

// Framed returns from when to when a subject is in the picture, in seconds from the
// start of the shot to its end.
func (s *Shot) Framed(u *Subject) (list [][2]float64) {
	often := func(from, to float64) int {
		if s.rests(u, from, to) {
			return 1
		}
		return int(math.Ceil((to - from) * s.Looks()))
	}
	return While(s.frameKeys(u), often, func(t float64) bool { return s.FrameAt(u, t) != OutOfFrame })
}

// rests reports whether nothing moves that changes where a subject is to the picture,
// between two times that follow one another among those at which anything starts or stops.
func (s *Shot) rests(u *Subject, from, to float64) bool {
	if s.Optics.Stirs(from, to) {
		return false
	}
	for _, p := range s.Pulls {
		if float64(p.Start) < to && float64(p.Land) > from {
			return false
		}
	}
	mid := from + (to-from)/2
	for _, at := range []func(float64) float64{u.Along.At, u.Across.At, u.Height, s.Optics.Camera.At, s.Optics.Focal.At} {
		if x := at(mid); x != at(from) || x != at(to) {
			return false
		}
	}
	return true
}

// While returns from when to when something holds, in seconds: between the first and the
// last of several times that rise, looked at in so many steps from each to the next, and
// once at least.
func While(times []float64, steps func(from, to float64) int, holds func(t float64) bool) (list [][2]float64) {
	end := times[len(times)-1]
	in := holds(times[0])
	if in {
		list = append(list, [2]float64{times[0], end})
	}
	for i, from := range times[:len(times)-1] {
		n := max(1, steps(from, times[i+1]))
		each := (times[i+1] - from) / float64(n)
		for k := 1; k <= n; k++ {
			before, at := from+each*float64(k-1), from+each*float64(k)
			if holds(at) == in {
				continue
			}
			in = !in
			if t := changes(before, at, holds); in {
				list = append(list, [2]float64{t, end})
			} else {
				list[len(list)-1][1] = t
			}
		}
	}
	return list
}

// frameKeys returns the times at which anything starts or stops that changes where a
// subject is to the picture, and both ends of the shot.
func (s *Shot) frameKeys(u *Subject) []float64 {
	end := float64(s.Duration)
	keys := slices.Concat([]float64{0, end}, s.Optics.Keys(), s.Optics.Focal.Keys(), u.Along.Keys(), u.Across.Keys(), u.HeightKeys())
	for _, p := range s.Pulls {
		keys = append(keys, float64(p.Start), float64(p.Land))
	}
	keys = slices.DeleteFunc(keys, func(t float64) bool { return !(t >= 0 && t <= end) })
	slices.Sort(keys)
	return slices.Compact(keys)
}

// changes returns a time between two, to a millisecond, at which something that differs
// between them changes; it is on the side of the second.
func changes(from, to float64, holds func(float64) bool) float64 {
	was := holds(from)
	for to-from > frameExact {
		if mid := from + (to-from)/2; holds(mid) == was {
			from = mid
		} else {
			to = mid
		}
	}
	return to
}

// Seen says how the camera sees somebody, where it turns or leaves its axis. But for
// InFrame its figures are those at the start of the shot.
type Seen struct {
	Tape    Number     `json:"tape_m"`       // straight from the sensor mark
	Above   Number     `json:"above_m"`      // of the lens's axis
	OffAxis Number     `json:"off_axis_deg"` // between the axis and the way to them
	InFrame []Interval `json:"in_frame"`     // from when to when they are in the picture, seconds

	Measured Number `json:"measured_m,omitzero"` // the tape as read in the shot

	Blocked []Interval `json:"blocked,omitempty"` // from when to when somebody stands in the way, where the shot is staged
}

// FillSeen says of every subject how a camera that turns or leaves its axis sees it, which
// is more than the distance along its axis and the side.
func (s *Shot) FillSeen() {
	if s.Optics.Rig == nil {
		return
	}
	for _, u := range s.Subjects {
		v := s.ViewOf(u, 0)
		u.Seen = &Seen{Tape: Number(v.Tape()), Above: Number(v.Above), OffAxis: Number(v.OffAxis()), InFrame: []Interval{}, Measured: None()}
		if s.Staging != nil {
			u.Measured = s.read(u)
		}
		for _, in := range s.Framed(u) {
			u.InFrame = append(u.InFrame, Interval{Number(in[0]), Number(in[1])})
		}
	}
}

// CrossesIn returns how long what stands still takes on the screen to cross the picture
// from side to side, or in a tilt from top to bottom, at so many degrees a second and with
// the focus as it is at t: seconds. It is NaN where the lens forms no image.
func (s *Shot) CrossesIn(kind string, degPerSec, t float64) float64 {
	size := s.Optics.PictureW()
	if kind == "tilt" {
		size = s.Optics.SensorH
	}
	x := s.FocusAt(t)
	wide := optics.FieldOfView(size, s.FocalTo(x, t), x)
	if !(wide > 0) || !(degPerSec > 0) {
		return math.NaN()
	}
	return s.Speed().Screen(wide / degPerSec)
}

// read returns the tape that was read to a subject at its first place; none where nobody
// read one.
func (s *Shot) read(u *Subject) Number {
	for i := range s.Readings {
		if r := &s.Readings[i]; r.Who == u.Name && r.At == "" {
			return Number(r.Tape)
		}
	}
	return None()
}
