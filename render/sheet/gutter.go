package sheet

import "pullscore/render/draw"

// Write sets a text at a free place near p, with a leader line where that is
// not right beside it. A thin line that would strike it ends and goes on behind
// it.
func (c *Clearing) Write(g *draw.Group, text draw.Text, p draw.Point) bool {
	box, ok := c.Near(p, text.Width, text.Font.Height())
	if !ok {
		return false
	}
	text.At = draw.Point{X: box.X, Y: box.Y + text.Box().H - (text.Box().Bottom() - text.At.Y)}
	if !c.Free(box, c.thin) {
		g.Add(Halo(box))
	}
	g.Add(text)
	LeadTo(g, p, box)
	return true
}

// BlockAt keeps texts off an upright line through the plot.
func (c *Clearing) BlockAt(x float64) {
	c.Taken = append(c.Taken, draw.Box{X: x - 0.2, Y: c.Bounds.Y, W: 0.4, H: c.Bounds.H})
}
