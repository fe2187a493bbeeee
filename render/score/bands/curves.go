// Curves of a window, sampled once for all bands: densely where something
// moves, at the ends where nothing does.

package bands

import (
	"math"
	"slices"

	"pullscore/interp/plan"
)

// curves are what the bands draw, at the times t. Distances are metres as the
// tape reads them.
type curves struct {
	T         []float64
	Focus     []float64
	Near, Far []float64   // the sharp zone
	Hand      []float64   // degrees at the hand
	Distance  [][]float64 // of each subject
	Blur      [][]float64 // of each subject, in discs of the sharpness criterion
}

// samplePitch is how far apart samples lie on the page where something moves,
// in millimetres.
const samplePitch = 0.4

func (w *Window) sample() curves {
	s := w.Shot
	c := curves{T: w.times()}
	n := len(c.T)
	c.Focus, c.Near, c.Far = make([]float64, n), make([]float64, n), make([]float64, n)
	c.Hand = make([]float64, n)
	c.Distance, c.Blur = make([][]float64, len(s.Subjects)), make([][]float64, len(s.Subjects))
	for k := range s.Subjects {
		c.Distance[k], c.Blur[k] = make([]float64, n), make([]float64, n)
	}
	for i, t := range c.T {
		x := s.FocusAt(t)
		set := s.Judged(x, t)
		c.Focus[i] = s.ToTape(x, t)
		c.Near[i], c.Far[i] = s.ToTape(set.Near(x), t), s.ToTape(set.Far(x), t)
		deg := s.RingDeg(x, t)
		c.Hand[i] = deg * float64(s.Gear)
		for k, u := range s.Subjects {
			d := w.distance(u, t)
			c.Distance[k][i] = d
			c.Blur[k][i] = set.Blur(s.FromTape(d, t), x) / set.Criterion
		}
	}
	return c
}

// mostAside is the cosine of how far off the lens's axis somebody is drawn, of a camera
// that turns: 60 degrees. Farther off, the distance along the axis says little; behind
// the camera, nothing.
const mostAside = 0.5

// distance returns the distance of a subject at t as the tape reads it, in metres; NaN
// where a camera that turns looks elsewhere.
func (w *Window) distance(u *plan.Subject, t float64) float64 {
	s := w.Shot
	if s.Optics.Rig == nil {
		return s.DistanceAt(u, t)
	}
	v := s.ViewOf(u, t)
	if !(v.Along > mostAside*v.Tape()) {
		return math.NaN()
	}
	return v.Along
}

// times returns the times at which to sample.
func (w *Window) times() []float64 {
	keys := w.keys()
	pitch := samplePitch * (w.to - w.from) / (w.Right - w.Left)
	if w.axis.Broken() {
		pitch = samplePitch / w.PerSecond
	}
	var times []float64
	for i := 1; i < len(keys); i++ {
		a, b := keys[i-1], keys[i]
		steps := 1
		if w.moving(a, b) {
			steps = max(1, int(math.Ceil((b-a)/pitch)))
		}
		for k := range steps {
			times = append(times, a+(b-a)*float64(k)/float64(steps))
		}
	}
	return append(times, w.end)
}

// keys returns the times at which a movement may start or end, the ends of the
// curves with them.
func (w *Window) keys() []float64 {
	s := w.Shot
	keys := append([]float64{w.from, w.end}, w.axis.Parts(w.from, w.end)...)
	for _, p := range s.Pulls {
		if !w.Overlaps(float64(p.Start), float64(p.Land)) {
			continue
		}
		keys = append(keys, p.Keys()...)
		if t := float64(p.Start); s.FocusAt(before(t)) != s.FocusAt(t) {
			keys = append(keys, before(t)) // the focus jumps, and does not go there from the key before
		}
	}
	for _, tr := range w.tracks() {
		keys = append(keys, tr.Keys()...)
	}
	if s.Optics.Rig != nil {
		keys = append(keys, s.Optics.Keys()...)
	}
	keys = slices.DeleteFunc(keys, func(t float64) bool { return !(t >= w.from && t <= w.end) })
	slices.Sort(keys)
	return slices.Compact(keys)
}

// before returns the last time before t.
func before(t float64) float64 { return math.Nextafter(t, math.Inf(-1)) }

func (w *Window) tracks() []*plan.Track {
	o := &w.Shot.Optics
	tracks := []*plan.Track{o.Camera, o.Focal}
	for _, u := range w.Shot.Subjects {
		tracks = append(tracks, u.Along)
		if o.Rig != nil {
			tracks = append(tracks, u.Across) // a camera that turns sees it come and go
		}
	}
	return tracks
}

// moving reports whether anything moves between two neighbouring keys.
func (w *Window) moving(a, b float64) bool {
	for _, p := range w.Shot.Pulls {
		if float64(p.Start) < b && float64(p.Land) > a {
			return true
		}
	}
	if o := &w.Shot.Optics; o.Rig != nil {
		at := o.Pose(a)
		for _, share := range []float64{0.31, 0.62, 1} {
			if o.Pose(a+share*(b-a)) != at {
				return true
			}
		}
	}
	for _, tr := range w.tracks() {
		at := tr.At(a)
		for _, share := range []float64{0.31, 0.62, 1} {
			if tr.At(a+share*(b-a)) != at {
				return true
			}
		}
	}
	return false
}
