package sheet

import "pullscore/render/draw"

// A KeyEntry is a sign and what it stands for.
type KeyEntry struct {
	Text  string
	Width float64 // of the sign
	Draw  func(g *draw.Group, x, y float64)
}

// Entry returns an entry of a key: a text behind a sign of that width.
func Entry(text string, width float64, sign func(g *draw.Group, x, y float64)) KeyEntry {
	return KeyEntry{Text: text, Width: width, Draw: sign}
}

const (
	KeyText  = 1.4 // between a sign and its text
	KeyGap   = 6.0 // between entries at most
	KeyLeast = 2.5 // where they are nearer, texts are shortened

	// No chance is printed without a word on where it comes from.
	ModelNote      = "chance: our own landing model, on published parts"
	ModelNoteShort = "chance: our own model"
)

func NoSign(*draw.Group, float64, float64) {}

func KeyZone(g *draw.Group, x, y float64) {
	box := draw.Box{X: x, Y: y - 1.1, W: 7, H: 2.2}
	corners := []draw.Point{{X: x, Y: box.Y}, {X: box.Right(), Y: box.Y}, {X: box.Right(), Y: box.Bottom()}, {X: x, Y: box.Bottom()}}
	g.Add(draw.Rect{Box: box, Fill: draw.BluePale, Stroke: Solid(draw.Blue, Hair)},
		draw.Path{Runs: draw.Hatch(corners, HatchPitch, HatchLeast), Stroke: Solid(draw.Blue, Hair)})
	g.Line(x, y, x+7, y, Solid(draw.Blue, Heavy))
}
