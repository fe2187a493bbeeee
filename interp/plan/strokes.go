// Strokes: how the ring gets through a rack.
//
// The chance of a rack counts a hand that waits for its reaction, where it reacts to a
// sound, and that lets go and takes hold anew on a long way. It turns the ring in what
// time is left, and that gives the printed peak of its speed. So the ring of the plan
// does the same: it stands during the reaction, then goes in equal strokes, each of the
// profile of the rack, and stands between two of them. The focus, the hand, the exports,
// the click track and the stage all take the ring from here.

package plan

import (
	"math"

	"pullscore/interp/hand"
)

// strokes are the parts of a rack, in seconds.
type strokes struct {
	first float64 // when the first stroke begins
	each  float64 // how long a stroke takes
	gap   float64 // how long the ring stands between two
	n     int
}

// strokes returns the strokes of a rack. Where the hand has no time to move, or nothing is
// known of it, that is one over the whole time.
func (p *Pull) strokes() strokes {
	start, time := float64(p.Start), float64(p.Land-p.Start)
	one := strokes{first: start, each: time, n: 1}
	if p.Kind == "follow" || math.IsNaN(p.Asks.Travel) {
		return one
	}
	s := strokes{first: start, gap: p.LostEach, n: p.Regrips + 1}
	if p.Asks.Reacts {
		s.first += hand.Reaction
		time -= hand.Reaction
	}
	s.each = (time - float64(p.Regrips)*p.LostEach) / float64(s.n)
	if !(s.each > 0) {
		return one
	}
	return s
}

// Turned returns the share of its way, 0 to 1, that the ring has gone at t in a rack.
func (p *Pull) Turned(t float64) float64 {
	s := p.strokes()
	t -= s.first
	if t <= 0 {
		return 0
	}
	done := math.Floor(t / (s.each + s.gap))
	if !(done < float64(s.n)) {
		return 1
	}
	in := Ease((t-done*(s.each+s.gap))/s.each, p.Profile == "smooth")
	return (done + in) / float64(s.n)
}

// LetsGo returns the times in seconds at which the hand lets go in a rack: it takes hold
// again LostEach seconds later.
func (p *Pull) LetsGo() []float64 {
	s := p.strokes()
	var times []float64
	for i := 1; i < s.n; i++ {
		times = append(times, s.first+float64(i)*s.each+float64(i-1)*s.gap)
	}
	return times
}

// Keys returns the times in seconds, in order, at which the ring starts or stops turning
// in a pull, its start and its landing among them.
func (p *Pull) Keys() []float64 {
	keys := []float64{float64(p.Start)}
	if s := p.strokes(); p.Kind != "follow" {
		keys = append(keys, s.first)
		for _, t := range p.LetsGo() {
			keys = append(keys, t, t+s.gap)
		}
	}
	return Sorted(append(keys, float64(p.Land)))
}

// RingAt returns the planned angle of the ring at t, in degrees. It does not include the
// lag or spread of a hand. It returns NaN if the lens has no ring to pull by angle, and
// where the angle is not known.
func (s *Shot) RingAt(t float64) float64 {
	if p := s.rackAt(t); p != nil && s.byRing(p) {
		return float64(p.FromDeg) + p.Turned(t)*float64(p.ToDeg-p.FromDeg)
	}
	return s.RingDeg(s.FocusAt(t), t)
}

// HandAt returns the planned angle at the hand at t, in degrees: the ring angle times the
// gear. It returns NaN if RingAt does.
func (s *Shot) HandAt(t float64) float64 { return s.RingAt(t) * float64(s.Gear) }

// byRing reports whether the angles of the ring are known at both ends of a rack.
func (s *Shot) byRing(p *Pull) bool {
	return s.Optics.Ring != nil && p.FromDeg.Known() && p.ToDeg.Known()
}

// rackAt returns the rack that the focus is in at t; nil if it is in none.
func (s *Shot) rackAt(t float64) *Pull {
	if p := s.begunAt(t); p != nil && p.Kind != "follow" && t < float64(p.Land) {
		return p
	}
	return nil
}
