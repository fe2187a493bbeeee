// The hand in a stretch of a curve: when it moves and when it rests, by its
// speed.

package recorded

import (
	"math"

	"pullscore/interp/plan"
	"pullscore/interp/takes"
)

// A motion is a stretch of a curve as the hand has it.
type motion struct {
	curve  *Curve
	pull   *plan.Pull
	frames []Frame
	time   []float64 // of each frame, seconds
	hand   []float64 // degrees from the mark, in the direction of travel
	speed  []float64 // deg/s, between neighbours
	step   float64   // the least by which two neighbours differ, as Frame.read
}

func newMotion(c *Curve, p *plan.Pull, frames []Frame) *motion {
	m := &motion{curve: c, pull: p, frames: frames}
	for _, f := range frames {
		_, past, err := takes.AtHand(c.Shot, p, f.Ring)
		if err != nil {
			past = math.NaN()
		}
		m.time = append(m.time, f.Time)
		m.hand = append(m.hand, past)
	}
	m.measure()
	return m
}

// measure fills in the speeds and the step.
func (m *motion) measure() {
	m.speed = make([]float64, len(m.frames))
	m.step = math.Inf(1)
	for k := range m.frames {
		a, b := max(k-1, 0), min(k+1, len(m.frames)-1)
		if a < b {
			m.speed[k] = (m.hand[b] - m.hand[a]) / (m.time[b] - m.time[a])
		}
		if k > 0 {
			if d := m.change(k); d > 0 {
				m.step = min(m.step, d)
			}
		}
	}
}

// change is how much a frame differs from the one before it, as it was read.
func (m *motion) change(k int) float64 {
	if m.frames[k].read == m.frames[k-1].read { // also two that are infinite
		return 0
	}
	return math.Abs(m.frames[k].read - m.frames[k-1].read)
}

// creeps tells whether a frame differs from the one before by a single step of
// the recording, as it does wherever a coarse one is of a slow hand.
func (m *motion) creeps(k int) bool { return m.change(k) <= 1.5*m.step }

// ends returns the frame after which the hand moves, and that at which it has
// come to rest, of the movement about its fastest frame: the first that is
// followed by stillness. A frame that is taken belongs to another movement.
func (m *motion) ends(peak int, taken []bool) (onset, landing int) {
	threshold := moves * m.speed[peak]
	onset = peak
	for onset > 0 && !taken[onset-1] && m.speed[onset-1] > threshold {
		onset--
	}
	if onset > 0 {
		onset-- // a speed is that about its frame: the hand still rested there
	}
	last := len(m.frames) - 1
	for landing = peak; landing < last && !taken[landing+1]; landing++ {
		if m.still(landing, threshold) {
			break
		}
	}
	return onset, landing
}

// still tells whether the hand rests from a frame on.
func (m *motion) still(k int, threshold float64) bool {
	for j := k; j+1 < len(m.frames) && m.time[j]-m.time[k] < rests; j++ {
		if math.Abs(m.hand[j+1]-m.hand[j]) > threshold*(m.time[j+1]-m.time[j]) {
			return false
		}
	}
	return true
}

// widen moves the ends of a movement out as long as the hand creeps on by single
// steps of the recording: between them a slow hand seems to rest.
func (m *motion) widen(onset, landing int, taken []bool) (int, int) {
	for k := landing + 1; k < len(m.frames) && !taken[k] && m.creeps(k) && m.time[k]-m.time[landing] <= creep; k++ {
		if m.hand[k] > m.hand[landing] {
			landing = k
		}
	}
	for k := onset - 1; k >= 0 && !taken[k] && m.creeps(k+1) && m.time[onset]-m.time[k] <= creep; k-- {
		if m.hand[k] < m.hand[onset] {
			onset = k
		}
	}
	return onset, landing
}

// rested returns the frames about a movement through which the hand rests before
// and after it, as long as pad at most.
func (m *motion) rested(onset, landing int, tolerance float64) (from, to int) {
	for from = onset; from > 0 && m.time[onset]-m.time[from-1] <= pad && math.Abs(m.hand[from-1]-m.hand[onset]) <= tolerance; {
		from--
	}
	for to = landing; to+1 < len(m.frames) && m.time[to+1]-m.time[landing] <= pad && math.Abs(m.hand[to+1]-m.hand[landing]) <= tolerance; {
		to++
	}
	return from, to
}

// stepAt returns the step of the recording at the end of a movement, in degrees
// at the hand.
func (m *motion) stepAt(onset, landing int) float64 {
	for k := landing; k > onset; k-- {
		if d := m.change(k); d > 0 {
			return math.Abs(m.hand[k]-m.hand[k-1]) * m.step / d
		}
	}
	return 0
}

// restAt is where the hand has come to rest: the mean over the stillness.
func (m *motion) restAt(k int) float64 {
	sum, n := 0.0, 0.0
	for j := k; j < len(m.frames) && (j == k || m.time[j]-m.time[k] < rests); j++ {
		sum += m.hand[j]
		n++
	}
	return sum / n
}
