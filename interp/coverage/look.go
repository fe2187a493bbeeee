// One word in one set-up.
//
// A word is looked at where it begins, in its middle, where it ends, and at every time
// within it at which a rack, a person, the camera or the zoom starts or stops. The worst
// of these counts.

package coverage

import (
	"math"
	"slices"
	"sort"

	"pullscore/interp/plan"
	"pullscore/interp/staging"
	"pullscore/interp/viewer"
)

// faintUpTo is the largest blur that is only faint, in units of the largest that is
// sharp.
const faintUpTo = viewer.Seen / viewer.Sharp

// A looker looks at one set-up.
type looker struct {
	shot  *plan.Shot
	setup int
	keys  []float64 // seconds, rising
	times []float64 // of the word that is looked at
	folk  []bool    // of the subjects: they are people
	seen  [mostKept]moment
	next  int // which of seen is forgotten next
}

// A moment is how the set-up is at a time: by subjects, the blur in units of the largest
// that is sharp, and in arc minutes at the viewer.
type moment struct {
	t             float64
	blurs, arcmin []float64
}

// mostKept is how many moments a looker keeps.
const mostKept = 16

// newLooker returns a looker at a shot, of which some are people whether or not they speak
// or move in it.
func newLooker(s *plan.Shot, setup int, people map[string]bool) *looker {
	keys := slices.Concat(s.Optics.Keys(), s.Optics.Focal.Keys())
	folk := make([]bool, len(s.Subjects))
	for i, u := range s.Subjects {
		folk[i] = people[u.Name] || staging.IsPerson(s, u)
		keys = append(append(keys, u.Along.Keys()...), u.Across.Keys()...)
		if u.Up != nil {
			keys = append(keys, u.Up.Keys()...)
		}
	}
	for _, p := range s.Pulls {
		keys = append(keys, float64(p.Start), float64(p.Land))
	}
	k := &looker{shot: s, setup: setup, keys: plan.Sorted(keys), folk: folk}
	n := len(s.Subjects)
	room := make([]float64, 2*n*mostKept)
	for i := range k.seen {
		both := room[2*n*i : 2*n*(i+1)]
		k.seen[i] = moment{math.NaN(), both[:n], both[n:]}
	}
	return k
}

// cell returns what the set-up has of a word; ok is false where it only sounds outside
// of the picture.
func (k *looker) cell(who string, w *plan.Word) (c Cell, ok bool) {
	end := float64(k.shot.Duration)
	from, to := max(w.Start, 0), min(w.End, end)
	if !(from <= to) || w.Start >= end && end > 0 || w.End <= 0 {
		return c, false
	}
	times := k.within(from, to)
	c = Cell{
		Shot: k.shot.ID, Start: plan.Number(w.Start), End: plan.Number(w.End), Setup: k.setup,
		Blur: plan.None(), Chance: plan.None(), Others: k.others(who, times), Lands: k.landings(from, to),
	}
	if u := k.shot.Subject(who); u != nil {
		k.speaker(&c, u, times)
	}
	return c, true
}

// within returns the times at which a word is looked at, until the next word is.
func (k *looker) within(from, to float64) []float64 {
	times := append(k.times[:0], from, from+(to-from)/2, to)
	for i := sort.SearchFloat64s(k.keys, from); i < len(k.keys) && k.keys[i] <= to; i++ {
		times = append(times, k.keys[i])
	}
	k.times = times
	return times
}

// speaker fills in how the speaker of a word is.
func (k *looker) speaker(c *Cell, u *plan.Subject, times []float64) {
	framed := hasSide(k.shot, u)
	i := slices.Index(k.shot.Subjects, u)
	worst, blur := 0.0, 0.0
	chance := plan.Number(1)
	frame := plan.InFrame
	var by *plan.Subject
	for _, t := range times {
		m := k.at(t)
		worst = math.Max(worst, m.blurs[i]) // NaN stays
		blur = math.Max(blur, m.arcmin[i])
		if m.blurs[i] <= 1 {
			chance = min(chance, k.shot.SharpChance(u, t))
		}
		if framed {
			frame = min(frame, k.shot.FrameAt(u, t))
			if by == nil {
				by = staging.InTheWay(k.shot, k.folk, u, t).By
			}
		}
	}
	c.Focus = focus(worst)
	if c.Focus != Sharp && k.racking(times[0], times[2]) {
		c.Focus = Rack
	}
	if c.Focus == Sharp {
		c.Chance = chance
	}
	if c.Blur = plan.Number(blur); blur < noise {
		c.Blur = 0
	}
	c.Held = c.Focus == Sharp
	if !framed {
		return
	}
	if c.Frame = frame.String(); by != nil && frame != plan.OutOfFrame {
		c.Frame, c.By = Blocked, by.Name
	}
	c.Held = c.Held && c.Frame != Out && c.Frame != Blocked
}

// hasSide reports whether it is known to which side of the lens's axis a subject stands.
func hasSide(s *plan.Shot, u *plan.Subject) bool {
	return u.SideSaid || s.Optics.Rig != nil || s.Staging != nil && s.Placed
}

// noise is a blur of which only the error of the computation is left, arc minutes.
const noise = 1e-9

// focus returns the word for a blur in units of the largest that is sharp.
func focus(blur float64) string {
	switch {
	case blur <= 1:
		return Sharp
	case blur <= faintUpTo:
		return Faint
	}
	return Soft
}

// at returns how the set-up is at t. The last times are kept, since a word begins where
// the one before it ends.
func (k *looker) at(t float64) moment {
	for i := range k.seen {
		if k.seen[i].t == t {
			return k.seen[i]
		}
	}
	m := &k.seen[k.next]
	m.t, k.next = t, (k.next+1)%mostKept
	x := k.shot.FocusAt(t)
	set := k.shot.Judged(x, t)
	for i, u := range k.shot.Subjects {
		blur := set.Blur(k.shot.LensDistanceAt(u, t), x)
		m.blurs[i], m.arcmin[i] = blur/set.Criterion, blur*k.shot.Optics.ArcminPerBlur
	}
	return *m
}

// racking reports whether a rack is on its way at some time between two.
func (k *looker) racking(from, to float64) bool {
	for _, p := range k.shot.Pulls {
		if p.Kind == "rack" && float64(p.Start) < to && float64(p.Land) > from {
			return true
		}
	}
	return false
}

// landings returns the numbers of the racks that land from one time up to another.
func (k *looker) landings(from, to float64) (list []int) {
	for _, p := range k.shot.Pulls {
		if land := float64(p.Land); p.Kind == "rack" && land >= from && land < to {
			list = append(list, p.Number)
		}
	}
	return list
}

// others returns who else is sharp at all of some times.
func (k *looker) others(who string, times []float64) []string {
	list := []string{}
	for i, u := range k.shot.Subjects {
		if u.Name == who {
			continue
		}
		sharp := true
		for _, t := range times {
			sharp = sharp && k.at(t).blurs[i] <= 1
		}
		if sharp {
			list = append(list, u.Name)
		}
	}
	return list
}
