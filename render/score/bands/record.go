package bands

import (
	"math"
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

	removedPitch = 3.2 // of the hatch of a narrowed stretch through the bands
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
				sh.join(x, y)
			}
			taken = sh.label(g, w.X(end.t), y, sh.recordLabel(end.t, end.side), end.side, taken)
		}
	}
	for _, t := range handovers(sh.Shot.Pieces) {
		if t > w.from+1e-9 && t < w.Ends()-1e-9 {
			sh.join(w.X(t), y)
			taken = sh.label(g, w.X(t), y, sh.recordLabel(t, draw.Start), draw.Start, taken)
		}
	}
	for _, u := range removed(sh.Shot) {
		if from, to := max(u.From, w.from), min(u.To, w.Ends()); to-from > 1e-6 {
			sh.drawRemoved(g, from, to, u.To-u.From, y, taken)
		}
	}
}

// removed returns the stretches of a shot that the cut does not show, where it shows it
// otherwise than in one run.
func removed(s *plan.Shot) (list []plan.Stretch) {
	if !s.Recut() {
		return nil
	}
	at := 0.0
	for _, u := range append(plan.Shown(s.Pieces), plan.Stretch{From: float64(s.Duration)}) {
		if u.From-at > 1e-6 {
			list = append(list, plan.Stretch{From: at, To: u.From})
		}
		at = max(at, u.To)
	}
	return list
}

// spans returns where time lies between two heights of a sheet.
func (w *Window) spans(top, bottom float64) (list []draw.Span) {
	parts := w.axis.Parts(w.from, w.to)
	for i := 1; i < len(parts); i++ {
		from, to := parts[i-1], parts[i]
		list = append(list, draw.Span{From: from, To: to, Left: w.X(from), Right: w.X(to), Top: top, Bottom: bottom, Narrow: w.Narrowed(from, to)})
	}
	return list
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

// handovers returns the times at which the cut goes from one piece to the next, and the shot
// goes on: in another take, or at another speed.
func handovers(pieces []plan.Piece) (list []float64) {
	for i := 1; i < len(pieces); i++ {
		before, p := &pieces[i-1], &pieces[i]
		if before.Speed > 0 && p.Speed > 0 && math.Abs(float64(p.From-before.To)) < 1e-6 {
			list = append(list, float64(p.From))
		}
	}
	return list
}

// join has the double line of a join drawn through all bands, under all else.
func (sh *Leaf) join(x, y float64) {
	_, bottom := sh.Span()
	for _, off := range []float64{-joinApart / 2, joinApart / 2} {
		sh.joins = append(sh.joins, plumb{x + off, y - 1.2, max(bottom, y+recordText)})
	}
}

// drawJoins draws the lines of joins, with gaps for texts.
func (sh *Leaf) drawJoins(texts []draw.Box) {
	for _, p := range sh.joins {
		from := p.from
		for _, gap := range append(p.gaps(texts), [2]float64{p.to, p.to}) {
			if gap[0] > from {
				sh.Plumbs.Line(p.x, from, p.x, gap[0], draw.Solid(draw.Grey, draw.FineWidth))
			}
			from = max(from, gap[1])
		}
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

// drawRemoved hatches a stretch that is not in the cut, and says how long it is: where it
// is narrowed over and under the ruler, since it has no seconds.
func (sh *Leaf) drawRemoved(g *draw.Group, from, to, long, y float64, taken []draw.Box) {
	a, b := sh.Window.X(from), sh.Window.X(to)
	narrow := sh.Window.Narrowed(from, to)
	if top, bottom := sh.Span(); narrow {
		column := []draw.Point{{X: a, Y: top}, {X: b, Y: top}, {X: b, Y: bottom}, {X: a, Y: bottom}}
		g.Add(draw.Path{Runs: draw.Hatch(column, removedPitch, sheet.HatchLeast), Stroke: draw.Solid(draw.Mid, draw.HatchWidth)})
	}
	outline := []draw.Point{{X: a, Y: y}, {X: b, Y: y}, {X: b, Y: y + recordStrip}, {X: a, Y: y + recordStrip}}
	g.Add(draw.Path{Runs: draw.Hatch(outline, sheet.HatchPitch, sheet.HatchLeast), Stroke: draw.Solid(draw.Black, draw.HatchWidth)})
	length := sheet.Figures.Time(long)
	if !narrow {
		sh.between(g, a, b, y+recordText, "removed "+length, taken)
		return
	}
	sh.between(g, a-joinAir, b+joinAir, y-1.9, removedWord, nil)
	sh.between(g, a, b, y+recordText, length, taken)
}

// between writes a text in the middle between two places, if it has room there.
func (sh *Leaf) between(g *draw.Group, a, b, y float64, text string, taken []draw.Box) {
	room := sheet.FontSmall.Room(text)
	x := (a + b - room) / 2
	if room+2*joinAir > b-a+1e-9 || slices.ContainsFunc(taken, func(t draw.Box) bool { return x < t.X+t.W+joinAir && t.X < x+room+joinAir }) {
		return
	}
	g.Add(draw.NewText(x, y, text, sheet.FontSmall, draw.Black))
}

// removedWord stands over the ruler where a stretch is narrowed.
const removedWord = "removed"

// within reports whether a time lies inside of a stretch that is narrowed.
func (w *Window) within(t float64) bool {
	_, inside := w.axis.Within(t)
	return inside
}

// Away reports whether a pull lies in a stretch that is narrowed: it counts for where the
// focus is, and there is no room for its figures.
func (w *Window) Away(p *plan.Pull) bool { return w.Narrowed(float64(p.Start), float64(p.Land)) }

// besideRemoved reports whether a label of the ruler, with its middle at x, would run into
// the word over a stretch that is narrowed.
func (w *Window) besideRemoved(x, room float64) bool {
	word := sheet.FontSmall.Room(removedWord)
	return slices.ContainsFunc(w.axis.Narrow(), func(s plan.Stretch) bool {
		if s.To <= w.from || s.From >= w.Ends() {
			return false
		}
		middle := (w.X(s.From) + w.X(s.To)) / 2
		return math.Abs(x-middle) < (word+room)/2+joinAir
	})
}
