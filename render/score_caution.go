// The caution at the foot of a score where the camera moves: work that can
// hurt someone is planned here, and decided on the set.

package render

import (
	"slices"

	"pullscore/interp/plan"
	"pullscore/render/draw"
)

// movingCaution is the usual caution for a moving camera; it stands on every
// page, since pages are handed out one by one.
const movingCaution = "Moving camera: clear the path, one person watches the operator's back. " +
	"This is a plan, no permission: the people in charge and local rules decide."

// drawCaution draws the caution where it applies.
func (sh *sheet) drawCaution(g *draw.Group) {
	if cameraMoves(sh.shot) {
		g.Add(draw.NewText(margin, sh.paper.H-edge+3.4, movingCaution, fontSmall, draw.Black))
	}
}

// cameraMoves tells whether the camera is on the move, or may be: on a
// shoulder or in the hand.
func cameraMoves(s *plan.Shot) bool {
	return s.Support == "shoulder" || s.Support == "hand" ||
		slices.ContainsFunc(s.Blocking, func(b plan.Blocking) bool { return b.Kind == "dolly" })
}
