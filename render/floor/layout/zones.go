// What each landing keeps sharp.

package layout

import (
	"math"

	"pullscore/interp/plan"
	"pullscore/render/sheet"
)

// zonesOf returns where the focus starts and where it lands, each place once, in the order
// of the pulls.
func zonesOf(s *plan.Shot) []Zone {
	var zones []Zone
	add := func(z Zone, who, text string, x, t float64) {
		set := s.Judged(x, t)
		z.Seen, z.Name = StateAt(s, t), sheet.TargetName(s, who, text)
		z.At, z.Near, z.Far = s.ToTape(x, t), s.ToTape(set.Near(x), t), s.ToTape(set.Far(x), t)
		if math.IsNaN(z.At) || math.IsInf(z.At, -1) || !sheet.Finite(z.Near) || math.IsNaN(z.Far) || !(x > s.Focal(t)) {
			return
		}
		if u := s.Subject(who); t > 0 && !sameTapes(z.Seen.Pose, s.Optics.Pose(0)) || t > 0 && u != nil && u.Along.Moves() {
			z.When = "at " + sheet.When(s, t)
		}
		for i := range zones {
			if zones[i].same(z) {
				zones[i].Pulls = append(zones[i].Pulls, z.Pulls...)
				return
			}
		}
		zones = append(zones, z)
	}
	if st := &s.Optics.Start; st.Name != "" || st.Text != "" {
		add(Zone{Start: true}, st.Name, st.Text, st.Distance, 0)
	}
	for _, p := range s.Pulls {
		add(Zone{Pulls: []Pull{{p.Number, p.Kind == "follow"}}}, p.To, p.Target, p.ToLens, float64(p.Land))
	}
	return zones
}

// seenIn returns the zones with the field of view of a state that is drawn, where one is the
// same from above. A lens that breathes sees a little more or less at each focus, which is
// no more than a line or two.
func seenIn(zones []Zone, states []State) []Zone {
	for i := range zones {
		z := &zones[i]
		for _, v := range states {
			if v.Shown && sameView(v, z.Seen) {
				z.Seen.Lens, z.Seen.PerSide = v.Lens, v.PerSide
				break
			}
		}
	}
	return zones
}

// same reports whether two zones are the same place and keep the same sharp, to half a
// percent.
func (z Zone) same(o Zone) bool {
	alike := func(a, b float64) bool { return a == b || math.Abs(a-b) <= 0.005*math.Abs(a) }
	return z.Name == o.Name && z.When == o.When && alike(z.At, o.At) && alike(z.Near, o.Near) && alike(z.Far, o.Far) &&
		sameView(z.Seen, o.Seen) && sameTapes(z.Seen.Pose, o.Seen.Pose)
}
