// Following a person: how far the hand lags, and how often the person is sharp.
//
// The puller foresees a rehearsed walk. The hand keeps turning at the speed that the
// puller saw one reaction time ago. Its error is the change since then: the lag. If
// the ring turns at an even speed, there is no lag, however fast it turns. Near the
// lens the ring turns faster for each metre, and this counts as a change too, since
// the hand turns the ring and not the distance. Models of tracking show a hand only
// its error. They describe targets that nobody can foresee, so we do not use them:
// people follow predictable targets without the delay (Parker, Weightman, Tyson,
// Abbott & Mansell, read as an abstract).
//
// Besides the lag there is a spread. It has three parts, which add up as squares:
//
//   - the spread of setting any mark on the rim;
//   - timing and seeing. A slip in time counts at the speed of the ring. Away from a
//     mark, the puller judges the distance by eye. The two add up as squares too. The
//     greatest value over the last reaction time counts, because the hand cannot yet
//     correct what the puller has just seen;
//   - sway. The hand corrects the part that lasts longer than a reaction.
//
// No study measures how pullers follow focus. The reaction time comes from a source;
// the other constants are common practice or our own. Each says which.

package hand

import "math"

const (
	// Sight is the time from seeing a change to the first movement, in seconds: the
	// simple reaction to light, 213 ms without the delays of the hardware, in 1469
	// people (Woods et al., Front. Hum. Neurosci. 9:131, 2015; read as an excerpt).
	Sight = 0.21

	// Slip is the standard deviation of the time of a rehearsed landing, in seconds.
	// SlipReacting is that of a landing after a sound. Both are our own choice,
	// between the windows of interception tasks (35 to 65 ms: Tresilian et al., Exp.
	// Brain Res. 142, 2002, read as an abstract) and 25 to 45 ms of coincidence timing
	// (from memory).
	Slip         = 0.03
	SlipReacting = 0.05

	// See is the spread of judging a person's distance by eye, as a share of the
	// distance. SeeMark is the same as a share of the way to the nearest mark. The
	// smaller result counts. Common practice, no source.
	See     = 0.01
	SeeMark = 0.1

	// Eyeful is how long something must be soft before people notice it, in seconds.
	// Our own choice.
	Eyeful = 0.5

	// every is the time between two moments of a follow, in seconds.
	every = 1.0 / 48
	// mostSteps is the greatest number of moments. A follow of over 17 minutes has
	// longer steps.
	mostSteps = 50_000
)

// SeenWithin returns the spread in metres of judging a person's distance by eye. The
// person is at the given distance, and toMark metres from the nearest mark.
func SeenWithin(distance, toMark float64) float64 {
	return min(See*distance, SeeMark*toMark)
}

// A Course is the task that a follow gives the hand. Its functions take a time in
// seconds. Follow also calls them for times before From, because the puller has seen
// the way before the follow. Angles are in degrees at the hand.
type Course struct {
	From, To float64
	Angle    func(t float64) float64             // the angle that keeps the subject sharp
	PerMetre func(t float64) float64             // how far the hand turns for a metre of distance
	Distance func(t float64) float64             // of the subject, metres
	ToMark   func(t float64) float64             // metres to the nearest place where the subject stands still
	Room     func(t float64) (lo, hi float64)    // the window, counted from Angle; infinite where a stop of the ring holds the hand
	Still    func(from, to float64) (still bool) // reports whether nothing moves between two times; nil: not known
	Sway     float64                             // of subject and camera, metres
	Rim      float64                             // diameter under the hand, metres
	Bias     float64                             // mean error of the hand here, degrees towards the far end
}

// A Moment is one moment of a follow.
type Moment struct {
	T      float64 // seconds
	Angle  float64 // of the hand with the focus on the subject, degrees
	Lag    float64 // how far the hand is behind, degrees; positive: the focus is too near
	Spread float64 // standard deviation of the angle of the hand, degrees
	Sharp  float64 // probability that the subject is sharp
}

// Follow returns the moments of a follow from From to To, a 48th of a second apart.
// It returns at least one. The steps of a follow of over 17 minutes are longer.
func (h Hand) Follow(c Course) []Moment {
	step, n := every, max(1, math.Round((c.To-c.From)/every))
	if !(n <= mostSteps) {
		n = mostSteps
		step = (c.To - c.From) / n
	}
	back := int(math.Round(Sight / step))
	g := newGrid(&c, int(n), back, step)
	noise := noises(&c, g, int(n), back)
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
		m := Moment{T: t, Angle: g.angle.at(i), Lag: g.lag(i)}
		sway := g.perMetre.at(i) * min(c.Sway, math.Hypot(left, See*c.Distance(t)))
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

// still reports whether nothing moves that can change the moment at t.
func (c *Course) still(t float64) bool {
	return c.Still != nil && c.Still(t-2*Sight-2*every, t+every)
}

// A grid holds what is asked for again and again of a course: angles and degrees for a
// metre at every step, and the angles that were seen a reaction before.
type grid struct{ angle, seen, perMetre steps }

func newGrid(c *Course, n, back int, step float64) *grid {
	of := func(f func(float64) float64, from float64) steps {
		return steps{f: f, from: from, step: step, first: -back - 1, known: make([]bool, back+n+3), value: make([]float64, back+n+3)}
	}
	return &grid{angle: of(c.Angle, c.From), seen: of(c.Angle, c.From-Sight), perMetre: of(c.PerMetre, c.From)}
}

// lag returns how far the hand is behind at a step, in degrees, if it keeps the speed
// that the puller saw.
func (g *grid) lag(i int) float64 {
	return g.angle.at(i) - g.seen.at(i) - Sight*g.seen.speed(i)
}

// steps are values of a function at every step from one before the first on, each
// computed once and only if it is asked for.
type steps struct {
	f     func(float64) float64
	from  float64
	step  float64
	first int
	known []bool
	value []float64
}

func (s *steps) at(i int) float64 {
	k := i - s.first
	if !s.known[k] {
		s.known[k], s.value[k] = true, s.f(s.from+float64(i)*s.step)
	}
	return s.value[k]
}

// speed returns how fast the value changes at a step, a second. Steps of a long follow
// are too long for that.
func (s *steps) speed(i int) float64 {
	if s.step > every {
		t := s.from + float64(i)*s.step
		return (s.f(t+every) - s.f(t-every)) / (2 * every)
	}
	return (s.at(i+1) - s.at(i-1)) / (2 * every)
}

// noises returns the spread by slips in time and by judging distance, in degrees, for
// each step from back steps before the follow to its end.
func noises(c *Course, g *grid, n, back int) []float64 {
	list := make([]float64, back+n+1)
	calm := 0
	for i := range list {
		t := c.From + float64(i-back)*g.angle.step
		if c.Still != nil && c.Still(t-every, t+every) {
			if calm++; calm > 1 {
				list[i] = list[i-1]
				continue
			}
		} else {
			calm = 0
		}
		list[i] = math.Hypot(Slip*g.angle.speed(i-back), g.perMetre.at(i-back)*SeenWithin(c.Distance(t), c.ToMark(t)))
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

// WorstHalfSecond returns the lowest mean chance of being sharp over any half second
// of a follow, 0 to 1, and the time in seconds at which that half second begins. If
// the follow is shorter, it returns the mean over all of it.
func WorstHalfSecond(list []Moment) (share, at float64) {
	k := len(list)
	if len(list) > 1 {
		k = max(1, int(math.Round(Eyeful/(list[1].T-list[0].T))))
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
