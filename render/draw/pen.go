// Pens: the weights of lines, and what their dashes mean. All drawings share them.

package draw

import (
	"math"
	"slices"
)

// The weights of lines, in millimetres. Nothing is thinner than GuideWidth, and nothing
// that carries a meaning alone is thinner than FineWidth.
const (
	HandWidth    = 0.8  // the hand
	FocusWidth   = 0.6  // the focus
	StayWidth    = 1.3  // the focus where it stays, in overview and story
	MarkWidth    = 0.5  // a mark on the strip
	RingWidth    = 0.45 // the outline of a numbered disc
	WindowWidth  = 0.4  // windows, ways, flags
	StopWidth    = 0.35 // the end of the ring; a rack in an overview
	DashWidth    = 0.3  // dashes, brackets, holds
	RulerWidth   = 0.25 // rulers, limits
	FineWidth    = 0.18 // plumb lines, leaders, frames, the limits of zones
	SubjectWidth = 0.15 // a subject in its own depth
	HatchWidth   = 0.14 // the hatch of a zone
	GuideWidth   = 0.12 // guides: tables, stations, marks across the hand
)

// Widths returns every weight, heaviest first, in millimetres.
func Widths() []float64 {
	return []float64{
		StayWidth, HandWidth, FocusWidth, MarkWidth, RingWidth, WindowWidth, StopWidth,
		DashWidth, RulerWidth, FineWidth, SubjectWidth, HatchWidth, GuideWidth,
	}
}

// Solid returns an unbroken stroke of a width in millimetres: what is, what is planned,
// what is measured.
func Solid(ink Ink, width float64) Stroke { return Stroke{Ink: ink, Width: width} }

// Assumed returns the stroke of what is estimated or assumed.
func Assumed(ink Ink) Stroke { return dashed(ink, 1.2, 0.8) }

// Later returns the stroke of what is only so at the end of a move.
func Later(ink Ink) Stroke { return dashed(ink, 3, 1.2) }

// A dot of a dotted line, as a dash whose ends are round, and what is between two.
const (
	dotLong  = 0.01
	dotsFrom = 0.9
)

// Unsaid returns the stroke of a time in which nobody speaks: dots.
func Unsaid(ink Ink) Stroke {
	s := dashed(ink, dotLong, dotsFrom)
	s.Round = true
	return s
}

// ClearOfDots returns the length of a line of dots, cut by a little where it ends with a
// dot: whether that one is drawn would hang on how each form of file rounds.
func ClearOfDots(length float64) float64 {
	const off, every = 0.02, dotLong + dotsFrom
	if length < every-off {
		return length
	}
	if over := math.Mod(length+off, every); over < 2*off {
		length -= over
	}
	return length
}

// Axis returns the stroke of the axis of a lens.
func Axis(ink Ink) Stroke { return dashed(ink, 4, 0.9, 0.9, 0.9) }

// CutHere returns the stroke along which paper is cut.
func CutHere(ink Ink) Stroke { return dashed(ink, 8, 2) }

func dashed(ink Ink, dash ...float64) Stroke {
	return Stroke{Ink: ink, Width: DashWidth, Dash: dash}
}

// MeansSomething reports whether the dashes of a stroke are those of a pen that has a
// meaning, whatever its ink and weight. An unbroken stroke has one.
func (s Stroke) MeansSomething() bool {
	if len(s.Dash) == 0 {
		return true
	}
	pens := []Stroke{Assumed(s.Ink), Later(s.Ink), Unsaid(s.Ink), Axis(s.Ink), CutHere(s.Ink)}
	return slices.ContainsFunc(pens, func(p Stroke) bool { return slices.Equal(p.Dash, s.Dash) && p.Round == s.Round })
}
