// The positions of the ring and their distances.
//
// A recording holds the same position many times, a little differently each time:
// samples within 0.002 of the ring's range are one place, at the middle of their
// distances. A ring goes one way, so of places that contradict each other the
// largest set that does not is kept. That set is found among the values as they
// are written, since rounding may make two of them the same.

package foreign

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"pullscore/interp/units"
	"pullscore/lang"
)

const (
	joined    = 0.002 // part of the range within which positions are one
	scatter   = 0.02  // how far the distances of a place may differ, in parts of 1/distance
	nearest   = 0.01  // metres; no lens focuses nearer to its sensor
	farthest  = 1e4   // metres; beyond that a distance says no more than infinity
	encoder16 = 65535 // the whole count of an encoder of 16 bits
)

// A place is a position of the ring with its distance.
type place struct {
	at, distance  float64
	n             int
	low, high     float64 // the distances that were joined
	first, second float64 // the positions that were joined, from and to
}

// says tells how many samples a mark stands for.
func (p place) says() string { return units.Count(p.n, "reading") }

// A barrel is what a file says of the ring of a lens.
type barrel struct {
	field   string // that its positions are from
	of      string // what they are parts of
	digits  int    // decimals of a position
	closest float64
	marks   []place
	notes   []string
	inf     bool // 0 is infinity
}

const rawField = "lens.rawEncoders.focus"

// places returns the marks of the ring.
func (t *track) places() barrel {
	switch {
	case len(t.pairs) > 0:
		r := barrel{field: "lens.encoders.focus", of: "1", digits: 4}
		t.settle(&r, t.pairs, 1)
		return r
	case len(t.raw) > 0:
		whole := float64(encoder16)
		for _, p := range t.raw {
			whole = max(whole, p.at)
		}
		r := barrel{field: rawField, of: units.Decimal(whole, 0)}
		r.notes = append(r.notes,
			fmt.Sprintf("The encoder's whole count, %s, stands for the whole ring. If the ring has less of it,", r.of),
			fmt.Sprintf("turn it from stop to stop, and write: mark closest at ___ of %s, mark inf at ___ of %s.", r.of, r.of))
		t.settle(&r, t.raw, whole)
		return r
	}
	return barrel{}
}

// settle joins the pairs, puts them in order and thins them out.
func (t *track) settle(r *barrel, pairs []pair, whole float64) {
	up := rises(written(join(pairs, joined*whole), r.digits))
	switch {
	case r.of != "1":
	case up:
		r.notes = append(r.notes, "The positions rise with distance. The form has 0 at infinity, so compare them with the ring.")
	default:
		pairs = r.ends(pairs)
	}
	list := join(pairs, joined*whole)
	t.scattered(list, r)
	list = written(list, r.digits)
	r.marks = ordered(list, up)
	if left := len(list) - len(r.marks); left > 0 {
		t.tell(lang.Warning, "foreign-scatter", lang.Pos{}, fmt.Sprintf("%s of the ring do not go with the others, and are left out", units.Count(left, "position")),
			"A ring goes one way: its distances rise or fall with its positions. Check the marks by eye.")
	}
	r.marks = slices.DeleteFunc(r.marks, func(p place) bool { return p.distance <= r.closest })
	if !up { // near to far
		slices.Reverse(r.marks)
	}
	if n := len(r.marks); n > mostMarks {
		r.marks = r.thinned(whole, up)
		r.notes = append(r.notes, fmt.Sprintf("Of %d positions %d are written, those that say most of the ring.", n, len(r.marks)))
	}
}

// rises reports whether most distances rise with the positions. The form has them
// fall, so that is taken where nothing tells.
func rises(list []place) bool { return len(ordered(list, true)) > len(ordered(list, false)) }

// near is how near to an end of the ring a position is that end.
const near = 0.0005

// ends returns the pairs between the ends of the ring, which the form names: 0 is
// infinity and 1 the closest focus.
func (r *barrel) ends(pairs []pair) (between []pair) {
	var at1, at0 []pair
	for _, p := range pairs {
		switch {
		case p.at >= 1-near:
			at1 = append(at1, p)
		case p.at <= near:
			at0 = append(at0, p)
		default:
			between = append(between, p)
		}
	}
	r.inf = true
	if ends := written(join(at1, 1), r.digits); len(ends) > 0 {
		r.closest = ends[0].distance
	}
	if ends := written(join(at0, 1), r.digits); len(ends) > 0 {
		r.notes = append(r.notes, fmt.Sprintf("At 0 of 1 the file has %s. The form calls that infinity, so it is no mark.", metres(ends[0].distance)))
	}
	return between
}

// thinned returns the marks that say most of the ring. Its ends count as marks
// where the positions tell where they are: a kit has them without being told.
func (r *barrel) thinned(whole float64, rising bool) []place {
	marks := r.marks
	ends := r.inf
	if ends {
		marks = append(slices.Clone(marks), place{distance: math.Inf(1)})
		if r.closest > 0 {
			marks = slices.Insert(marks, 0, place{at: 1, distance: r.closest})
		}
	}
	kept := thin(marks, mostMarks+len(marks)-len(r.marks), whole, rising)
	if ends {
		kept = slices.DeleteFunc(kept, func(p place) bool { return p.n == 0 })
	}
	return kept
}

// join makes one place of all pairs whose positions lie within a width.
func join(pairs []pair, width float64) (list []place) {
	sorted := slices.Clone(pairs)
	sorted = slices.DeleteFunc(sorted, func(p pair) bool { return p.distance > farthest || p.distance < nearest })
	slices.SortFunc(sorted, func(a, b pair) int { return cmp.Or(cmp.Compare(a.at, b.at), cmp.Compare(a.distance, b.distance)) })
	for from := 0; from < len(sorted); {
		to := from + 1
		for to < len(sorted) && sorted[to].at-sorted[from].at <= width {
			to++
		}
		list = append(list, middle(sorted[from:to]))
		from = to
	}
	return list
}

// middle returns the place of pairs, which are sorted by position: the pair with
// the middle distance, at its own position.
func middle(pairs []pair) place {
	n := len(pairs)
	byDistance := slices.Clone(pairs)
	slices.SortStableFunc(byDistance, func(a, b pair) int { return cmp.Compare(a.distance, b.distance) })
	m := byDistance[(n-1)/2]
	return place{
		at: m.at, distance: m.distance, n: n, low: byDistance[0].distance, high: byDistance[n-1].distance,
		first: pairs[0].at, second: pairs[n-1].at,
	}
}

// written returns places as they are written. Neighbours that are then at one
// distance become the middle one of them.
func written(list []place, digits int) (kept []place) {
	for i := range list {
		p := &list[i]
		p.at, _ = strconv.ParseFloat(decimalPlaces(p.at, digits), 64)
		scale := 1000.0
		if p.distance >= 10 {
			scale = 100
		}
		p.distance = math.Round(p.distance*scale) / scale
	}
	for from := 0; from < len(list); {
		to := from + 1
		for to < len(list) && list[to].distance == list[from].distance {
			to++
		}
		kept = append(kept, list[(from+to-1)/2])
		from = to
	}
	return kept
}

// decimalPlaces writes a position with all its decimals: a plan takes the last of
// them for how well it was read.
func decimalPlaces(v float64, digits int) string { return strconv.FormatFloat(v, 'f', digits, 64) }

// upTo writes the first of two distances, without its unit where both have the same.
func upTo(low, high float64) string {
	number, unit, _ := strings.Cut(metres(low), " ")
	if strings.HasSuffix(metres(high), " "+unit) {
		return number
	}
	return number + " " + unit
}

// scattered tells of places whose distances differ by more than the width of the
// place explains. While the ring turns, distances within a place differ by as much
// as its neighbours do over the same way.
func (t *track) scattered(list []place, r *barrel) {
	for i, p := range list {
		slope := 0.0
		if low, high := max(i-1, 0), min(i+1, len(list)-1); low < high {
			slope = math.Abs(1/list[high].distance-1/list[low].distance) / (list[high].at - list[low].at)
		}
		if 1/p.low-1/p.high-slope*(p.second-p.first) > scatter/p.distance {
			t.tell(lang.Warning, "foreign-scatter", lang.Pos{},
				fmt.Sprintf("at encoder %s the file has distances from %s to %s: the middle one is taken", units.Decimal(p.at, r.digits), upTo(p.low, p.high), metres(p.high)),
				"The encoder slips, or the distances are not of this lens. Check this mark by eye.")
		}
	}
}

// ordered returns the largest set of places, which are sorted by position, whose
// distances all rise, or all fall.
func ordered(list []place, rising bool) []place {
	if len(list) == 0 {
		return nil
	}
	longest, before, best := make([]int, len(list)), make([]int, len(list)), 0
	for i := range list {
		longest[i], before[i] = 1, -1
		for j := range i {
			follows := list[j].at < list[i].at && (rising && list[j].distance < list[i].distance || !rising && list[j].distance > list[i].distance)
			if follows && longest[j] >= longest[i] {
				longest[i], before[i] = longest[j]+1, j
			}
		}
		if longest[i] > longest[best] {
			best = i
		}
	}
	var kept []place
	for i := best; i >= 0; i = before[i] {
		kept = append(kept, list[i])
	}
	slices.Reverse(kept)
	return kept
}
