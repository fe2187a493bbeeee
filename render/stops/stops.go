// Stops: the window of stops of one shot. Over one scale of stops stand the
// chance that each rack lands and the blur that shows it; the stops that hold
// are shaded, the best one is named, and what the light needs stands below.

package stops

import (
	"math"
	"strings"

	"pullscore/interp/plan"
	"pullscore/interp/stops"
	"pullscore/render/draw"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

// Stops draws the answer for a shot, which must have its curve. It is always
// one page.
func Stops(shot *plan.Shot, a *stops.Answer, opt sheet.Options) []*draw.Page {
	st := newStopsPage(shot, a, opt.Size())
	title := shot.ID
	if shot.Title != "" {
		title += " " + shot.Title
	}
	p := &draw.Page{
		Title: draw.Clean(title + ": stops"), Desc: draw.Clean(strings.Join(a.Says(), " ")),
		W: st.paper.W, H: st.paper.H,
	}
	sheet.DrawHead(p.Root.Group("head"), shot, st.paper, sheet.Folio{Paper: "stops", Number: 1, Of: 1})
	st.drawWindows(p.Root.Group("windows"))
	st.drawScale(p.Root.Group("scale"))
	st.drawLanding(p.Root.Group("landing"))
	st.drawSeeing(p.Root.Group("seeing"))
	st.drawBest(p.Root.Group("best"))
	st.drawNeeds(p.Root.Group("needs"))
	st.drawAside(p.Root.Group("aside"))
	var notes []string
	if st.noLanding() == "" {
		notes = append(notes, sheet.ModelNote)
	}
	sheet.DrawLegend(&p.Root, st.paper, notes...)
	return []*draw.Page{p}
}

// A stopsPage is the drawing in the making.
type stopsPage struct {
	shot        *plan.Shot
	answer      *stops.Answer
	paper       sheet.Paper
	left, right float64 // of the plots
	landTop     float64
	seenTop     float64
	plotHeight  float64
	curves      []*rackCurve
	hidden      int // racks that are not drawn

	from, to float64 // f-numbers at the ends of the scale
}

// The room on the page, in millimetres.
const (
	stopsGutter = 24.0 // left of the plots, for their names and scales
	stopsAside  = 82.0 // right of them, for words
	stopsGap    = 8.0  // between plots and words
	overPlots   = 11.0 // for the names of stops above the plots
	midPlots    = 5.0
	underPlots  = 37.0 // for the scale and what the stop needs
)

func newStopsPage(shot *plan.Shot, a *stops.Answer, paper sheet.Paper) *stopsPage {
	st := &stopsPage{
		shot: shot, answer: a, paper: paper, left: sheet.Margin + stopsGutter, right: paper.W - sheet.Margin - stopsAside - stopsGap,
		from: float64(a.Tried[0].Number), to: float64(a.Tried[len(a.Tried)-1].Number),
	}
	if st.to < st.from*1.12 { // a lens of one stop
		st.to = st.from * 1.12
	}
	top := sheet.Edge + sheet.HeadHeight + overPlots
	st.plotHeight = (paper.H - sheet.FootRule - underPlots - top - midPlots) / 2
	st.landTop, st.seenTop = top, top+st.plotHeight+midPlots
	st.curves, st.hidden = curvesOf(a)
	return st
}

// x returns where an f-number stands: the scale is even in stops.
func (st *stopsPage) x(number float64) float64 {
	u := math.Log(number/st.from) / math.Log(st.to/st.from)
	return st.left + min(max(u, 0), 1)*(st.right-st.left)
}

func (st *stopsPage) bottom() float64 { return st.seenTop + st.plotHeight }

// drawWindows shades what holds through both plots, and draws its ends.
func (st *stopsPage) drawWindows(g *draw.Group) {
	for _, w := range st.windows() {
		l, r := st.x(float64(w.From)), st.x(float64(w.To))
		for _, top := range []float64{st.landTop, st.seenTop} {
			g.Add(draw.Rect{Box: draw.Box{X: l, Y: top, W: max(r-l, 0.4), H: st.plotHeight}, Fill: draw.Slab})
		}
	}
	limits := g.Group(signs.Limit)
	for _, x := range st.edges() {
		limits.Line(x, st.landTop-1.5, x, st.bottom(), draw.Solid(draw.Black, draw.RulerWidth))
	}
}

// windows returns all stretches of stops that hold, the best first.
func (st *stopsPage) windows() []stops.Window {
	list := st.answer.Others
	if w := st.answer.Window; w != nil {
		list = append([]stops.Window{*w}, list...)
	}
	return list
}

// edges returns where the ends of the windows are.
func (st *stopsPage) edges() []float64 {
	var list []float64
	for _, w := range st.windows() {
		list = append(list, st.x(float64(w.From)), st.x(float64(w.To)))
	}
	return list
}
