// What to practise next: the racks of a plan, by how far a hand falls short of
// the chance that each is wanted with.

package takes

import (
	"cmp"
	"math"
	"slices"

	"pullscore/interp/plan"
	"pullscore/interp/takes/fit"
)

// A Practice is a rack of a plan under a fitted hand.
type Practice struct {
	Plan    string      `json:"plan,omitempty"`
	Shot    string      `json:"shot"`
	Pull    int         `json:"pull"`
	From    string      `json:"from,omitempty"`
	To      string      `json:"to"`
	Chance  plan.Number `json:"probability"` // of landing, with the fitted hand
	Ceiling plan.Number `json:"ceiling"`     // with all the time in the world
	Wanted  plan.Number `json:"wanted"`
	Takes   int         `json:"takes"` // that the log has of it
}

// Short returns by how much the chance falls short of the wanted one.
func (p *Practice) Short() float64 { return float64(p.Wanted - p.Chance) }

// Practise returns the racks of the plans with the chance that the fitted hand
// lands each, those that fall short the most first. Grip and limit are those of
// the plan's own puller.
func (s *Sample) Practise(f *fit.Fit, plans ...*plan.Plan) (list []Practice) {
	for _, pl := range plans {
		for _, shot := range pl.Shots {
			for _, p := range shot.Pulls {
				if p.Kind == "follow" || math.IsNaN(p.Asks.Travel) {
					continue
				}
				landing := f.Hand(shot.Hand).Land(p.Asks)
				list = append(list, Practice{
					pl.Title, shot.ID, p.Number, p.From, p.Target,
					plan.Number(landing.Chance), plan.Number(landing.Ceiling), shot.Wanted, s.takesOf(plans, pl, shot.ID, p.Number),
				})
			}
		}
	}
	slices.SortStableFunc(list, func(a, b Practice) int { return cmp.Compare(b.Short(), a.Short()) })
	return list
}

// takesOf returns how many takes the log has of a pull.
func (s *Sample) takesOf(plans Plans, pl *plan.Plan, shot string, pull int) (n int) {
	for name, sc := range s.pulls {
		if name.Pull == pull && name.Shot == shot && plans.plan(name.Plan) == pl {
			n += sc.N
		}
	}
	return n
}
