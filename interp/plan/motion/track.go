// Tracks: a value over time, for moves of people, camera and zoom.

package motion

import (
	"slices"
	"sort"

	"pullscore/interp/hand"
)

// A Spot is a position in metres: Offset alone, or Offset from the value of the parent
// track at that time.
type Spot struct {
	Parent *Track
	Offset float64
}

func (s Spot) at(t float64) float64 {
	if s.Parent == nil {
		return s.Offset
	}
	return s.Parent.At(t) + s.Offset
}

// A Step takes a track to another spot between two times in seconds.
type Step struct {
	Start, End float64
	To         Spot
	Smooth     bool // minimum jerk; if false, constant speed

	latest float64 // the latest end of this step and of all before it
}

// A Track is a value over time: its first value, and its steps in order of their
// starts. Steps should not overlap. If they do, the track finishes the earlier one.
type Track struct {
	From  Spot
	Steps []Step
}

// Still returns a track that stays at v.
func Still(v float64) *Track { return &Track{From: Spot{Offset: v}} }

// Add appends a step to the track. The step must not start before the others.
func (tr *Track) Add(s Step) {
	s.latest = s.End
	if n := len(tr.Steps); n > 0 {
		s.latest = max(s.End, tr.Steps[n-1].latest)
	}
	tr.Steps = append(tr.Steps, s)
}

// At returns the value of the track at t seconds.
func (tr *Track) At(t float64) float64 {
	if len(tr.Steps) == 0 {
		return tr.From.at(t)
	}
	begun := sort.Search(len(tr.Steps), func(i int) bool { return tr.Steps[i].Start >= t })
	done := sort.Search(begun, func(i int) bool { return tr.Steps[i].latest > t })
	spot := tr.From
	if done > 0 {
		spot = tr.Steps[done-1].To
	}
	if done == begun {
		return spot.at(t)
	}
	s := &tr.Steps[done]
	u := Ease((t-s.Start)/(s.End-s.Start), s.Smooth)
	if spot.Parent == s.To.Parent { // asked once: parents have parents
		return spot.at(t) + (s.To.Offset-spot.Offset)*u
	}
	a, b := spot.at(t), s.To.at(t)
	return a + (b-a)*u
}

// Moves reports whether the value of the track changes at all.
func (tr *Track) Moves() bool {
	return len(tr.Steps) > 0 || tr.From.Parent != nil && tr.From.Parent.Moves()
}

// Keys returns the times in seconds, in order, at which the track or one of its
// parents starts or stops changing.
func (tr *Track) Keys() []float64 {
	var keys []float64
	seen := map[*Track]bool{}
	var add func(*Track)
	add = func(tr *Track) {
		if tr == nil || seen[tr] {
			return
		}
		seen[tr] = true
		add(tr.From.Parent)
		for _, s := range tr.Steps {
			keys = append(keys, s.Start, s.End)
			add(s.To.Parent)
		}
	}
	add(tr)
	return Sorted(keys)
}

// Sorted sorts times and leaves out those that come again.
func Sorted(times []float64) []float64 {
	slices.Sort(times)
	return slices.Compact(times)
}

// Ease returns the share of a move that is done after the share u (0 to 1) of its
// time. A smooth move has minimum jerk, as people and well-kept machines move; any
// other has constant speed.
func Ease(u float64, smooth bool) float64 {
	u = min(max(u, 0), 1)
	if !smooth {
		return u
	}
	return hand.MinJerk(u)
}
