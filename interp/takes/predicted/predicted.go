// Package predicted lays the takes of a log beside the chances that were
// computed for them before the hand knew of them. Nothing else can prove or
// refute what the landing model says.
//
// A chance is that of the plan for the pull, at its own time and window. The
// hand is the one that could be known on that day: that of which nothing is known,
// with what the puller's section says itself, fitted to the takes of the days
// before. No take of the same day counts, since the paper on set was printed
// before it.
// Where no row has a date, every 36 rows are a day.
package predicted

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"pullscore/interp/hand"
	"pullscore/interp/plan"
	"pullscore/interp/takes"
	"pullscore/interp/takes/fit"
)

// A Prediction is a take beside the chance that was computed for it.
type Prediction struct {
	Line   int         `json:"line"` // of the log
	Date   string      `json:"date,omitempty"`
	Puller string      `json:"puller,omitempty"`
	Shot   string      `json:"shot"`
	Pull   int         `json:"pull"`
	Chance plan.Number `json:"probability"`
	Knew   int         `json:"fitted_to"` // takes that the hand was fitted to; 0: the hand of which nothing is known
	Sharp  bool        `json:"hit"`
}

// A Band is what became of the takes whose chance lay between two.
type Band struct {
	From     plan.Number   `json:"from"`
	To       plan.Number   `json:"to"`
	Takes    int           `json:"takes"`
	Hits     int           `json:"hits"`
	Said     plan.Number   `json:"said"` // their chance on the mean
	Rate     plan.Number   `json:"rate"`
	Interval plan.Interval `json:"interval"` // of the rate: Wilson's, 90 %
}

// Holds tells whether the interval of the rate holds what was said.
func (b *Band) Holds() bool { return b.Interval[0] <= b.Said && b.Said <= b.Interval[1] }

// A Report is what a log says of the chances of a plan.
type Report struct {
	Plan  string       `json:"plan"`
	All   Band         `json:"all"`
	Bands []Band       `json:"bands"`          // those with takes, the lowest first
	Slow  int          `json:"slow,omitempty"` // takes that moved a frame longer than planned, or more
	Takes []Prediction `json:"takes"`          // in the order of the rows

	Page    int `json:"page_left_out"`
	Unsaid  int `json:"unjudged_left_out"` // nobody knows whether they were sharp
	Foreign int `json:"other_left_out"`    // of follows, of other plans, or of no pull that is named

	Faulty int           `json:"faulty"` // rows that could not be used
	Faults []takes.Place `json:"faults,omitempty"`
}

// edges are those of the bands. Most pulls of a plan lie at the upper end.
var edges = []float64{0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 0.99, 1}

// z90 is the number of standard deviations that hold 90 % to both sides.
const z90 = 1.644854

// Of lays the takes of a log, in the order of its rows, beside the chances of a
// plan. The plan is one whose hands know of no log.
func Of(list []takes.Take, p *plan.Plan) *Report {
	r := &Report{Plan: p.Title, Bands: []Band{}, Takes: []Prediction{}}
	hands := &hands{list: list, samples: map[string]*takes.Sample{}, fits: map[string]fit.Fit{}}
	plans := takes.Plans{p}
	for _, day := range days(list) {
		for _, i := range day {
			r.add(&list[i], plans, hands)
		}
		hands.learn(day)
	}
	slices.SortStableFunc(r.Takes, func(a, b Prediction) int { return cmp.Compare(a.Line, b.Line) })
	r.sum()
	return r
}

// add lays a take beside its chance.
func (r *Report) add(t *takes.Take, plans takes.Plans, hands *hands) {
	if t.OnPage() {
		r.Page++
		return
	}
	shot, pull, ok := plans.Pull(t)
	if !ok || pull.Kind == "follow" || math.IsNaN(pull.Asks.Travel) {
		r.Foreign++
		return
	}
	if t.Hit == takes.Unsaid {
		r.Unsaid++
		return
	}
	puller := cmp.Or(t.Puller, shot.Puller)
	f := hands.of(puller, shot.Hand.Grip)
	if t.Planned > 0 && t.Time > t.Planned+1.0/24 {
		r.Slow++
	}
	r.Takes = append(r.Takes, Prediction{
		Line: t.Line, Date: t.Date, Puller: puller, Shot: shot.ID, Pull: pull.Number, Knew: f.Takes,
		Chance: plan.Number(learned(&f, shot.Hand).Land(pull.Asks).Chance), Sharp: t.Hit == takes.Sharp,
	})
}

// learned returns a hand with what a fit says of it. What the puller's section
// says stands, as in the plan: a value other than that of a hand of which nothing is known.
func learned(f *fit.Fit, h hand.Hand) hand.Hand {
	to, unknown := f.Hand(h), hand.Default()
	if h.Throughput != unknown.Throughput {
		to.Throughput = h.Throughput
	}
	if h.RimSpread != unknown.RimSpread {
		to.RimSpread = h.RimSpread
	}
	if h.Bias != unknown.Bias {
		to.Bias = h.Bias
	}
	return to
}

// sum sums the takes up in bands.
func (r *Report) sum() {
	bands := make([]Band, len(edges)-1)
	for i := range bands {
		bands[i].From, bands[i].To = plan.Number(edges[i]), plan.Number(edges[i+1])
	}
	r.All.To = 1
	for i := range r.Takes {
		t := &r.Takes[i]
		k := 0
		for k < len(bands)-1 && t.Chance >= bands[k].To {
			k++
		}
		bands[k].add(t)
		r.All.add(t)
	}
	for i := range bands {
		if bands[i].Takes > 0 {
			bands[i].finish()
			r.Bands = append(r.Bands, bands[i])
		}
	}
	r.All.finish()
}

// add counts a take; Said is the sum of chances until finish.
func (b *Band) add(t *Prediction) {
	b.Takes++
	b.Said += t.Chance
	if t.Sharp {
		b.Hits++
	}
}

func (b *Band) finish() {
	if b.Takes == 0 {
		b.Said, b.Rate, b.Interval = plan.None(), plan.None(), plan.NoInterval()
		return
	}
	lo, hi := takes.Wilson(b.Hits, b.Takes, z90)
	b.Said /= plan.Number(b.Takes)
	b.Rate, b.Interval = plan.Number(float64(b.Hits)/float64(b.Takes)), plan.Interval{plan.Number(lo), plan.Number(hi)}
}

// days returns the rows of each day, the days in order. A row without a date is
// of the day of the row above it.
func days(list []takes.Take) [][]int {
	name, dated := "", false
	of := map[string][]int{}
	for i := range list {
		if list[i].Date != "" {
			name, dated = list[i].Date, true
		}
		of[name] = append(of[name], i)
	}
	if !dated {
		of = map[string][]int{}
		for i := range list {
			block := fmt.Sprintf("%09d", i/takes.Enough)
			of[block] = append(of[block], i)
		}
	}
	var names []string
	for name := range of {
		names = append(names, name)
	}
	slices.Sort(names)
	var out [][]int
	for _, name := range names {
		out = append(out, of[name])
	}
	return out
}

// hands are those that the takes of the days before show, by puller.
type hands struct {
	list    []takes.Take
	past    []int // rows of the days before
	samples map[string]*takes.Sample
	fits    map[string]fit.Fit // of this day
}

// of returns the fit of a puller's hand to what is past.
func (h *hands) of(puller string, grip float64) fit.Fit {
	if f, ok := h.fits[puller]; ok {
		return f
	}
	s := h.samples[puller]
	if s == nil {
		s = takes.NewSample(takes.Options{Puller: puller, Grip: grip})
		for _, i := range h.past {
			s.Add(h.list[i])
		}
		h.samples[puller] = s
	}
	f := s.Hand()
	h.fits[puller] = f
	return f
}

// learn ends a day: its takes are past.
func (h *hands) learn(day []int) {
	for _, s := range h.samples {
		for _, i := range day {
			s.Add(h.list[i])
		}
	}
	h.past = append(h.past, day...)
	clear(h.fits)
}
