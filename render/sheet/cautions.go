// The cautions of all papers: work that can hurt someone is planned here, and
// decided on the set. Papers are handed out one by one, so each that shows such
// work has the caution itself.

package sheet

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
	LaserCaution     = "Where a laser meter takes the distances: never towards eyes; its class and local rules apply."
	ChargeCaution    = "This is a plan, not permission: the people in charge and local rules decide."
)

// MotionCautions returns the cautions for whoever and whatever is on the move
// in the shots; none where all stands still.
func MotionCautions(shots ...*plan.Shot) []string {
	var list []string
	switch {
	case slices.ContainsFunc(shots, cameraMoves):
		list = append(list, movingCaution)
	case slices.ContainsFunc(shots, MovesAtAll):
		list = append(list, walkingCaution)
	}
	if slices.ContainsFunc(shots, mayWalkBackwards) {
		list = append(list, backwardsCaution)
	}
	return list
}

// Cautions returns all cautions that apply to the shots.
func Cautions(shots ...*plan.Shot) []string {
	return append(MotionCautions(shots...), LaserCaution, ChargeCaution)
}

// DrawSentences writes sentences on one line.
func DrawSentences(g *draw.Group, base float64, sentences []string) {
	x := Margin
	for _, sentence := range sentences {
		text := draw.NewText(x, base, sentence, FontSmall, draw.Black)
		g.Add(text)
		x = text.Box().Right() + 1.2
	}
}

// cameraMoves tells whether the camera is on the move, or may be: on a
// shoulder or in the hand.
func cameraMoves(s *plan.Shot) bool {
	return Carried(s) || slices.ContainsFunc(s.Blocking, func(b plan.Blocking) bool { return b.Kind == "dolly" })
}

// Carried tells whether somebody carries the camera.
func Carried(s *plan.Shot) bool { return s.Support == "shoulder" || s.Support == "hand" }

// MovesAtAll tells whether anybody or the camera is on the move.
func MovesAtAll(s *plan.Shot) bool {
	return slices.ContainsFunc(s.Blocking, func(b plan.Blocking) bool { return b.Kind != "zoom" })
}

// mayWalkBackwards tells whether a camera that is carried has somebody who
// comes towards it, or goes back itself.
func mayWalkBackwards(s *plan.Shot) bool {
	return slices.ContainsFunc(s.Blocking, func(b plan.Blocking) bool {
		switch b.Kind {
		case "moves":
			return Carried(s) && b.To < b.From
		case "dolly":
			return b.To < b.From
		}
		return false
	})
}
