// What stands in words over the bands of a score: the notes of the plan.

package score

import (
	"pullscore/render/draw"
	"pullscore/render/score/bands"
	"pullscore/render/score/table"
	"pullscore/render/sheet"
)

// notesBand returns a section for every line of the shot's notes, for the first window.
func notesBand(w *bands.Window) []bands.Section {
	if !w.Holds(0) {
		return nil
	}
	var lines []string
	for _, note := range w.Shot.Notes {
		lines = append(lines, sheet.FontNote.Wrap(note, w.Paper.W-sheet.Margin-w.Left)...)
	}
	return inWords("notes", "Notes", lines, w.Left)
}

// inWords returns a section for every line, the first with a heading.
func inWords(name, heading string, lines []string, left float64) (all []bands.Section) {
	const height = table.SentencePitch + 0.3
	for i, line := range lines {
		all = append(all, bands.Section{Name: name, Least: height, Most: height, Draw: func(_ *bands.Leaf, g *draw.Group, top, _ float64) {
			if i == 0 {
				g.Add(draw.NewText(sheet.Margin, top+2.9, heading, sheet.FontHeading, draw.Black))
			}
			g.Add(draw.NewText(left, top+2.9, line, sheet.FontNote, draw.Black))
		}})
	}
	return all
}
