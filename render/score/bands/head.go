// What stands round the bands of a score: the title, the ruler of time and the
// columns of the moves.

package bands

import (
	"fmt"
	"math"

	"pullscore/interp/units"
	"pullscore/render/draw"
	"pullscore/render/score/gutter"
	"pullscore/render/score/times"
	"pullscore/render/sheet"
)

// DrawHead writes what the shot is, which page of which paper this is, and its scale.
func (sh *Sheet) DrawHead(g *draw.Group, paper string, number int, back string) {
	sheet.DrawHead(g, sh.Shot, sh.Paper, sheet.Folio{Paper: paper, Number: number, Of: len(sh.Sheets) + sh.Ahead, Scale: sh.Scaled(), Back: back})
}

// Scaled says which time the sheet shows, and to what scale.
func (sh *Sheet) Scaled() string {
	scale := sheet.Figures.Number(sh.PerSecond, 0) + " mm/s"
	from, to, ok := sh.Shows()
	switch {
	case !ok:
		return ""
	case sh.screen != nil:
		return scale
	case len(sh.Windows) > 1:
		return fmt.Sprintf("%s to %s s · %s on every sheet", sheet.Figures.Number(from, 1), sheet.Figures.Number(to, 1), scale)
	case sh.inFrames():
		return scale + " · ruler in frames"
	}
	return scale
}

// PageLine says which page this is and what time it shows.
func (sh *Sheet) PageLine(number int) string {
	line := fmt.Sprintf("page %d of %d", number, len(sh.Sheets))
	if from, to, ok := sh.Shows(); ok && len(sh.Windows) > 1 {
		line += fmt.Sprintf(" · %s to %s s", sheet.Figures.Number(from, 1), sheet.Figures.Number(to, 1))
	}
	return line
}

// Shows returns the time that the sheet shows, in seconds; ok is false if it shows none.
func (sh *Sheet) Shows() (from, to float64, ok bool) {
	for _, lf := range sh.Leaves {
		if w := lf.Window; w != nil {
			if !ok {
				from, ok = w.from, true
			}
			to = w.to
		}
	}
	return from, to, ok
}

// inFrames reports whether a shot is so short that its ruler counts frames.
func (sc *Chart) inFrames() bool { return sc.Seconds < 1 }

// DrawRuler draws the time: seconds above the line, frames as ticks, timecode
// below it where the shot begins at one.
func (sh *Leaf) DrawRuler(g *draw.Group) {
	w := sh.Window
	y := sh.Edge + 3.7
	g.Line(w.Left, y, w.Right, y, draw.Solid(draw.Black, draw.RulerWidth))
	step := sh.drawTicks(g, y)
	tick := draw.NewText(w.Left-gutter.HeadGap, y+sheet.FontSmall.Middle(), "tick "+units.Count(int(step), "frame"), sheet.FontSmall, draw.Grey)
	g.Add(tick.Aligned(draw.End))
	if sh.inFrames() {
		sh.drawFrames(g, y)
	} else {
		sh.drawSeconds(g, y)
	}
	if sh.Shot.Recut() {
		sh.drawRecord(g, y)
	}
	if at := sh.Shot.Speed(); at.Off() {
		sh.drawScreen(g, y+screenRuler)
	}
}

// drawFrames numbers frames: so many between two labels that those are 12 mm apart.
func (sh *Leaf) drawFrames(g *draw.Group, y float64) {
	const apart = 12
	w, at := sh.Window, sh.Shot.Speed()
	step := int64(2)
	for step < 1<<20 && (at.Seconds(step)-at.Seconds(0))*sh.PerSecond < apart {
		step *= 2
	}
	for f := int64(0); at.Seconds(f) <= w.to+1e-9; f += step {
		if w.within(at.Seconds(f)) {
			continue
		}
		x := w.X(at.Seconds(f))
		g.Line(x, y, x, y-1.2, draw.Solid(draw.Black, draw.RulerWidth))
		if label := fmt.Sprintf("%d fr", f); !w.besideRemoved(x, sheet.FontSmall.Room(label)) {
			g.Add(draw.NewText(x, y-1.9, label, sheet.FontSmall, draw.Grey).Aligned(draw.Middle))
		}
	}
}

// drawSeconds numbers seconds, and writes the timecode of some.
func (sh *Leaf) drawSeconds(g *draw.Group, y float64) {
	w := sh.Window
	every := times.LabelStep(sh.PerSecond, sheet.FontSmall.Room(sh.clock(w.Ends()))+3)
	codes := 0.0
	if sh.Shot.BeginsAt != "" && !sh.Shot.Recut() {
		codes = math.Ceil((sheet.FontSmall.Room(sh.Shot.BeginsAt)+3)/sh.PerSecond/every) * every
	}
	for n := math.Ceil(w.from - 1e-9); n <= w.Ends()+1e-9; n++ {
		if w.within(n) {
			continue
		}
		x := w.X(n)
		g.Line(x, y, x, y-1.2, draw.Solid(draw.Black, draw.RulerWidth))
		if math.Mod(n, every) == 0 && !w.besideRemoved(x, sheet.FontSmall.Room(sh.clock(n))) {
			g.Add(draw.NewText(x, y-1.9, sh.clock(n), sheet.FontSmall, draw.Grey).Aligned(draw.Middle))
		}
		if codes > 0 && math.Mod(n, codes) == 0 && x+sheet.FontSmall.Room(sh.Shot.BeginsAt) < sh.Paper.W-sheet.Margin {
			g.Add(draw.NewText(x+0.8, y+3.6, sh.Shot.Timecode(n), sheet.FontSmall, draw.Grey))
		}
	}
}

// clock writes a whole second of the ruler: with minutes in a shot that lasts some.
func (sc *Chart) clock(seconds float64) string {
	if sc.Seconds < 60 {
		return sheet.Figures.Number(seconds, 0) + " s"
	}
	whole := int(seconds)
	return fmt.Sprintf("%d:%02d", whole/60, whole%60)
}

// drawTicks draws the frames that the camera takes, and returns how many there are from
// tick to tick.
func (sh *Leaf) drawTicks(g *draw.Group, y float64) (step int64) {
	w, at := sh.Window, sh.Shot.Speed()
	base := sh.Shot.Rate.Base()
	if at.Off() {
		base = max(1, int64(math.Round(at.Shoots)))
	}
	step = times.TickStep(base, sh.PerSecond/float64(base))
	first := int64(math.Ceil(float64(at.Frames(w.from)) / float64(step)))
	for f := first * step; at.Seconds(f) <= w.Ends()+1e-9; f += step {
		if f%base != 0 && !w.within(at.Seconds(f)) {
			x := w.X(at.Seconds(f))
			g.Line(x, y, x, y-0.7, draw.Solid(draw.Mid, draw.GuideWidth))
		}
	}
	return step
}

// screenRuler is the height of the second ruler, millimetres.
const screenRuler = 8.2

// rulers returns the height of the rulers: of a shot whose camera runs at another speed
// there are two.
func (sh *Leaf) rulers() float64 {
	switch {
	case sh.Window == nil:
		return 0
	case sh.Shot.Speed().Off():
		return rulerHeight + screenRuler
	}
	return rulerHeight
}

// drawScreen draws the time that the audience sees: seconds of the screen over the set
// time of the window.
func (sh *Leaf) drawScreen(g *draw.Group, y float64) {
	w, at := sh.Window, sh.Shot.Speed()
	perSecond := sh.PerSecond / at.Factor()
	g.Line(w.Left, y, w.Right, y, draw.Solid(draw.Mid, draw.RulerWidth))
	every := times.LabelStep(perSecond, sheet.FontSmall.Room(sheet.Figures.Number(at.Screen(w.Ends()), 0)+" s")+3)
	tick := times.LabelStep(perSecond, 1)
	for n := math.Ceil(at.Screen(w.from)/tick-1e-9) * tick; n <= at.Screen(w.Ends())+1e-9; n += tick {
		if w.within(at.Set(n)) {
			continue
		}
		x := w.X(at.Set(n))
		g.Line(x, y, x, y-1.2, draw.Solid(draw.Mid, draw.RulerWidth))
		if math.Mod(n, every) == 0 {
			g.Add(draw.NewText(x, y-1.9, sheet.Figures.Number(n, 0)+" s", sheet.FontSmall, draw.Grey).Aligned(draw.Middle))
		}
	}
	g.Add(draw.NewText(w.Left-gutter.HeadGap, y+sheet.FontSmall.Middle(), "screen", sheet.FontSmall, draw.Grey).Aligned(draw.End))
}

// DrawMoves draws a column for every move of the focus through the bands, from
// its start to its landing.
func (sh *Leaf) DrawMoves(g *draw.Group) {
	w := sh.Window
	top, bottom := sh.Span()
	if !w.last { // what the next window shows again
		g.Add(draw.Rect{Box: draw.Box{X: w.X(w.to), Y: top, W: w.Right - w.X(w.to), H: bottom - top}, Fill: draw.Body})
	}
	for _, p := range sh.Shot.Pulls {
		from, to := float64(p.Start), float64(p.Land)
		if !w.Overlaps(from, to) || p.Kind == "follow" {
			continue
		}
		box := draw.Box{X: w.X(from), Y: top, W: w.X(to) - w.X(from), H: bottom - top}
		g.Add(draw.Rect{Box: box, Fill: draw.Faint})
		if w.Holds(to) {
			g.Line(w.X(to), top, w.X(to), bottom, draw.Solid(draw.Pale, draw.GuideWidth))
		}
	}
}
