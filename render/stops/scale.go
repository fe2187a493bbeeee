// The scale of stops under the plots, and the words over them.

package stops

import (
	"strings"

	"pullscore/interp/moments"
	"pullscore/interp/stops"
	"pullscore/render/draw"
	"pullscore/render/sheet"
)

// drawScale draws the scale of stops: whole stops heavy and named, thirds
// between.
func (st *stopsPage) drawScale(g *draw.Group) {
	y := st.bottom()
	for _, top := range []float64{st.landTop, st.seenTop} {
		g.Add(draw.Rect{Box: draw.Box{X: st.left, Y: top, W: st.right - st.left, H: st.plotHeight}, Stroke: draw.Solid(draw.Grey, draw.FineWidth)})
	}
	var named []draw.Box
	for i := range st.answer.Tried {
		v := &st.answer.Tried[i]
		x, whole := st.x(float64(v.Number)), st.wholeStop(v)
		g.Line(x, y, x, y+1.2, draw.Solid(draw.Black, draw.FineWidth))
		font, ink := sheet.FontSmall, draw.Grey
		if whole {
			font, ink = sheet.FontNumber, draw.Black
			g.Line(x, y, x, y+2, draw.Solid(draw.Black, draw.RulerWidth))
			for _, top := range []float64{st.landTop, st.seenTop} {
				g.Line(x, top, x, top+st.plotHeight, draw.Solid(draw.Guide, draw.GuideWidth))
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
	b := t.Room()
	lo, hi := sheet.Margin, st.right+stopsGap-0.5
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
		text := draw.NewText((st.left+st.right)/2, st.landTop-2.4, "no stop holds", sheet.FontStrong, draw.Warning).Aligned(draw.Middle)
		g.Add(text)
		return
	}
	x := st.x(float64(w.AtBest.Number))
	for _, top := range []float64{st.landTop, st.seenTop} {
		g.Line(x, top, x, top+st.plotHeight, draw.Solid(draw.Black, draw.StopWidth))
	}
	best := "best " + w.Best + st.answer.InBrackets(w.BestF)
	if w.AtBest.Unsure {
		best += ", " + moments.RingNotKnown
	}
	if w.AtBest.Exposure != nil {
		best += " · " + w.AtBest.Exposure.Says()
	}
	g.Line(x, st.landTop-6, x, st.landTop, draw.Solid(draw.Black, draw.StopWidth))
	g.Add(st.held(draw.NewText(x, st.landTop-7, best, sheet.FontHeading, draw.Black).Aligned(draw.Middle)))
	from, to := st.answer.Ends(w)
	g.Add(st.held(draw.NewText(st.x(float64(w.From))-0.8, st.landTop-1.9, from, sheet.FontSmall, draw.Black).Aligned(draw.End)))
	g.Add(st.held(draw.NewText(st.x(float64(w.To))+0.8, st.landTop-1.9, to, sheet.FontSmall, draw.Black)))
}
