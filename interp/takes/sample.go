// A sample: a log of any length, summed up as it is read.

package takes

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"

	"pullscore/interp/hand"
)

// Options say which takes of a log count, and how.
type Options struct {
	// Puller is whose takes count; those that name nobody count too. "" is all.
	Puller string
	// Grip is what one grip of the hand turns, degrees; 0 is the default of
	// package hand. A take that turns farther has lost time to re-grips.
	Grip float64
}

// Limits on what a sample keeps of a log; above them only totals are kept.
const (
	maxSessions = 1000
	maxGroups   = 10_000 // pulls, pullers
	maxDots     = 600    // takes that a drawing shows
)

// A Sample holds what a log comes to.
type Sample struct {
	Scores Scores
	// TooFast counts the takes that left no time to move besides the re-grips
	// that their travel asks for. They are scored and not fitted.
	TooFast int
	// Others counts the takes of another puller, which are left out.
	Others int

	opt      Options
	cells    *cells
	sessions map[string]*session
	pulls    map[PullName]*Scores
	pullers  map[string]int

	dots []Dot
	seen int
	rand *rand.Rand
}

// A PullName names a pull in a log.
type PullName struct {
	Plan, Shot string
	Pull       int
}

// A Dot is one take as a drawing shows it.
type Dot struct {
	Travel, Moving, Error float64 // degrees, seconds without re-grips, degrees
	Hit                   Hit
	Date                  string
}

// A session is the takes of one day.
type session struct {
	Scores
	cells *cells
}

// NewSample returns an empty sample.
func NewSample(opt Options) *Sample {
	if opt.Grip <= 0 {
		opt.Grip = hand.Default().Grip
	}
	return &Sample{
		opt: opt, cells: newCells(maxCells), sessions: map[string]*session{},
		pulls: map[PullName]*Scores{}, pullers: map[string]int{},
		rand: rand.New(rand.NewPCG(1, 36)), // the same takes give the same drawing
	}
}

// Add takes a take in.
func (s *Sample) Add(t Take) {
	if s.opt.Puller != "" && t.Puller != "" && t.Puller != s.opt.Puller {
		s.Others++
		return
	}
	s.Scores.Add(&t)
	s.group(&t)
	moving := s.moving(&t)
	if !(moving > 0) {
		s.TooFast++
		return
	}
	s.cells.add(&t, moving)
	if t.Date != "" {
		if day := s.session(t.Date); day != nil {
			day.Scores.Add(&t)
			day.cells.add(&t, moving)
		}
	}
	s.dot(Dot{t.Travel, moving, t.Error, t.Hit, t.Date})
}

// moving returns the time of a take without what its re-grips cost.
func (s *Sample) moving(t *Take) float64 {
	h := hand.Hand{Throughput: 1, Grip: s.opt.Grip, Limit: 1}
	return h.Land(hand.Pull{Travel: t.Travel, Time: t.Time}).Moving
}

func (s *Sample) session(date string) *session {
	day := s.sessions[date]
	if day == nil && len(s.sessions) < maxSessions {
		day = &session{cells: newCells(maxDayCells)}
		s.sessions[date] = day
	}
	return day
}

// group counts the take with its pull and its puller.
func (s *Sample) group(t *Take) {
	if _, known := s.pullers[t.Puller]; known || len(s.pullers) < maxGroups {
		s.pullers[t.Puller]++
	}
	if t.Shot == "" || t.Pull == 0 {
		return
	}
	name := PullName{t.Plan, t.Shot, t.Pull}
	sc := s.pulls[name]
	if sc == nil && len(s.pulls) < maxGroups {
		sc = &Scores{}
		s.pulls[name] = sc
	}
	if sc != nil {
		sc.Add(t)
	}
}

// dot keeps the take for a drawing, or by chance another instead: every take
// has the same chance to be kept (Vitter 1985, ACM TOMS 11(1), algorithm R).
func (s *Sample) dot(d Dot) {
	s.seen++
	if len(s.dots) < maxDots {
		s.dots = append(s.dots, d)
		return
	}
	if i := s.rand.IntN(s.seen); i < maxDots {
		s.dots[i] = d
	}
}

// Dots returns the takes for a drawing, at most 600 of them, picked by chance
// where there are more, the shortest movement first.
func (s *Sample) Dots() []Dot {
	list := slices.Clone(s.dots)
	slices.SortStableFunc(list, func(a, b Dot) int {
		return cmp.Or(cmp.Compare(a.Moving, b.Moving), cmp.Compare(a.Travel, b.Travel), cmp.Compare(a.Error, b.Error))
	})
	return list
}

// Pullers returns who is named in the log, in order, the unnamed left out.
func (s *Sample) Pullers() []string {
	var list []string
	for name := range s.pullers {
		if name != "" {
			list = append(list, name)
		}
	}
	slices.Sort(list)
	return list
}

// NamesPulls tells whether takes say of which pull they are.
func (s *Sample) NamesPulls() bool { return len(s.pulls) > 0 }

// Fit fits a hand to the takes, with what is known of hands beforehand. With no
// takes the fit is that knowledge alone.
func (s *Sample) Fit() Fit { return fit(s.cells, true) }

// Likeliest fits a hand to the takes alone, by maximum likelihood. Where they
// leave something open, an end of its interval is infinite or 0.
func (s *Sample) Likeliest() Fit { return fit(s.cells, false) }

// deviation returns how far the takes in cells spread about a fit, as a share
// of what it expects, and their mean error with its standard error, degrees.
func (cs *cells) deviation(f *Fit) (share, mean, se float64) {
	n, z, weight, weighted := 0.0, 0.0, 0.0, 0.0
	l := newLikelihood(cs, false)
	variance := func(c *cell) float64 {
		return math.Pow(hand.MotorSpread(c.travel, c.moving, f.Throughput.Value), 2) + math.Pow(f.Rim.Value*c.rim, 2)
	}
	for i := range l.cells {
		c := &l.cells[i]
		weight += c.n / variance(c)
		weighted += c.sum / variance(c)
	}
	mean, se = weighted/weight, 1/math.Sqrt(weight)
	for i := range l.cells {
		c := &l.cells[i]
		n += c.n
		z += (c.squares - 2*mean*c.sum + c.n*mean*mean) / variance(c)
	}
	return math.Sqrt(z / max(n-1, 1)), mean, se
}
