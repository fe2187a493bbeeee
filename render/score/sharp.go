// The third band of a score: a bar for each subject, full while it is sharp.
// Where it goes soft the bar thins as the disc of blur grows: at four times the
// disc it is half as high.

package score

import (
	"math"

	"pullscore/render/draw"
	"pullscore/render/score/bands"
	"pullscore/render/sheet"
)

// Discs of blur on the screen, in units of the largest that is sharp: faint up
// to 4.6 arcmin where sharp is up to 2, seen beyond; and where a bar ends.
const (
	faintUpTo = 4.6 / 2
	goneAt    = 36.0
)

// sharpBand returns a section for every subject.
func sharpBand(w *bands.Window) []bands.Section {
	head := w.Lane("sharp", "Sharp")
	var all []bands.Section
	for k := range w.Shot.Subjects {
		all = append(all, bands.Section{Name: "sharp", Least: 3.6, Most: 5.6, Head: &head, OverTime: true,
			Draw: func(sh *bands.Leaf, g *draw.Group, top, height float64) { drawBar(sh, g, k, top, height) }})
	}
	return all
}

// drawBar draws the bar of a subject.
func drawBar(sh *bands.Leaf, g *draw.Group, k int, top, height float64) {
	w := sh.Window
	y := top + height/2
	sh.RowHead(g, y+sheet.FontBody.Middle(), sh.Shot.Subjects[k].Name)
	bg := g.Group("bar")
	bg.Title = sh.Shot.Subjects[k].Name
	bg.Line(w.Left, y, w.Right, y, sheet.Solid(draw.Mid, sheet.Hair))
	half := min(height*0.3, 1.5)
	bar := blurBar{t: w.Curves.T, blur: w.Curves.Blur[k]}
	for _, part := range []struct {
		from, to float64
		ink      draw.Ink
	}{{faintUpTo, goneAt, draw.Pale}, {1, faintUpTo, draw.Mid}, {0, 1, draw.Black}} {
		var runs [][]draw.Point
		for _, piece := range bar.between(part.from, part.to) {
			runs = append(runs, barRun(w, piece, y, half))
		}
		if len(runs) > 0 {
			bg.Add(draw.Path{Runs: runs, Closed: true, Fill: part.ink})
		}
	}
	drawOut(bg, w, sh.Shot.Subjects[k], y, half)
}

// A blurBar is a subject's blur at times.
type blurBar struct{ t, blur []float64 }

// A blurAt is a moment of it.
type blurAt struct{ t, blur float64 }

// between returns the stretches with the blur from lo to hi, cut where it
// crosses them (linearly between samples).
func (b blurBar) between(lo, hi float64) [][]blurAt {
	var pieces [][]blurAt
	var piece []blurAt
	flush := func() {
		if len(piece) > 1 {
			pieces = append(pieces, piece)
		}
		piece = nil
	}
	for i := 1; i < len(b.t); i++ {
		p, q := blurAt{b.t[i-1], b.blur[i-1]}, blurAt{b.t[i], b.blur[i]}
		from, to, ok := clip(p, q, lo, hi)
		if !ok {
			flush()
			continue
		}
		if len(piece) == 0 || piece[len(piece)-1].t != from.t {
			flush()
			piece = append(piece, from)
		}
		piece = append(piece, to)
	}
	flush()
	return pieces
}

// clip returns the part of the step from p to q whose blur is from lo to hi.
func clip(p, q blurAt, lo, hi float64) (from, to blurAt, ok bool) {
	if !sheet.Finite(p.blur) || !sheet.Finite(q.blur) || max(p.blur, q.blur) < lo || min(p.blur, q.blur) > hi {
		return from, to, false
	}
	cut := func(at float64) blurAt {
		u := (at - p.blur) / (q.blur - p.blur)
		return blurAt{p.t + u*(q.t-p.t), at}
	}
	from, to = p, q
	for _, end := range []*blurAt{&from, &to} {
		if end.blur < lo {
			*end = cut(lo)
		} else if end.blur > hi {
			*end = cut(hi)
		}
	}
	return from, to, to.t > from.t
}

// barRun returns the outline of a piece of a bar round the line y.
func barRun(w *bands.Window, piece []blurAt, y, half float64) []draw.Point {
	upper, lower := make([]draw.Point, len(piece)), make([]draw.Point, len(piece))
	for i, p := range piece {
		h := half / math.Sqrt(max(1, p.blur))
		upper[i], lower[i] = draw.Point{X: w.X(p.t), Y: y - h}, draw.Point{X: w.X(p.t), Y: y + h}
	}
	return sheet.Between(sheet.Simplify(upper), sheet.Simplify(lower))
}
