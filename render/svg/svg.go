package svg

import (
	"encoding/xml"
	"io"
	"strconv"

	"pullscore/render/draw"
)

// Write writes the page as a file of its own. Links to other pages, which the
// file does not have, are left out. It returns the first error of w.
func Write(w io.Writer, p *draw.Page) error {
	ids := draw.IDs(p)
	leads := func(id string) bool { _, ok := ids[id]; return ok }
	return compose(w, p, (*canvas).style, leads)
}

// WriteBare writes the page without styles, as an element of a document that
// has those of Style, and whatever the links of the page lead to. It returns
// the first error of w.
func WriteBare(w io.Writer, p *draw.Page) error {
	return compose(w, p, func(*canvas) {}, func(string) bool { return true })
}

func compose(w io.Writer, p *draw.Page, style func(*canvas), leads func(id string) bool) error {
	c := newCanvas(w)
	c.leads = leads
	c.start(p)
	c.svg.Title(draw.Clean(p.Title))
	c.svg.Desc(draw.Clean(p.Desc))
	style(c)
	c.rect(draw.Rect{Box: draw.Box{W: p.W, H: p.H}, Fill: draw.Paper})
	c.items(p.Root.Items)
	c.svg.End()
	return c.flush()
}

func (c *canvas) items(items []draw.Item) {
	for _, it := range items {
		switch it := it.(type) {
		case draw.Line:
			c.line(it)
		case draw.Rect:
			c.rect(it)
		case draw.Disc:
			c.disc(it)
		case draw.Path:
			c.path(it)
		case draw.Text:
			c.text(it)
		case *draw.Group:
			c.group(it)
		}
	}
}

// linked reports whether the page has a link that is written.
func (c *canvas) linked(p *draw.Page) bool {
	for it := range p.Root.All() {
		if g, ok := it.(*draw.Group); ok && g.Link != "" && c.leads(g.Link) {
			return true
		}
	}
	return false
}

// group writes a group with its name and title; one that holds nothing is left
// out.
func (c *canvas) group(g *draw.Group) {
	if len(g.Items) == 0 {
		return
	}
	attrs := []string{attr("class", g.Name)}
	if g.ID != "" {
		attrs = append(attrs, attr("id", g.ID))
	}
	if g.Number > 0 {
		attrs = append(attrs, attr("data-number", strconv.Itoa(g.Number)))
	}
	c.svg.Group(attrs...)
	if g.Title != "" {
		c.svg.Title(draw.Clean(g.Title))
	}
	if g.Link != "" && c.leads(g.Link) {
		c.out.WriteString("<a " + attr("href", "#"+g.Link) + ">\n")
		c.items(g.Items)
		c.out.WriteString("</a>\n")
	} else {
		c.items(g.Items)
	}
	c.svg.Gend()
}

func (c *canvas) line(l draw.Line) {
	b := coordinate(c.begin("line"), "x1", l.From.X)
	b = coordinate(b, "y1", l.From.Y)
	b = coordinate(b, "x2", l.To.X)
	b = coordinate(b, "y2", l.To.Y)
	c.end(paint(b, draw.None, l.Stroke))
}

func (c *canvas) rect(r draw.Rect) {
	b := coordinate(c.begin("rect"), "x", r.Box.X)
	b = coordinate(b, "y", r.Box.Y)
	b = coordinate(b, "width", r.Box.W)
	b = coordinate(b, "height", r.Box.H)
	c.end(paint(b, r.Fill, r.Stroke))
}

func (c *canvas) disc(d draw.Disc) {
	b := coordinate(c.begin("circle"), "cx", d.Centre.X)
	b = coordinate(b, "cy", d.Centre.Y)
	b = coordinate(b, "r", d.Radius)
	c.end(paint(b, d.Fill, d.Stroke))
}

func (c *canvas) path(p draw.Path) {
	b := runs(append(c.begin("path"), ` d="`...), p.Runs, p.Closed)
	c.end(paint(append(b, '"'), p.Fill, p.Stroke))
}

// text writes a text. A shortened one shows the whole of it to the pointer.
func (c *canvas) text(t draw.Text) {
	if t.Full != "" {
		c.svg.Group(attr("class", "short"))
		c.svg.Title(draw.Clean(t.Full))
		defer c.svg.Gend()
	}
	b := coordinate(c.begin("text"), "x", t.At.X)
	b = coordinate(b, "y", t.At.Y)
	c.row = append(setting(b, t), " >"...)
	c.out.Write(c.row)
	xml.EscapeText(c.out, []byte(t.String)) // c.out keeps its error
	c.out.WriteString("</text>\n")
}
