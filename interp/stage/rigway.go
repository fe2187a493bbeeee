// Ways of a camera that turns or leaves its axis.
//
// There the distance of somebody is no sum of what the moves do: a step aside is
// distance to a camera that looks that way. So a move is kept as what it does on the
// floor, and how much of it is distance is worked out for the moment.

package stage

import "math"

// A rigged is what a move comes to where the camera turns or leaves its axis: how far
// it takes who is followed over the floor as the camera has it, in metres, and how far
// it turns the camera, in degrees.
type rigged struct {
	x, y, z   float64
	pan, tilt float64
}

// felt reports whether the move has corners of its own. A turn that stays with
// somebody has none: it goes as they go.
func (r *rigged) felt() bool { return r != nil && *r != rigged{} }

// rigged returns what a move comes to for one who hangs on some subjects; nil where it
// changes nothing for them.
func (st *Stage) rigged(m *Move, hangs map[*Subject]bool) *rigged {
	switch {
	case m.Kind == "zoom": // changes what is sharp
		return &rigged{}
	case m.Kind == "moves" && hangs[m.Who]:
		return &rigged{
			x: m.Who.Across.At(m.End) - m.Who.Across.At(m.Start), y: m.Who.Along.At(m.End) - m.Who.Along.At(m.Start),
			z: m.Who.Height(m.End) - m.Who.Height(m.Start),
		}
	case m.Kind == "moves" && st.watched(m):
		return &rigged{} // the camera turns with them
	case m.Kind == "moves" || m.Keeps || m.turnsNothing():
		return nil
	case m.Kind == "pan":
		return &rigged{pan: m.To - m.From}
	case m.Kind == "tilt":
		return &rigged{tilt: m.To - m.From}
	}
	x, y, z := m.goes()
	return &rigged{x: -x, y: -y, z: -z}
}

// turnsNothing reports whether a move is a turn to somebody who is in the middle of the
// picture by then.
func (m *Move) turnsNothing() bool {
	return (m.Kind == "pan" || m.Kind == "tilt") && math.Abs(m.To-m.From) < settled
}

// watched reports whether a turn stays with somebody whom a move takes along.
func (st *Stage) watched(m *Move) bool {
	for _, k := range st.MovesIn(m.Start, m.End) {
		if k.Keeps && st.HangsOn(k.Aim, m.Who) {
			return true
		}
	}
	return false
}

// by returns by how many metres a move changes the distance at t, all of it being as
// at t.
func (w *Way) by(s *shift, t float64) (d float64) {
	r := s.rigged
	if r == nil {
		return s.d
	}
	p := w.sight.Shot.Optics.Pose(t)
	sinP, cosP := math.Sincos(p.Pan * math.Pi / 180)
	sinT, cosT := math.Sincos(p.Tilt * math.Pi / 180)
	d = (r.x*sinP+r.y*cosP)*cosT + r.z*sinT
	of := w.goal.Members()
	for _, u := range of {
		v := w.sight.Shot.ViewOf(u.Subject, t)
		d += (v.Across*cosT*r.pan + v.Above*r.tilt) * math.Pi / 180 / float64(len(of))
	}
	return d
}
