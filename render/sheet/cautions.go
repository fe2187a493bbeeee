// The cautions of all papers. Papers plan work that can hurt someone; people on set
// decide about it. Crews hand out papers one by one, so each paper that shows such work
// carries the caution itself.

package sheet

import (
	"slices"

	"pullscore/interp/moments"
	"pullscore/interp/plan"
	"pullscore/render/draw"
)

// The usual cautions; common practice, no source.
const (
	movingCaution    = "Moving camera: clear the path, one person watches the operator's back."
	backwardsCaution = "Walking backwards: that person does nothing else; walk the way once without the camera."
	WalkingCaution   = "People move here: clear and light their ways."
	LaserCaution     = "Where a laser meter takes the distances: never towards eyes; its class and local rules apply."
	ChargeCaution    = "This is a plan, not permission: the people in charge and local rules decide."
)

// MotionCautions returns the cautions for people and cameras that move in the shots,
// and none if nothing moves.
func MotionCautions(shots ...*plan.Shot) []string {
	var list []string
	switch {
	case slices.ContainsFunc(shots, cameraMoves):
		list = append(list, movingCaution)
	case slices.ContainsFunc(shots, MovesAtAll):
		list = append(list, WalkingCaution)
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

const (
	sentenceGap   = 1.2 // between sentences, millimetres
	sentencePitch = 2.9 // from one line of them to the next, millimetres
)

// DrawSentences writes sentences one after the other, the first with its baseline at base
// millimetres. Those that have no room between the margins stand on lines below, each
// whole. It returns the baseline of the last line.
func DrawSentences(g *draw.Group, paper Paper, base float64, sentences []string) float64 {
	for _, text := range layText(paper, base, sentences) {
		g.Add(text)
		base = text.At.Y
	}
	return base
}

// layText returns sentences in their places.
func layText(paper Paper, base float64, sentences []string) []draw.Text {
	var pieces []string
	for _, sentence := range sentences { // one that is wider than the page has several
		pieces = append(pieces, FontSmall.Wrap(sentence, paper.W-2*Margin+1e-6)...)
	}
	x, list := Margin, make([]draw.Text, len(pieces))
	for i, sentence := range pieces {
		text := draw.NewText(x, base, sentence, FontSmall, draw.Black)
		if x > Margin && text.Room().Right() > paper.W-Margin {
			base += sentencePitch
			text.At = draw.Point{X: Margin, Y: base}
		}
		list[i], x = text, text.Room().Right()+sentenceGap
	}
	return list
}

// DrawFoot draws at the foot of a page of a shot the cautions that apply, and at its right
// end where the angles of the ring come from, as far as there is room beside them. It returns the baseline of the last line, in
// millimetres.
func DrawFoot(g *draw.Group, paper Paper, s *plan.Shot) float64 {
	base, left := paper.H-cautionBase, Margin
	if list := MotionCautions(s); len(list) > 0 {
		for _, text := range layText(paper, base, append(list, ChargeCaution)) {
			g.Add(text)
			base, left = text.At.Y, text.Room().Right()+4
		}
	}
	text, end := moments.Provenance(s), paper.W-Margin
	if text == "" || len(s.Pulls) == 0 || end-left < FontSmall.Room("Ring of") {
		return base
	}
	g.Add(draw.NewText(end, base, text, FontSmall, draw.Black).Aligned(draw.End).Shortened(end - left))
	return base
}

// cameraMoves reports whether the camera moves, or may move because somebody carries
// it.
func cameraMoves(s *plan.Shot) bool {
	return Carried(s) || slices.ContainsFunc(s.Blocking, func(b plan.Blocking) bool { return goes(b.Kind) })
}

// goes reports whether a move of this kind takes the camera to another place.
func goes(kind string) bool { return kind == "dolly" || kind == "track" || kind == "boom" }

// Carried reports whether somebody carries the camera, on a shoulder or in the hand.
func Carried(s *plan.Shot) bool { return s.Support == "shoulder" || s.Support == "hand" }

// MovesAtAll reports whether the camera or any subject moves.
func MovesAtAll(s *plan.Shot) bool {
	return slices.ContainsFunc(s.Blocking, func(b plan.Blocking) bool { return b.Kind == "moves" || goes(b.Kind) })
}

// mayWalkBackwards reports whether somebody carries the camera and either a person
// comes towards it or the camera moves back.
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
