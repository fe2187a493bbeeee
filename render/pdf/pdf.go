package pdf

import (
	"fmt"
	"io"

	"pullscore/render/draw"
	"pullscore/render/fonts"
)

// Info is what a file says of itself.
type Info struct {
	Title, Desc string
	Language    string        // of the text, by BCP 47; may be empty
	Fonts       []*fonts.File // for what the embedded fonts lack
}

// A File is a PDF file in the making, page after page: a page that has been
// added is not needed any more.
type File struct {
	canvas *canvas
	marks  []mark // for the next page
	level  int    // of the last mark
	pages  int
	err    error
}

// A mark is a line of the outline.
type mark struct {
	title string
	level int
}

// New returns a file without pages.
func New(info Info) *File { return &File{canvas: newCanvas(info), level: -1} }

// Mark puts a title into the outline, at a level from 0 that is at most one
// below that of the mark before; it leads to the page that is added next.
func (f *File) Mark(title string, level int) {
	if level < 0 || level > f.level+1 {
		f.fail("the outline's entry %q is at level %d after %d", title, level, f.level)
		return
	}
	f.level = level
	f.marks = append(f.marks, mark{title, level})
}

// Add draws a page. Its links lead to whatever pages of the file have their IDs; those
// that lead to none are left out.
func (f *File) Add(p *draw.Page) {
	f.canvas.start(p)
	for _, m := range f.marks {
		f.canvas.bookmark(m)
	}
	f.canvas.items(p.Root.Items)
	f.marks, f.pages = nil, f.pages+1
}

// Over draws a page over one that was added before, by its number from 1: what could not
// be known then, such as on which page something begins. It fails if their sizes differ,
// or if the last page that was added has another size.
func (f *File) Over(number int, p *draw.Page) {
	if number < 1 || number > f.pages {
		f.fail("page %d of %d cannot be drawn over", number, f.pages)
		return
	}
	if !f.canvas.turnBack(number, p) {
		f.fail("page %d has another size than what is drawn over it", number)
		return
	}
	f.canvas.items(p.Root.Items)
	f.canvas.goOn(f.pages)
}

// Name changes what the file says of itself.
func (f *File) Name(info Info) { f.canvas.name(info) }

// Write writes the file, once, after its last page. The same pages give the
// same bytes. Its errors are those of w, an outline that is out of order or
// leads nowhere, and a file without pages.
func (f *File) Write(w io.Writer) error {
	switch {
	case f.pages == 0:
		f.fail("it has no pages")
	case len(f.marks) > 0:
		f.fail("the outline's entry %q leads to no page", f.marks[0].title)
	}
	if f.err != nil {
		return f.err
	}
	return f.canvas.finish(w)
}

// fail keeps the first error.
func (f *File) fail(format string, args ...any) {
	if f.err == nil {
		f.err = fmt.Errorf("writing PDF: "+format, args...)
	}
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

// group writes a group. Its title becomes the description that ISO 32000-1,
// 14.9.3, gives to a span of marked content.
func (c *canvas) group(g *draw.Group) {
	if g.Title != "" {
		c.span("Alt", g.Title)
		defer c.endSpan()
	}
	if g.ID != "" {
		if area, ok := g.Bounds(); ok {
			c.target(g.ID, max(area.Y-targetAir, 0))
		}
	}
	c.lead(g)
	c.items(g.Items)
}

// targetAir is how much of the page a viewer shows above what a link leads to,
// in millimetres.
const targetAir = 5

func (c *canvas) line(l draw.Line) {
	if c.stroke(l.Stroke) {
		c.pdf.Line(number(l.From.X), number(l.From.Y), number(l.To.X), number(l.To.Y))
	}
}

func (c *canvas) rect(r draw.Rect) {
	if style := c.paint(r.Fill, r.Stroke); style != "" {
		c.pdf.Rect(number(r.Box.X), number(r.Box.Y), number(r.Box.W), number(r.Box.H), style)
	}
}

func (c *canvas) disc(d draw.Disc) {
	if style := c.paint(d.Fill, d.Stroke); style != "" {
		c.circle(d.Centre, d.Radius)
		c.pdf.DrawPath(style)
	}
}

func (c *canvas) path(p draw.Path) {
	style := c.paint(p.Fill, p.Stroke)
	if style == "" {
		return
	}
	drawn := false
	for _, run := range p.Runs {
		for i, at := range run {
			if i == 0 {
				c.pdf.MoveTo(number(at.X), number(at.Y))
			} else {
				c.pdf.LineTo(number(at.X), number(at.Y))
			}
		}
		if p.Closed && len(run) > 0 {
			c.pdf.ClosePath()
		}
		drawn = drawn || len(run) > 0
	}
	if drawn {
		c.pdf.DrawPath(style)
	}
}

// text writes a text. What was shortened, and what the fonts lack, is found in
// full by a search: ISO 32000-1, 14.9.4, lets a span name the text that it
// stands for.
func (c *canvas) text(t draw.Text) {
	switch {
	case t.Full != "":
		c.span("ActualText", t.Full)
		defer c.endSpan()
	case !draw.Covers(t.String):
		c.span("ActualText", t.String)
		defer c.endSpan()
	}
	for _, it := range t.Set(c.faces...) {
		switch it := it.(type) {
		case draw.Rect:
			c.rect(it)
		case draw.Path:
			c.path(it)
		case draw.Text:
			c.glyphs(it)
		}
	}
}
