// Where to take hold: at which place of the clock the thumb is when a pull starts.
//
// While the hand keeps its hold, the thumb goes round with the ring, by the same
// angle. So the place where the hand takes hold decides where it lands, and whether
// the arc of the forearm is long enough for the way between.
//
// The forearm is in the middle of its turn when the thumb points up. From there, daily
// tasks use 50 degrees each way (Morrey et al. 1981), and the whole range is 76 degrees
// palm down and 82 degrees palm up (Boone & Azen 1979). So Grip is an arc with its
// middle at 12 o'clock. This holds for either hand, if its forearm points along the
// axis of the ring or wheel. Where a puller stands otherwise, the middle moves by the
// same angle for every pull.
//
// People take hold of a thing awkwardly if they can then put it down comfortably: they
// plan for the end of the movement (end-state comfort: Rosenbaum et al., "Constraints
// for action selection: overhand versus underhand grips", Attention and Performance
// XIII, 1990; from memory). The hand is also most exact near the middle of its turn
// (from memory, no figure). So a pull lands as near 12 o'clock as the arc allows, and
// it starts where its travel puts it.
//
// Between two pulls the hand can take hold anew only if the rest between them is as
// long as a re-grip. If not, it keeps its hold, and one place is chosen for the whole
// chain. Then the squares of the landings' distances from 12 o'clock are weighed by
// 1/window, since a narrow window asks for the most exactness (the weights are our own
// choice). If a chain does not fit the arc, the hand has to let go within it, however
// short the rest: it does so as late as it can, and so as seldom as it can. A travel
// longer than Grip is split as Land does: the hand lets go each time it has used a whole
// Grip.

package hand

import "math"

// A Turn is what the ring or wheel does in one pull. Angles are in degrees at the hand,
// clockwise positive, and count from any one place of the ring or wheel.
type Turn struct {
	From, To    float64
	Least, Most float64 // how far it goes either way: From and To, and more if it turns back
	Start, Land float64 // times in seconds
	Window      float64 // how wide its landing window is, degrees; +Inf where it is open
	Backs       bool    // it may turn back, as in a follow: then no re-grip is planned
}

// A Hold says where the thumb is in one pull. Angles are in degrees from 12 o'clock,
// clockwise positive.
type Hold struct {
	From, To float64 // as the pull starts and as it lands

	// The hand lets go Regrips times, each time at Regrip. It takes hold again at From,
	// but the last time at RegripTo.
	Regrips          int
	Regrip, RegripTo float64

	Kept    bool // the hand keeps the hold that it has from the pull before
	Hurried bool // it takes hold anew, and the rest before is too short for a re-grip
	OK      bool // false: nothing can be said of this pull
}

// Clock returns the place on a clock face of an angle from 12 o'clock, in hours above 0
// and up to 12. The angle is in degrees, clockwise positive.
func Clock(deg float64) float64 {
	if h := math.Mod(math.Mod(deg/30, 12)+12, 12); h > 0 {
		return h
	}
	return 12
}

// Holds returns where the thumb is in each of the turns, which are in the order of
// time. A turn whose angles are not known (NaN) gets a Hold that is not OK.
func (h Hand) Holds(turns []Turn) []Hold {
	holds := make([]Hold, len(turns))
	var chain []piece
	for i, t := range turns {
		gap := math.Inf(1) // the first pull, and one after a pull of which nothing is known
		if len(chain) > 0 {
			gap = t.Start - turns[i-1].Land
		}
		parts := h.pieces(i, t, gap)
		if len(parts) == 0 || !(gap < Regrip) {
			h.place(chain, holds)
			chain = nil
		}
		for k, p := range parts {
			if k > 0 {
				h.place(chain, holds)
				chain = nil
			}
			chain = append(chain, p)
		}
	}
	h.place(chain, holds)
	return holds
}

// A piece is the part of a turn that one hold takes.
type piece struct {
	turn        int
	to          float64 // where it ends
	least, most float64
	weight      float64 // of its end in the choice of the hold
	gap         float64 // seconds since the turn before
	first, last bool    // of its turn
	from        float64
	regrips     int
}

// leastWindow is the narrowest window that counts, degrees: a landing in a narrower one
// weighs no more.
const leastWindow = 0.1

// pieces returns the first and the last piece of a turn, which may be one. It returns
// none where nothing can be said.
func (h Hand) pieces(number int, t Turn, gap float64) []piece {
	if !h.valid() || math.IsNaN(t.From+t.To+t.Least+t.Most) || math.IsInf(t.Most-t.Least, 0) {
		return nil
	}
	whole := piece{turn: number, from: t.From, to: t.To, least: t.Least, most: t.Most, weight: weigh(t.Window), gap: gap, first: true, last: true}
	switch {
	case t.Backs && t.Most-t.Least > h.Grip:
		return nil
	case t.Backs:
		return []piece{whole}
	}
	n, _ := h.regrips(math.Abs(t.To - t.From))
	switch n {
	case 0:
		return []piece{whole}
	case maxRegrips:
		return nil
	}
	grip := math.Copysign(h.Grip, t.To-t.From)
	first, last := whole, whole
	first.to, first.last, first.weight = t.From+grip, false, 0
	first.least, first.most = min(t.From, first.to), max(t.From, first.to)
	last.from, last.first, last.regrips = t.From+grip*float64(n), false, n
	last.least, last.most = min(last.from, t.To), max(last.from, t.To)
	return []piece{first, last}
}

// weigh returns how much a landing in a window of that width counts.
func weigh(window float64) float64 {
	if !(window > 0) {
		return 0
	}
	return 1 / max(window, leastWindow)
}

// place finds the holds of a chain of pieces and writes them into the holds of their
// turns: one hold for as many pieces as fit one grip, and then the next.
func (h Hand) place(chain []piece, holds []Hold) {
	from, least, most := 0, math.Inf(1), math.Inf(-1)
	for i, p := range chain {
		if i > from && max(most, p.most)-min(least, p.least) > h.Grip*(1+1e-9) {
			h.placeOne(chain[from:i], least, most, holds)
			from, least, most = i, math.Inf(1), math.Inf(-1)
		}
		least, most = min(least, p.least), max(most, p.most)
	}
	if len(chain) > 0 {
		h.placeOne(chain[from:], least, most, holds)
	}
}

// placeOne finds one hold for pieces that go from least to most, and writes it.
func (h Hand) placeOne(chain []piece, least, most float64, holds []Hold) {
	by := h.middle(chain, least, most)
	for i, p := range chain {
		o := &holds[p.turn]
		if p.first {
			o.From, o.Kept, o.Hurried, o.OK = p.from+by, i > 0, i == 0 && p.gap < Regrip, true
		} else {
			o.RegripTo, o.Regrips = p.from+by, p.regrips
		}
		if p.last {
			o.To = p.to + by
		} else {
			o.Regrip = p.to + by
		}
	}
}

// middle returns by how much a chain of pieces is shifted so that their ends lie round
// 12 o'clock and no place of them is outside the arc.
func (h Hand) middle(chain []piece, least, most float64) float64 {
	if most-least >= h.Grip { // by the last bits of a computation
		return -(least + most) / 2
	}
	sum, weights := 0.0, 0.0
	for _, p := range chain {
		sum, weights = sum+p.weight*p.to, weights+p.weight
	}
	if weights == 0 { // all are open: each counts the same
		for _, p := range chain {
			sum, weights = sum+p.to, weights+1
		}
	}
	return min(max(-sum/weights, -h.Grip/2-least), h.Grip/2-most)
}
