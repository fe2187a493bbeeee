// The first band of a difference: who speaks and what happens. What changed is
// there twice, as it was above as it is.

package difference

import (
	"math"
	"slices"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/score/bands"
	"pullscore/render/score/lines"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

// A diffRow is one strip of the band: of what was before only what is not so
// any more.
type diffRow struct {
	name     string
	was, now *lines.Row
	old      *lines.Row   // all of before
	fresh    map[int]bool // which of now was not so before
}

// linesBand returns a section for every row of a sheet.
func (df *differ) linesBand(i int) []bands.Section {
	head := bands.Section{Name: "lines", Least: bands.LaneAir, Most: bands.LaneAir, OverTime: true,
		Draw: func(_ *bands.Leaf, g *draw.Group, top, _ float64) {
			g.Add(draw.NewText(sheet.Margin, top+bands.LaneAir+lines.TextBase, "Lines", sheet.FontHeading, draw.Black))
		}}
	var all []bands.Section
	for _, r := range df.rows(i) {
		height := 0.0
		for _, one := range []*lines.Row{r.was, r.now} {
			if len(one.Said) > 0 {
				height += one.Height()
			}
		}
		all = append(all, bands.Section{Name: "lines", Least: height, Most: height, Head: &head, OverTime: true,
			Draw: func(sh *bands.Leaf, g *draw.Group, top, _ float64) { df.drawRow(sh, g, r, i, top) }})
	}
	return all
}

// rows pairs what is on a sheet in the two states: speakers in the order in
// which they speak now, then action, on one row where it has room on it.
func (df *differ) rows(i int) []*diffRow {
	var speech, action [2][]*lines.Row
	for side := range df.sides {
		if w := df.window(side, i); w != nil {
			speech[side], action[side] = lines.Speech(w), lines.Action(w)
		}
	}
	pairs := append(pairRows(speech), pairRows(action)...)
	pairs = slices.DeleteFunc(pairs, func(r *diffRow) bool { return len(r.was.Said)+len(r.now.Said) == 0 })
	for _, r := range pairs {
		for side, one := range []*lines.Row{r.was, r.now} {
			if len(one.Said) > 0 {
				one.Set(df.window(side, i))
			}
		}
	}
	return pairs
}

// pairRows pairs the rows of two states by their names.
func pairRows(rows [2][]*lines.Row) []*diffRow {
	var pairs []*diffRow
	named := func(list []*lines.Row, name string) *lines.Row {
		if i := slices.IndexFunc(list, func(r *lines.Row) bool { return r.Name == name }); i >= 0 {
			return list[i]
		}
		return &lines.Row{Name: name}
	}
	for _, r := range rows[after] {
		pairs = append(pairs, newDiffRow(r.Name, named(rows[before], r.Name), r))
	}
	for _, r := range rows[before] {
		if !slices.ContainsFunc(rows[after], func(o *lines.Row) bool { return o.Name == r.Name }) {
			pairs = append(pairs, newDiffRow(r.Name, r, &lines.Row{Name: r.Name}))
		}
	}
	return pairs
}

// speakerRoom is the room of a row's name: the band's heading stands before the
// first of them.
const speakerRoom = 22.0

// newDiffRow takes from what was before all that is the same now.
func newDiffRow(name string, was, now *lines.Row) *diffRow {
	name = sheet.FontBody.Shorten(draw.Clean(name), speakerRoom)
	r := &diffRow{name: name, old: was, was: &lines.Row{Name: name, Said: slices.Clone(was.Said)}, now: &lines.Row{Name: name, Said: now.Said}, fresh: map[int]bool{}}
	for k, u := range now.Said {
		if i := slices.IndexFunc(r.was.Said, func(o lines.Utterance) bool { return sameAs(u, o) }); i >= 0 {
			r.was.Said = slices.Delete(r.was.Said, i, i+1)
		} else {
			r.fresh[k] = true
		}
	}
	return r
}

// sameAs reports whether two utterances are alike, to a hundredth of a second.
func sameAs(u, o lines.Utterance) bool {
	const least = 0.005
	return math.Abs(u.Start-o.Start) < least && math.Abs(u.End-o.End) < least && u.Cue == o.Cue &&
		slices.EqualFunc(u.Words, o.Words, func(a, b plan.Word) bool { return a.Text == b.Text })
}

// drawRow draws what was, and under it what is.
func (df *differ) drawRow(sh *bands.Leaf, g *draw.Group, r *diffRow, i int, top float64) {
	if len(r.was.Said) > 0 {
		name := sheet.FontBody.Shorten("was "+r.name, speakerRoom)
		if len(r.now.Said) > 0 {
			name = "before"
		}
		drawWas(r.was, sh, df.window(before, i), g.Group(signs.Before), name, top)
		top += r.was.Height()
	}
	if len(r.now.Said) == 0 {
		return
	}
	r.now.Draw(sh, g.Group("after"), top)
}

// drawWas writes a row as it was: grey, over grey lines.
func drawWas(r *lines.Row, sh *bands.Leaf, w *bands.Window, g *draw.Group, name string, top float64) {
	base := top + lines.TextBase
	sh.RowHead(g, base, name)
	for i, u := range r.Said {
		ug := g.Group("said")
		ug.Title = u.Title
		lane := r.LaneBase(base, i)
		if u.Cue {
			ug.Add(draw.Disc{Centre: draw.Point{X: w.X(u.Start), Y: lane - sheet.FontBody.Middle()}, Radius: 0.75, Fill: draw.Paper, Stroke: was})
		} else {
			ug.Line(w.X(u.Start), lane+lines.Underline, w.X(u.End), lane+lines.Underline, was)
		}
		for _, run := range r.Runs {
			if run.Said == i {
				t := r.Text(run, base)
				t.Ink = draw.Grey
				ug.Add(t)
			}
		}
	}
}
