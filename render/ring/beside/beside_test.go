package beside

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

// Labels beside lines keep apart, keep off all lines, and cost as little as any choice
// that a search through all of them finds.
func TestSeats(t *testing.T) {
	for seed := range uint64(300) {
		r := rand.New(rand.NewPCG(seed, 1))
		between := func(lo, hi float64) float64 { return lo + (hi-lo)*r.Float64() }
		var list []Upright
		x := between(-10, 10)
		for range 1 + r.IntN(5) {
			u := Upright{First: x, Last: x}
			for k := range r.IntN(4) {
				u.Forms = append(u.Forms, Form{between(2, 20), float64(k)})
			}
			list = append(list, u)
			x += between(0.5, 25)
		}
		hi := x + between(-5, 20)
		got, ok := costOf(list, Seats(list, 0, hi), 0, hi)
		if !ok {
			t.Fatalf("seed %d: labels clash", seed)
		}
		if best := cheapest(list, nil, 0, hi); math.Abs(got-best) > 1e-9 {
			t.Fatalf("seed %d: costs %v, %v would do", seed, got, best)
		}
	}
}

// costOf returns what seats cost; ok is false where two labels clash, or a label and a line.
func costOf(list []Upright, chosen []Seat, lo, hi float64) (cost float64, ok bool) {
	type span struct {
		from, to float64
		of       int
	}
	var labels []span
	for i, s := range chosen {
		u := list[i]
		if s.Form < 0 {
			if len(u.Forms) > 0 {
				cost += noneCost
			}
			continue
		}
		cost += u.Forms[s.Form].Cost
		from := u.Last + Gap
		if !s.Right {
			cost += leftCost
			from = u.First - Gap - u.Forms[s.Form].Width
		}
		labels = append(labels, span{from, from + u.Forms[s.Form].Width, i})
	}
	slices.SortFunc(labels, func(a, b span) int { return cmp.Compare(a.from, b.from) })
	for k, l := range labels {
		if l.from < lo-1e-9 || l.to > hi+1e-9 || k > 0 && l.from < labels[k-1].to+labelsGap-1e-9 {
			return cost, false
		}
		for i, u := range list {
			if i != l.of && l.from < u.Last+lineClear-1e-9 && l.to > u.First-lineClear+1e-9 {
				return cost, false
			}
		}
	}
	return cost, true
}

func cheapest(list []Upright, chosen []Seat, lo, hi float64) float64 {
	if len(chosen) == len(list) {
		if cost, ok := costOf(list, chosen, lo, hi); ok {
			return cost
		}
		return math.Inf(1)
	}
	best := math.Inf(1)
	options := []Seat{{Form: -1}}
	for k := range list[len(chosen)].Forms {
		options = append(options, Seat{k, true}, Seat{k, false})
	}
	for _, s := range options {
		best = min(best, cheapest(list, append(chosen[:len(chosen):len(chosen)], s), lo, hi))
	}
	return best
}
