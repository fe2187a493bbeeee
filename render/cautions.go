// The cautions of all papers: work that can hurt someone is planned here, and
// decided on the set. Papers are handed out one by one, so each that shows such
// work has the caution itself.

package render

import (
	"slices"

	"pullscore/interp/plan"
	"pullscore/render/draw"
)

// The usual cautions; common practice, no source.
const (
	movingCaution    = "Moving camera: clear the path, one person watches the operator's back."
	backwardsCaution = "Walking backwards: that person does nothing else; walk the way once without the camera."
	walkingCaution   = "People move here: clear and light their ways."
	laserCaution     = "Where a laser meter takes the distances: never towards eyes; its class and local rules apply."
	chargeCaution    = "This is a plan, not permission: the people in charge and local rules decide."
)

// motionCautions returns the cautions for whoever and whatever is on the move
// in the shots; none where all stands still.
func motionCautions(shots ...*plan.Shot) []string {
	var list []string
	switch {
	case slices.ContainsFunc(shots, cameraMoves):
		list = append(list, movingCaution)
	case slices.ContainsFunc(shots, movesAtAll):
		list = append(list, walkingCaution)
	}
	if slices.ContainsFunc(shots, mayWalkBackwards) {
		list = append(list, backwardsCaution)
	}
	return list
}

// cautions returns all cautions that apply to the shots.
func cautions(shots ...*plan.Shot) []string {
	return append(motionCautions(shots...), laserCaution, chargeCaution)
}

// drawCaution draws on a score the cautions that apply.
func (sh *leaf) drawCaution(g *draw.Group) {
	if list := motionCautions(sh.shot); len(list) > 0 {
		drawSentences(g, sh.paper.H-edge+3.4, append(list, chargeCaution))
	}
}

// drawCautions draws on an overhead the cautions that apply: distances are
// measured by it.
func (o *overhead) drawCautions(g *draw.Group) {
	base := o.paper.H - edge + 1.2
	if list := motionCautions(o.shot); len(list) > 0 {
		drawSentences(g, base, list)
		base += 3.2
	}
	drawSentences(g, base, []string{laserCaution, chargeCaution})
}

// drawSentences writes sentences on one line.
func drawSentences(g *draw.Group, base float64, sentences []string) {
	x := margin
	for _, sentence := range sentences {
		text := draw.NewText(x, base, sentence, fontSmall, draw.Black)
		g.Add(text)
		x = text.Box().Right() + 1.2
	}
}

// cameraMoves tells whether the camera is on the move, or may be: on a
// shoulder or in the hand.
func cameraMoves(s *plan.Shot) bool {
	return carried(s) || slices.ContainsFunc(s.Blocking, func(b plan.Blocking) bool { return b.Kind == "dolly" })
}

// carried tells whether somebody carries the camera.
func carried(s *plan.Shot) bool { return s.Support == "shoulder" || s.Support == "hand" }

// movesAtAll tells whether anybody or the camera is on the move.
func movesAtAll(s *plan.Shot) bool {
	return slices.ContainsFunc(s.Blocking, func(b plan.Blocking) bool { return b.Kind != "zoom" })
}

// mayWalkBackwards tells whether a camera that is carried has somebody who
// comes towards it, or goes back itself.
func mayWalkBackwards(s *plan.Shot) bool {
	return slices.ContainsFunc(s.Blocking, func(b plan.Blocking) bool {
		switch b.Kind {
		case "moves":
			return carried(s) && b.To < b.From
		case "dolly":
			return b.To < b.From
		}
		return false
	})
}
