// Glyphs of the embedded fonts, without hints, at fractions of a pixel: so a
// text is as wide as it was measured.

package png

import (
	"fmt"
	"math"
	"sync"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"pullscore/render/draw"
)

// The fonts are parsed when the first text is drawn, since most runs of the
// program draw none.
var (
	regular = sync.OnceValue(func() *sfnt.Font { return parse(goregular.TTF) })
	bold    = sync.OnceValue(func() *sfnt.Font { return parse(gobold.TTF) })
)

func parse(ttf []byte) *sfnt.Font {
	f, err := sfnt.Parse(ttf)
	if err != nil {
		panic(fmt.Sprintf("png: an embedded font is damaged: %v", err))
	}
	return f
}

// A face keeps the glyphs of a font that a page has used.
type face struct {
	font   *sfnt.Font
	units  float64 // an em
	buf    sfnt.Buffer
	glyphs map[rune]glyph
}

// A glyph has its outline in units of the font, y downwards, and its advance.
type glyph struct {
	segments []segment
	advance  float64
}

func newFace(f *sfnt.Font) *face {
	return &face{font: f, units: float64(f.UnitsPerEm()), glyphs: map[rune]glyph{}}
}

// face returns the face in which a text is set. Those of files have one weight.
func (c *canvas) face(t draw.Text) *face {
	i, load := 0, regular
	switch {
	case t.Face > 0:
		i, load = 1+t.Face, func() *sfnt.Font { return c.files[t.Face-1].Font }
	case t.Font.Bold:
		i, load = 1, bold
	}
	if c.fonts[i] == nil {
		c.fonts[i] = newFace(load())
	}
	return c.fonts[i]
}

func (f *face) glyph(r rune) glyph {
	if g, ok := f.glyphs[r]; ok {
		return g
	}
	g, err := f.load(r)
	if err != nil {
		panic(fmt.Sprintf("png: an embedded font is damaged at %q: %v", r, err))
	}
	f.glyphs[r] = g
	return g
}

func (f *face) load(r rune) (glyph, error) {
	index, err := f.font.GlyphIndex(&f.buf, r)
	if err != nil {
		return glyph{}, err
	}
	em := fixed.I(int(f.font.UnitsPerEm()))
	advance, err := f.font.GlyphAdvance(&f.buf, index, em, font.HintingNone)
	if err != nil {
		return glyph{}, err
	}
	parts, err := f.font.LoadGlyph(&f.buf, index, em, nil)
	if err != nil {
		return glyph{}, err
	}
	g := glyph{advance: vertexOf(fixed.Point26_6{X: advance}).x}
	for _, p := range parts {
		s := segment{kind: kind(p.Op)}
		for i, v := range p.Args {
			s.at[i] = vertexOf(v)
		}
		g.segments = append(g.segments, s)
	}
	return g, nil
}

// glyphs draws a text that the fonts cover, from its start on.
func (c *canvas) glyphs(t draw.Text) {
	f := c.face(t)
	size := t.Font.Size * draw.MM * c.scale / f.units // pixels a unit
	x, y := c.pixel(t.At)
	sin, cos := math.Sincos(t.Turn * math.Pi / 180)
	along := 0.0
	c.outline.Clear()
	for _, r := range t.String {
		g := f.glyph(r)
		for _, s := range g.segments {
			for i := range s.at {
				dx, dy := along+s.at[i].x*size, s.at[i].y*size
				s.at[i] = vertex{x + dx*cos - dy*sin, y + dx*sin + dy*cos}
			}
			c.outline.add(s)
		}
		along += g.advance * size
	}
	c.paint(t.Ink)
}
