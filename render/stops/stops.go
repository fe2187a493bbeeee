// Stops: the window of stops of one shot. Over one scale of stops stand the
// chance that each rack lands and the blur that shows it; the stops that hold
// are shaded, the best one is named, and what the light needs stands below.

package stops

import (
	"math"
	"strings"

	"pullscore/interp/moments"
	"pullscore/interp/plan"
	"pullscore/interp/stops"
	"pullscore/render/draw"
	"pullscore/render/sheet"
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
	sheet.DrawPageHead(p.Root.Group("head"), shot, st.paper, "window of stops")
	st.drawWindows(p.Root.Group("windows"))
	st.drawScale(p.Root.Group("scale"))
	st.drawLanding(p.Root.Group("landing"))
	st.drawSeeing(p.Root.Group("seeing"))
	st.drawBest(p.Root.Group("best"))
	st.drawNeeds(p.Root.Group("needs"))
	st.drawAside(p.Root.Group("aside"))
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
	stopsGutter = 17.0 // left of the plots, for their scales
	stopsAside  = 82.0 // right of them, for words
	stopsGap    = 7.0  // between plots and words
	overPlots   = 11.0 // for the names of stops above the plots
	midPlots    = 8.0
	underPlots  = 35.0 // for the scale and what the stop needs
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
	st.plotHeight = (paper.H - sheet.Edge - underPlots - top - midPlots) / 2
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

// drawWindows shades what holds through both plots: a tint, and a hatch that a
// black-and-white printer keeps.
func (st *stopsPage) drawWindows(g *draw.Group) {
	list := st.answer.Others
	if w := st.answer.Window; w != nil {
		list = append([]stops.Window{*w}, list...)
	}
	for _, w := range list {
		l, r := st.x(float64(w.From)), st.x(float64(w.To))
		for _, top := range []float64{st.landTop, st.seenTop} {
			box := draw.Box{X: l, Y: top, W: max(r-l, 0.4), H: st.plotHeight}
			g.Add(draw.Rect{Box: box, Fill: draw.BluePale})
			corners := []draw.Point{{X: l, Y: top}, {X: box.Right(), Y: top}, {X: box.Right(), Y: box.Bottom()}, {X: l, Y: box.Bottom()}}
			g.Add(draw.Path{Runs: draw.Hatch(corners, 2.4, 0.5), Stroke: sheet.Solid(draw.Pale, sheet.Hair)})
		}
		for _, x := range []float64{l, r} {
			g.Line(x, st.landTop-1.5, x, st.bottom(), sheet.Dashed(draw.Black, sheet.Thin, 1.2, 0.8))
		}
	}
}

// drawScale draws the scale of stops: whole stops heavy and named, thirds
// between.
func (st *stopsPage) drawScale(g *draw.Group) {
	y := st.bottom()
	for _, top := range []float64{st.landTop, st.seenTop} {
		g.Add(draw.Rect{Box: draw.Box{X: st.left, Y: top, W: st.right - st.left, H: st.plotHeight}, Stroke: sheet.Solid(draw.Mid, sheet.Thin)})
	}
	var named []draw.Box
	for i := range st.answer.Tried {
		v := &st.answer.Tried[i]
		x, whole := st.x(float64(v.Number)), st.wholeStop(v)
		g.Line(x, y, x, y+1.2, sheet.Solid(draw.Mid, sheet.Hair))
		font, ink := sheet.FontSmall, draw.Grey
		if whole {
			font, ink = sheet.FontNumber, draw.Black
			g.Line(x, y, x, y+2, sheet.Solid(draw.Black, sheet.Thin))
			for _, top := range []float64{st.landTop, st.seenTop} {
				g.Line(x, top, x, top+st.plotHeight, sheet.Dashed(draw.Mid, sheet.Hair, 0.3, 1))
			}
		}
		text := draw.NewText(x, y+5, v.Stop, font, ink).Aligned(draw.Middle)
		if whole && free(named, text.Room().Grow(0.8)) {
			named = append(named, text.Room())
			g.Add(text)
		}
	}
	for i := range st.answer.Tried { // thirds where there is room
		v := &st.answer.Tried[i]
		text := draw.NewText(st.x(float64(v.Number)), y+5, strings.TrimLeft(v.Stop, "f/T"), sheet.FontSmall, draw.Grey).Aligned(draw.Middle)
		if !st.wholeStop(v) && free(named, text.Room().Grow(0.8)) {
			named = append(named, text.Room())
			g.Add(text)
		}
	}
	x := st.x(float64(st.answer.SetF))
	g.Add(draw.Path{Runs: [][]draw.Point{{{X: x, Y: y + 6.4}, {X: x - 1.1, Y: y + 8.3}, {X: x + 1.1, Y: y + 8.3}}}, Closed: true, Fill: draw.Black})
	label := draw.NewText(x, y+11.2, "set to "+st.answer.Set+st.answer.InBrackets(st.answer.SetF), sheet.FontSmall, draw.Black).Aligned(draw.Middle)
	g.Add(st.held(label))
}

// wholeStop tells whether a stop is a whole one of the usual scale.
func (st *stopsPage) wholeStop(v *stops.Verdict) bool {
	mark := st.shot.Spoken().Mark(float64(v.Number))
	for _, n := range []float64{0.7, 1, 1.4, 2, 2.8, 4, 5.6, 8, 11, 16, 22, 32, 45, 64, 90, 128} {
		if mark == n {
			return true
		}
	}
	return false
}

// free tells whether a box is clear of others.
func free(taken []draw.Box, b draw.Box) bool {
	for _, t := range taken {
		if t.Overlaps(b) {
			return false
		}
	}
	return true
}

// held moves a text sideways so that it stays over or under the plots.
func (st *stopsPage) held(t draw.Text) draw.Text {
	b := t.Box()
	lo, hi := sheet.Margin, st.right+stopsGap-2
	if b.X < lo {
		t.At.X += lo - b.X
	}
	if b.Right() > hi {
		t.At.X -= b.Right() - hi
	}
	return t
}

// drawBest names the ends of the window and the stop in its middle.
func (st *stopsPage) drawBest(g *draw.Group) {
	w := st.answer.Window
	if w == nil {
		text := draw.NewText((st.left+st.right)/2, st.landTop-2.4, "no stop holds", sheet.FontStrong, draw.Rust).Aligned(draw.Middle)
		g.Add(text)
		return
	}
	x := st.x(float64(w.AtBest.Number))
	for _, top := range []float64{st.landTop, st.seenTop} {
		g.Line(x, top, x, top+st.plotHeight, sheet.Solid(draw.Black, sheet.Medium))
	}
	best := "best " + w.Best + st.answer.InBrackets(w.BestF)
	if w.AtBest.Unsure {
		best += ", " + moments.RingNotKnown
	}
	if w.AtBest.Exposure != nil {
		best += " · " + w.AtBest.Exposure.Says()
	}
	g.Line(x, st.landTop-6, x, st.landTop, sheet.Solid(draw.Black, sheet.Medium))
	g.Add(st.held(draw.NewText(x, st.landTop-7, best, sheet.FontHeading, draw.Black).Aligned(draw.Middle)))
	from, to := st.answer.Ends(w)
	g.Add(st.held(draw.NewText(st.x(float64(w.From))-0.8, st.landTop-1.9, from, sheet.FontSmall, draw.Black).Aligned(draw.End)))
	g.Add(st.held(draw.NewText(st.x(float64(w.To))+0.8, st.landTop-1.9, to, sheet.FontSmall, draw.Black)))
}
