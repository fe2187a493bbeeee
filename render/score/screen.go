// The score as a screen shows it.

package score

import (
	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/score/bands"
	"pullscore/render/score/times"
	"pullscore/render/sheet"
)

// OnScreen draws the shot for a screen: the same bands and signs as Score, in systems as
// wide as the screen, at whatever scale of time. perSecond is that scale in millimetres.
func OnScreen(shot *plan.Shot, screen times.Screen) (pages []*draw.Page, perSecond float64) {
	sc := bands.NewScreenChart(shot, screen)
	compose(sc)
	return sc.Draw("score", describe(sc), drawAround, drawLegendOnScreen), sc.PerSecond
}

// drawLegendOnScreen draws the legend below all else, and the cautions below that, and has
// the sheet end there.
func drawLegendOnScreen(sh *bands.Sheet, root *draw.Group) {
	base := sheet.DrawLegend(root, sh.Paper, notesOf(sh)...)
	below := sh.Paper
	below.H = base + sheet.FootAfterLegend
	sh.Paper.H = sheet.DrawFoot(root.Group("caution"), below, sh.Shot) + sheet.FontSmall.Middle() + 3
}
