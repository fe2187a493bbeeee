// How a camera that turns or leaves its axis sees everyone.

package shot

import "pullscore/interp/plan"

// fillSeen says of every subject how the camera sees it, where that is more than the
// distance along its axis and the side.
func (b *Built) fillSeen() {
	if b.Plan.Optics.Rig == nil {
		return
	}
	for _, u := range b.Plan.Subjects {
		v := b.Plan.ViewOf(u, 0)
		u.Seen = &plan.Seen{Tape: plan.Number(v.Tape()), Above: plan.Number(v.Above), OffAxis: plan.Number(v.OffAxis()), InFrame: []plan.Interval{}}
		for _, in := range b.Plan.Framed(u) {
			u.InFrame = append(u.InFrame, plan.Interval{plan.Number(in[0]), plan.Number(in[1])})
		}
	}
}
