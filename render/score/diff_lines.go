// The first band of a difference: who speaks and what happens. What changed is
// there twice, as it was above as it is.

package score

import (
	"math"
	"slices"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/sheet"
)

// A diffRow is one strip of the band: of what was before only what is not so
// any more.
type diffRow struct {
	name     string
	was, now *row
	old      *row         // all of before
	fresh    map[int]bool // which of now was not so before
}

// linesBand returns a section for every row of a sheet.
func (df *differ) linesBand(i int) []section {
	head := section{name: "lines", least: laneAir, most: laneAir, overTime: true,
		draw: func(_ *leaf, g *draw.Group, top, _ float64) {
			g.Add(draw.NewText(sheet.Margin, top+laneAir+textBase, "Lines", sheet.FontHeading, draw.Black))
		}}
	var all []section
	for _, r := range df.rows(i) {
		height := 0.0
		for _, one := range []*row{r.was, r.now} {
			if len(one.said) > 0 {
				height += one.height()
			}
		}
		all = append(all, section{name: "lines", least: height, most: height, head: &head, overTime: true,
			draw: func(sh *leaf, g *draw.Group, top, _ float64) { df.drawRow(sh, g, r, i, top) }})
	}
	return all
}

// rows pairs what is on a sheet in the two states: speakers in the order in
// which they speak now, then action, on one row where it has room on it.
func (df *differ) rows(i int) []*diffRow {
	var speech, action [2][]*row
	for side := range df.sides {
		if w := df.window(side, i); w != nil {
			speech[side], action[side] = w.speech(), w.action()
		}
	}
	pairs := append(pairRows(speech), df.joined(pairRows(action), i)...)
	pairs = slices.DeleteFunc(pairs, func(r *diffRow) bool { return len(r.was.said)+len(r.now.said) == 0 })
	for _, r := range pairs {
		for side, one := range []*row{r.was, r.now} {
			if len(one.said) > 0 {
				one.set(df.window(side, i))
			}
		}
	}
	return pairs
}

// joined returns rows of action with those in one that have room on it together
// in both states.
func (df *differ) joined(rows []*diffRow, i int) []*diffRow {
	var list []*diffRow
	for _, r := range rows {
		if len(r.old.said)+len(r.now.said) == 0 {
			continue
		}
		rest, all := list, newDiffRow("action", r.old, r.now)
		if last := len(list) - 1; last >= 0 {
			o := list[last]
			rest, all = list[:last], newDiffRow("action", gather([]*row{o.old, r.old}), gather([]*row{o.now, r.now}))
		}
		if df.onOneLane(all, i) {
			list = append(rest, all)
		} else {
			list = append(list, r)
		}
	}
	return list
}

// onOneLane reports whether a row needs no more than a lane for either state.
func (df *differ) onOneLane(r *diffRow, i int) bool {
	for side, one := range []*row{r.was, r.now} {
		if len(one.said) == 0 {
			continue
		}
		if one.set(df.window(side, i)); !one.apart() || one.lanes > 1 {
			return false
		}
	}
	return true
}

// pairRows pairs the rows of two states by their names.
func pairRows(rows [2][]*row) []*diffRow {
	var pairs []*diffRow
	named := func(list []*row, name string) *row {
		if i := slices.IndexFunc(list, func(r *row) bool { return r.name == name }); i >= 0 {
			return list[i]
		}
		return &row{name: name}
	}
	for _, r := range rows[after] {
		pairs = append(pairs, newDiffRow(r.name, named(rows[before], r.name), r))
	}
	for _, r := range rows[before] {
		if !slices.ContainsFunc(rows[after], func(o *row) bool { return o.name == r.name }) {
			pairs = append(pairs, newDiffRow(r.name, r, &row{name: r.name}))
		}
	}
	return pairs
}

// speakerRoom is the room of a row's name: the band's heading stands before the
// first of them.
const speakerRoom = 22.0

// newDiffRow takes from what was before all that is the same now.
func newDiffRow(name string, was, now *row) *diffRow {
	name = sheet.FontBody.Shorten(draw.Clean(name), speakerRoom)
	r := &diffRow{name: name, old: was, was: &row{name: name, said: slices.Clone(was.said)}, now: &row{name: name, said: now.said}, fresh: map[int]bool{}}
	for k, u := range now.said {
		if i := slices.IndexFunc(r.was.said, u.sameAs); i >= 0 {
			r.was.said = slices.Delete(r.was.said, i, i+1)
		} else {
			r.fresh[k] = true
		}
	}
	return r
}

// sameAs reports whether two utterances are alike, to a hundredth of a second.
func (u utterance) sameAs(o utterance) bool {
	const least = 0.005
	return math.Abs(u.start-o.start) < least && math.Abs(u.end-o.end) < least && u.cue == o.cue &&
		slices.EqualFunc(u.words, o.words, func(a, b plan.Word) bool { return a.Text == b.Text })
}

// drawRow draws what was, and under it what is.
func (df *differ) drawRow(sh *leaf, g *draw.Group, r *diffRow, i int, top float64) {
	if len(r.was.said) > 0 {
		name := sheet.FontBody.Shorten("was "+r.name, speakerRoom)
		if len(r.now.said) > 0 {
			name = "before"
		}
		r.was.drawWas(sh, df.window(before, i), g.Group("before"), name, top)
		top += r.was.height()
	}
	if len(r.now.said) == 0 {
		return
	}
	ng := g.Group("after")
	r.now.draw(sh, ng, top)
	if !df.both() {
		return
	}
	w := df.window(after, i)
	for k, u := range r.now.said {
		if r.fresh[k] && !u.cue {
			under := r.now.laneBase(top+textBase, k) + underline
			ng.Line(w.x(u.start), under, w.x(u.end), under, sheet.Solid(draw.Black, accent/2))
		}
	}
}

// drawWas writes the row as it was: grey, over dashed lines.
func (r *row) drawWas(sh *leaf, w *window, g *draw.Group, name string, top float64) {
	base := top + textBase
	sh.rowHead(g, base, name)
	for i, u := range r.said {
		ug := g.Group("said")
		ug.Title = u.title
		lane := r.laneBase(base, i)
		if u.cue {
			ug.Add(draw.Disc{Centre: draw.Point{X: w.x(u.start), Y: lane - sheet.FontBody.Middle()}, Radius: 0.75, Fill: draw.Paper, Stroke: sheet.Solid(draw.Grey, sheet.Thin)})
		} else {
			ug.Line(w.x(u.start), lane+underline, w.x(u.end), lane+underline, beforeThin)
		}
		for _, run := range r.runs {
			if run.said == i {
				t := r.text(run, base)
				t.Ink = draw.Grey
				sh.clearOfPlumbs(ug, t.Box())
				ug.Add(t)
			}
		}
	}
}
