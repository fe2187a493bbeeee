// Outlines in pixels, as the stroker and the fonts give them.

package png

import (
	"image"
	"math"

	"github.com/srwiley/rasterx"
	"golang.org/x/image/math/fixed"
	"golang.org/x/image/vector"
)

type vertex struct{ x, y float64 }

// A kind says how many vertices a segment has, and what they are.
type kind uint8

const (
	move  kind = iota // to the vertex
	line              // to the vertex
	quad              // a quadratic curve: control, end
	cubic             // a cubic curve: two controls, end
)

// vertices returns how many vertices a segment of the kind has.
func (k kind) vertices() int { return [...]int{1, 1, 2, 3}[k] }

type segment struct {
	kind kind
	at   [3]vertex
}

// An outline is the edges of an area. A stroker gives them piece by piece and
// in any order; together they close.
type outline struct {
	segments               []segment
	minX, minY, maxX, maxY float64
}

func (o *outline) add(s segment) {
	if len(o.segments) == 0 {
		o.minX, o.minY, o.maxX, o.maxY = math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	}
	for _, v := range s.at[:s.kind.vertices()] {
		o.minX, o.maxX = min(o.minX, v.x), max(o.maxX, v.x)
		o.minY, o.maxY = min(o.minY, v.y), max(o.maxY, v.y)
	}
	o.segments = append(o.segments, s)
}

// bounds returns the pixels that the outline touches.
func (o *outline) bounds() image.Rectangle {
	if len(o.segments) == 0 {
		return image.Rectangle{}
	}
	return image.Rect(int(math.Floor(o.minX)), int(math.Floor(o.minY)), int(math.Ceil(o.maxX)), int(math.Ceil(o.maxY)))
}

// rasterize gives the outline to a rasterizer whose corner is at (x, y).
func (o *outline) rasterize(r *vector.Rasterizer, x, y float64) {
	at := func(v vertex) (float32, float32) { return float32(v.x - x), float32(v.y - y) }
	for _, s := range o.segments {
		ax, ay := at(s.at[0])
		bx, by := at(s.at[1])
		cx, cy := at(s.at[2])
		switch s.kind {
		case move:
			r.MoveTo(ax, ay)
		case line:
			r.LineTo(ax, ay)
		case quad:
			r.QuadTo(ax, ay, bx, by)
		case cubic:
			r.CubeTo(ax, ay, bx, by, cx, cy)
		}
	}
}

// The methods that make an outline a rasterx.Scanner, to which a stroker gives
// the outline of a stroke. It neither draws nor knows colours.

// Start begins a run.
func (o *outline) Start(a fixed.Point26_6) { o.add(segment{move, [3]vertex{vertexOf(a)}}) }

// Line adds a straight segment.
func (o *outline) Line(b fixed.Point26_6) { o.add(segment{line, [3]vertex{vertexOf(b)}}) }

// Clear forgets the outline.
func (o *outline) Clear() { o.segments = o.segments[:0] }

// GetPathExtent returns the box of all vertices.
func (o *outline) GetPathExtent() fixed.Rectangle26_6 {
	return fixed.Rectangle26_6{Min: rasterx.ToFixedP(o.minX, o.minY), Max: rasterx.ToFixedP(o.maxX, o.maxY)}
}

// Draw does nothing: the canvas paints.
func (o *outline) Draw() {}

// SetBounds does nothing: the canvas knows them.
func (o *outline) SetBounds(int, int) {}

// SetColor does nothing: the canvas knows the ink.
func (o *outline) SetColor(any) {}

// SetWinding does nothing: outlines are filled by the nonzero rule.
func (o *outline) SetWinding(bool) {}

// SetClip does nothing: the canvas clips to its picture.
func (o *outline) SetClip(image.Rectangle) {}

func vertexOf(p fixed.Point26_6) vertex { return vertex{float64(p.X) / 64, float64(p.Y) / 64} }
