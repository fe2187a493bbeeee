// Signs that several papers share, and the keys that explain them.

package sheet

import "pullscore/render/draw"

// A KeyEntry is a sign with its meaning.
type KeyEntry struct {
	Text  string
	Width float64 // of the sign
	Draw  func(g *draw.Group, x, y float64)
}

// Entry returns an entry of a key: a sign of the given width in millimetres, followed by
// a text.
func Entry(text string, width float64, sign func(g *draw.Group, x, y float64)) KeyEntry {
	return KeyEntry{Text: text, Width: width, Draw: sign}
}

const (
	KeyText = 1.4 // between a sign and its text
	KeyGap  = 6.0 // between entries at most

	// Every paper with a chance says where the chance comes from.
	ModelNote      = "chance: our own landing model, on published parts"
	ModelNoteShort = "chance: our own model"
)

// NoSign draws nothing. It is the sign of an entry that has only words.
func NoSign(*draw.Group, float64, float64) {}

// KeyZone draws the sign of the sharp zone with its middle line at y.
func KeyZone(g *draw.Group, x, y float64) {
	box := draw.Box{X: x, Y: y - 1.1, W: 7, H: 2.2}
	corners := []draw.Point{{X: x, Y: box.Y}, {X: box.Right(), Y: box.Y}, {X: box.Right(), Y: box.Bottom()}, {X: x, Y: box.Bottom()}}
	g.Add(draw.Rect{Box: box, Fill: draw.BluePale, Stroke: Solid(draw.Blue, Hair)},
		draw.Path{Runs: draw.Hatch(corners, HatchPitch, HatchLeast), Stroke: Solid(draw.Blue, Hair)})
	g.Line(x, y, x+7, y, Solid(draw.Blue, Heavy))
}

// A hatch of the sharp zone: between its lines, and its shortest line.
const (
	HatchPitch = 1.3
	HatchLeast = 1.5
)
