// The report: what a log says of a hand, in numbers, as `takes --as json`
// writes it.

package takes

import (
	"cmp"
	"math"
	"slices"

	"pullscore/interp/plan"
	"pullscore/interp/takes/fit"
	"pullscore/interp/units"
)

// Enough is the number of takes from which a fit is told without a word of
// caution. Below, its intervals are told first.
const Enough = 36

// A Report is what a log comes to. Angles are degrees at the hand, times
// seconds; the intervals of bias, throughput and rim hold 90 %, those of hit
// rates 95 %. What does not apply is left out of JSON.
type Report struct {
	Takes  int    `json:"takes"`
	Puller string `json:"puller,omitempty"`

	Bias               plan.Number   `json:"bias_deg"`
	BiasInterval       plan.Interval `json:"bias_interval"`
	Throughput         plan.Number   `json:"throughput_bit_s"`
	ThroughputInterval plan.Interval `json:"throughput_interval"`
	Rim                plan.Number   `json:"rim_deg"` // on a rim of ReferenceMM
	RimInterval        plan.Interval `json:"rim_interval"`
	RimMM              plan.Number   `json:"rim_mm"` // the same as a length of rim
	ReferenceMM        plan.Number   `json:"reference_rim_mm"`

	Hits        int           `json:"hits"`
	HitRate     plan.Number   `json:"hit_rate,omitzero"`
	HitInterval plan.Interval `json:"hit_interval,omitzero"`
	HitsOf      int           `json:"hits_of"`
	HitsFrom    string        `json:"hits_from"` // "log or plan", or "within 3 deg"

	Constant plan.Number `json:"constant_error_deg,omitzero"`
	Variable plan.Number `json:"variable_error_deg,omitzero"`
	Absolute plan.Number `json:"absolute_error_deg,omitzero"`
	Short    int         `json:"short"` // landed before the mark
	Past     int         `json:"past"`
	Timed    int         `json:"timed,omitempty"` // takes whose planned time is known
	Early    int         `json:"early,omitempty"` // of these, moved a frame less or more than planned
	Late     int         `json:"late,omitempty"`
	Lateness plan.Number `json:"lateness_s,omitzero"`

	Fitted      int     `json:"fitted"`               // takes that the fit is of, slips among them
	Censored    int     `json:"censored"`             // of these, held by the end of the ring past the mark
	OnTheStop   int     `json:"on_the_stop"`          // scored and not fitted: the end of the ring is sharp
	Unmeasured  int     `json:"unmeasured,omitempty"` // counted and not fitted: nobody knows where they landed
	PageLeftOut int     `json:"page_left_out"`
	Page        *OnPage `json:"page,omitempty"` // those tries on the page of a plan

	Slipped   int         `json:"slipped"` // takes that are not in the spread
	Slips     []fit.Slip  `json:"slips"`
	SlipShare plan.Number `json:"slip_share"` // of all pulls; chances are lessened by it

	// Likeliest is the fit by the takes alone.
	Likeliest *Alone `json:"maximum_likelihood,omitempty"`

	TooFast  int        `json:"too_fast,omitempty"`      // scored and not fitted
	Others   int        `json:"other_pullers,omitempty"` // left out
	Sessions []Session  `json:"sessions,omitempty"`
	Change   *Change    `json:"change,omitempty"`
	Pulls    []PullLine `json:"pulls,omitempty"`
	Practise []Practice `json:"practise,omitempty"`

	Faulty int     `json:"faulty"` // rows that could not be used
	Faults []Place `json:"faults,omitempty"`

	Fit fit.Fit `json:"-"`
}

// OnPage is how tries on the page of a plan went. They are no takes of a hand on
// a ring, and no fit knows of them.
type OnPage struct {
	Tries    int         `json:"tries"`
	Hits     int         `json:"hits"`
	HitsOf   int         `json:"hits_of"`
	Constant plan.Number `json:"constant_error_deg"`
	Variable plan.Number `json:"variable_error_deg"`
	Pulls    []PullLine  `json:"pulls,omitempty"`
}

// Alone is a fit without what is known of hands beforehand. An end that the
// takes do not bound is left out.
type Alone struct {
	Bias       plan.Number `json:"bias_deg"`
	Throughput plan.Number `json:"throughput_bit_s"`
	Rim        plan.Number `json:"rim_deg"`
	NegLog     plan.Number `json:"negative_log_likelihood"`
}

// A Session is the takes of a day.
type Session struct {
	Date     string      `json:"date"`
	Takes    int         `json:"takes"`
	Constant plan.Number `json:"constant_error_deg"`
	Variable plan.Number `json:"variable_error_deg"`
	Absolute plan.Number `json:"absolute_error_deg"`
	Hits     int         `json:"hits"`
	HitsOf   int         `json:"hits_of"`
	// Spread is how far the takes spread over what the fit to all takes expects
	// of their travels and times: 1 as expected, less is better.
	Spread plan.Number `json:"spread_over_fit,omitzero"`
}

// A Change says what is different in the last session from those before it.
type Change struct {
	Date         string        `json:"date"`
	Bias         plan.Number   `json:"bias_deg"` // by how much the mean error moved
	BiasInterval plan.Interval `json:"bias_interval"`
	// Spread is the spread of the last session over that of those before, each
	// against what the fit expects of its travels and times.
	Spread         plan.Number   `json:"spread_ratio"`
	SpreadInterval plan.Interval `json:"spread_interval"`
}

// A PullLine is how a pull has gone.
type PullLine struct {
	Plan     string      `json:"plan,omitempty"`
	Shot     string      `json:"shot"`
	Pull     int         `json:"pull"`
	Takes    int         `json:"takes"`
	Hits     int         `json:"hits"`
	HitsOf   int         `json:"hits_of"`
	Constant plan.Number `json:"constant_error_deg"`
	Variable plan.Number `json:"variable_error_deg"`
}

// A Place is a fault in the log.
type Place struct {
	File    string `json:"file"`
	Line    int    `json:"line"`
	Column  int    `json:"column"`
	Message string `json:"message"`
}

// HitsByPlan says that the log or a plan tells which takes were sharp.
const HitsByPlan = "log or plan"

// Report fits the sample and reports it.
func (s *Sample) Report() *Report {
	f := s.Fit()
	r := &Report{
		Takes: s.Scores.N, Puller: s.opt.Puller, Fit: f, TooFast: s.TooFast, Others: s.Others,
		Bias: plan.Number(f.Bias.Value), BiasInterval: interval(f.Bias),
		Throughput: plan.Number(f.Throughput.Value), ThroughputInterval: interval(f.Throughput),
		Rim: plan.Number(f.Rim.Value), RimInterval: interval(f.Rim),
		RimMM: plan.Number(f.RimSpread() * 1000), ReferenceMM: fit.ReferenceRim * 1000,
	}
	r.Fitted, r.Censored, r.OnTheStop, r.Unmeasured = f.Takes, s.AtEnd, s.OnTheStop, s.Unmeasured
	r.Slipped, r.Slips, r.SlipShare = f.Slipped, append([]fit.Slip{}, f.Slips...), plan.Number(f.SlipShare)
	r.PageLeftOut, r.Page = s.Page.Scores.N, s.Page.onPage()
	if names := s.Pullers(); r.Puller == "" && len(names) == 1 {
		r.Puller = names[0]
	}
	r.scores(&s.Scores)
	if !s.log.Empty() {
		ml := s.Likeliest()
		r.Likeliest = &Alone{plan.Number(ml.Bias.Value), plan.Number(ml.Throughput.Value), plan.Number(ml.Rim.Value), plan.Number(ml.NegLog)}
	}
	r.Sessions = s.sessionLines(&f)
	r.Change = s.change(&f)
	r.Pulls = s.pullLines()
	return r
}

// onPage reports the tries of a sample of them; nil for none.
func (s *Sample) onPage() *OnPage {
	if s.Scores.N == 0 {
		return nil
	}
	hits, of, _ := s.Scores.Counted()
	return &OnPage{s.Scores.N, hits, of, s.Scores.constant(), s.Scores.variable(), s.pullLines()}
}

// constant and variable are those errors as a report has them.
func (s *Scores) constant() plan.Number { return plan.Number(s.Constant()) }
func (s *Scores) variable() plan.Number { return plan.Number(s.Variable()) }

func interval(e fit.Estimate) plan.Interval {
	return plan.Interval{plan.Number(e.Lo), plan.Number(e.Hi)}
}

// scores fills in what takes say without a model.
func (r *Report) scores(s *Scores) {
	hits, of, told := s.Counted()
	r.Hits, r.HitsOf, r.HitsFrom = hits, of, HitsByPlan
	if !told {
		r.HitsFrom = "within " + units.Style{}.AngleTo(HitWithin, 1)
	}
	r.HitRate, r.HitInterval = plan.None(), plan.NoInterval()
	if of > 0 {
		lo, hi := Wilson(hits, of, Z95)
		r.HitRate, r.HitInterval = plan.Number(float64(hits)/float64(of)), plan.Interval{plan.Number(lo), plan.Number(hi)}
	}
	r.Constant, r.Variable, r.Absolute = plan.Number(s.Constant()), plan.Number(s.Variable()), plan.Number(s.Absolute())
	r.Short, r.Past = s.Short, s.Past
	r.Timed, r.Early, r.Late, r.Lateness = s.Timed, s.Early, s.Late, plan.Number(s.Lateness())
}

// days returns the dates of the sessions, in order.
func (s *Sample) days() []string {
	var list []string
	for date := range s.sessions {
		list = append(list, date)
	}
	slices.Sort(list)
	return list
}

func (s *Sample) sessionLines(f *fit.Fit) (list []Session) {
	for _, date := range s.days() {
		day := s.sessions[date]
		hits, of, _ := day.Counted()
		line := Session{
			Date: date, Takes: day.N, Hits: hits, HitsOf: of, Spread: plan.None(),
			Constant: plan.Number(day.Constant()), Variable: plan.Number(day.Variable()), Absolute: plan.Number(day.Absolute()),
		}
		if day.day.N > 1 {
			share, _, _ := day.day.Deviation(f)
			line.Spread = plan.Number(share)
		}
		list = append(list, line)
	}
	return list
}

// change compares the last session with those before it; nil where either has
// fewer than two takes. The intervals hold 90 %: that of the bias by the normal
// distribution, that of the spread by the distribution of the logarithm of a
// ratio of variances, whose variance is 2/(m-1) + 2/(n-1).
func (s *Sample) change(f *fit.Fit) *Change {
	days := s.days()
	if len(days) < 2 {
		return nil
	}
	last := s.sessions[days[len(days)-1]].day
	var earlier []*fit.Day
	for _, date := range days[:len(days)-1] {
		earlier = append(earlier, s.sessions[date].day)
	}
	before := fit.Days(earlier...)
	if last.N < 2 || before.N < 2 {
		return nil
	}
	was, wasMean, wasError := before.Deviation(f)
	is, isMean, isError := last.Deviation(f)
	if was == 0 || is == 0 {
		return nil
	}
	const z = 1.644854 // 90 % to both sides
	half := z * math.Hypot(wasError*was, isError*is)
	ratio := is / was
	by := math.Exp(z * math.Sqrt(0.5/float64(last.N-1)+0.5/float64(before.N-1)))
	return &Change{
		Date: days[len(days)-1],
		Bias: plan.Number(isMean - wasMean), BiasInterval: plan.Interval{plan.Number(isMean - wasMean - half), plan.Number(isMean - wasMean + half)},
		Spread: plan.Number(ratio), SpreadInterval: plan.Interval{plan.Number(ratio / by), plan.Number(ratio * by)},
	}
}

// pullLines returns how every pull has gone, those with the lowest hit rate
// first.
func (s *Sample) pullLines() (list []PullLine) {
	for name, sc := range s.pulls {
		hits, of, _ := sc.Counted()
		list = append(list, PullLine{
			name.Plan, name.Shot, name.Pull, sc.N, hits, of, plan.Number(sc.Constant()), plan.Number(sc.Variable()),
		})
	}
	rate := func(l *PullLine) float64 { return float64(l.Hits) / float64(l.HitsOf) }
	slices.SortFunc(list, func(a, b PullLine) int {
		return cmp.Or(cmp.Compare(rate(&a), rate(&b)), cmp.Compare(b.Takes, a.Takes),
			cmp.Compare(a.Plan, b.Plan), cmp.Compare(a.Shot, b.Shot), cmp.Compare(a.Pull, b.Pull))
	})
	return list
}
