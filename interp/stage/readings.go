// Readings: tapes that were read correct the distances of the floor.

package stage

import (
	"math"

	"pullscore/interp/names"
	"pullscore/interp/plan"
)

// A Reading is a tape that was read from the sensor mark, where the shot starts or where
// the camera's last move leaves it.
type Reading struct {
	Who   *Subject
	Mark  *names.Decl // at which they stand; nil: their first place in the shot
	Tape  float64     // metres
	AtEnd bool        // the camera is where its last move leaves it

	Floor float64 // what the floor gives there, metres, once everything is laid
	Found bool    // they do stand at that mark
}

// Measure takes tapes that were read. Whatever is laid after goes by them.
func (st *Stage) Measure(list []*Reading) {
	st.readings = list
	st.correct()
}

// sameMark is how near somebody is to a mark who stands at it, metres on the floor.
const sameMark = 0.05

// correct works out the corrections of all who were measured, as everything lies now.
func (st *Stage) correct() {
	if len(st.readings) == 0 {
		return
	}
	var stops []plan.Span
	for _, l := range st.laid {
		switch m := l.move; m.Kind {
		case "dolly", "track", "boom", "camera":
			stops = append(stops, plan.Span{Start: m.Start, End: m.End, Smooth: m.Smooth})
		}
	}
	done := map[*Subject]bool{}
	for _, r := range st.readings {
		if !done[r.Who] {
			done[r.Who] = true
			st.correctOne(r.Who, stops)
		}
	}
}

// correctOne works out the corrections of one who was measured.
func (st *Stage) correctOne(u *Subject, stops []plan.Span) {
	d := &plan.Deltas{Stops: stops}
	for _, l := range st.laid {
		if m := l.move; m.Kind == "moves" && st.HangsOn(u, m.Who) {
			d.Ways = append(d.Ways, plan.Span{Start: m.Start, End: m.End, Smooth: m.Smooth})
		}
	}
	known := make([][]bool, len(d.Ways)+1)
	d.By = make([][]float64, len(d.Ways)+1)
	for i := range d.By {
		d.By[i], known[i] = make([]float64, len(stops)+1), make([]bool, len(stops)+1)
	}
	for _, r := range st.readings {
		if r.Who != u {
			continue
		}
		i, ok := st.placeAt(u, r.Mark, d.Ways)
		j := 0
		if r.AtEnd {
			j = len(stops)
		}
		if r.Found = ok; ok {
			r.Floor = st.apart(u, behind(d.Ways, i), behind(stops, j))
			d.By[i][j], known[i][j] = r.Tape-r.Floor, true
		}
	}
	for i := range d.By {
		spreadKnown(d.By[i], known[i])
	}
	u.Deltas = d
}

// placeAt returns the first place of somebody at a mark; of no mark their first.
func (st *Stage) placeAt(u *Subject, mark *names.Decl, ways []plan.Span) (i int, ok bool) {
	if mark == nil {
		for i < len(ways) && ways[i].End <= 0 { // what is over as the shot starts
			i++
		}
		return i, true
	}
	s, ok := st.mark(mark)
	if !ok {
		return 0, false
	}
	for i := range len(ways) + 1 {
		t := behind(ways, i)
		if math.Hypot(u.Across.At(t)-s.x, u.Along.At(t)-s.y) <= sameMark {
			return i, true
		}
	}
	return 0, false
}

// behind returns a time at which so many ways are done.
func behind(ways []plan.Span, n int) float64 {
	if n > 0 {
		return ways[n-1].End
	}
	if len(ways) > 0 {
		return ways[0].Start
	}
	return 0
}

// apart returns how far somebody is at one time from where the camera is at another, as
// the floor has it: metres.
func (st *Stage) apart(u *Subject, t, camera float64) float64 {
	p := st.optics.Place(camera)
	return math.Hypot(math.Hypot(u.Across.At(t)-p.X, u.Along.At(t)-p.Y), u.Height(t)-p.Z)
}

// spreadKnown gives what is not known the value of the nearest before it that is, else of
// the nearest behind it; 0 where none is.
func spreadKnown(by []float64, known []bool) {
	last := -1
	for j := range by {
		switch {
		case known[j]:
			if last < 0 {
				for k := range j {
					by[k] = by[j]
				}
			}
			last = j
		case last >= 0:
			by[j] = by[last]
		}
	}
}
