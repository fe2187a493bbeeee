// What stands round the bands of a score: the title, the ruler of time and the
// columns of the moves.

package bands

import (
	"fmt"
	"math"
	"slices"

	"pullscore/interp/units"
	"pullscore/render/draw"
	"pullscore/render/sheet"
)

// DrawHead writes what the shot is and which page this is.
func (sh *Leaf) DrawHead(g *draw.Group, number int) {
	right := []string{fmt.Sprintf("%s fps · %s", sh.Shot.Rate, sheet.Figures.Time(float64(sh.Shot.Duration)))}
	if screen := sh.Shot.OnScreen(float64(sh.Shot.Duration)); screen.Known() {
		right[0] += fmt.Sprintf(", %s on the screen", sheet.Figures.Time(float64(screen)))
	}
	if len(sh.Sheets) > 1 {
		right = append(right, sh.PageLine(number))
	}
	sheet.DrawPageHead(g, sh.Shot, sh.Paper, right...)
}

// PageLine says which page this is and what time it shows.
func (sh *Leaf) PageLine(number int) string {
	line := fmt.Sprintf("page %d of %d", number, len(sh.Sheets))
	if w := sh.Window; w != nil && len(sh.Windows) > 1 {
		line += fmt.Sprintf(" · %s to %s s", sheet.Figures.Number(w.from, 1), sheet.Figures.Number(w.to, 1))
	}
	if elsewhere := sh.ToldOn(number); len(elsewhere) > 0 {
		line += " · findings on " + sheet.NounOf(len(elsewhere), "page") + " " + sheet.JoinNumbers(elsewhere)
	}
	return line
}

// ToldOn returns the numbers of the other pages on which findings of this page
// are told.
func (sh *Leaf) ToldOn(number int) (pages []int) {
	if sh.Window == nil {
		return nil
	}
	here := map[int]bool{} // the flags of this page
	for _, f := range sh.Shot.Flags {
		if sh.Window.Holds(f.Time) {
			here[f.Number] = true
		}
	}
	for i, other := range sh.Sheets {
		tells := slices.ContainsFunc(other.Strips, func(p placed) bool {
			return slices.ContainsFunc(p.Flags, func(flag int) bool { return here[flag] })
		})
		if tells && i+1 != number {
			pages = append(pages, i+1)
		}
	}
	return pages
}

// DrawRuler draws the time: seconds above the line, frames as ticks, timecode
// below it where the shot begins at one.
func (sh *Leaf) DrawRuler(g *draw.Group) {
	w := sh.Window
	y := sheet.Edge + sheet.HeadHeight + 3.7
	perSecond := (w.Right - w.Left) / (w.to - w.from)
	g.Line(w.Left, y, w.Right, y, sheet.Solid(draw.Black, sheet.Thin))

	step := sh.drawTicks(g, y)
	every := labelStep(perSecond, sheet.FontSmall.Room(sheet.Figures.Number(w.to, 0)+" s")+3)
	codes := 0.0
	if sh.Shot.BeginsAt != "" {
		codes = math.Ceil((sheet.FontSmall.Room(sh.Shot.BeginsAt)+3)/perSecond/every) * every
	}
	for n := math.Ceil(w.from - 1e-9); n <= w.to+1e-9; n++ {
		x := w.X(n)
		g.Line(x, y, x, y+1.6, sheet.Solid(draw.Black, sheet.Thin))
		if math.Mod(n, every) == 0 {
			g.Add(draw.NewText(x, y-1.1, sheet.Figures.Number(n, 0)+" s", sheet.FontSmall, draw.Grey).Aligned(draw.Middle))
		}
		if codes > 0 && math.Mod(n, codes) == 0 && x+sheet.FontSmall.Room(sh.Shot.BeginsAt) < sh.Paper.W-sheet.Margin {
			g.Add(draw.NewText(x+0.8, y+3.6, sh.Shot.Timecode(n), sheet.FontSmall, draw.Grey))
		}
	}
	tick := draw.NewText(w.Left-HeadGap, y+sheet.FontSmall.Middle(), "tick "+units.Count(int(step), "frame"), sheet.FontSmall, draw.Grey)
	g.Add(tick.Aligned(draw.End))
	if at := sh.Shot.Speed(); at.Off() {
		sh.drawScreen(g, y+screenRuler)
	}
}

// drawTicks draws the frames that the camera takes, and returns how many there are from
// tick to tick.
func (sh *Leaf) drawTicks(g *draw.Group, y float64) (step int64) {
	w, at := sh.Window, sh.Shot.Speed()
	base := sh.Shot.Rate.Base()
	if at.Off() {
		base = max(1, int64(math.Round(at.Shoots)))
	}
	step = tickStep(base, (w.Right-w.Left)/(w.to-w.from)/float64(base))
	first := int64(math.Ceil(float64(at.Frames(w.from)) / float64(step)))
	for f := first * step; at.Seconds(f) <= w.to+1e-9; f += step {
		if f%base != 0 {
			x := w.X(at.Seconds(f))
			g.Line(x, y, x, y+0.8, sheet.Solid(draw.Mid, sheet.Hair))
		}
	}
	return step
}

// screenRuler is the height of the second ruler, millimetres.
const screenRuler = 8.2

// rulers returns the height of the rulers: of a shot whose camera runs at another speed
// there are two.
func (sh *Leaf) rulers() float64 {
	if sh.Shot.Speed().Off() {
		return rulerHeight + screenRuler
	}
	return rulerHeight
}

// drawScreen draws the time that the audience sees: seconds of the screen over the set
// time of the window.
func (sh *Leaf) drawScreen(g *draw.Group, y float64) {
	w, at := sh.Window, sh.Shot.Speed()
	perSecond := (w.Right - w.Left) / (w.to - w.from) / at.Factor()
	g.Line(w.Left, y, w.Right, y, sheet.Solid(draw.Mid, sheet.Thin))
	every := labelStep(perSecond, sheet.FontSmall.Room(sheet.Figures.Number(at.Screen(w.to), 0)+" s")+3)
	tick := labelStep(perSecond, 1)
	for n := math.Ceil(at.Screen(w.from)/tick-1e-9) * tick; n <= at.Screen(w.to)+1e-9; n += tick {
		x := w.X(at.Set(n))
		g.Line(x, y, x, y+1.6, sheet.Solid(draw.Mid, sheet.Thin))
		if math.Mod(n, every) == 0 {
			g.Add(draw.NewText(x, y-1.1, sheet.Figures.Number(n, 0)+" s", sheet.FontSmall, draw.Grey).Aligned(draw.Middle))
		}
	}
	g.Add(draw.NewText(w.Left-HeadGap, y+sheet.FontSmall.Middle(), "screen", sheet.FontSmall, draw.Grey).Aligned(draw.End))
}

// tickStep returns the frames between two ticks: the smallest divisor of a
// second's frames that keeps them a millimetre apart.
func tickStep(base int64, perFrame float64) int64 {
	for step := int64(1); step < base; step++ {
		if base%step == 0 && float64(step)*perFrame >= 1 {
			return step
		}
	}
	return base
}

// labelStep returns the seconds between two labels of that width.
func labelStep(perSecond, width float64) float64 {
	for _, step := range []float64{1, 2, 5, 10, 15, 30, 60, 120, 300, 600, 1200} {
		if step*perSecond >= width {
			return step
		}
	}
	return 3600
}

// DrawMoves draws a column for every move of the focus through the bands, from
// its start to its landing.
func (sh *Leaf) DrawMoves(g *draw.Group) {
	w := sh.Window
	top, bottom := sh.span()
	top += LaneAir
	for _, p := range sh.Shot.Pulls {
		from, to := float64(p.Start), float64(p.Land)
		if !w.overlaps(from, to) {
			continue
		}
		if p.Kind != "follow" {
			box := draw.Box{X: w.X(from), Y: top, W: w.X(to) - w.X(from), H: bottom - top}
			g.Add(draw.Rect{Box: box, Fill: draw.Faint})
		}
		for _, t := range []float64{from, to} {
			if w.Holds(t) {
				g.Line(w.X(t), top, w.X(t), bottom, sheet.Dashed(draw.Mid, sheet.Hair, 0.4, 0.8))
			}
		}
	}
}
