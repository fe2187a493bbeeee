// What stands round the bands of a difference: the title, what the two states
// are called, and the key.

package difference

import (
	"math"
	"slices"

	"pullscore/render/draw"
	"pullscore/render/score/bands"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

// drawAround draws what stands round the bands of a sheet.
func (df *differ) drawAround(sh *bands.Sheet, root *draw.Group, number int) {
	df.drawHead(sh, root.Group("head"), number)
	for _, lf := range sh.Leaves {
		if lf.Window == nil {
			continue
		}
		df.drawEnd(lf, root.Group("end"))
		lf.Plumbs = root.Group("plumb-lines")
		lf.DrawRuler(root.Group("ruler"))
	}
	sh.DrawCaution(root.Group("caution"))
}

// drawHead writes what the shot is, and what its states are called.
func (df *differ) drawHead(sh *bands.Sheet, g *draw.Group, number int) {
	f := sheet.Folio{Paper: "changes", Number: number, Of: len(sh.Sheets), Scale: sheet.Joined([]string{df.running(), sh.Scaled()})}
	sheet.DrawHeadOf(g, sheet.Heading{Name: sh.Shot.ID, Title: sh.Shot.Title}, sh.Paper, f)
	room := sh.Paper.W - 2*sheet.Margin - sheet.FontBody.Room(f.Scale) - 4
	names, x := g.Group("states"), sheet.Margin
	for side, label := range []string{"before: ", "after: "} {
		if df.sides[side] == nil {
			label = []string{"was not in ", "is not in "}[side]
		} else {
			drawState(names, x, sheet.HeadBase+sheet.HeadPitch-sheet.FontBody.Middle(), side)
			x += stateSign
		}
		text := draw.NewText(x, sheet.HeadBase+sheet.HeadPitch, label, sheet.FontBody, draw.Grey)
		name := draw.NewText(text.Room().Right()+1, text.At.Y, df.Names[side], sheet.FontStrong, draw.Black)
		name = sheet.ShortenedFront(name, sheet.Margin+room*float64(side+1)/2-8-name.At.X)
		names.Add(text, name)
		x = name.Room().Right() + 8
	}
}

// stateSign is the room of the sign for a state before its name.
const stateSign = 12.0

// drawState draws how a state is drawn: its line and how it lands.
func drawState(g *draw.Group, x, y float64, side int) {
	if side == before {
		g.Group(signs.Before).Line(x, y, x+8, y, was)
	} else {
		g.Line(x, y, x+8, y, draw.Solid(draw.Black, draw.FocusWidth))
	}
	landing(g, draw.Point{X: x + 8, Y: y}, side)
}

// running says how fast and how long the shot runs, before and after.
func (df *differ) running() string {
	var rates, times []string
	for _, s := range df.shots() {
		if s != nil {
			rates = append(rates, s.Rate.String()+" fps")
			times = append(times, sheet.Figures.Time(float64(s.Duration)))
		}
	}
	return turned(rates) + " · " + turned(times)
}

// turned writes what was and what is, once where they are the same.
func turned(figures []string) string {
	if figures = slices.Compact(figures); len(figures) == 1 {
		return figures[0]
	}
	return figures[0] + " → " + figures[1]
}

// earlyEnd returns the state in which the shot ends before the other does, and
// when; ok is false where none does.
func (df *differ) earlyEnd() (side int, t float64, ok bool) {
	if !df.both() {
		return 0, 0, false
	}
	was, now := bands.Lasting(df.Before), bands.Lasting(df.After)
	if side = before; now < was {
		side = after
	}
	return side, min(was, now), math.Abs(now-was) > 0.005
}

// drawEnd draws where the shorter shot ends.
func (df *differ) drawEnd(sh *bands.Leaf, g *draw.Group) {
	if side, t, ok := df.earlyEnd(); ok && sh.Window.Holds(t) {
		stroke := draw.Solid(draw.Black, draw.RulerWidth)
		if side == before {
			g, stroke = g.Group(signs.Before), was
		}
		x := sh.Window.X(t)
		for _, p := range sh.Strips {
			if p.Name == "distance" || p.Name == "hand" {
				g.Line(x, p.Top+bands.LaneHeight, x, p.Top+p.Height, stroke)
			}
		}
	}
}

// blockEnd keeps texts off that line.
func (df *differ) blockEnd(c *sheet.Clearing, w *bands.Window) {
	if _, t, ok := df.earlyEnd(); ok && w.Holds(t) {
		c.BlockAt(w.X(t))
	}
}

// endSign returns the word over that line.
func (df *differ) endSign(sh *bands.Leaf, top float64) []bands.Sign {
	side, t, ok := df.earlyEnd()
	if !ok || !sh.Window.Holds(t) {
		return nil
	}
	text := draw.NewText(0, 0, []string{"ended", "ends"}[side], sheet.FontSmall, []draw.Ink{draw.Grey, draw.Black}[side]).Aligned(draw.Middle)
	return []bands.Sign{{At: sh.Window.X(t), Width: text.Room().W + 1.2, Rank: 4, Draw: func(g *draw.Group, x float64) {
		y := top + bands.LaneAir + bands.FlagLane/2
		sh.Pole(g, x, y+text.Box().H/2, sh.Window.X(t), top)
		text.At = draw.Point{X: x, Y: y + sheet.FontSmall.Middle()}
		g.Add(text)
	}}}
}
