package score

import (
	"pullscore/render/draw"
	"pullscore/render/sheet"
)

// drawCaution draws on a score the cautions that apply.
func (sh *leaf) drawCaution(g *draw.Group) {
	if list := sheet.MotionCautions(sh.shot); len(list) > 0 {
		sheet.DrawSentences(g, sh.paper.H-sheet.Edge+3.4, append(list, sheet.ChargeCaution))
	}
}
