// What stands below the bands of a difference: what changed besides pulls, and
// the table of the pulls that changed.

package render

import (
	"fmt"

	"pullscore/render/draw"
)

const (
	tellLines = 6    // that a text may take
	signRoom  = 15.0 // of the table, for numbers
	pullRoom  = 58.0 // for whom a pull goes to
	landRoom  = 54.0 // for when it lands
)

// foot returns the sections below the bands.
func (df *differ) foot() []section { return append(df.notes(), df.table()...) }

// notes returns what changed besides pulls, two phrases side by side.
func (df *differ) notes() []section {
	left := margin + signRoom
	width := (df.main.paper.W - margin - left - columnGap) / 2
	head := section{name: "notes", least: footAir, draw: func(_ *sheet, g *draw.Group, top, _ float64) {
		g.Add(draw.NewText(margin, top+footAir+2.7, "Besides", fontHeading, draw.Black))
	}}
	var all []section
	for i := 0; i < len(df.Notes); i += 2 {
		var cells [2][]draw.Text
		for k := range min(2, len(df.Notes)-i) {
			cells[k] = wrapText(arrows(df.Notes[i+k]), width, tellLines)
		}
		height := sentencePitch*float64(max(len(cells[0]), len(cells[1]))) + 0.6
		all = append(all, section{name: "notes", least: height, most: height, head: &head,
			draw: func(_ *sheet, g *draw.Group, top, _ float64) {
				setLines(g, cells[0], left, top+2.7, sentencePitch)
				setLines(g, cells[1], left+width+columnGap, top+2.7, sentencePitch)
			}})
	}
	return all
}

// setLines sets lines of text under one another.
func setLines(g *draw.Group, lines []draw.Text, x, base, pitch float64) {
	for k, t := range lines {
		t.At = draw.Point{X: x, Y: base + float64(k)*pitch}
		if t.String != "" {
			g.Add(t)
		}
	}
}

// table returns a section for every pull that changed, and a line on the rest.
func (df *differ) table() []section {
	changes := df.changes()
	right := df.main.paper.W - margin
	head := section{name: "pulls", least: footAir + 4.6, draw: func(_ *sheet, g *draw.Group, top, _ float64) {
		base := top + footAir + 2.9
		g.Add(draw.NewText(margin, base, "Pulls", fontHeading, draw.Black))
		g.Add(draw.NewText(margin+signRoom+pullRoom, base, "lands", fontSmall, draw.Grey))
		g.Add(draw.NewText(margin+signRoom+pullRoom+landRoom, base, "what changed", fontSmall, draw.Grey))
		g.Line(margin, top+footAir+4.6, right, top+footAir+4.6, solid(draw.Black, thin))
	}}
	var all []section
	for _, c := range changes {
		all = append(all, df.tableRow(c, &head))
	}
	if n := len(df.Pulls) - len(changes); n > 0 && df.verdict() == "" {
		text := plural(n, "pull") + " unchanged"
		all = append(all, section{name: "pulls", least: cellPitch + 1.1, most: cellPitch + 1.1, head: &head, draw: func(_ *sheet, g *draw.Group, top, _ float64) {
			g.Add(draw.NewText(margin+signRoom, top+3.1, text, fontNote, draw.Grey))
		}})
	}
	return all
}

// tableRow returns the row of a pull.
func (df *differ) tableRow(c *PullChange, head *section) section {
	s := df.After
	if c.After == nil {
		s = df.Before
	}
	tells := arrows(c.Text)
	if tells == "" && df.both() {
		tells = "new"
		if c.After == nil {
			tells = "gone"
		}
	}
	textRoom := df.main.paper.W - 2*margin - signRoom - pullRoom - landRoom
	name := wrapText(pullName(s, c.pull()), pullRoom-cellGap, cellLines)
	told := wrapText(tells, textRoom, tellLines)
	height := cellPitch*float64(max(len(name), len(told))) + 1.1
	return section{name: "pulls", least: height, most: height, head: head,
		draw: func(sh *sheet, g *draw.Group, top, height float64) {
			base := top + 3.1
			c.drawBadges(g, margin, base-fontNote.Middle())
			setLines(g, name, margin+signRoom, base, cellPitch)
			land := draw.NewText(margin+signRoom+pullRoom, base, df.lands(c), fontNote, draw.Black)
			g.Add(land.Shortened(landRoom - cellGap))
			setLines(g, told, margin+signRoom+pullRoom+landRoom, base, cellPitch)
			g.Line(margin, top+height, sh.paper.W-margin, top+height, solid(draw.Pale, hair))
		}}
}

// lands says when and on which frame a pull lands, before and after.
func (df *differ) lands(c *PullChange) string {
	var times, frames []string
	for side, p := range c.states() {
		if p != nil {
			times = append(times, df.when(side, float64(p.Land)))
			frames = append(frames, fmt.Sprint(p.LandFrame))
		}
	}
	return turned(times) + ", frame " + turned(frames)
}

// when writes a moment of the shot in a state.
func (df *differ) when(side int, t float64) string {
	if tc := df.shots()[side].Timecode(t); tc != "" {
		return tc
	}
	return hundredths(t)
}
