package bands

import (
	"fmt"
	"slices"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/sheet"
)

// The ruler of the record, under that of shot time, in millimetres.
const (
	recordStrip = 1.4 // height of what is hatched
	recordText  = 3.6 // from the line of the ruler to the foot of its texts
	joinApart   = 0.7 // between the two lines of a join
	joinAir     = 0.8 // beside a label
)

// drawRecord draws what the cut shows of a shot: its removed stretches hatched, and the
// ends of its pieces as upright double lines with their record times on both sides.
func (sh *Leaf) drawRecord(g *draw.Group, y float64) {
	w := sh.Window
	shown := plan.Shown(sh.Shot.Pieces)
	var taken []draw.Box
	for i, u := range shown {
		for _, end := range []struct {
			t    float64
			edge bool // of the shot: nothing is cut there
			side draw.Align
		}{{u.From, i == 0, draw.Start}, {u.To, i == len(shown)-1, draw.End}} {
			if end.t < w.from-1e-9 || end.t > w.Ends()+1e-9 {
				continue
			}
			if x := w.X(end.t); !end.edge {
				sh.drawJoin(g, x, y)
			}
			taken = sh.label(g, w.X(end.t), y, sh.recordLabel(end.t, end.side), end.side, taken)
		}
	}
	at := 0.0
	for _, u := range append(shown, plan.Stretch{From: float64(sh.Shot.Duration)}) {
		if from, to := max(at, w.from), min(u.From, w.Ends()); to-from > 1e-6 {
			sh.drawRemoved(g, from, to, u.From-at, y, taken)
		}
		at = max(at, u.To)
	}
}

// recordLabel returns the record time of an end of what is shown: of an end, that of
// the first frame that is no longer there.
func (sh *Leaf) recordLabel(t float64, side draw.Align) string {
	s := sh.Shot
	if i := slices.IndexFunc(s.Pieces, func(p plan.Piece) bool { return side == draw.Start && float64(p.From) == t && p.Speed > 0 }); i >= 0 {
		return s.Pieces[i].RecordIn
	}
	if i := slices.IndexFunc(s.Pieces, func(p plan.Piece) bool { return side == draw.End && float64(p.To) == t && p.Speed > 0 }); i >= 0 {
		return s.Pieces[i].RecordOut
	}
	return s.Timecode(t)
}

// drawJoin draws the double line of a join through all bands.
func (sh *Leaf) drawJoin(g *draw.Group, x, y float64) {
	_, bottom := sh.Span()
	for _, off := range []float64{-joinApart / 2, joinApart / 2} {
		g.Line(x+off, y-1.2, x+off, max(bottom, y+recordText), draw.Solid(draw.Grey, draw.FineWidth))
	}
}

// label writes a record time beside x, if it has room there; it returns what is taken.
func (sh *Leaf) label(g *draw.Group, x, y float64, text string, side draw.Align, taken []draw.Box) []draw.Box {
	long := sheet.FontSmall.Room(text)
	x += joinAir
	if side == draw.End {
		x -= 2*joinAir + long
	}
	if text == "" || x < sh.Window.Left || x+long > sh.Paper.W-sheet.Margin || slices.ContainsFunc(taken, func(b draw.Box) bool { return x < b.X+b.W+joinAir && b.X < x+long+joinAir }) {
		return taken
	}
	g.Add(draw.NewText(x, y+recordText, text, sheet.FontSmall, draw.Grey))
	return append(taken, draw.Box{X: x, Y: y, W: long, H: recordText})
}

// drawRemoved hatches a stretch that is not in the cut, and says how long it is.
func (sh *Leaf) drawRemoved(g *draw.Group, from, to, long, y float64, taken []draw.Box) {
	a, b := sh.Window.X(from), sh.Window.X(to)
	outline := []draw.Point{{X: a, Y: y}, {X: b, Y: y}, {X: b, Y: y + recordStrip}, {X: a, Y: y + recordStrip}}
	g.Add(draw.Path{Runs: draw.Hatch(outline, sheet.HatchPitch, sheet.HatchLeast), Stroke: draw.Solid(draw.Black, draw.HatchWidth)})
	text := fmt.Sprintf("removed %s", sheet.Figures.Time(long))
	room := sheet.FontSmall.Room(text)
	x := (a + b - room) / 2
	if room+2*joinAir > b-a || slices.ContainsFunc(taken, func(t draw.Box) bool { return x < t.X+t.W+joinAir && t.X < x+room+joinAir }) {
		return
	}
	g.Add(draw.NewText(x, y+recordText, text, sheet.FontSmall, draw.Black))
}
