// Filling and stroking: shapes become outlines in pixels, and outlines become
// coverage in no more than the room that they take.

package png

import (
	"fmt"
	"image"
	"math"
	"slices"

	"github.com/srwiley/rasterx"
	"golang.org/x/image/math/fixed"
	"golang.org/x/image/vector"

	"pullscore/render/draw"
	"pullscore/render/fonts"
)

type canvas struct {
	image   *image.RGBA
	scale   float64 // pixels a millimetre
	outline *outline
	stroker *rasterx.Stroker
	raster  vector.Rasterizer
	fonts   []*face // regular, bold, then those of the files; nil until one is used
	files   []*fonts.File
	faces   draw.Faces // the files, to set texts in
}

func newCanvas(bounds image.Rectangle, scale float64, files []*fonts.File) *canvas {
	out := &outline{}
	return &canvas{
		fonts: make([]*face, 2+len(files)), files: files, faces: fonts.Faces(files),
		image: image.NewRGBA(bounds), scale: scale, outline: out,
		stroker: rasterx.NewStroker(bounds.Dx(), bounds.Dy(), out),
	}
}

// pixel returns a point of the page in pixels. It panics on a coordinate that
// is no number: a drawing must not make it.
func (c *canvas) pixel(p draw.Point) (x, y float64) {
	x, y = p.X*c.scale, p.Y*c.scale
	if math.IsNaN(x+y) || math.IsInf(x+y, 0) {
		panic(fmt.Sprintf("png: coordinate %v", p))
	}
	return x, y
}

// fillRuns fills closed runs by the nonzero rule.
func (c *canvas) fillRuns(runs [][]draw.Point, ink draw.Ink) {
	if ink == draw.None {
		return
	}
	c.outline.Clear()
	for _, run := range runs {
		for i, p := range run {
			x, y := c.pixel(p)
			c.outline.add(segment{kind(min(i, 1)), [3]vertex{{x, y}}})
		}
		if len(run) > 0 {
			x, y := c.pixel(run[0])
			c.outline.add(segment{line, [3]vertex{{x, y}}})
		}
	}
	c.paint(ink)
}

// dot is the length of a dash that with round ends is a dot, in millimetres.
const dot = 0.05

// miter is not reached, since joins are round.
const miter = 4

// strokeRuns draws along runs with round joins and butt ends, as the other
// back ends do. Dots are discs: the stroker does not see lines so short.
func (c *canvas) strokeRuns(runs [][]draw.Point, closed bool, s draw.Stroke) {
	if s.Ink == draw.None || s.Width <= 0 {
		return
	}
	ends := rasterx.ButtCap
	if s.Round {
		ends = rasterx.RoundCap
	}
	c.stroker.SetStroke(fixed26(s.Width*c.scale), fixed26(miter), ends, ends, rasterx.RoundGap, rasterx.Round)
	for _, run := range runs {
		if !dashes(s.Dash) {
			c.strokeRun(run, closed, s.Ink)
			continue
		}
		if closed && len(run) > 0 {
			run = append(slices.Clone(run), run[0])
		}
		for _, dash := range dashed(run, s.Dash) {
			if s.Round && len(dash) > 0 && s.Dash[0] < dot {
				c.fillRuns([][]draw.Point{circle(dash[0], s.Width/2)}, s.Ink)
				continue
			}
			c.strokeRun(dash, false, s.Ink)
		}
	}
}

func (c *canvas) strokeRun(run []draw.Point, closed bool, ink draw.Ink) {
	c.outline.Clear()
	c.stroker.Clear()
	for i, p := range run {
		at := rasterx.ToFixedP(c.pixel(p))
		if i == 0 {
			c.stroker.Start(at)
		} else {
			c.stroker.Line(at)
		}
	}
	c.stroker.Stop(closed)
	c.paint(ink)
}

func fixed26(v float64) fixed.Int26_6 { return fixed.Int26_6(math.Round(v * 64)) }

// paint fills the outline with an ink.
func (c *canvas) paint(ink draw.Ink) {
	room := c.outline.bounds().Intersect(c.image.Bounds())
	if room.Empty() {
		return
	}
	c.raster.Reset(room.Dx(), room.Dy())
	c.outline.rasterize(&c.raster, float64(room.Min.X), float64(room.Min.Y))
	c.raster.Draw(c.image, room, image.NewUniform(colour(ink)), image.Point{})
}
