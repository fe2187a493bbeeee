// What stands in words over and under the bands of a score besides findings: the notes of
// the plan, and the cures tried together.

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

// togetherBand returns what the cures leave if they are tried together.
func togetherBand(sc *bands.Chart) []bands.Section {
	said := sc.Shot.SaysTogether()
	if said == "" || len(sc.Shot.Together) == 0 {
		return nil
	}
	const height = table.SentencePitch + 0.3
	label := draw.NewText(sc.Left, 0, "Tried together:", sheet.FontStrong, draw.Cure)
	at := label.Room().Right() + 1.6
	var all []bands.Section
	for i, line := range sheet.FontNote.Wrap(said, sc.Paper.W-sheet.Margin-at) {
		all = append(all, bands.Section{Name: "findings", Least: height, Most: height, Head: findingsHead(sc), Draw: func(_ *bands.Leaf, g *draw.Group, top, _ float64) {
			if i == 0 {
				label.At.Y = top + 2.9
				g.Add(label)
			}
			g.Add(draw.NewText(at, top+2.9, line, sheet.FontNote, draw.Black))
		}})
	}
	return all
}
