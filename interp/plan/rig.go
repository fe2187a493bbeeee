// The rig: how the camera stands and looks when it does more than go along its axis.
//
// The floor of a shot is that of its camera at the start: x to the right, y the way the
// lens looks then, z up, with the camera at the zero point. Everyone is level with the
// lens there, as no distance says a height. The camera turns about its sensor mark.

package plan

import (
	"sort"
)

// A Rig holds what the camera does besides going along the axis of the start, which is
// the track Optics.Camera. Slides may overlap, and add up.
type Rig struct {
	Slides []Slide
	Pans   []Sweep // in the order of their starts, without overlaps
	Tilts  []Sweep
	Tilt   float64 // at the start, degrees up
}

// A Slide takes the camera straight to another place between two times in seconds, by
// so many metres to the right, forth and up.
type Slide struct {
	Start, End float64
	X, Y, Z    float64
	Smooth     bool // minimum jerk; if false, constant speed

	added   bool    // by Slide, which knows the rest
	latest  float64 // the latest end of this one and of all before it
	x, y, z float64 // where they all take the camera
}

// Slide appends a slide to the rig. It must not start before the others.
func (r *Rig) Slide(s Slide) {
	s.added, s.latest, s.x, s.y, s.z = true, s.End, s.X, s.Y, s.Z
	if n := len(r.Slides); n > 0 {
		last := &r.Slides[n-1]
		s.latest = max(s.End, last.latest)
		s.x, s.y, s.z = last.x+s.X, last.y+s.Y, last.z+s.Z
	}
	r.Slides = append(r.Slides, s)
}

// A Sweep turns the camera about one axis between two times in seconds, from one angle
// to another: degrees, to the right or up positive.
type Sweep struct {
	Start, End float64
	From, To   float64
	Smooth     bool
	With       *Subject // who stays where they are in the picture; nil: it turns by itself
}

// A Turn is a pan or a tilt of the camera, as the crew reads it.
type Turn struct {
	Kind    string `json:"kind"`             // pan or tilt
	Target  string `json:"target,omitempty"` // whom it goes to or stays with
	Start   Number `json:"start_s"`
	End     Number `json:"end_s"`
	From    Number `json:"from_deg"`
	To      Number `json:"to_deg"`
	Peak    Number `json:"peak_deg_s"`
	Width   Number `json:"width_s,omitzero"` // the picture crosses its width, or a tilt its height, in so long on the screen
	Profile string `json:"profile"`          // smooth, even or with
}

// A Station is where the camera is at a time, and where it looks.
type Station struct {
	T       Number `json:"t_s"`
	Right   Number `json:"right_m"`
	Upstage Number `json:"upstage_m"`
	High    Number `json:"high_m"`
	PanDeg  Number `json:"pan_deg"`
	TiltDeg Number `json:"tilt_deg"`
}

// Place returns where the camera is at t, without where it looks.
func (o *Optics) Place(t float64) (p Pose) {
	p.Y = o.Camera.At(t)
	if o.Rig == nil {
		return p
	}
	slides := o.Rig.Slides
	if n := len(slides); n > 0 && slides[n-1].added {
		slides = slides[:sort.Search(n, func(i int) bool { return slides[i].Start >= t })]
		if done := sort.Search(len(slides), func(i int) bool { return slides[i].latest > t }); done > 0 {
			s := &slides[done-1]
			p.X, p.Y, p.Z = p.X+s.x, p.Y+s.y, p.Z+s.z
			slides = slides[done:]
		}
	}
	for i := range slides {
		s := &slides[i]
		u := Ease((t-s.Start)/(s.End-s.Start), s.Smooth)
		p.X, p.Y, p.Z = p.X+s.X*u, p.Y+s.Y*u, p.Z+s.Z*u
	}
	return p
}

// Pose returns where the camera is at t and where it looks.
func (o *Optics) Pose(t float64) Pose {
	p := o.Place(t)
	if o.Rig != nil {
		p.Pan = o.angle(o.Rig.Pans, 0, t, panTo)
		p.Tilt = o.angle(o.Rig.Tilts, o.Rig.Tilt, t, tiltTo)
	}
	return p
}

func panTo(p Pose, x, y, z float64) float64 { deg, _ := p.Bearing(x, y, z); return deg }

func tiltTo(p Pose, x, y, z float64) float64 { _, deg := p.Bearing(x, y, z); return deg }

// angle is where sweeps have turned the camera by t from where it looked at first: the
// last that has begun says it.
func (o *Optics) angle(list []Sweep, first, t float64, bearing func(Pose, float64, float64, float64) float64) float64 {
	i := sort.Search(len(list), func(i int) bool { return list[i].Start >= t })
	if i == 0 {
		return first
	}
	s := &list[i-1]
	switch {
	case t >= s.End:
		return s.To
	case s.With != nil:
		at := func(t float64) float64 {
			return bearing(o.Place(t), s.With.Across.At(t), s.With.Along.At(t), s.With.Height(t))
		}
		return s.From + Wrapped(at(t)-at(s.Start))
	}
	return s.From + (s.To-s.From)*Ease((t-s.Start)/(s.End-s.Start), s.Smooth)
}

// Keys returns the times in seconds, not in order, at which the camera starts or stops
// going or turning.
func (o *Optics) Keys() []float64 {
	keys := o.Camera.Keys()
	if o.Rig == nil {
		return keys
	}
	for _, s := range o.Rig.Slides {
		keys = append(keys, s.Start, s.End)
	}
	for _, list := range [][]Sweep{o.Rig.Pans, o.Rig.Tilts} {
		for _, s := range list {
			keys = append(keys, s.Start, s.End)
			if s.With != nil {
				keys = append(keys, s.With.Along.Keys()...)
				keys = append(keys, s.With.Across.Keys()...)
				keys = append(keys, s.With.HeightKeys()...)
			}
		}
	}
	return keys
}

// Travels reports whether the camera changes its place at all.
func (o *Optics) Travels() bool { return o.Camera.Moves() || o.Rig != nil && len(o.Rig.Slides) > 0 }

// Turns reports whether the camera pans or tilts at all.
func (o *Optics) Turns() bool {
	return o.Rig != nil && len(o.Rig.Pans)+len(o.Rig.Tilts) > 0
}

// Stirs reports whether the camera may turn or leave its axis at some time between two.
func (o *Optics) Stirs(from, to float64) bool {
	if o.Rig == nil {
		return false
	}
	for _, s := range o.Rig.Slides {
		if s.Start < to && s.End > from {
			return true
		}
	}
	for _, list := range [][]Sweep{o.Rig.Pans, o.Rig.Tilts} {
		for _, s := range list {
			if s.Start < to && s.End > from {
				return true
			}
		}
	}
	return false
}

// ViewOf returns where the lens sees a subject at t, in metres.
func (s *Shot) ViewOf(u *Subject, t float64) View {
	if s.Optics.Rig == nil {
		return View{Along: s.DistanceAt(u, t), Across: u.Across.At(t)}
	}
	v := s.Optics.Pose(t).View(u.Across.At(t), u.Along.At(t), u.Height(t))
	if u.Deltas == nil {
		return v
	}
	tape := v.Tape()
	k := (tape + u.Deltas.At(t)) / tape
	return View{Along: v.Along * k, Across: v.Across * k, Above: v.Above * k}
}

// Height returns how far over the lens of the start the subject is at t, in metres.
func (u *Subject) Height(t float64) float64 {
	if u.Up == nil {
		return 0
	}
	return u.Up.At(t)
}

// HeightKeys returns the times at which that starts or stops changing.
func (u *Subject) HeightKeys() []float64 {
	if u.Up == nil {
		return nil
	}
	return u.Up.Keys()
}

// SideAt returns how far to the right of the lens's axis the subject is at t, in metres.
func (s *Shot) SideAt(u *Subject, t float64) float64 { return s.ViewOf(u, t).Across }

// AboveAt returns how far above the lens's axis the subject is at t, in metres.
func (s *Shot) AboveAt(u *Subject, t float64) float64 { return s.ViewOf(u, t).Above }
