// The third band of a score: a bar for each subject while it is sharp, black as high as
// the chance that it is so on the day; a low grey bar while it is faintly soft.

package score

import (
	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/score/bands"
	"pullscore/render/sheet"
	"pullscore/render/signs"
	"slices"
)

// faintUpTo is the blur up to which somebody is faintly soft, in units of the largest that
// is sharp: 4.6 arcmin where sharp is up to 2.
const faintUpTo = 4.6 / 2

// The height of a row, in millimetres; flags stand above its bar.
const (
	sharpLeast = 5.2
	sharpMost  = 7.2
	barFoot    = 1.0 // below the bar
)

// sharpBand returns a section for every subject, the farthest first.
func sharpBand(w *bands.Window) []bands.Section {
	height := bands.LaneAir + w.HeadRoom()
	head := bands.Section{Name: "sharp", Least: height, Most: height, OverTime: true,
		Draw: func(_ *bands.Leaf, g *draw.Group, top, _ float64) {
			if w.Narrow() {
				g.Add(draw.NewText(sheet.Margin, top+height-1.2, "Sharp", sheet.FontHeading, draw.Black))
			}
		}}
	var all []bands.Section
	own, others := gathered(w)
	for i, k := range own {
		least := sharpLeast
		if w.Tight() {
			least = barFoot + signs.BarHeight + 0.2
		}
		if len(w.FlagsOf(w.Shot.Subjects[k].Name)) > 0 {
			least = barFoot + signs.BarHeight + bands.FlagHeight + 1.2
		}
		all = append(all, bands.Section{Name: "sharp", Least: least, Most: max(least, sharpMost), Head: &head, OverTime: true,
			Draw: func(sh *bands.Leaf, g *draw.Group, top, height float64) {
				drawRow(sh, g, w.Shot.Subjects[k], k, i == 0, top+height-barFoot)
			}})
	}
	if len(others) > 0 {
		all = append(all, bands.Section{Name: "sharp", Least: sharpLeast, Most: sharpMost, Head: &head, OverTime: true,
			Draw: func(sh *bands.Leaf, g *draw.Group, top, height float64) {
				drawOthers(sh, g, others, top+height-barFoot)
			}})
	}
	return all
}

// drawRow draws the row of a subject, its bar standing on base.
func drawRow(sh *bands.Leaf, g *draw.Group, u *plan.Subject, k int, first bool, base float64) {
	w := sh.Window
	row := g.Group(signs.Row)
	row.Title = u.Name
	text := base - signs.BarHeight/2 + sheet.FontBody.Middle()
	if first && !w.Narrow() {
		row.Add(draw.NewText(sheet.Margin, text, "Sharp", sheet.FontHeading, draw.Black))
	}
	sh.RowHead(row, text, u.Name)
	row.Line(w.Left, base, w.Right, base, draw.Solid(draw.Soft, draw.DashWidth))
	bar := blurBar{t: w.Curves.T, blur: w.Curves.Blur[k]}
	faint, sharp := bar.between(1, faintUpTo), bar.between(0, 1)
	for _, piece := range faint {
		signs.DrawFaint(row, w.X(piece[0].t), w.X(piece[len(piece)-1].t), base)
	}
	for i, piece := range sharp {
		last := drawSharp(row, w, u, piece, base)
		from, to := w.X(last.t), w.Paper.W-sheet.Margin
		for _, f := range faint {
			if f[0].t == last.t {
				from = w.X(f[len(f)-1].t)
			}
		}
		if i+1 < len(sharp) {
			to = w.X(sharp[i+1][0].t)
		}
		if !passes(w.Shot, piece[0].t, last.t) && !w.Narrowed(piece[0].t, last.t) {
			writeChance(row, w.Shot, last, from, to, base)
		}
	}
	drawBehind(row, w, u, base)
	drawOut(row, w, u, base-signs.BarHeight/2, signs.BarHeight/2)
	sh.DrawFlags(row, w.FlagsOf(u.Name), base-signs.BarHeight-0.9-bands.FlagHeight, nil)
}

// passes reports whether a rack is on its way all the time between two: the focus only
// goes by, and nobody asks how surely.
func passes(s *plan.Shot, from, to float64) bool {
	return slices.ContainsFunc(s.Pulls, func(p *plan.Pull) bool {
		return p.Kind == "rack" && float64(p.Start) < from && to < float64(p.Land)
	})
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
