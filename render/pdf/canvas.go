// The one place that touches fpdf: it keeps the time of day out of the file,
// sets colours and strokes only where they change, and writes what fpdf has no
// call for.

package pdf

import (
	"bytes"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode/utf16"

	"codeberg.org/go-pdf/fpdf"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"

	"pullscore/render/draw"
	"pullscore/render/fonts"
)

// family names the embedded fonts.
const family = "Go"

// noDate stands where fpdf insists on a date: a file tells nothing of the day
// on which it was made.
var noDate = time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)

type canvas struct {
	pdf   *fpdf.Fpdf
	files []*fonts.File
	faces draw.Faces // the files, to set texts in

	// What is set on the page that is being written.
	fill   draw.Ink
	pen    draw.Stroke
	font   draw.Font
	face   int // as in draw.Text
	letter draw.Ink

	page    int            // from 1
	height  float64        // of the page, millimetres
	targets map[string]int // the library's links, by the IDs that they lead to
	links   []link         // of all pages, in order
}

// A link is an area of a page that leads to an ID, which a later page may have.
type link struct {
	page   int
	height float64 // of the page
	area   draw.Box
	to     string
}

func newCanvas(d Info) *canvas {
	pdf := fpdf.NewCustom(&fpdf.InitType{UnitStr: "mm"}) // every page says its own size
	pdf.SetCatalogSort(true)
	pdf.SetCreationDate(noDate)
	pdf.SetModificationDate(noDate)
	pdf.SetProducer("", false)
	pdf.SetMargins(0, 0, 0)
	pdf.SetAutoPageBreak(false, 0)
	pdf.AddUTF8FontFromBytes(family, "", goregular.TTF)
	pdf.AddUTF8FontFromBytes(family, "B", gobold.TTF)
	c := &canvas{pdf: pdf, files: d.Fonts, faces: fonts.Faces(d.Fonts), targets: map[string]int{}}
	c.name(d)
	return c
}

// name writes what the file says of itself.
func (c *canvas) name(d Info) {
	c.pdf.SetTitle(surrogates(d.Title), true)
	if d.Desc != "" {
		c.pdf.SetSubject(surrogates(d.Desc), true)
	}
	c.pdf.SetLang(d.Language)
}

func size(p *draw.Page) fpdf.SizeType { return fpdf.SizeType{Wd: p.W, Ht: p.H} }

// start begins a page; nothing of the last one's colours and strokes is taken
// for granted on it.
func (c *canvas) start(p *draw.Page) {
	c.pdf.AddPageFormat("P", size(p))
	c.reset()
	c.page, c.height = c.page+1, p.H
	c.target(p.Root.ID, 0)
}

// reset sets what fpdf would take over from the page before.
func (c *canvas) reset() {
	c.pdf.SetLineJoinStyle("round")
	c.pdf.SetLineCapStyle("butt")
	c.pdf.SetDashPattern(nil, 0)
	c.fill, c.pen, c.font, c.face, c.letter = draw.None, draw.Stroke{}, draw.Font{}, 0, draw.None
}

// turnBack goes on with a page that was begun before. It reports false if the sizes of
// that page, of p and of the last page differ: the library counts heights by the last.
func (c *canvas) turnBack(number int, p *draw.Page) bool {
	wide, high, _ := c.pdf.PageSize(number)
	if math.Abs(wide-p.W) > sameSize || math.Abs(high-p.H) > sameSize || math.Abs(c.height-p.H) > sameSize {
		return false
	}
	c.pdf.SetPage(number)
	c.reset()
	c.setFont(draw.Font{Size: 1}, 0) // the library does not know that this page may have another font
	c.page = number
	c.target(p.Root.ID, 0)
	return true
}

// sameSize is by how much two pages of the same size may differ, in millimetres.
const sameSize = 0.01

// goOn goes back to the last page.
func (c *canvas) goOn(last int) {
	c.pdf.SetPage(last)
	c.reset()
	c.setFont(draw.Font{Size: 1}, 0)
	c.page = last
}

// target makes a place of this page one that links can lead to.
func (c *canvas) target(id string, y float64) {
	if id == "" {
		return
	}
	c.targets[id] = c.pdf.AddLink()
	c.pdf.SetLink(c.targets[id], number(y), c.page)
}

// lead notes the area of a group that leads elsewhere.
func (c *canvas) lead(g *draw.Group) {
	if area, ok := g.Bounds(); ok && g.Link != "" {
		c.links = append(c.links, link{c.page, c.height, area.Grow(linkAir), g.Link})
	}
}

// linkAir is by how much the area of a link is larger than what it shows, in
// millimetres, so that it is easy to hit.
const linkAir = 0.5

// join makes links of the areas whose targets the file has. The library counts
// heights from the foot of the page that was begun last.
func (c *canvas) join() {
	for _, l := range c.links {
		if to, ok := c.targets[l.to]; ok {
			c.pdf.SetPage(l.page)
			c.pdf.Link(number(l.area.X), number(l.area.Y)+c.height-l.height, number(l.area.W), number(l.area.H), to)
		}
	}
	c.pdf.SetPage(c.page)
}

func (c *canvas) bookmark(m mark) {
	c.setFont(draw.Font{Size: 8}, 0) // fpdf encodes by the font that is set
	c.pdf.Bookmark(surrogates(m.title), m.level, 0)
}

// finish writes the file.
func (c *canvas) finish(w io.Writer) error {
	c.join()
	var b bytes.Buffer
	if err := c.pdf.Output(&b); err != nil {
		return fmt.Errorf("writing PDF: %w", err)
	}
	if _, err := w.Write(b.Bytes()); err != nil {
		return fmt.Errorf("writing PDF: %w", err)
	}
	return nil
}

// paint sets fill and stroke and returns fpdf's word for what to do with them;
// "" for nothing.
func (c *canvas) paint(fill draw.Ink, s draw.Stroke) string {
	style := ""
	if fill != draw.None {
		style = "F"
		if fill != c.fill {
			c.fill = fill
			c.pdf.SetFillColor(rgb(fill))
		}
	}
	if c.stroke(s) {
		style += "D"
	}
	return style
}

// stroke sets a stroke and reports whether it draws anything.
func (c *canvas) stroke(s draw.Stroke) bool {
	if s.Ink == draw.None {
		return false
	}
	if s.Ink != c.pen.Ink {
		c.pdf.SetDrawColor(rgb(s.Ink))
	}
	if s.Width != c.pen.Width {
		c.pdf.SetLineWidth(s.Width)
	}
	if !slices.Equal(s.Dash, c.pen.Dash) {
		c.dash(s.Dash)
	}
	if s.Round != c.pen.Round {
		c.pdf.SetLineCapStyle(caps[s.Round])
	}
	c.pen = s
	return true
}

// dash sets a pattern to a ten-thousandth of a point. The library writes
// hundredths, which along a line of dots add up to a dot more or less.
func (c *canvas) dash(pattern []float64) {
	b := []byte{'['}
	for i, d := range pattern {
		if i > 0 {
			b = append(b, ' ')
		}
		b = strconv.AppendFloat(b, number(d)/draw.MM, 'f', 4, 64)
	}
	c.pdf.RawWriteStr(string(append(b, "] 0 d"...)))
}

// circle makes a path of a circle: from its rightmost point on clockwise, as SVG
// counts dashes, in curves that keep to it within 5 millionths of its radius.
// The library's go the other way round, and up to 0.3 % inside it.
func (c *canvas) circle(m draw.Point, r float64) {
	const curves = 8
	handle := 4.0 / 3 * math.Tan(2*math.Pi/curves/4)
	b := append(c.point(make([]byte, 0, 640), number(m.X+r), number(m.Y), 2), "m\n"...)
	sin, cos := 0.0, 1.0
	for i := range curves {
		nextSin, nextCos := math.Sincos(2 * math.Pi * float64(i+1) / curves)
		b = c.point(b, m.X+r*(cos-handle*sin), m.Y+r*(sin+handle*cos), 5)
		b = c.point(b, m.X+r*(nextCos+handle*nextSin), m.Y+r*(nextSin-handle*nextCos), 5)
		b = append(c.point(b, m.X+r*nextCos, m.Y+r*nextSin, 5), "c\n"...)
		sin, cos = nextSin, nextCos
	}
	c.pdf.RawWriteStr(string(append(b, 'h')))
}

// point appends a point as the file counts: in points of a 72nd of an inch, from the
// foot of the page.
func (c *canvas) point(b []byte, x, y float64, decimals int) []byte {
	const k = 72 / 25.4
	_, high := c.pdf.GetPageSize()
	b = strconv.AppendFloat(b, x*k, 'f', decimals, 64)
	b = strconv.AppendFloat(append(b, ' '), (high-y)*k, 'f', decimals, 64)
	return append(b, ' ')
}

// caps are the library's words for the ends of lines, round or not.
var caps = map[bool]string{false: "butt", true: "round"}

func rgb(ink draw.Ink) (r, g, b int) {
	colour := ink.Light()
	return int(colour.R), int(colour.G), int(colour.B)
}

// setFont sets an embedded font, or a face from 1 on, which has one weight. A face
// goes into the file when it is first used.
func (c *canvas) setFont(f draw.Font, face int) {
	if f == c.font && face == c.face {
		return
	}
	name, style := family, ""
	switch {
	case face > 0:
		name = fmt.Sprintf("%s%d", family, face)
		c.pdf.AddUTF8FontFromBytes(name, "", c.files[face-1].Data) // a second time it does nothing
	case f.Bold:
		style = "B"
	}
	c.font, c.face = f, face
	c.pdf.SetFont(name, style, f.Size)
}

// glyphs writes a text that the fonts cover, from its start on.
func (c *canvas) glyphs(t draw.Text) {
	c.setFont(t.Font, t.Face)
	if t.Ink != c.letter {
		c.letter = t.Ink
		c.pdf.SetTextColor(rgb(t.Ink))
	}
	if t.Turn != 0 { // font and colour are set before: they go on after the turn
		c.pdf.TransformBegin()
		defer c.pdf.TransformEnd()
		c.pdf.TransformRotate(-number(t.Turn), number(t.At.X), number(t.At.Y)) // anticlockwise
	}
	c.pdf.Text(number(t.At.X), number(t.At.Y), t.String)
}

// span begins marked content with one property.
func (c *canvas) span(key, text string) {
	b := append(append(append([]byte("/Span <</"), key...), ' ', '<'), "FEFF"...)
	for _, unit := range utf16.Encode([]rune(draw.Clean(text))) {
		const digits = "0123456789ABCDEF"
		b = append(b, digits[unit>>12], digits[unit>>8&15], digits[unit>>4&15], digits[unit&15])
	}
	c.pdf.RawWriteStr(string(append(b, ">>> BDC"...)))
}

func (c *canvas) endSpan() { c.pdf.RawWriteStr("EMC") }

// surrogates returns clean text for fpdf, which knows only the characters of
// three bytes in UTF-8 and fewer: others as the two halves that UTF-16 makes
// of them, each in three bytes.
func surrogates(text string) string {
	var b strings.Builder
	for _, r := range draw.Clean(text) {
		hi, lo := utf16.EncodeRune(r)
		if hi == '\uFFFD' {
			b.WriteRune(r)
			continue
		}
		for _, half := range []rune{hi, lo} {
			b.Write([]byte{0xE0 | byte(half>>12), 0x80 | byte(half>>6)&0x3F, 0x80 | byte(half)&0x3F})
		}
	}
	return b.String()
}

// number panics on what no file can hold: a drawing must not make it.
func number(v float64) float64 {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		panic(fmt.Sprintf("pdf: coordinate %v", v))
	}
	return v
}
