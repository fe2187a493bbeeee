// Sizes of paper, the options of a drawing, type and lines.

package sheet

import "pullscore/render/draw"

// A Paper is the size of a sheet in landscape, in millimetres.
type Paper struct{ W, H float64 }

// The sheets that crews print on, landscape: ISO 216 A4, and US Letter
// (ANSI/ASME Y14.1, 11 by 8 1/2 inches).
var (
	A4     = Paper{297, 210}
	Letter = Paper{279.4, 215.9}
)

// Options are the choices that a drawing leaves to its user. The zero value means A4.
type Options struct {
	Paper Paper
}

// Size returns the size of the sheet, in millimetres: A4 if the user chose none.
func (o Options) Size() Paper {
	if o.Paper == (Paper{}) {
		return A4
	}
	return o.Paper
}

// The type and the lines that all drawings share.
var (
	FontID      = draw.Font{Size: 18, Bold: true}
	FontTitle   = draw.Font{Size: 12.5}
	FontHeading = draw.Font{Size: 9, Bold: true}
	FontStrong  = draw.Font{Size: 8, Bold: true}
	FontBody    = draw.Font{Size: 8}
	FontNote    = draw.Font{Size: 7.5}
	FontSmall   = draw.Font{Size: 7}               // no type is smaller
	FontMark    = draw.Font{Size: 8.5, Bold: true} // names of marks
	FontNumber  = draw.Font{Size: 7, Bold: true}
)

const (
	Margin = 12.0 // left and right of every page
	Edge   = 10.5 // above and below
	Hair   = 0.12 // the widths of lines
	Thin   = 0.2
	Medium = 0.35
	Heavy  = 0.55
)

// Solid returns an unbroken stroke.
func Solid(ink draw.Ink, width float64) draw.Stroke { return draw.Stroke{Ink: ink, Width: width} }

// Dashed returns a stroke with dashes: their lengths on and off, in millimetres.
func Dashed(ink draw.Ink, width float64, dash ...float64) draw.Stroke {
	return draw.Stroke{Ink: ink, Width: width, Dash: dash}
}
