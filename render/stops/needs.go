// What stands under and beside the plots of the stops drawing: depth and light
// against the stop, which rack is which, and the answer in words.

package stops

import (
	"fmt"
	"strings"

	"pullscore/interp/stops"
	"pullscore/interp/units"
	"pullscore/render/draw"
	"pullscore/render/sheet"
)

// drawNeeds draws a bar where rests and follows stay sharp, one where the subjects are
// sharp in all their depth, one where the light can be had, and under it with what.
func (st *stopsPage) drawNeeds(g *draw.Group) {
	const step = 4.2
	y := st.bottom() + 15
	if len(st.answer.Rests)+len(st.answer.Follows) > 0 {
		st.bar(g, y, "stays", stops.Rests)
		y += step
	}
	st.bar(g, y, "depth", stops.Depth)
	if !st.answer.Light {
		return
	}
	y += step
	st.bar(g, y, "light", stops.Light)
	right := sheet.Margin
	for i := range st.answer.Tried {
		v := &st.answer.Tried[i]
		if !st.wholeStop(v) || !v.Exposure.Enough {
			continue
		}
		lines := strings.Split(v.Exposure.Says(), ", ")
		width := 0.0
		for _, l := range lines {
			width = max(width, sheet.FontSmall.Room(l))
		}
		x := min(max(st.x(float64(v.Number)), st.left+width/2), st.right-width/2)
		if x-width/2 < right+1.2 {
			continue
		}
		right = x + width/2
		for j, l := range lines {
			g.Add(draw.NewText(x, y+5.2+3*float64(j), l, sheet.FontSmall, draw.Black).Aligned(draw.Middle))
		}
	}
}

// bar draws one bar: full where the stop is good for it, a thin line where it
// is not.
func (st *stopsPage) bar(g *draw.Group, y float64, name string, of stops.Kind) {
	g.Add(draw.NewText(sheet.Margin, y+sheet.FontSmall.Middle(), name, sheet.FontSmall, draw.Grey))
	g.Line(st.left, y, st.right, y, sheet.Dashed(draw.Mid, sheet.Hair, 0.4, 0.8))
	for _, span := range st.answer.Spans[of] {
		l, r := st.x(span.From), st.x(span.To)
		g.Add(draw.Rect{Box: draw.Box{X: l, Y: y - 0.8, W: max(r-l, 0.6), H: 1.6}, Fill: draw.Black})
	}
}

// drawAside tells which curve is which rack, and the answer in words.
func (st *stopsPage) drawAside(g *draw.Group) {
	x, y := st.right+stopsGap, sheet.Edge+sheet.HeadHeight+4
	end := st.paper.W - sheet.Margin
	for _, c := range st.curves {
		g.Line(x, y-1, x+9, y-1, c.stroke)
		g.Add(draw.NewText(x+11, y, c.says(), sheet.FontBody, draw.Black).Shortened(end - x - 11))
		y += 4.4
	}
	if st.hidden > 0 {
		g.Add(draw.NewText(x+11, y, units.Count(st.hidden, "more rack")+", which limit less", sheet.FontNote, draw.Grey).Shortened(end - x - 11))
		y += 4.4
	}
	for _, line := range []string{"Lands: the chance that a rack lands sharp.", "Shows: the blur of what it leaves, arc minutes at the viewer."} {
		if len(st.curves) > 0 {
			g.Add(draw.NewText(x, y, line, sheet.FontNote, draw.Grey))
			y += 3.7
		}
	}
	y += 3
	bottom := st.paper.H - sheet.Edge
	words := st.answer.Says()
	if st.noLanding() == "" {
		words = append(words, "Chances of landing are computed by a model of our own, put together from published measurements.")
	}
	for i, s := range words {
		font := sheet.FontBody
		if i == 0 {
			font = sheet.FontStrong
		}
		for _, line := range font.Wrap(s, end-x) {
			if y > bottom-4 {
				g.Add(draw.NewText(x, y, "More of this stands in the list.", sheet.FontNote, draw.Grey))
				return
			}
			g.Add(draw.NewText(x, y, line, font, draw.Black))
			y += 3.7
		}
		y += 1.5
	}
}

// says names the racks of a curve.
func (c *rackCurve) says() string {
	var list []string
	for _, r := range c.racks {
		text := fmt.Sprintf("%d to %s", r.Pull, r.Target)
		if r.From != "" {
			text = fmt.Sprintf("%d %s to %s", r.Pull, r.From, r.Target)
		}
		list = append(list, text)
	}
	return strings.ReplaceAll(strings.Join(list, ", "), `"`, "")
}
