// The movement of the hand in a stretch of a curve.

package recorded

import (
	"fmt"
	"math"

	"pullscore/interp/plan"
	"pullscore/interp/takes"
	"pullscore/interp/units"
)

// A motion is a stretch of a curve as the hand has it.
type motion struct {
	curve  *Curve
	pull   *plan.Pull
	frames []Frame
	time   []float64 // of each frame, seconds
	hand   []float64 // degrees from the mark, in the direction of travel
	speed  []float64 // deg/s, between neighbours
	peak   int       // where it is fastest in the direction of travel
}

func newMotion(c *Curve, p *plan.Pull, frames []Frame) *motion {
	m := &motion{curve: c, pull: p, frames: frames}
	for _, f := range frames {
		_, past, err := takes.AtHand(c.Shot, p, f.Ring)
		if err != nil {
			past = math.NaN()
		}
		m.time = append(m.time, c.time(f.Number))
		m.hand = append(m.hand, past)
	}
	m.speed = make([]float64, len(frames))
	for k := range frames {
		a, b := max(k-1, 0), min(k+1, len(frames)-1)
		if a < b {
			m.speed[k] = (m.hand[b] - m.hand[a]) / (m.time[b] - m.time[a])
		}
		if m.speed[k] > m.speed[m.peak] {
			m.peak = k
		}
	}
	return m
}

// unfit says why the stretch cannot be scored, "" where it can.
func (m *motion) unfit() string {
	if len(m.frames) < 3 {
		return "the recording does not cover it"
	}
	if m.time[0] > float64(m.pull.Start)+1e-9 {
		return fmt.Sprintf("the recording begins at %s, after its start", m.curve.label(m.frames[0].Number))
	}
	lo, hi := m.hand[0], m.hand[0]
	for _, h := range m.hand {
		lo, hi = min(lo, h), max(hi, h)
	}
	if !(hi-lo >= least*m.pull.Asks.Travel) || m.speed[m.peak] <= 0 {
		return fmt.Sprintf("the focus did not move: %s at the hand of %s", units.Style{}.AngleTo(hi-lo, 1), units.Style{}.AngleTo(m.pull.Asks.Travel, 1))
	}
	return ""
}

// ends returns the frame after which the hand moves, and that at which it has
// come to rest: the first that is followed by stillness, after the fastest.
func (m *motion) ends() (onset, landing int) {
	threshold := moves * m.speed[m.peak]
	onset = m.peak
	for onset > 0 && m.speed[onset-1] > threshold {
		onset--
	}
	if onset > 0 {
		onset-- // a speed is that about its frame: the hand still rested there
	}
	last := len(m.frames) - 1
	for landing = m.peak; landing < last; landing++ {
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

// restAt is where the hand has come to rest: the mean over the stillness.
func (m *motion) restAt(k int) float64 {
	sum, n := 0.0, 0.0
	for j := k; j < len(m.frames) && (j == k || m.time[j]-m.time[k] < rests); j++ {
		sum += m.hand[j]
		n++
	}
	return sum / n
}

// broken says why a movement cannot be scored for the frames that it lacks, ""
// where it can.
func (m *motion) broken(onset, landing int) string {
	if landing <= onset {
		return "the focus did not come to rest"
	}
	if landing == len(m.frames)-1 {
		return fmt.Sprintf("the focus did not come to rest before %s", m.curve.label(m.frames[landing].Number))
	}
	for k := onset; k < landing; k++ {
		if m.time[k+1]-m.time[k] > longestGap {
			return fmt.Sprintf("frames are missing from %s to %s, in the middle of it", m.curve.label(m.frames[k].Number+1), m.curve.label(m.frames[k+1].Number-1))
		}
	}
	return ""
}
