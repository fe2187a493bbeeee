// The floor of a shot: who stands where, and how they get about.

package layout

import (
	"math"
	"slices"

	"pullscore/interp/plan"
	"pullscore/render/sheet"
)

// Of returns the floor of a shot.
func Of(s *plan.Shot) *Floor {
	f := &Floor{Name: "shot " + sheet.ShotName(s), Style: sheet.Style(s), Cautions: sheet.Cautions(s)}
	for _, u := range sheet.Order(s) {
		f.follow(s, u)
	}
	for i := range f.Places {
		f.Places[i].Letter = plan.LetterOf(i)
	}
	f.Cameras = []Camera{cameraOf(s, f.Places)}
	f.Notes = notesOf(s, f)
	return f
}

// SameSpot is how near two places of one subject are one place, in metres.
const SameSpot = 0.01

// follow adds the places that a subject comes to, and the ways between them.
func (f *Floor) follow(s *plan.Shot, u *plan.Subject) {
	end := float64(s.Duration)
	at := func(t float64) Spot { return Spot{u.Across.At(t), u.Along.At(t)} }
	first := len(f.Places)
	p := placeOf(s, u)
	f.Places = append(f.Places, p)
	here := first
	times := []float64{0}
	for _, t := range slices.Concat(u.Along.Keys(), u.Across.Keys()) {
		if t > 0 && t < end {
			times = append(times, t)
		}
	}
	times = plan.Sorted(append(times, end))
	for i := 1; i < len(times); i++ {
		run := walk(at, times[i-1], times[i])
		if run == nil {
			continue
		}
		if here == first && f.Places[first].When == "" && !f.Places[first].Later {
			f.Places[first].When = "to " + sheet.When(s, times[i-1])
		}
		f.Ways = append(f.Ways, Way{Who: u.Name, Run: run})
		here = slices.IndexFunc(f.Places[first:], func(p Place) bool { return Apart(p.At, at(times[i])) < SameSpot }) + first
		if here < first {
			here = len(f.Places)
			p.At, p.Later, p.When, p.Slant = at(times[i]), true, "from "+sheet.When(s, times[i]), math.NaN()
			p.Up, p.More = u.Height(times[i]), more(u, times[i])
			f.Places = append(f.Places, p)
		}
	}
}

// placeOf returns where a subject stands at the start.
func placeOf(s *plan.Shot, u *plan.Subject) Place {
	p := Place{Name: u.Name, At: Spot{u.Across.At(0), u.Along.At(0)}, Deep: float64(u.Deep), Unsaid: !sideKnown(s, u), Slant: float64(u.Slant), Up: u.Height(0), More: more(u, 0)}
	if high := p.Slant*p.Slant - p.At.X*p.At.X - p.At.Y*p.At.Y; high > 0 && s.Optics.Rig == nil {
		p.High = math.Sqrt(high)
	}
	return p
}

// more returns what tapes that were read add to the tape to a subject at t.
func more(u *plan.Subject, t float64) float64 {
	if u.Deltas == nil {
		return 0
	}
	return u.Deltas.At(t)
}

// sideKnown reports whether the plan says to which side a subject stands: the floor of a
// scene says it of everybody.
func sideKnown(s *plan.Shot, u *plan.Subject) bool {
	return s.Staging != nil && s.Placed || u.SideSaid || u.Across.Moves() || u.Across.At(0) != 0
}

// Apart returns how far two spots are apart, in metres.
func Apart(a, b Spot) float64 { return math.Hypot(a.X-b.X, a.Y-b.Y) }

// walk returns the way between two times, nothing for a stay.
func walk(at func(float64) Spot, from, to float64) []Spot {
	const samples = 32
	var run []Spot
	far := 0.0
	for i := range samples + 1 {
		q := at(from + (to-from)*float64(i)/samples)
		run = append(run, q)
		far = max(far, Apart(q, run[0]))
	}
	if far < 0.001 { // a millimetre is no walk
		return nil
	}
	return run
}

// notesOf returns what the table says below the tapes.
func notesOf(s *plan.Shot, f *Floor) []string {
	origin := "the sensor mark"
	if s.Optics.FromLens {
		origin = "the front principal plane of the lens"
	}
	notes := []string{"along: parallel to the lens's axis, what the ring wants. slant: what a tape reads that is held straight. Both start at " + origin + "."}
	focal := math.NaN()
	for i, v := range f.Cameras[0].States {
		if v.Focal == focal {
			continue
		}
		line := "Field of view " + sheet.Figures.AngleTo(v.Angle(), 1) + " at " + sheet.Figures.Millimetres(v.Focal)
		if i > 0 {
			line += ", " + v.Words
		}
		notes, focal = append(notes, line+"."), v.Focal
	}
	return notes
}
