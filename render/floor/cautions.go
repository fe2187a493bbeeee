package floor

import (
	"pullscore/render/draw"
	"pullscore/render/sheet"
)

// drawCautions draws on an overhead the cautions that apply: distances are
// measured by it.
func (o *overhead) drawCautions(g *draw.Group) {
	base := o.paper.H - sheet.Edge + 1.2
	if list := sheet.MotionCautions(o.shot); len(list) > 0 {
		sheet.DrawSentences(g, base, list)
		base += 3.2
	}
	sheet.DrawSentences(g, base, []string{sheet.LaserCaution, sheet.ChargeCaution})
}
