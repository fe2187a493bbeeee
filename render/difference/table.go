// What stands below the bands of a difference: what changed besides pulls, and
// the table of the pulls that changed.

package difference

import (
	"fmt"
	"strings"

	"pullscore/interp/units"
	"pullscore/render/draw"
	"pullscore/render/score/bands"
	"pullscore/render/score/table"
	"pullscore/render/sheet"
)

const (
	tellLines = 6    // that a text may take
	signRoom  = 15.0 // of the table, for numbers
	pullRoom  = 58.0 // for whom a pull goes to
)

// notes returns what changed besides pulls, two phrases side by side.
func (df *differ) notes() []bands.Section {
	left := sheet.Margin + signRoom
	width := (df.main.Paper.W - sheet.Margin - left - table.ColumnGap) / 2
	head := bands.Section{Name: "notes", Least: table.FootAir, Draw: func(_ *bands.Leaf, g *draw.Group, top, _ float64) {
		g.Add(draw.NewText(sheet.Margin, top+table.FootAir+2.7, "Besides", sheet.FontHeading, draw.Black))
	}}
	var all []bands.Section
	for i := 0; i < len(df.Notes); i += 2 {
		var cells [2][]draw.Text
		for k := range min(2, len(df.Notes)-i) {
			cells[k] = wrapPhrases(arrows(df.Notes[i+k]), width)
		}
		height := table.SentencePitch*float64(max(len(cells[0]), len(cells[1]))) + 0.6
		all = append(all, bands.Section{Name: "notes", Least: height, Most: height, Head: &head,
			Draw: func(_ *bands.Leaf, g *draw.Group, top, _ float64) {
				setLines(g, cells[0], left, top+2.7, table.SentencePitch)
				setLines(g, cells[1], left+width+table.ColumnGap, top+2.7, table.SentencePitch)
			}})
	}
	return all
}

// wrapPhrases breaks a text into lines, after its commas as far as they go.
func wrapPhrases(text string, width float64) []draw.Text {
	var lines []string
	line := ""
	for _, phrase := range strings.SplitAfter(draw.Clean(text), ", ") {
		if sheet.FontNote.Room(line+strings.TrimRight(phrase, " ")) <= width {
			line += phrase
			continue
		}
		wrapped := sheet.FontNote.Wrap(phrase, width)
		if line != "" {
			lines = append(lines, strings.TrimRight(line, " "))
		}
		lines = append(lines, wrapped[:len(wrapped)-1]...)
		if line = wrapped[len(wrapped)-1]; strings.HasSuffix(phrase, " ") {
			line += " "
		}
	}
	return table.SetWrapped(append(lines, strings.TrimRight(line, " ")), text, width, tellLines)
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

// A diffTable is where the columns of the table stand.
type diffTable struct {
	*differ
	landsAt, tellsAt float64 // from the left
	says             bool    // there is something to tell of its pulls
}

// table returns a section for every one of these changes.
func (df *differ) table(changes []*PullChange) []bands.Section {
	t := diffTable{differ: df, landsAt: sheet.Margin + signRoom + pullRoom}
	for _, c := range changes {
		t.tellsAt = max(t.tellsAt, t.landsAt+sheet.FontNote.Room(df.lands(c))+2*table.CellGap)
		t.says = t.says || df.tells(c) != ""
	}
	head := bands.Section{Name: "pulls", Least: table.FootAir + 4.6, Draw: t.drawHead}
	var all []bands.Section
	for _, c := range changes {
		name := table.WrapText(sheet.PullName(df.shots()[c.side()], c.pull()), pullRoom-table.CellGap, table.CellLines)
		told := wrapPhrases(df.tells(c), df.main.Paper.W-sheet.Margin-t.tellsAt)
		height := table.CellPitch*float64(max(len(name), len(told))) + 1.1
		all = append(all, bands.Section{Name: "pulls", Least: height, Most: height, Head: &head,
			Draw: func(sh *bands.Leaf, g *draw.Group, top, height float64) {
				base := top + 3.1
				c.drawBadges(g, sheet.Margin, base-sheet.FontNote.Middle())
				setLines(g, name, sheet.Margin+signRoom, base, table.CellPitch)
				g.Add(draw.NewText(t.landsAt, base, df.lands(c), sheet.FontNote, draw.Black))
				setLines(g, told, t.tellsAt, base, table.CellPitch)
				g.Line(sheet.Margin, top+height, sh.Paper.W-sheet.Margin, top+height, draw.Solid(draw.Guide, draw.GuideWidth))
			}})
	}
	return all
}

func (t *diffTable) drawHead(sh *bands.Leaf, g *draw.Group, top, _ float64) {
	base := top + table.FootAir + 2.9
	g.Add(draw.NewText(sheet.Margin, base, "Pulls", sheet.FontHeading, draw.Black))
	g.Add(draw.NewText(t.landsAt, base, "lands", sheet.FontSmall, draw.Grey))
	if t.says {
		g.Add(draw.NewText(t.tellsAt, base, "what changed", sheet.FontSmall, draw.Grey))
	}
	g.Line(sheet.Margin, top+table.FootAir+4.6, sh.Paper.W-sheet.Margin, top+table.FootAir+4.6, draw.Solid(draw.Black, draw.RulerWidth))
}

// rest says how many pulls are as they were.
func (df *differ) rest() []bands.Section {
	n := len(df.Pulls) - len(df.changes())
	if n == 0 || df.verdict() != "" {
		return nil
	}
	text := units.Count(n, "pull") + " unchanged"
	const height = 5.0
	return []bands.Section{{Name: "rest", Least: height, Most: height, Draw: func(_ *bands.Leaf, g *draw.Group, top, _ float64) {
		g.Add(draw.NewText(sheet.Margin+signRoom, top+3.9, text, sheet.FontNote, draw.Grey))
	}}}
}

// side returns the state that has the pull, the later one if both have.
func (c *PullChange) side() int {
	if c.After == nil {
		return before
	}
	return after
}

// tells is what the table says of a change.
func (df *differ) tells(c *PullChange) string {
	switch {
	case c.Text != "" || !df.both():
		return arrows(c.Text)
	case c.After == nil:
		return "gone"
	}
	return "new"
}

// lands says when and on which frame a pull lands, before and after.
func (df *differ) lands(c *PullChange) string {
	var times, frames []string
	for side, p := range c.states() {
		if p == nil {
			continue
		}
		t := float64(p.Land)
		if df.shots()[side].BeginsAt != "" {
			times = append(times, df.shots()[side].Timecode(t))
		} else {
			times = append(times, sheet.Figures.TimeFixed(t))
		}
		frames = append(frames, fmt.Sprint(p.LandFrame))
	}
	return turned(times) + ", frame " + turned(frames)
}
