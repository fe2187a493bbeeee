// Verdicts: what is demanded of a stop, and whether a take meets it.

package stops

import (
	"math"
	"slices"

	"pullscore/interp/plan"
	"pullscore/interp/viewer"
)

// A demand is one thing that a stop has to meet, of a rack or of the shot.
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
		}
	}
	return append(list, demand{Depth, 0}, demand{Light, 0}, demand{Zoom, 0}, demand{Done, 0})
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
	v.Fits = fits(s)
	for _, p := range s.Pulls {
		if p.Kind == "rack" {
			v.Racks = append(v.Racks, RackAt{
				Pull: p.Number, Lands: lands(s, p), Seen: seen(p), Probability: p.Chance, Ceiling: p.Ceiling,
				LeftBlur: p.LeftBlur, ReachedBlur: p.ReachedBlur,
			})
		}
	}
	v.Holds = true
	for _, d := range demands {
		ok := v.meets(s, d)
		v.met = append(v.met, ok)
		v.Holds = v.Holds && ok
	}
	return v
}

func (v *Verdict) meets(s *plan.Shot, d demand) bool {
	switch d.kind {
	case Depth:
		return v.Fits
	case Light:
		return v.Exposure == nil || v.Exposure.Enough
	case Zoom:
		return !closes(s)
	case Done:
		return len(v.Faults) == 0
	}
	i := slices.IndexFunc(v.Racks, func(r RackAt) bool { return r.Pull == d.pull })
	switch {
	case i < 0:
		return false // it has lost its time
	case d.kind == Lands:
		return v.Racks[i].Lands
	case d.kind == Seen:
		return v.Racks[i].Seen
	}
	blur := v.Racks[i].ReachedBlur
	return !blur.Known() || float64(blur) <= sharpest(s)
}

// slack is what a comparison leaves to the last digits.
const slack = 1e-9

// lands tells whether a rack lands with the wanted chance. A lens without a
// ring that is pulled by angle has no chances, and nothing is asked of it.
func lands(s *plan.Shot, p *plan.Pull) bool {
	if s.Optics.Ring == nil {
		return true
	}
	return p.Chance.Known() && p.Chance >= s.Wanted-slack && float64(p.Peak) <= s.Hand.Limit*(1+slack)
}

func seen(p *plan.Pull) bool { return p.Stays || float64(p.LeftBlur) > viewer.Seen }

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

// excusable returns the faults that every take has: no stop is to blame.
func excusable(takes []Take) []string {
	if len(takes) == 0 {
		return nil
	}
	common := slices.Clone(takes[0].Faults)
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
