package shot

import (
	"pullscore/interp/clock"
	"pullscore/interp/stage"
)

// shiftsIn returns the moves, of the one followed and of the camera, that fall
// into a follow.
func (b *Builder) shiftsIn(p *clock.Pull) []stage.Shift {
	var list []stage.Shift
	hangs := b.Stage.Ancestors(p.Aim.Subject)
	for _, m := range b.Stage.Moves {
		s := stage.Shift{Start: m.Start, End: m.End, Smooth: m.Smooth}
		_, carried := hangs[m.Who]
		switch {
		case m.End < p.StartS || m.Start > p.LandS:
			continue
		case m.Kind == "dolly":
			s.D = -m.By
		case m.Kind == "moves" && carried:
			s.D = m.Who.Along.At(m.End) - m.Who.Along.At(m.Start)
		default:
			continue
		}
		list = append(list, s)
	}
	return list
}
