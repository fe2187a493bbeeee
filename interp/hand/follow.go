// Following somebody: how far the hand is behind, and how often it is sharp.
//
// A rehearsed walk is foreseen. The hand goes on at the speed that it saw, and is
// wrong by what has changed since: a reaction to sight ago. That is its lag. Where
// the speed of the ring is even there is none, whatever the speed; the ring's own
// curve near the lens counts as a change, for it is the ring that is turned and
// not the distance. Models that show a hand only its error, as those of tracking
// do, describe targets that nobody foresees, and are not used here: predictable
// ones are followed without the delay (Parker, Weightman, Tyson, Abbott &
// Mansell, read as an abstract).
//
// Besides the lag it spreads, by three things that add up as squares:
//
//   - setting a place on the rim at all;
//   - the greater of two over the last reaction, for what was seen last cannot be
//     mended yet: a slip in time, at the speed of the ring; and seeing how far
//     somebody is, who is away from any mark;
//   - sway, of which the hand sees to what lasts longer than a reaction.
//
// No study measures how focus is pulled. Of the constants, the reaction is read in
// a source, and the others are common practice or our own; each says which.

package hand

import "math"

const (
	// Sight is the time from seeing a change to the first movement, seconds:
	// simple reaction to light, 213 ms after the delays of the hardware, of 1469
	// people (Woods et al., Front. Hum. Neurosci. 9:131, 2015; read as an excerpt).
	Sight = 0.21

	// Slip is by how much the time of a rehearsed landing varies, seconds, and
	// SlipReacting that of one that hangs on a sound. Our own, between the windows
	// of tasks of interception (35 to 65 ms: Tresilian et al., Exp. Brain Res. 142,
	// 2002, read as an abstract) and 25 to 45 ms of coincidence timing (from memory).
	Slip         = 0.03
	SlipReacting = 0.05

	// See is how well one sees how far away somebody is, as a share of the
	// distance, and SeeMark as a share of the way to the nearest mark, whichever is
	// less. Common practice, no source.
	See     = 0.01
	SeeMark = 0.1

	// eyeful is how long something must be soft to be noticed, seconds: half a
	// second. Our own choice.
	eyeful = 0.5

	// every is the step in which a follow is looked at, seconds.
	every = 1.0 / 48
	// mostSteps bounds the steps: a follow of over 17 minutes is looked at in longer ones.
	mostSteps = 50_000
)

// SeenWithin returns the spread in metres of seeing how far away somebody is, at a
// distance and so many metres from the nearest mark.
func SeenWithin(distance, toMark float64) float64 {
	return min(See*distance, SeeMark*toMark)
}

// A Course is what a follow asks of the hand. Its functions are of the time in
// seconds, and are asked for times before From too: the way before the follow has
// been seen. Angles are degrees at the hand.
type Course struct {
	From, To float64
	Angle    func(t float64) float64             // that keeps the subject sharp
	PerMetre func(t float64) float64             // how far the hand turns for a metre of distance there
	Distance func(t float64) float64             // metres
	ToMark   func(t float64) float64             // metres to the nearest place where the subject stands
	Room     func(t float64) (lo, hi float64)    // the window, from Angle; an edge that a stop holds is infinite
	Still    func(from, to float64) (still bool) // nothing moves between two times; nil: never known
	Sway     float64                             // of subject and camera, metres
	Rim      float64                             // diameter under the hand, metres
	Bias     float64                             // mean error of the hand here, degrees towards the far end
}

// A Moment is one moment of a follow.
type Moment struct {
	T      float64 // seconds
	Angle  float64 // of the hand that is on the subject, degrees
	Lag    float64 // how far the hand is behind, degrees, positive where it is too near
	Spread float64 // standard deviation of where it is, degrees
	Sharp  float64 // probability that the subject is sharp
}

// Follow returns the moments of a follow, a 48th of a second apart, from From to
// To. There always is one.
func (h Hand) Follow(c Course) []Moment {
	step, n := every, max(1, math.Round((c.To-c.From)/every))
	if !(n <= mostSteps) {
		n = mostSteps
		step = (c.To - c.From) / n
	}
	back := int(math.Round(Sight / step))
	noise := noises(&c, int(n), back, step)
	rim, left := RimDegrees(h.RimSpread, c.Rim), SwayLeft(c.Sway)
	moments := make([]Moment, int(n)+1)
	calm := 0 // moments since which nothing has changed
	for i := range moments {
		t := c.From + float64(i)*step
		if c.still(t) {
			if calm++; calm > 1 {
				moments[i] = moments[i-1]
				moments[i].T = t
				continue
			}
		} else {
			calm = 0
		}
		m := Moment{T: t, Angle: c.Angle(t), Lag: c.lag(t)}
		sway := c.PerMetre(t) * min(c.Sway, math.Hypot(left, See*c.Distance(t)))
		if c.Sway == 0 {
			sway = 0
		}
		m.Spread = math.Hypot(math.Hypot(rim, greatest(noise[i:i+back+1])), sway)
		lo, hi := c.Room(t)
		m.Sharp = Within(lo, hi, m.Spread, c.Bias-m.Lag)
		moments[i] = m
	}
	return moments
}

// still tells whether nothing that counts at t has moved.
func (c *Course) still(t float64) bool {
	return c.Still != nil && c.Still(t-2*Sight-2*every, t+every)
}

// lag returns how far the hand is behind at t: it goes on at the speed that it saw.
func (c *Course) lag(t float64) float64 {
	seen := t - Sight
	speed := (c.Angle(seen+every) - c.Angle(seen-every)) / (2 * every)
	return c.Angle(t) - c.Angle(seen) - Sight*speed
}

// noises returns the spread by slips and by seeing, degrees, from back steps before
// the follow to its end.
func noises(c *Course, n, back int, step float64) []float64 {
	list := make([]float64, back+n+1)
	calm := 0
	for i := range list {
		t := c.From + float64(i-back)*step
		if c.Still != nil && c.Still(t-every, t+every) {
			if calm++; calm > 1 {
				list[i] = list[i-1]
				continue
			}
		} else {
			calm = 0
		}
		speed := (c.Angle(t+every) - c.Angle(t-every)) / (2 * every)
		list[i] = math.Hypot(Slip*speed, c.PerMetre(t)*SeenWithin(c.Distance(t), c.ToMark(t)))
	}
	return list
}

func greatest(list []float64) float64 {
	most := 0.0
	for _, v := range list {
		most = max(most, v)
	}
	return most
}

// SharpShare returns the mean chance of being sharp over a follow, 0 to 1.
func SharpShare(list []Moment) float64 {
	sum := 0.0
	for _, m := range list {
		sum += m.Sharp
	}
	return sum / float64(len(list))
}

// WorstHalfSecond returns the least mean chance of being sharp over half a second
// of a follow, over all of a shorter one, and when that begins.
func WorstHalfSecond(list []Moment) (share, at float64) {
	k := len(list)
	if len(list) > 1 {
		k = max(1, int(math.Round(eyeful/(list[1].T-list[0].T))))
	}
	if len(list) <= k {
		return SharpShare(list), list[0].T
	}
	sum := 0.0
	for _, m := range list[:k] {
		sum += m.Sharp
	}
	least, first := sum, 0
	for i := 1; i+k < len(list); i++ {
		sum += list[i+k-1].Sharp - list[i-1].Sharp
		if sum < least-1e-12 {
			least, first = sum, i
		}
	}
	return max(0, least/float64(k)), list[first].T
}
