// Tapes: what somebody read corrects the distances that a floor gives.
//
// A reading is of one place of somebody and one stop of the camera. While either goes to
// another, the correction goes with it. It changes distances alone: everything stays in
// the direction in which the floor has it, and so where it is in the picture.

package plan

// A Span is a time in which somebody or the camera goes from one place to the next.
type Span struct {
	Start, End float64
	Smooth     bool
}

// Deltas are by how much tapes to somebody read more than the floor gives, in metres, for
// each of their places and each stop of the camera.
type Deltas struct {
	Ways, Stops []Span      // between the places of the one, and between the stops of the other
	By          [][]float64 // By[i][j] at place i from stop j
}

// At returns the correction at t, metres.
func (d *Deltas) At(t float64) float64 {
	i, u := reached(d.Ways, t)
	j, w := reached(d.Stops, t)
	return (d.By[i][j]*(1-w)+d.by(i, j+1)*w)*(1-u) + (d.by(i+1, j)*(1-w)+d.by(i+1, j+1)*w)*u
}

// by returns one correction; behind the last it stays.
func (d *Deltas) by(i, j int) float64 {
	i = min(i, len(d.By)-1)
	return d.By[i][min(j, len(d.By[i])-1)]
}

// reached returns the last place that is reached at t, and how much of the way to the next
// is done.
func reached(ways []Span, t float64) (i int, share float64) {
	for i := range ways {
		w := &ways[i]
		switch {
		case t <= w.Start:
			return i, 0
		case t < w.End:
			return i, Ease((t-w.Start)/(w.End-w.Start), w.Smooth)
		}
	}
	return len(ways), 0
}
