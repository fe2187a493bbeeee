// The flags of findings.

package signs

import "pullscore/render/draw"

func flagSigns() []Sign {
	sign := func(severity string) Sign {
		return Sign{severity, severity, severity, FlagWidth(" "), func(g *draw.Group, x, y float64) { DrawFlag(g, x, y-FlagHeight/2, severity, " ") }}
	}
	return []Sign{sign(Error), sign(Warning), sign(Note)}
}

// FlagHeight is the height of a flag, in millimetres.
const FlagHeight = 3.4

const flagNotch = 0.9

// FlagWidth returns the width of a flag with those letters, in millimetres.
func FlagWidth(letters string) float64 {
	return max(4.5, fontLetter.Room(letters)+1.2+flagNotch)
}

// DrawFlag draws the flag of a finding with its top left corner at (x, y), and returns its
// group. Severity is error, warning or note: a filled flag, an outlined flag, an outlined
// square.
func DrawFlag(g *draw.Group, x, y float64, severity, letters string) *draw.Group {
	sub := g.Group(severity)
	right, foot := x+FlagWidth(letters), y+FlagHeight
	run := []draw.Point{pt(x, y), pt(right, y), pt(right-flagNotch, y+FlagHeight/2), pt(right, foot), pt(x, foot)}
	fill, stroke, ink := draw.Warning, draw.Solid(draw.Warning, draw.WindowWidth), draw.Paper
	switch severity {
	case Warning:
		fill, ink = draw.Paper, draw.Warning
	case Note:
		run = []draw.Point{pt(x, y), pt(right, y), pt(right, foot), pt(x, foot)}
		fill, stroke, ink = draw.Paper, draw.Solid(draw.Grey, draw.RulerWidth), draw.Grey
	}
	sub.Add(draw.Path{Runs: [][]draw.Point{run}, Closed: true, Fill: fill, Stroke: stroke})
	if letters != " " {
		upright(sub, (x+right-flagNotch)/2, y+FlagHeight/2, letters, fontLetter, ink, draw.Middle)
	}
	return sub
}
