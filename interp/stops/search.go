// The search: every third-stop tried, and the ends found between them.

package stops

import (
	"cmp"
	"slices"

	"pullscore/interp/plan"
	"pullscore/interp/units"
	"pullscore/optics"
)

// Scale returns the stops that a lens has on the scale that a shot speaks: its widest,
// the marked third-stops between, and its smallest.
func Scale(in plan.Spoken) []float64 {
	list := []float64{roundTo(in.Widest, 2)}
	last := roundTo(in.Smallest, 2)
	for _, s := range optics.ThirdStops() {
		if s.Mark > list[0] && s.Mark < last {
			list = append(list, s.Mark)
		}
	}
	if last > list[0] {
		list = append(list, last)
	}
	return list
}

// A search tries the stops of a shot with one change.
type search struct {
	retake  Retake
	change  Change
	shot    *plan.Shot // as it is with the change, at some stop
	demands []demand
	excused []string
	tried   []Verdict
	set     Verdict // at the stop that is set
}

// newSearch tries every stop of the lens; ok is false where the shot can be
// taken at none.
func newSearch(retake Retake, c Change, excused []string) (s *search, ok bool) {
	s = &search{retake: retake, change: c}
	first, ok := retake(c)
	if !ok { // the stop that is set need not be on the lens
		return nil, false
	}
	s.shot = first.Shot
	s.demands = demandsOn(s.shot)
	var takes []Take
	for _, mark := range Scale(s.shot.Spoken()) {
		if t, ok := s.take(s.shot.Spoken().Number(mark)); ok {
			takes = append(takes, t)
		}
	}
	s.excused = excused
	if excused == nil {
		s.excused = excusable(takes)
	}
	for _, t := range takes {
		s.tried = append(s.tried, judge(t, s.label(float64(t.Shot.FNumber)), s.demands, s.excused))
	}
	s.set = judge(first, s.shot.Stop, s.demands, s.excused)
	return s, len(s.tried) > 0
}

func (s *search) take(number float64) (Take, bool) {
	c := s.change
	c.Stop = number
	return s.retake(c)
}

// at returns the verdict on an f-number. One that cannot be taken meets
// nothing.
func (s *search) at(number float64) Verdict {
	t, ok := s.take(number)
	if !ok {
		return Verdict{Stop: s.label(number), Number: plan.Number(number), met: make([]bool, len(s.demands))}
	}
	return judge(t, s.label(number), s.demands, s.excused)
}

// label names a stop on the scale that the shot speaks.
func (s *search) label(number float64) string { return says(s.shot.Spoken(), number, units.Exact) }

// says writes an f-number on the scale that a shot speaks.
func says(in plan.Spoken, number float64, r units.Round) string {
	return words.Stop(in.Mark(number), in.T, r)
}

// A change of a demand lies between two f-numbers that are next to each other:
// what is before holds up to lo, what is after from hi on.
type turn struct {
	lo, hi float64
	by     int // the demand
}

// accuracy is how closely the ends of a window are found, in stops.
const accuracy = 1e-4

// turns returns where the demands change between two verdicts, in order. Each
// demand is taken to change once at most between two third-stops.
func (s *search) turns(a, b *Verdict, skip func(demand) bool) []turn {
	var list []turn
	for k, d := range s.demands {
		if !skip(d) && a.met[k] != b.met[k] {
			list = append(list, s.bracket(a, b, k))
		}
	}
	slices.SortFunc(list, func(x, y turn) int { return cmp.Compare(x.lo, y.lo) })
	return list
}

// bracket closes in on where demand k changes, by halves: the chance of a
// landing can jump where a window reaches the end of the ring, so no smooth
// method would do.
func (s *search) bracket(a, b *Verdict, k int) turn {
	bare := *s
	bare.change.Bare = s.demands[k].kind != Done
	lo, hi := float64(a.Number), float64(b.Number)
	for between(lo, hi) > accuracy {
		mid := middle(lo, hi)
		v := bare.at(mid)
		if v.met[k] == a.met[k] {
			lo = mid
		} else {
			hi = mid
		}
	}
	return turn{lo, hi, k}
}

// A stretch is a run of f-numbers that holds, with the demands that fail just
// beyond its ends: theLens where the lens has no stop there.
type stretch struct {
	from, to    float64
	wide, small int
}

const theLens = -1

// stretches returns all stretches that hold, but for demands that are skipped.
// What is met between two turns follows from what is met at the third-stop
// before them, so nothing needs to be tried there.
func (s *search) stretches(skip func(demand) bool) []stretch {
	var list []stretch
	met := slices.Clone(s.tried[0].met)
	open := stretch{from: float64(s.tried[0].Number), wide: theLens}
	holds := s.holds(met, skip)
	for i := 1; i < len(s.tried); i++ {
		a, b := &s.tried[i-1], &s.tried[i]
		if s.hopeless(a, b, skip) {
			copy(met, b.met)
			continue
		}
		for _, t := range s.turns(a, b, skip) {
			before := holds
			met[t.by] = !met[t.by]
			holds = s.holds(met, skip)
			switch {
			case before && !holds:
				open.to, open.small = t.lo, t.by
				list = append(list, open)
			case !before && holds:
				open = stretch{from: t.hi, wide: t.by}
			}
		}
	}
	if holds {
		open.to, open.small = float64(s.tried[len(s.tried)-1].Number), theLens
		list = append(list, open)
	}
	return slices.DeleteFunc(list, func(x stretch) bool { return x.from > x.to })
}

func (s *search) holds(met []bool, skip func(demand) bool) bool {
	for k, d := range s.demands {
		if !met[k] && !skip(d) {
			return false
		}
	}
	return true
}

// hopeless tells whether one demand fails at both of two third-stops, and so
// between them.
func (s *search) hopeless(a, b *Verdict, skip func(demand) bool) bool {
	for k, d := range s.demands {
		if !a.met[k] && !b.met[k] && !skip(d) {
			return true
		}
	}
	return false
}

func all(demand) bool { return false }

// windows describes all stretches that hold, from wide stops to small.
func (s *search) windows() (list []Window) {
	for _, x := range s.stretches(all) {
		list = append(list, s.window(x))
	}
	return list
}

// window describes a stretch.
func (s *search) window(x stretch) Window {
	w := Window{
		From: plan.Number(x.from), To: plan.Number(x.to), Width: plan.Number(between(x.from, x.to)),
		Middle: plan.Number(middle(x.from, x.to)), Wide: s.end(x.wide, x.from, false), Small: s.end(x.small, x.to, true),
	}
	best, cost := s.best(x)
	w.Best, w.BestF, w.AtBest, w.cost = best.Stop, best.Number, &best, cost
	return w
}

// end describes an end by the demand that fails beyond it, with the figures of
// the next stop there.
func (s *search) end(by int, at float64, smaller bool) End {
	if by == theLens {
		return endOf(TheLens, 0)
	}
	return figuresOf(s.demands[by], s.beyond(at, smaller))
}

func endOf(k Kind, pull int) End {
	none := plan.None()
	return End{Kind: k, Pull: pull, Probability: none, LeftBlur: none, SeenFrom: none, Share: none, Left: none}
}

// figuresOf returns a demand with its figures at a stop that was tried.
func figuresOf(d demand, v *Verdict) End {
	e := endOf(d.kind, d.pull)
	e.Stop = v.Stop
	switch d.kind {
	case Light:
		if v.Exposure != nil {
			e.Left = v.Exposure.Left
		}
	case Lands, Seen:
		if r := v.rack(d.pull); r != nil && d.kind == Lands {
			e.Probability = better(r.Probability, r.Band[1])
		} else if r != nil {
			e.LeftBlur, e.SeenFrom = r.LeftBlur, r.SeenFrom
		}
	case Follows:
		if f := v.follow(d.pull); f != nil {
			e.Share, e.Probability = f.Worst, better(f.Probability, f.Band[1])
		}
	case Rests:
		if r := v.rest(d.pull); r != nil {
			e.Share, e.Subject = r.Share, r.Subject
		}
	}
	return e
}

// beyond returns the verdict on the next stop tried past an f-number.
func (s *search) beyond(at float64, smaller bool) *Verdict {
	next := len(s.tried) - 1
	for i := range s.tried {
		n := float64(s.tried[i].Number)
		if smaller && n > at {
			return &s.tried[i]
		}
		if !smaller && n < at {
			next = i
		}
	}
	return &s.tried[next]
}
