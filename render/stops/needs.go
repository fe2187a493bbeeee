// What stands under and beside the plots of the stops drawing: depth and light
// against the stop, which rack is which, and the answer in words.

package stops

import (
	"slices"
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
		if x-width/2 < right+1.6 {
			continue
		}
		right = x + width/2
		for j, l := range lines {
			g.Add(draw.NewText(x, y+5.2+3*float64(j), l, sheet.FontSmall, draw.Black).Aligned(draw.Middle))
		}
	}
}

// bar draws one bar: full where the stop is good for it, the line alone where it
// is not.
func (st *stopsPage) bar(g *draw.Group, y float64, name string, of stops.Kind) {
	g.Add(draw.NewText(sheet.Margin, y+sheet.FontSmall.Middle(), name, sheet.FontSmall, draw.Grey))
	g.Line(st.left, y, st.right, y, draw.Solid(draw.Soft, draw.DashWidth))
	for _, span := range st.answer.Spans[of] {
		l, r := st.x(span.From), st.x(span.To)
		g.Add(draw.Rect{Box: draw.Box{X: l, Y: y - 0.8, W: max(r-l, 0.6), H: 1.6}, Fill: draw.Black})
	}
}

// drawAside tells which curve is which rack, and the answer in words.
func (st *stopsPage) drawAside(g *draw.Group) {
	x, y := st.right+stopsGap, sheet.Edge+sheet.HeadHeight+4
	end := st.paper.W - sheet.Margin
	for _, r := range st.rows() {
		b := newBadge(r.numbers)
		b.draw(g, x, func(float64) float64 { return y - sheet.FontBody.Middle() })
		text := x + b.width + 1.6
		g.Add(draw.NewText(text, y, r.text, sheet.FontBody, draw.Black).Shortened(end - text))
		y += 4.7
	}
	if st.hidden > 0 {
		g.Add(draw.NewText(x, y, units.Count(st.hidden, "more rack")+", which limit less", sheet.FontNote, draw.Grey).Shortened(end - x))
		y += 4.4
	}
	told := []string{"Lands: the chance that a rack lands sharp.", "Shows: the blur of what it leaves, in arcmin at the viewer."}
	if len(st.windows()) > 0 {
		told = append(told, "Grey: the stops that hold.")
	}
	for _, line := range told {
		if len(st.curves) > 0 {
			g.Add(draw.NewText(x, y, line, sheet.FontNote, draw.Grey))
			y += 3.7
		}
	}
	y += 3
	bottom := st.paper.H - sheet.FootRule
	words := st.answer.Says()
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

// A row names racks beside the plots.
type row struct {
	numbers []int
	text    string
}

// rows returns the racks of the curves: those of one curve that go from the same to the
// same in one row.
func (st *stopsPage) rows() []row {
	var list []row
	for _, c := range st.curves {
		first := len(list)
		for _, r := range c.racks {
			text := rackSays(r)
			if i := slices.IndexFunc(list[first:], func(o row) bool { return o.text == text }); i >= 0 {
				list[first+i].numbers = append(list[first+i].numbers, r.Pull)
			} else {
				list = append(list, row{[]int{r.Pull}, text})
			}
		}
	}
	return list
}

// rackSays says from where to where a rack goes.
func rackSays(r stops.Rack) string {
	text := "to " + r.Target
	if r.From != "" {
		text = r.From + " to " + r.Target
	}
	return strings.ReplaceAll(text, `"`, "")
}
