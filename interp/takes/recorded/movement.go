// Which movement of a curve a pull is.
//
// A stretch of a curve may have several movements towards the mark: a try that
// was broken off, a rehearsal, the pull before. The one that is scored is the
// nearest to the plan, in when it sets out and lands and in where it comes to
// rest, not the fastest. Where two are about as near, neither is.

package recorded

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"pullscore/interp/units"
)

// A movement is a stretch in which the hand goes towards the mark and rests.
type movement struct {
	onset, landing int     // frames: the last before it moves, the first at rest
	rest           float64 // where, degrees past the mark

	// sets and lands are its times, seconds: by the fit, or those of the frames
	// where smooth is false.
	sets, lands float64
	smooth      bool

	broken string  // why it cannot be scored, "" where it can
	far    float64 // from what was planned, see distance
}

// movements returns the movements of the stretch that are long enough, by the
// order of their frames. Each is found from its fastest frame, the fastest of
// all first.
func (m *motion) movements() (list []movement) {
	order := make([]int, 0, len(m.frames))
	for k, v := range m.speed {
		if v > 0 {
			order = append(order, k)
		}
	}
	slices.SortStableFunc(order, func(a, b int) int {
		return cmp.Compare(m.speed[b], m.speed[a])
	})
	taken := make([]bool, len(m.frames))
	for _, peak := range order {
		if taken[peak] {
			continue
		}
		onset, landing := m.ends(peak, taken)
		stopped := landing == len(m.frames)-1 || !taken[landing+1]
		onset, landing = m.widen(onset, landing, taken)
		taken[peak] = true
		for k := onset + 1; k < landing; k++ { // its ends may be those of its neighbours too
			taken[k] = true
		}
		if stopped && m.hand[landing]-m.hand[onset] >= least*m.pull.Asks.Travel {
			list = append(list, m.movement(onset, landing))
		}
	}
	slices.SortFunc(list, func(a, b movement) int { return a.onset - b.onset })
	return list
}

// movement returns the movement between two frames.
func (m *motion) movement(onset, landing int) movement {
	v := movement{onset: onset, landing: landing, rest: m.restAt(landing), sets: m.time[onset], lands: m.time[landing], broken: m.broken(onset, landing)}
	travel := v.rest - m.hand[onset]
	tolerance := max(1.5*m.stepAt(onset, landing), settled*math.Abs(travel))
	from, to := m.rested(onset, landing, tolerance)
	times, angles := m.time[from:to+1], m.hand[from:to+1]
	f, ok := fitMovement(times, angles, m.pull.Profile != "smooth")
	// A curve that begins or ends where nothing was seen is a guess: an even hand
	// looks like the middle of a smooth one that took twice the time.
	seen := f.start >= times[0]-slack && f.start+f.lasts <= times[len(times)-1]+slack
	if ok && seen && f.rms <= roughest*travel {
		v.smooth, v.sets = true, f.start
		v.lands = f.start + max(f.lasts, restAfter(times, angles, v.rest, tolerance)-f.start)
	}
	v.far = m.distance(&v)
	return v
}

// distance returns how far a movement is from the planned pull: the sum of
// squares of how late it set out and landed, and how far from the mark it came
// to rest, each by what is usual. The half second is our own choice.
func (m *motion) distance(v *movement) float64 {
	p := m.pull
	usual := 0.1 * p.Asks.Travel
	if p.Spread.Known() && !p.Spread.IsInf() {
		usual = max(usual, 3*float64(p.Spread))
	}
	if half := (p.Asks.Hi - p.Asks.Lo) / 2; !math.IsInf(half, 0) && !math.IsNaN(half) {
		usual = max(usual, half)
	}
	set, land, rest := (v.sets-float64(p.Start))/usualDelay, (v.lands-float64(p.Land))/usualDelay, v.rest/usual
	return set*set + land*land + rest*rest
}

// choose returns the movement that a pull is, or says why there is none.
func (m *motion) choose() (v movement, why string) {
	if why = m.uncovered(); why != "" {
		return movement{}, why
	}
	list := m.movements()
	if len(list) == 0 {
		return movement{}, m.unmoved()
	}
	near := slices.Clone(list)
	slices.SortStableFunc(near, func(a, b movement) int {
		return cmp.Compare(a.far, b.far)
	})
	v = near[0]
	switch {
	case len(near) > 1 && near[1].far-v.far < alike:
		both := near[:2]
		slices.SortFunc(both, func(a, b movement) int { return a.onset - b.onset })
		return movement{}, fmt.Sprintf("two movements fit, one from %s to %s and one from %s to %s",
			m.label(both[0].onset), m.label(both[0].landing), m.label(both[1].onset), m.label(both[1].landing))
	case v.broken != "":
		return movement{}, v.broken
	}
	return v, ""
}

func (m *motion) label(k int) string { return m.curve.label(m.frames[k].Number) }

// uncovered says why the recording does not hold the pull, "" where it does.
func (m *motion) uncovered() string {
	if len(m.frames) < 3 {
		return "the recording does not cover it"
	}
	if m.time[0] > float64(m.pull.Start)+1e-9 {
		return fmt.Sprintf("the recording begins at %s, after its start", m.label(0))
	}
	return ""
}

// unmoved says how far the focus moved where that is too little, or not towards
// the mark and to a rest.
func (m *motion) unmoved() string {
	lo, hi, most := m.hand[0], m.hand[0], 0.0
	for _, h := range m.hand {
		if !(h >= lo) { // also where lo is NaN
			lo = h
		}
		hi = max(hi, h)
		most = max(most, h-lo)
	}
	style, wanted := units.Style{}, m.pull.Asks.Travel
	if most >= least*wanted {
		return fmt.Sprintf("the focus made no movement of its own towards the mark: %s at the hand of %s", style.AngleTo(most, 1), style.AngleTo(wanted, 1))
	}
	return fmt.Sprintf("the focus did not move: %s at the hand of %s", style.AngleTo(most, 1), style.AngleTo(wanted, 1))
}

// missing returns how many frames the recording lacks behind a frame, by how long each
// of its own is.
func (m *motion) missing(k int) int64 {
	f := m.frames[k]
	return max(0, int64(math.Round((m.frames[k+1].Time-f.Time)/f.lasts))-1)
}

// broken says why a movement cannot be scored for the frames that it lacks, ""
// where it can.
func (m *motion) broken(onset, landing int) string {
	if landing == len(m.frames)-1 {
		return fmt.Sprintf("the focus did not come to rest before %s", m.label(landing))
	}
	for k := onset; k < landing; k++ {
		switch jump := m.frames[k+1].Number - m.frames[k].Number; {
		case m.time[k+1]-m.time[k] <= longestGap:
		case jump <= 1:
			return fmt.Sprintf("the cut jumps at %s, in the middle of it", m.label(k+1))
		default:
			return fmt.Sprintf("frames are missing from %s to %s, in the middle of it", m.curve.label(m.frames[k].Number+1), m.curve.label(m.frames[k+1].Number-1))
		}
	}
	return ""
}
