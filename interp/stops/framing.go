// The same framing by other means: another focal length from another distance,
// or another sensor.

package stops

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"pullscore/interp/plan"
	"pullscore/interp/units"
)

// sameFocal is by how much a lens may differ from a focal length that is asked
// for and still be taken for it: the field changes by as much, which the eye
// takes for the same framing. Common practice, no source.
const sameFocal = 0.05

// lensLever takes another focal length, with the camera moved so that what the
// focus starts on keeps its size: the nearest prime of the kit that opens a
// window, else one that is computed.
func (s *search) lensLever(kit Kit) (Lever, bool) {
	d, ok := s.reference()
	if !ok {
		return Lever{}, false
	}
	f := float64(s.shot.FocalMM) / 1000
	for _, other := range kit.primesFrom(f) {
		if s.zooms() || other.Name == s.shot.Lens {
			continue
		}
		back := d * (other.Shortest/f - 1)
		l := Lever{Kind: "lens", Value: plan.Number(other.Shortest * 1000), Unit: "mm", Lens: other.Name, Back: plan.Number(back), Change: s.change}
		l.Text = fmt.Sprintf("lens %q, camera %s for the same framing", other.Name, s.steps(back))
		l.Change.Lens, l.Change.Back = other.Name, s.change.Back+back
		if l, ok := s.try(l); ok {
			return l, true
		}
	}
	return s.factor(most, 1/most, func(k float64) Lever {
		back := d * (k - 1)
		l := Lever{Kind: "lens", Value: plan.Number(f * k * 1000), Unit: "mm", Back: plan.Number(back), Change: s.change}
		l.Text = fmt.Sprintf("a lens of %s mm with the same ring and stops, camera %s for the same framing", millimetres(f*k), s.steps(back))
		l.Change.FocalBy, l.Change.Back = k, s.change.Back+back
		return l
	})
}

func millimetres(m float64) string { return units.Decimal(m*1000, 1) }

// zooms tells whether the shot's focal length changes in it.
func (s *search) zooms() bool { return s.shot.Optics.Focal.Moves() }

// primesFrom lists the primes of the kit whose focal length is another, the
// nearest first.
func (k Kit) primesFrom(focal float64) []Lens {
	off := func(l Lens) float64 { return math.Abs(math.Log(l.Shortest / focal)) }
	list := slices.DeleteFunc(slices.Clone(k.Lenses), func(l Lens) bool {
		return l.Longest > l.Shortest || off(l) < 0.01
	})
	slices.SortStableFunc(list, func(a, b Lens) int { return cmp.Compare(off(a), off(b)) })
	return list
}

// sensorLever takes a larger sensor, or else a smaller one, with the focal
// length that frames alike from the same place: the first camera of the kit
// that opens a window, else a sensor that is computed.
func (s *search) sensorLever(kit Kit) (Lever, bool) {
	w, squeeze := s.shot.Optics.SensorW, s.shot.Optics.Squeeze()
	cameras := slices.DeleteFunc(slices.Clone(kit.Cameras), func(c Camera) bool { return c.Width(squeeze) <= w*1.01 })
	slices.SortStableFunc(cameras, func(a, b Camera) int { return cmp.Compare(a.Width(squeeze), b.Width(squeeze)) })
	for _, c := range cameras {
		v := s.on(c, kit)
		l := Lever{Kind: "sensor", Value: plan.Number(c.Width(squeeze) * 1000), Unit: "mm", Camera: c.Name, Lens: v.Lens, Change: v.Change}
		l.Text = fmt.Sprintf("camera %s (a sensor %s mm wide) with %s", c.Name, millimetres(c.Width(squeeze)), v.With)
		if l, ok := s.try(l); ok {
			return l, true
		}
	}
	f := float64(s.shot.FocalMM) / 1000
	return s.factor(most, 0, func(k float64) Lever {
		l := Lever{Kind: "sensor", Value: plan.Number(w * k * 1000), Unit: "mm", Change: s.change}
		l.Text = fmt.Sprintf("a sensor %s mm wide with a lens of %s mm that has the same ring and stops", millimetres(w*k), millimetres(f*k))
		l.Change.SensorBy, l.Change.FocalBy = k, k
		return l
	})
}

// A view is the same framing on another camera.
type view struct {
	Change
	With string // the lens, in words
}

// on frames the shot alike on another camera from the same place: with the lens
// of the kit that has the focal length, else with one of that length computed
// from the shot's own.
func (s *search) on(c Camera, kit Kit) view {
	k := c.Width(s.shot.Optics.Squeeze()) / s.shot.Optics.SensorW
	f := float64(s.shot.FocalMM) / 1000 * k
	v := view{Change: s.change}
	v.Camera = c.Name
	l, ok := kit.lensOf(f)
	switch {
	case !ok || s.zooms():
		v.FocalBy = k
		v.With = fmt.Sprintf("a lens of %s mm that has the same ring and stops", millimetres(f))
	case l.Longest > l.Shortest:
		v.Lens, v.Focal = l.Name, min(max(f, l.Shortest), l.Longest)
		v.With = fmt.Sprintf("lens %q at %s mm", l.Name, millimetres(v.Focal))
	default:
		v.Lens = l.Name
		v.With = fmt.Sprintf("lens %q", l.Name)
	}
	return v
}

// lensOf returns the lens of the kit nearest to a focal length, primes before
// zooms; ok is false where none has it.
func (k Kit) lensOf(focal float64) (best Lens, ok bool) {
	nearest := math.Log1p(sameFocal)
	for _, zoom := range []bool{false, true} {
		for _, l := range k.Lenses {
			at := min(max(focal, l.Shortest), l.Longest)
			if off := math.Abs(math.Log(at / focal)); zoom == (l.Longest > l.Shortest) && off < nearest {
				best, nearest, ok = l, off, true
			}
		}
		if ok {
			return best, true
		}
	}
	return best, ok
}

// A Side is a shot on one of two cameras.
type Side struct {
	*Answer
	// Computed tells that the kit has no lens of this focal length, so that the
	// figures are for the shot's own lens with its focal length scaled.
	Computed bool `json:"computed"`
	// With says in words what the shot is framed with.
	With string `json:"with"`
}

// A Pair is a shot on its own camera and, framed alike, on another.
type Pair struct {
	ID    string `json:"id"`
	Here  Side   `json:"here"`
	There *Side  `json:"there,omitempty"` // nil where it cannot be taken so
}

// Compare returns the answers for a shot on its own camera and on another of
// the kit, framed alike from the same place; ok is false where the kit has no
// such camera or the shot cannot be taken anew.
func Compare(retake Retake, kit Kit, camera string) (p Pair, ok bool) {
	i := slices.IndexFunc(kit.Cameras, func(c Camera) bool { return c.Name == camera })
	s, ok := newSearch(retake, Change{}, nil)
	if i < 0 || !ok {
		return Pair{}, false
	}
	here := s.answer()
	p = Pair{ID: here.ID, Here: Side{Answer: here, With: fmt.Sprintf("lens %q", here.Lens)}}
	v := s.on(kit.Cameras[i], kit)
	if other, ok := newSearch(retake, v.Change, s.excused); ok {
		p.There = &Side{Answer: other.answer(), Computed: v.FocalBy > 0, With: v.With}
	}
	return p, true
}
