// The moments of a shot in words, as the page lists them: the start, the pulls and
// the rests.

package preview

import (
	"cmp"
	"fmt"
	"slices"

	"pullscore/interp/moments"
	"pullscore/interp/plan"
	"pullscore/interp/units"
	"pullscore/render/draw"
)

// A toldMoment is a start, a pull or a rest, with what is known of it in sentences.
type toldMoment struct {
	Name  string      `json:"name"`
	Time  plan.Number `json:"t_s"`
	Pull  int         `json:"pull,omitempty"` // its number
	Says  []string    `json:"says"`
	Hard  bool        `json:"hard,omitempty"` // sharp less often than wanted
	order int         // of two at one time
}

// tellMoments returns the moments of a shot in the order of time. They are those of
// the plan's own stop.
func tellMoments(s *plan.Shot) []toldMoment {
	in := units.ForTable(s.Imperial)
	list := []toldMoment{}
	add := func(m toldMoment, says ...string) {
		m.Says = []string{}
		for _, text := range says {
			if text != "" {
				m.Says = append(m.Says, draw.Clean(text))
			}
		}
		m.Name = draw.Clean(m.Name)
		if finite(m.Time) {
			list = append(list, m)
		}
	}
	if s.Start.Target != "" {
		add(toldMoment{Name: "starts on " + s.Start.Target}, moments.Miss(s, s.Start.Miss, in), moments.Provenance(s))
	}
	for i := range s.Rests {
		r := &s.Rests[i]
		add(toldMoment{Name: "rest", Time: r.Start, Hard: r.Share < s.Wanted, order: 1}, moments.Rest(s, r, in))
	}
	for _, p := range s.Pulls {
		name := fmt.Sprintf("%d: to %s", p.Number, p.Target)
		if p.Kind == "follow" {
			name = fmt.Sprintf("%d: follow %s", p.Number, p.Target)
		}
		lands := moments.Lands(s, p, in)
		if lands != "" && p.Kind != "follow" {
			lands = "lands " + lands
		} else {
			lands = moments.Follow(s, p, in)
		}
		hard := p.Chance < s.Wanted || p.WorstShare < s.Wanted || s.RingUnknown() && p.ChanceBand[1] < s.Wanted
		add(toldMoment{Name: name, Time: p.Start, Pull: p.Number, Hard: hard, order: 2},
			lands, moments.Miss(s, p.Miss, in))
	}
	slices.SortStableFunc(list, func(a, b toldMoment) int {
		return cmp.Or(cmp.Compare(a.Time, b.Time), cmp.Compare(a.order, b.order))
	})
	return list
}
