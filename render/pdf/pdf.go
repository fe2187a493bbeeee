// Package pdf writes pages of a display list as one PDF file: vector drawings,
// text that can be selected and searched in embedded fonts, an outline. Paper
// is white, so the inks are always the light ones.
package pdf

import (
	"fmt"
	"io"

	"pullscore/render/draw"
)

// A Document is what goes into one file.
type Document struct {
	Title, Desc string
	Language    string // of the text, by BCP 47; may be empty
	Pages       []*draw.Page
	Outline     []Entry
}

// An Entry is a line of the outline.
type Entry struct {
	Title string
	Level int // 0 at the top, at most one more than that of the entry before
	Page  int // index of the page that it leads to
}

// Write writes the document. The same document gives the same bytes. Its
// errors are those of w, an outline that leads nowhere, and a document without
// pages.
func Write(w io.Writer, d Document) error {
	if err := d.check(); err != nil {
		return err
	}
	c := newCanvas(d)
	next := 0
	for i, p := range d.Pages {
		c.start(p)
		for ; next < len(d.Outline) && d.Outline[next].Page == i; next++ {
			c.bookmark(d.Outline[next])
		}
		c.items(p.Root.Items)
	}
	return c.finish(w)
}

// check reports what no file can be written of.
func (d Document) check() error {
	if len(d.Pages) == 0 {
		return fmt.Errorf("writing PDF: %q has no pages", d.Title)
	}
	page, level := 0, -1
	for _, e := range d.Outline {
		if e.Page < page || e.Page >= len(d.Pages) || e.Level < 0 || e.Level > level+1 {
			return fmt.Errorf("writing PDF: the outline's entry %q is out of order", e.Title)
		}
		page, level = e.Page, e.Level
	}
	return nil
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
	c.items(g.Items)
}

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
		c.pdf.Circle(number(d.Centre.X), number(d.Centre.Y), number(d.Radius), style)
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
	for _, it := range t.Set() {
		switch it := it.(type) {
		case draw.Rect:
			c.rect(it)
		case draw.Text:
			c.glyphs(it)
		}
	}
}
