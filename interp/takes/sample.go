// A sample: a log of any length, summed up as it is read.

package takes

import (
	"cmp"
	"math/rand/v2"
	"slices"

	"pullscore/interp/hand"
	"pullscore/interp/plan"
	"pullscore/interp/takes/fit"
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
	// Page has the tries on the page of a plan. They are no part of the others.
	Page *Sample
	// AtEnd counts the takes that the end of the ring held past the mark.
	AtEnd int
	// OnTheStop counts those whose ring ends in focus. They are scored and not
	// fitted: whether the hand aimed at the mark or at the end is not known.
	OnTheStop int
	// Unmeasured counts those of which nobody knows where they landed. They are
	// counted and not fitted.
	Unmeasured int
	// TooFast counts the takes that left no time to move besides the re-grips
	// that their travel asks for. They are scored and not fitted.
	TooFast int
	// Others counts the takes of another puller, which are left out.
	Others int

	opt      Options
	log      *fit.Log
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
	Window                [2]float64 // as of a Take
}

// A session is the takes of one day.
type session struct {
	Scores
	day *fit.Day // those of them that are fitted
}

// NewSample returns an empty sample.
func NewSample(opt Options) *Sample {
	s := newSample(opt)
	s.Page = newSample(opt)
	return s
}

func newSample(opt Options) *Sample {
	if opt.Grip <= 0 {
		opt.Grip = hand.Default().Grip
	}
	return &Sample{
		opt: opt, log: fit.NewLog(), sessions: map[string]*session{},
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
	if t.OnPage() && s.Page != nil {
		s.Page.Add(t)
		return
	}
	s.Scores.Add(&t)
	s.group(&t)
	moving, fits := s.fits(&t)
	if t.Date != "" {
		if day := s.session(t.Date); day != nil {
			day.Scores.Add(&t)
			if fits {
				day.day.Add(t.landing(moving))
			}
		}
	}
	if !fits {
		return
	}
	if t.Stop == HeldByStop {
		s.AtEnd++
	}
	s.log.Add(t.landing(moving))
	s.dot(Dot{t.Travel, moving, t.Error, t.Hit, t.Date, t.Window})
}

// fits tells whether a take can be fitted, and how long it moved; it counts
// those that cannot.
func (s *Sample) fits(t *Take) (moving float64, ok bool) {
	if t.Unmeasured {
		s.Unmeasured++
		return 0, false
	}
	if t.Stop == SharpStop {
		s.OnTheStop++
		return 0, false
	}
	if moving = s.moving(t); moving > 0 {
		return moving, true
	}
	s.TooFast++
	return 0, false
}

// landing returns the take as the fit knows it.
func (t *Take) landing(moving float64) fit.Landing {
	return fit.Landing{
		Travel: t.Travel, Moving: moving, Error: t.Error, Rim: t.Rim, AtEnd: t.Stop == HeldByStop,
		Name: fit.Slip{Line: t.Line, Date: t.Date, Plan: t.Plan, Shot: t.Shot, Pull: t.Pull, Error: plan.Number(t.Error)},
	}
}

// moving returns the time of a take without what its re-grips cost.
func (s *Sample) moving(t *Take) float64 {
	h := hand.Hand{Throughput: 1, Grip: s.opt.Grip, Limit: 1}
	return h.Land(hand.Pull{Travel: t.Travel, Time: t.Time}).Moving
}

func (s *Sample) session(date string) *session {
	day := s.sessions[date]
	if day == nil && len(s.sessions) < maxSessions {
		day = &session{day: fit.NewDay()}
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

// Fit fits a hand to the takes, robustly and with what is known of hands
// beforehand. With no takes the fit is that knowledge alone.
func (s *Sample) Fit() fit.Fit { return s.log.Fit() }

// Hand fits a hand as Fit does, without its ranges, which take most of the time.
func (s *Sample) Hand() fit.Fit { return s.log.Hand() }

// Likeliest fits a hand to the takes alone, by maximum likelihood,
// and tells no ranges.
func (s *Sample) Likeliest() fit.Fit { return s.log.LikeliestHand() }
