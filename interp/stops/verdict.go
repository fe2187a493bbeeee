// Verdicts: what is demanded of a stop, and whether a take meets it.

package stops

import (
	"math"
	"slices"

	"pullscore/interp/plan"
)

// A demand is one thing that a stop has to meet, of a pull, of the rest after one, or
// of the shot.
type demand struct {
	kind Kind
	pull int
}

// demandsOn lists what is demanded in a shot.
func demandsOn(s *plan.Shot) []demand {
	var list []demand
	for _, p := range s.Pulls {
		if p.Kind == "rack" {
			list = append(list, demand{Lands, p.Number}, demand{Seen, p.Number}, demand{Reached, p.Number})
		} else {
			list = append(list, demand{Follows, p.Number})
		}
	}
	for _, r := range restsOf(s) {
		list = append(list, demand{Rests, r.After})
	}
	return append(list, demand{Depth, 0}, demand{Diffracts, 0}, demand{Light, 0}, demand{Zoom, 0}, demand{Done, 0})
}

// judge computes the verdict on a take. Faults in excused are not its own.
func judge(t Take, label string, demands []demand, excused []string) Verdict {
	s := t.Shot
	v := Verdict{Stop: label, Number: s.FNumber, Racks: []RackAt{}, Exposure: Expose(s.Optics.Light, float64(s.FNumber))}
	for _, f := range t.Faults {
		if !slices.Contains(excused, f) {
			v.Faults = append(v.Faults, f)
		}
	}
	v.Fits, v.Sharp = fits(s), undiffracted(s)
	for i, r := range restsOf(s) {
		share := s.Rests[i].Share
		v.Rests = append(v.Rests, RestAt{r, share >= s.Wanted-slack, share})
	}
	for _, p := range s.Pulls {
		if p.Kind != "rack" {
			v.Follows = append(v.Follows, FollowAt{p.Number, follows(s, p), p.WorstShare, p.Chance, p.Ceiling, unknownBand(s, p)})
		}
		if p.Kind == "rack" {
			v.Racks = append(v.Racks, RackAt{
				Pull: p.Number, Lands: lands(s, p), Seen: seen(p), Probability: p.Chance, Ceiling: p.Ceiling, Band: unknownBand(s, p),
				LeftBlur: p.LeftBlur, ReachedBlur: p.ReachedBlur, SeenFrom: p.SeenFrom,
			})
		}
	}
	v.open = true
	for _, d := range demands {
		ok := v.meets(s, d)
		v.met = append(v.met, ok)
		v.open = v.open && ok
	}
	v.Unsure = v.open && s.RingUnknown() && !v.pullsHold()
	v.Holds = v.open && !v.Unsure
	return v
}

// unknownBand returns between what the chance of a pull lies on a ring of which nothing is
// known, none for any other.
func unknownBand(s *plan.Shot, p *plan.Pull) plan.Interval {
	if !s.RingUnknown() {
		return plan.NoInterval()
	}
	return p.ChanceBand
}

// pullsHold tells whether every rack lands and every follow holds, whatever the ring.
func (v *Verdict) pullsHold() bool {
	return !slices.ContainsFunc(v.Racks, func(r RackAt) bool { return !r.Lands }) &&
		!slices.ContainsFunc(v.Follows, func(f FollowAt) bool { return !f.Holds })
}

func (v *Verdict) meets(s *plan.Shot, d demand) bool {
	switch d.kind {
	case Depth:
		return v.Fits
	case Diffracts:
		return v.Sharp
	case Follows:
		f := v.follow(d.pull)
		return f != nil && (f.Holds || mayDo(s, f.Band))
	case Rests:
		r := v.rest(d.pull)
		return r == nil || r.Holds // it has been moved over
	case Light:
		return v.Exposure == nil || v.Exposure.Enough
	case Zoom:
		return !closes(s)
	case Done:
		return len(v.Faults) == 0
	}
	r := v.rack(d.pull)
	switch {
	case r == nil:
		return false // it has lost its time
	case d.kind == Lands:
		return r.Lands || mayDo(s, r.Band)
	case d.kind == Seen:
		return r.Seen
	}
	blur := r.ReachedBlur
	return !blur.Known() || float64(blur) <= sharpest(s)
}

// slack is what a comparison leaves to the last digits.
const slack = 1e-9

// mayDo tells whether a pull does what is wanted on some ring, where nothing is known of
// the ring.
func mayDo(s *plan.Shot, band plan.Interval) bool { return band[1] >= s.Wanted-slack }

// lands tells whether a rack lands with the wanted chance, on any ring where nothing is
// known of it. A lens without a ring that is pulled by angle has no chances, and nothing
// is asked of it.
func lands(s *plan.Shot, p *plan.Pull) bool {
	if s.RingUnknown() {
		return p.ChanceBand[0] >= s.Wanted-slack
	}
	if s.Optics.Ring == nil {
		return true
	}
	return p.Chance.Known() && p.Chance >= s.Wanted-slack && float64(p.Peak) <= s.Hand.Limit*(1+slack)
}

func seen(p *plan.Pull) bool { return p.Stays || p.LeftBlur > p.SeenFrom }

// follows tells whether a follow is sharp as often as wanted in its worst half second
// and where it ends. One without such figures, as of a lens without a ring that is
// pulled by angle, is not judged. On a ring of which nothing is known nobody can say that
// it is.
func follows(s *plan.Shot, p *plan.Pull) bool {
	if s.RingUnknown() {
		return false
	}
	if !p.WorstShare.Known() {
		return true
	}
	wanted := s.Wanted - slack
	return p.WorstShare >= wanted && p.Chance >= wanted && p.Ceiling >= wanted && float64(p.Peak) <= s.Hand.Limit*(1+slack)
}

// restsOf lists the rests of a shot by the pulls that they come after.
func restsOf(s *plan.Shot) []Rest {
	list := []Rest{}
	for _, r := range s.Rests {
		after := 0
		for _, p := range s.Pulls {
			if p.Land <= r.Start+slack {
				after = p.Number
			}
		}
		list = append(list, Rest{after, r.Subject, r.Start, r.End})
	}
	return list
}

// undiffracted tells whether diffraction alone blurs no more than is sharp, wherever
// the focus rests. A shot in which it does not is not judged.
func undiffracted(s *plan.Shot) bool {
	if len(s.Pulls) == 0 && len(s.Rests) == 0 {
		return true
	}
	widest := s.Setting(0).Diffraction(s.Optics.Start.Distance)
	if !finite(widest) { // inside the closest, which is told
		widest = s.Setting(0).Diffraction(math.Inf(1))
	}
	for _, p := range s.Pulls {
		if d := float64(p.DiffractionMM) / 1000; d > widest && finite(d) {
			widest = d
		}
	}
	return widest <= s.Optics.Criterion*(1+slack)
}

// rack, follow and rest return what a verdict says of a pull, and of the rest after
// it; nil where it has none.
func (v *Verdict) rack(pull int) *RackAt {
	return one(v.Racks, func(r *RackAt) bool { return r.Pull == pull })
}

func (v *Verdict) follow(pull int) *FollowAt {
	return one(v.Follows, func(f *FollowAt) bool { return f.Pull == pull })
}

func (v *Verdict) rest(after int) *RestAt {
	return one(v.Rests, func(r *RestAt) bool { return r.After == after })
}

func one[T any](list []T, is func(*T) bool) *T {
	for i := range list {
		if is(&list[i]) {
			return &list[i]
		}
	}
	return nil
}

// sharpest is the disc that still is sharp, arc minutes.
func sharpest(s *plan.Shot) float64 {
	return s.Optics.Criterion * s.Optics.ArcminPerBlur * (1 + slack)
}

// fits tells whether all that the focus is put on is sharp as deep as it is.
func fits(s *plan.Shot) bool {
	on := func(t plan.Target, at float64) bool {
		u := s.Subject(t.Name)
		return t.Soft || len(t.Names) > 0 || u == nil || s.Fits(u, at)
	}
	return on(s.Optics.Start, 0) && !slices.ContainsFunc(s.Pulls, func(p *plan.Pull) bool {
		return !on(p.Goal, float64(p.Land))
	})
}

// closes tells whether the lens closes the stop on the way of a zoom, by more
// than marks are rounded.
func closes(s *plan.Shot) bool {
	o := &s.Optics
	return slices.ContainsFunc(o.Focal.Keys(), func(t float64) bool {
		return o.Widest(s.Focal(t)) > o.Number*markSlack
	})
}

// markSlack is a twelfth of a stop, by which marks may be rounded.
const markSlack = 1.03

// excusable returns the faults that every take has: no stop is to blame. It is never
// nil, which would ask for those of what is tried later.
func excusable(takes []Take) []string {
	if len(takes) == 0 {
		return []string{}
	}
	common := append([]string{}, takes[0].Faults...)
	for _, t := range takes[1:] {
		common = slices.DeleteFunc(common, func(f string) bool { return !slices.Contains(t.Faults, f) })
	}
	return common
}

// roundTo rounds to so many decimals.
func roundTo(v float64, decimals int) float64 {
	k := math.Pow10(decimals)
	return math.Round(v*k) / k
}
