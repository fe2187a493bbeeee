// A shot as stays and racks.

package story

import (
	"slices"
	"strings"

	"pullscore/interp/plan"
)

// shotOf returns a shot as stays and racks.
func shotOf(s *plan.Shot) Shot {
	out := Shot{ID: s.ID, Duration: s.Duration, Stays: []Stay{}, Racks: []Rack{}}
	on, from := placeName(s.Start.To, s.Start.Target, s.Optics.Start.Names), plan.Number(0)
	for i, p := range s.Pulls {
		start, land := within(s, p.Start), within(s, p.Land)
		if i+1 < len(s.Pulls) {
			land = min(land, within(s, s.Pulls[i+1].Start)) // the plan is at fault, and the next one counts
		}
		if p.Kind == "follow" {
			continue // the focus stays with whom it is on
		}
		out.stay(on, from, start)
		to := placeName(p.To, p.Target, p.Goal.Names)
		out.Racks = append(out.Racks, Rack{Number: p.Number, From: on, To: to, Start: start, Land: land, Way: wayOf(p), On: causeOf(s, p)})
		on, from = to, land
	}
	out.stay(on, from, s.Duration)
	return out
}

// within returns a time in a shot; a rack that a cut tells of may lie outside of it.
func within(s *plan.Shot, t plan.Number) plan.Number { return max(0, min(t, s.Duration)) }

// stay adds a stay that takes any time.
func (out *Shot) stay(on string, from, to plan.Number) {
	if to > from {
		out.Stays = append(out.Stays, Stay{on, from, to})
	}
}

// placeName returns what the focus is on: a subject, several that it is split between,
// or else a place as the plan writes it.
func placeName(subject, target string, split []string) string {
	switch {
	case len(split) > 0:
		return strings.Join(split, " and ")
	case subject != "":
		return subject
	}
	return target
}

// splits returns the subjects of each split of a shot, by what placeName calls it.
func splits(s *plan.Shot) map[string][]string {
	list := map[string][]string{}
	for _, p := range s.Pulls {
		list[placeName(p.To, p.Target, p.Goal.Names)] = p.Goal.Names
	}
	list[placeName(s.Start.To, s.Start.Target, s.Optics.Start.Names)] = s.Optics.Start.Names
	return list
}

// wayOf returns which way a rack goes.
func wayOf(p *plan.Pull) string {
	switch {
	case p.ToLens < p.FromLens:
		return ToNear
	case p.ToLens > p.FromLens:
		return ToFar
	}
	return Level
}

// causeOf returns what a rack hangs on.
func causeOf(s *plan.Shot, p *plan.Pull) string {
	for i := range s.Lines {
		if slices.Contains(s.Lines[i].Pulls, p.Number) {
			return OnWord
		}
	}
	switch {
	case p.Anchor != "":
		return OnCue
	case p.Because != "":
		return Because
	}
	return NoCause
}
