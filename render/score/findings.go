// The sentences of the findings below the bands of a score.

package score

import (
	"strconv"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/score/bands"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

// A sentenceLine is one printed line of a finding.
type sentenceLine struct {
	time   string // on its first line
	timeAt float64
	text   string
	at     float64 // of the text, from the column's left
	ink    draw.Ink
	flag   *plan.Flag // on its first line
}

// findings returns the sentences of findings, two side by side, a section for
// every printed line so that none is ever cut.
func findings(sc *bands.Chart, flags []plan.Flag) []bands.Section {
	width := (sc.Paper.W - sheet.Margin - sc.Left - bands.ColumnGap) / 2
	head := bands.Section{Name: "findings", Least: bands.FootAir, Draw: func(sh *bands.Leaf, g *draw.Group, top, _ float64) {
		g.Add(draw.NewText(sheet.Margin, top+bands.FootAir+2.7, "Findings", sheet.FontHeading, draw.Black))
	}}
	var all []bands.Section
	for i := 0; i < len(flags); i += 2 {
		left := sentence(sc, &flags[i], width)
		var right []sentenceLine
		if i+1 < len(flags) {
			right = sentence(sc, &flags[i+1], width)
		}
		count := max(len(left), len(right))
		for k := range count {
			height, together, told := bands.SentencePitch, 0, []int(nil)
			if k == count-1 {
				height += 1
			}
			if k == 0 && count <= mostTogether {
				together = count - 1
			}
			for _, column := range [][]sentenceLine{left, right} {
				if k < len(column) && column[k].flag != nil {
					told = append(told, column[k].flag.Number)
				}
			}
			all = append(all, bands.Section{Name: "findings", Least: height, Most: height, Head: &head, Together: together, Flags: told,
				Draw: func(_ *bands.Leaf, g *draw.Group, top, _ float64) {
					if k < len(left) {
						left[k].draw(g, sc.Left, top)
					}
					if k < len(right) {
						right[k].draw(g, sc.Left+width+bands.ColumnGap, top)
					}
				}})
		}
	}
	return all
}

// mostTogether is how many lines are kept on one sheet.
const mostTogether = 12

// timeIndent is where the times of findings stand, right of their flags.
func timeIndent(sc *bands.Chart) float64 {
	widest := 0.0
	for i := range sc.Shot.Flags {
		widest = max(widest, signs.FlagWidth(strconv.Itoa(sc.Shot.Flags[i].Number)))
	}
	return max(7.5, widest+2)
}

// sentence wraps a finding: when it is and what is wrong, then what cures it.
func sentence(sc *bands.Chart, f *plan.Flag, width float64) []sentenceLine {
	indent := timeIndent(sc)
	at := indent
	for i := range sc.Shot.Flags {
		at = max(at, indent+sheet.FontNote.Room(sheet.When(sc.Shot, sc.Shot.Flags[i].Time))+2)
	}
	var lines []sentenceLine
	add := func(text string, ink draw.Ink) {
		for _, line := range sheet.FontNote.Wrap(text, width-at) {
			lines = append(lines, sentenceLine{text: line, at: at, ink: ink})
		}
	}
	add(f.Text, draw.Black)
	if f.Cures != "" {
		add("Cure: "+f.Cures, draw.Leaf)
	}
	lines[0].flag, lines[0].time, lines[0].timeAt = f, sheet.When(sc.Shot, f.Time), indent
	return lines
}

func (l sentenceLine) draw(g *draw.Group, x, top float64) {
	base := top + 2.7
	if l.flag != nil {
		signs.DrawFlag(g, x, base-sheet.FontNote.Middle()-bands.FlagHeight/2, l.flag.Severity, strconv.Itoa(l.flag.Number))
		g.Add(draw.NewText(x+l.timeAt, base, l.time, sheet.FontNote, draw.Grey))
	}
	g.Add(draw.NewText(x+l.at, base, l.text, sheet.FontNote, l.ink))
}
