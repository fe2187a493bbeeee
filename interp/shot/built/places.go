// Where everyone stands and goes, as the drawings have it.

package built

import (
	"math"
	"slices"

	"pullscore/interp/plan"
	"pullscore/interp/stage"
)

// fillBlocking writes the moves of people, camera and zoom into the shot.
func (b *Shot) fillBlocking() {
	sh := b.Plan
	none := plan.None()
	gone := b.gone()
	for _, m := range b.Stage.Moves {
		if m.Item < b.Clock.Given() && m.End <= 0 {
			continue // of a scene, over before the shot
		}
		out := plan.Blocking{
			Kind: m.Kind, Start: plan.Number(m.Start), End: plan.Number(m.End), Profile: "even",
			From: none, To: none, FromMM: none, ToMM: none, FromDeg: none, ToDeg: none,
		}
		if m.Smooth {
			out.Profile = "smooth"
		}
		switch m.Kind {
		case "moves":
			out.Who = m.Who.Name
			out.From, out.To = plan.Number(sh.DistanceAt(m.Who.Subject, m.Start)), plan.Number(sh.DistanceAt(m.Who.Subject, m.End))
		case "dolly":
			out.From, out.To = plan.Number(sh.Optics.Camera.At(m.Start)), plan.Number(sh.Optics.Camera.At(m.End))
			if sh.Optics.Rig != nil {
				out.From, out.To = plan.Number(gone[m]), plan.Number(gone[m]+m.By)
			}
		case "camera":
			out.From, out.To = 0, plan.Number(m.Far())
		case "track", "boom":
			out.From, out.To = plan.Number(gone[m]), plan.Number(gone[m]+m.By)
		case "pan", "tilt":
			out.FromDeg, out.ToDeg = plan.Number(m.From), plan.Number(m.To)
			if m.Keeps {
				out.Profile = "with"
			}
		case "zoom":
			out.FromMM, out.ToMM = plan.Number(sh.Focal(m.Start)*1000), plan.Number(sh.Focal(m.End)*1000)
		}
		if m.Kind == "pan" {
			out.FromDeg, out.ToDeg = out.FromDeg+plan.Number(sh.Heading()), out.ToDeg+plan.Number(sh.Heading())
		}
		sh.Blocking = append(sh.Blocking, out)
	}
}

// gone returns how far the camera has gone in the way of each of its moves as that
// starts, metres: forth by dollies, to the right by tracks, up by booms.
func (b *Shot) gone() map[*stage.Move]float64 {
	far, gone := map[string]float64{}, map[*stage.Move]float64{}
	for _, m := range b.Stage.InTime() {
		gone[m] = far[m.Kind]
		far[m.Kind] += m.By
	}
	return gone
}

// fillSubjects computes every subject as it stands at the start of the shot, and where
// it goes: closely, where the drawings show it.
func (b *Shot) fillSubjects(closely bool) {
	sh := b.Plan
	keys := sh.Optics.Keys()
	for _, u := range b.Stage.Order {
		d := sh.DistanceAt(u.Subject, 0)
		x := sh.FromTape(d, 0)
		set := sh.Judged(x, 0)
		u.Distance, u.LensDistance, u.Side = plan.Number(d), plan.Number(x), plan.Number(sh.SideAt(u.Subject, 0))
		u.Near, u.Far = plan.Number(sh.ToTape(set.Near(x), 0)), plan.Number(sh.ToTape(set.Far(x), 0))
		u.RingDeg, u.Window, u.LawSigma = plan.None(), plan.NoInterval(), plan.None()
		if deg := sh.RingDeg(x, 0); !math.IsNaN(deg) {
			a, z := b.EdgesOf(x, x, 0)
			u.RingDeg, u.Window = plan.Number(deg), plan.Interval{plan.Number(a), plan.Number(z)}
			u.LawSigma = plan.Number(sh.LawSigma(x, 0))
		}
		if u.SlantDeg == 0 {
			u.Slant = plan.None()
		}
		u.SideSaid = u.SideKnown()
		u.Path = b.path(u, keys, closely)
		sh.Subjects = append(sh.Subjects, u.Subject)
	}
}

// path is where a subject stands whenever it or the camera starts or stops; where the
// camera turns or leaves its axis, also so often between that the rest is straight.
func (b *Shot) path(u *stage.Subject, camera []float64, closely bool) []plan.Point {
	sh := b.Plan
	at := func(t float64) plan.Point {
		v := sh.ViewOf(u.Subject, t)
		return plan.Point{T: plan.Number(t), Distance: plan.Number(v.Along), Side: plan.Number(v.Across)}
	}
	times := append(append([]float64{0}, u.Along.Keys()...), camera...)
	if closely && sh.Optics.Rig != nil {
		times = plan.Straight(slices.Concat(times, u.Across.Keys(), u.HeightKeys()), float64(sh.Duration), func(t float64) []float64 {
			v := sh.ViewOf(u.Subject, t)
			return []float64{v.Along, v.Across, v.Above}
		})
	}
	times = plan.Sorted(times)
	path := make([]plan.Point, 0, len(times))
	for _, t := range times {
		if t < 0 || t > float64(sh.Duration) {
			continue
		}
		path = append(path, at(t))
	}
	return path
}
