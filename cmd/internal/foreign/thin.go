// As many marks as a kit can use.
//
// A recording may have hundreds of places, and a kit is for people. Places are
// left out one by one, always the one whose loss costs least. It costs what it
// moves the law of the ring, measured at the places of the file near it; and it
// leaves a wider gap, in which the law is known less well. The first is what the
// file says of this ring, the second what it cannot say of the ring between its
// places: a straight law would else lose its marks in any order. The first and the
// last stay.
//
// The law is the one that the kit will have (optics/ring). A mark bends it no
// farther than two gaps away, so the laws to compare go through the neighbours
// alone.

package foreign

import (
	"math"
	"slices"

	"pullscore/optics/ring"
)

// mostMarks is how many marks are written.
const mostMarks = 16

// reach is how many marks to either side a law is built through, and bend how many
// gaps away a mark still bends it.
const (
	reach = 4
	bend  = 2
)

// A thinner leaves out marks.
type thinner struct {
	all   []ring.Mark // of the file, near to far
	kept  []int       // of all, in order
	costs []float64   // of leaving out each of kept
}

// thin returns so many of the marks. Positions are parts of whole that rise with
// distance, or fall.
func thin(marks []place, count int, whole float64, rising bool) []place {
	t := &thinner{}
	for i, m := range marks {
		part := m.at / whole
		if !rising {
			part = 1 - part
		}
		t.all = append(t.all, ring.Mark{Distance: m.distance, Angle: 360 * part})
		t.kept = append(t.kept, i)
	}
	t.costs = make([]float64, len(marks))
	for i := range t.kept {
		t.costs[i] = t.cost(i)
	}
	for len(t.kept) > count {
		least := 0
		for i, c := range t.costs {
			if c < t.costs[least] {
				least = i
			}
		}
		t.drop(least)
	}
	var left []place
	for _, i := range t.kept {
		left = append(left, marks[i])
	}
	return left
}

// drop leaves out one of the kept, and counts anew what its neighbours cost.
func (t *thinner) drop(i int) {
	t.kept, t.costs = slices.Delete(t.kept, i, i+1), slices.Delete(t.costs, i, i+1)
	for j := max(0, i-reach); j < min(len(t.kept), i+reach); j++ {
		t.costs[j] = t.cost(j)
	}
}

// cost returns by how many degrees the law misses a place of the file if one of
// the kept is left out, and adds the bound of the gap that it leaves.
func (t *thinner) cost(i int) float64 {
	last := len(t.kept) - 1
	if i == 0 || i == last {
		return math.Inf(1)
	}
	var marks []ring.Mark
	for j := max(0, i-reach); j <= min(last, i+reach); j++ {
		if j != i {
			marks = append(marks, t.all[t.kept[j]])
		}
	}
	law, err := t.law(marks)
	if err != nil {
		return 0 // a mark that the law refuses is the first to go
	}
	worst := 0.0
	for k := t.kept[max(0, i-bend)]; k <= t.kept[min(last, i+bend)]; k++ {
		worst = max(worst, math.Abs(law(t.all[k].Distance)-t.all[k].Angle))
	}
	return worst + t.gap(t.kept[i-1], t.kept[i+1])
}

// leastK and shareK say how far the law may be off in the middle of a gap, in
// parts of its angle: at least the one, and the other for each part that the gap
// has of the way from the first mark to the last in 1/distance.
const (
	leastK = 0.005
	shareK = 0.25
)

// gap returns how well the law is known between two marks: a usual bound, degrees.
func (t *thinner) gap(near, far int) float64 {
	u := func(i int) float64 { return 1 / t.all[i].Distance }
	share := (u(near) - u(far)) / (u(0) - u(len(t.all)-1))
	return max(leastK, shareK*share) * (t.all[far].Angle - t.all[near].Angle)
}

// law returns the law through marks, as degrees over metres. What it needs of the
// lens is how near its sensor the ring is even; a lens that focuses as near as the
// nearest mark has about a quarter of that as its focal length at most.
func (t *thinner) law(marks []ring.Mark) (func(metres float64) float64, error) {
	law, err := ring.FromMarks(marks, ring.Shape{Focal: t.all[0].Distance / 4, Throw: math.NaN()})
	if err != nil {
		return nil, err
	}
	return law.Angle, nil
}
