// Who holds the focus when, and where they stand on the sheet.

package overview

import (
	"cmp"
	"math"
	"slices"

	"pullscore/interp/plan"
	"pullscore/render/sheet"
)

// A stay is a time in which the focus is with somebody, or at a distance.
type stay struct {
	name     string
	from, to float64 // seconds
}

// stays returns who holds the focus, in the order of time; a rack lies between two of them.
func stays(s *plan.Shot) []stay {
	start := s.Optics.Start
	at := stay{name: sheet.TargetName(s, start.Name, start.Text)}
	var list []stay
	for _, p := range s.Pulls {
		name := sheet.TargetName(s, p.To, p.Target)
		if p.Kind == "follow" && name == at.name {
			continue
		}
		at.to = float64(p.Start)
		list = append(list, at)
		at = stay{name: name, from: float64(p.Land)}
		if p.Kind == "follow" {
			at.from = float64(p.Start)
		}
	}
	at.to = float64(s.Duration)
	return append(list, at)
}

// A station is a row of the graph.
type station struct {
	name   string
	metres float64       // at the start of the shot
	walks  *plan.Subject // who stands there, if they move
	y      float64
	// A station that moves keeps between the middles of the ways to its neighbours.
	above, below float64
	held         float64 // seconds
	stays        int
}

const (
	mostStations = 12
	others       = "others"
	leastHeld    = 0.02 // of the shot, of a station that has a row of its own among many
	pitch        = 11.0 // of stations at least, if there is room, millimetres
)

// stationsOf returns the rows from far to near, and the row of each name.
func stationsOf(s *plan.Shot, held []stay) (list []*station, of map[string]*station) {
	of = map[string]*station{}
	add := func(name string, metres float64) {
		if of[name] == nil {
			of[name] = &station{name: name, metres: metres}
			list = append(list, of[name])
		}
	}
	for _, u := range sheet.Order(s) {
		if add(u.Name, s.DistanceAt(u, 0)); sheet.Moves(s, u) {
			of[u.Name].walks = u
		}
	}
	add(held[0].name, s.ToTape(s.Optics.Start.Distance, 0))
	for _, p := range s.Pulls {
		add(sheet.TargetName(s, p.To, p.Target), float64(p.ToM))
	}
	slices.SortStableFunc(list, func(a, b *station) int { return cmp.Compare(b.metres, a.metres) })
	for _, h := range held {
		of[h.name].held += max(0, h.to-h.from)
		of[h.name].stays++
	}
	if len(list) > mostStations {
		list = gathered(s, list, of)
	}
	return list, of
}

// gathered puts those who hardly hold the focus into one row.
func gathered(s *plan.Shot, list []*station, of map[string]*station) []*station {
	rest := &station{name: others, metres: math.NaN()}
	kept := slices.DeleteFunc(list, func(st *station) bool {
		if st.held >= leastHeld*float64(s.Duration) {
			return false
		}
		rest.held, rest.stays = rest.held+st.held, rest.stays+st.stays
		of[st.name] = rest
		return true
	})
	if len(kept) == len(list) {
		return kept
	}
	return append(kept, rest)
}

// A scale is even in 1/distance between two heights.
type scale struct{ far, near, top, bottom float64 }

// y returns where a distance stands in metres, that of no distance at the bottom.
func (sc scale) y(metres float64) float64 {
	share := 1.0
	if metres > 0 && sc.near > sc.far {
		share = (1/metres - sc.far) / (sc.near - sc.far)
	}
	return sc.top + share*(sc.bottom-sc.top)
}

// place puts the stations between two heights: even in 1/distance, but apart.
func (p *paper) place(top, bottom float64) {
	list := p.stations
	p.scale = scale{far: math.Inf(1), near: math.Inf(-1), top: top, bottom: bottom}
	for _, st := range list {
		if st.metres > 0 {
			p.scale.far, p.scale.near = min(p.scale.far, 1/st.metres), max(p.scale.near, 1/st.metres)
		}
	}
	want, size := make([]float64, len(list)), make([]float64, len(list))
	for i, st := range list {
		want[i], size[i] = p.scale.y(st.metres), min(pitch, (bottom-top)/float64(len(list)))
		if i > 0 {
			want[i] = max(want[i], want[i-1]+1e-6)
		}
	}
	const air = 0.8
	at := sheet.Spread(want, size, top, bottom)
	for i, st := range list {
		st.y, st.above, st.below = at[i], top, bottom
		if i > 0 {
			st.above = (at[i-1]+at[i])/2 + air
		}
		if i+1 < len(list) {
			st.below = (at[i]+at[i+1])/2 - air
		}
	}
}

// y returns where a station stands at a time, in seconds.
func (p *paper) y(st *station, t float64) float64 {
	if st.walks == nil {
		return st.y
	}
	off := p.scale.y(p.shot.DistanceAt(st.walks, t)) - p.scale.y(st.metres)
	return min(max(st.y+off, min(st.y, st.above)), max(st.y, st.below))
}
