package png

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	imagedraw "image/draw"
	stdpng "image/png"
	"io"
	"math"

	"pullscore/render/draw"
	"pullscore/render/fonts"
)

// The resolutions that can be asked for, in pixels an inch: less shows
// nothing, more needs a gigabyte for a sheet.
const (
	LeastDPI   = 36
	DefaultDPI = 150
	MostDPI    = 600
)

// Write writes the page at that many pixels an inch, with files of fonts for
// what the embedded fonts lack. It returns the first error of w.
func Write(w io.Writer, p *draw.Page, dpi int, files ...*fonts.File) error {
	var b bytes.Buffer
	if err := stdpng.Encode(&b, Image(p, dpi, files...)); err != nil {
		return fmt.Errorf("writing PNG: %w", err)
	}
	if _, err := w.Write(describe(b.Bytes(), p, dpi)); err != nil {
		return fmt.Errorf("writing PNG: %w", err)
	}
	return nil
}

// Image draws the page. It panics on a resolution that is out of bounds.
func Image(p *draw.Page, dpi int, files ...*fonts.File) *image.RGBA {
	if dpi < LeastDPI || dpi > MostDPI {
		panic(fmt.Sprintf("png: %d pixels an inch", dpi))
	}
	scale := float64(dpi) / 25.4
	bounds := image.Rect(0, 0, int(math.Ceil(p.W*scale-1e-6)), int(math.Ceil(p.H*scale-1e-6)))
	c := newCanvas(bounds, scale, files)
	imagedraw.Draw(c.image, bounds, image.NewUniform(colour(draw.Paper)), image.Point{}, imagedraw.Src)
	c.items(p.Root.Items)
	return c.image
}

func colour(ink draw.Ink) color.RGBA {
	l := ink.Light()
	return color.RGBA{l.R, l.G, l.B, 0xff}
}

func (c *canvas) items(items []draw.Item) {
	for _, it := range items {
		switch it := it.(type) {
		case draw.Line:
			c.strokeRuns([][]draw.Point{{it.From, it.To}}, false, it.Stroke)
		case draw.Rect:
			c.shape([][]draw.Point{corners(it.Box)}, true, it.Fill, it.Stroke)
		case draw.Disc:
			c.shape([][]draw.Point{circle(it.Centre, it.Radius)}, true, it.Fill, it.Stroke)
		case draw.Path:
			c.shape(it.Runs, it.Closed, it.Fill, it.Stroke)
		case draw.Text:
			c.text(it)
		case *draw.Group:
			c.items(it.Items)
		}
	}
}

func (c *canvas) shape(runs [][]draw.Point, closed bool, fill draw.Ink, s draw.Stroke) {
	c.fillRuns(runs, fill)
	c.strokeRuns(runs, closed, s)
}

// text writes a text in the embedded fonts.
func (c *canvas) text(t draw.Text) {
	for _, it := range t.Set(c.faces...) {
		switch it := it.(type) {
		case draw.Rect:
			c.shape([][]draw.Point{corners(it.Box)}, true, it.Fill, it.Stroke)
		case draw.Path:
			c.shape(it.Runs, it.Closed, it.Fill, it.Stroke)
		case draw.Text:
			c.glyphs(it)
		}
	}
}

func corners(b draw.Box) []draw.Point {
	return []draw.Point{{X: b.X, Y: b.Y}, {X: b.Right(), Y: b.Y}, {X: b.Right(), Y: b.Bottom()}, {X: b.X, Y: b.Bottom()}}
}

// circle returns a circle as chords that lie within draw.Chord of it.
func circle(m draw.Point, r float64) []draw.Point {
	n := 8
	if r > draw.Chord {
		n = max(n, int(math.Ceil(math.Pi/math.Acos(1-draw.Chord/r))))
	}
	run := make([]draw.Point, n)
	for i := range run {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		run[i] = draw.Point{X: m.X + r*cos, Y: m.Y + r*sin}
	}
	return run
}
