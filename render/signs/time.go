// Signs of time: cues, words that moves hang on, and lines with dashes.

package signs

import "pullscore/render/draw"

func timeSigns() []Sign {
	return []Sign{
		{Cue, "cue", "cue", 2.6, func(g *draw.Group, x, y float64) { DrawCue(g, x+CueHalf, y, "") }},
		{Word, "a move hangs on it", "a move hangs on it", fontLetter.Room("word"), func(g *draw.Group, x, y float64) {
			upright(g.Group(Word), x, y, "word", fontLetter, draw.Black, draw.Start)
		}},
		{Plumb, "from word or cue to the hand", "down to the hand", 1.8, func(g *draw.Group, x, y float64) { DrawPlumb(g, x+0.9, y-1.7, y+1.7) }},
	}
}

// lineSigns are the lines whose dashes say how sure something is.
func lineSigns() []Sign {
	return []Sign{
		{Estimated, "estimated or assumed", "estimated", 6, stroked(Estimated, 6, draw.Assumed(draw.Black))},
		{Assumed, "a value assumed", "assumed", fontLetter.Room("≈"), func(g *draw.Group, x, y float64) {
			upright(g.Group(Assumed), x, y, "≈", fontLetter, draw.Black, draw.Start)
		}},
		{Pause, "pause", "pause", 6, stroked(Pause, 6, draw.Unsaid(draw.Black))},
	}
}

// CueHalf is half of the diagonal of a cue, in millimetres.
const CueHalf = 1.3

// DrawCue draws a cue with its middle at (x, y), and its name to the right of it.
func DrawCue(g *draw.Group, x, y float64, name string) {
	sub := g.Group(Cue)
	filled(sub, draw.Black, pt(x, y-CueHalf), pt(x+CueHalf, y), pt(x, y+CueHalf), pt(x-CueHalf, y))
	if name != "" {
		upright(sub, x+CueHalf+0.6, y, name, fontLetter, draw.Black, draw.Start)
	}
}

// DrawPlumb draws a plumb at x: a triangle that points down from top, and a line to foot.
// The line stops above each of the gaps and goes on below it; they are in order.
func DrawPlumb(g *draw.Group, x, top, foot float64, gaps ...[2]float64) {
	const head, least = 0.85, 0.4
	sub := g.Group(Plumb)
	filled(sub, draw.Black, pt(x-0.9, top), pt(x+0.9, top), pt(x, top+head))
	for _, gap := range append(gaps, [2]float64{foot, foot}) {
		if gap[0]-top >= least {
			sub.Line(x, top, x, gap[0], draw.Solid(draw.Black, draw.RulerWidth))
		}
		top = max(top, gap[1])
	}
}
