// Signs of the coverage: what a set-up has of a word.

package signs

import "pullscore/render/draw"

// The names of the signs of the coverage.
const (
	Speaker = "speaker"
	Hardly  = "hardly"
	Other   = "other"
	Blocked = "blocked"
	Without = "without"
	Shown   = "shown"
)

func coverSigns() []Sign {
	return []Sign{
		{Speaker, "the speaker is sharp", "speaker sharp", 8, func(g *draw.Group, x, y float64) { DrawSpeaker(g, x, x+8, y+BarHeight/2, Name{}) }},
		{Hardly, "faint, or at the edge of the picture", "faint, or at the edge", 8, func(g *draw.Group, x, y float64) { DrawHardly(g, x, x+8, y+BarHeight/2) }},
		{Other, "the speaker is soft; who is named is sharp", "soft; named: sharp", 8, func(g *draw.Group, x, y float64) { DrawOther(g, x, x+8, y+BarHeight/2, Name{}) }},
		{Blocked, "somebody stands in the way", "blocked", 8, func(g *draw.Group, x, y float64) { DrawBlocked(g, x, x+8, y+BarHeight/2, Name{}) }},
		{Shown, "the cut shows it", "in the cut", 8, func(g *draw.Group, x, y float64) { DrawShown(g, x+4, y+BarHeight/2) }},
		{Without, "not in this set-up", "not in set-up", 8, func(g *draw.Group, x, y float64) { DrawWithout(g, x, x+8, y+BarHeight/2) }},
	}
}

var fontBar = draw.Font{Size: 7, Bold: true}

const barText = 1.2 // between the end of a bar and its name, millimetres

// A Name is a name in a bar. It stands After millimetres behind the start of the bar, or
// next to that where After is 0.
type Name struct {
	Text  string
	After float64
}

// DrawSpeaker draws the bar of words whose speaker is sharp, from x1 to x2, standing on
// base, with the speaker's name in it if it has room.
func DrawSpeaker(g *draw.Group, x1, x2, base float64, name Name) {
	sub := g.Group(Speaker)
	bar(sub, x1, x2, base, BarHeight, draw.Black)
	named(sub, x1, x2, base, name, draw.Paper)
}

// DrawLikely draws the bar of words whose speaker is sharp by a chance under 1, with the
// chance in words if it has room.
func DrawLikely(g *draw.Group, x1, x2, base, chance float64, percent Name) {
	DrawChance(g, x1, x2, base, chance)
	sub := g.Group(Chance)
	from := x1 + max(percent.After, barText)
	room := fontBar.Room(percent.Text)
	if from+room+barText > x2 {
		return
	}
	const air, half = 0.5, draw.FineWidth / 2
	sub.Add(draw.Rect{Box: draw.Box{X: from - air, Y: base - BarHeight + half, W: room + 2*air, H: BarHeight - 2*half}, Fill: draw.Paper})
	upright(sub, from, base-BarHeight/2, percent.Text, fontBar, draw.Black, draw.Start)
}

// DrawHardly draws the bar of words whose speaker is faintly soft, or stands at the edge
// of the picture: half as high.
func DrawHardly(g *draw.Group, x1, x2, base float64) {
	bar(g.Group(Hardly), x1, x2, base, BarHeight/2, draw.Black)
}

// DrawOther draws the bar of words whose speaker is not sharp: a frame, with the names of
// those who are.
func DrawOther(g *draw.Group, x1, x2, base float64, names Name) {
	sub := g.Group(Other)
	frame(sub, x1, x2, base)
	named(sub, x1, x2, base, names, draw.Black)
}

// DrawOutside draws the bar of words whose speaker is out of the picture: a frame with the
// names of those who are sharp, if there are any, and the hatch of Out.
func DrawOutside(g *draw.Group, x1, x2, base float64, names Name) {
	const pitch, least, air = 1.1, 0.6, 0.5
	sub := g.Group(Out)
	frame(sub, x1, x2, base)
	from := x1
	if names.Text != "" {
		from = named(sub, x1, x2, base, names, draw.Black)
	}
	if box := (draw.Box{X: from, Y: base - BarHeight, W: x2 - from, H: BarHeight}).Grow(-air); box.W > 0 {
		sub.Add(draw.Path{Runs: draw.Hatch(cornersOf(box), pitch, least), Stroke: draw.Solid(draw.Grey, draw.HatchWidth)})
	}
}

// DrawBlocked draws the bar of words whose speaker stands behind somebody: a frame with the
// names of those who are sharp, if there are any, and a cross.
func DrawBlocked(g *draw.Group, x1, x2, base float64, names Name) {
	const arm, air = 0.8, 0.5
	sub := g.Group(Blocked)
	frame(sub, x1, x2, base)
	from := x1
	if names.Text != "" {
		from = named(sub, x1, x2, base, names, draw.Black)
	}
	a := min(arm, (x2-from)/2-air)
	if a <= 0 {
		return
	}
	x, y := (from+x2)/2, base-BarHeight/2
	pen := draw.Solid(draw.Black, draw.WindowWidth)
	sub.Line(x-a, y-a, x+a, y+a, pen)
	sub.Line(x-a, y+a, x+a, y-a, pen)
}

// DrawWithout draws the line of words that a set-up does not have.
func DrawWithout(g *draw.Group, x1, x2, base float64) {
	y := base - BarHeight/2
	g.Group(Without).Line(x1, y, x2, y, draw.Solid(draw.Guide, draw.FineWidth))
}

// DrawShown draws the heavy bar at x, standing on base: the cut shows what is right of it.
func DrawShown(g *draw.Group, x, base float64) {
	const over = 0.3
	g.Group(Shown).Line(x, base-BarHeight-over, x, base+over, draw.Solid(draw.Black, draw.HandWidth))
}

// frame adds the outline of a bar, inside its edges.
func frame(g *draw.Group, x1, x2, base float64) {
	const half = draw.DashWidth / 2
	box := draw.Box{X: x1 + half, Y: base - BarHeight + half, W: max(0, x2-x1-2*half), H: BarHeight - 2*half}
	g.Add(draw.Rect{Box: box, Stroke: draw.Solid(draw.Black, draw.DashWidth)})
}

// named writes a name into a bar if it has room, and returns where what is after it may
// begin.
func named(g *draw.Group, x1, x2, base float64, name Name, ink draw.Ink) float64 {
	from := x1 + max(name.After, barText)
	room := fontBar.Room(name.Text)
	if name.Text == "" || from+room+barText > x2 {
		return from
	}
	upright(g, from, base-BarHeight/2, name.Text, fontBar, ink, draw.Start)
	return from + room + barText
}
