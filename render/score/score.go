// The score: one shot against time, read like music for the hand. Its bands
// share one ruler: lines, distance, sharpness, hand; findings and the table of
// pulls stand below.

package score

import (
	"fmt"
	"slices"

	"pullscore/interp/moments"
	"pullscore/interp/plan"
	"pullscore/interp/units"
	"pullscore/render/draw"
	"pullscore/render/score/bands"
	"pullscore/render/score/hand"
	"pullscore/render/score/lines"
	"pullscore/render/score/overview"
	"pullscore/render/sheet"
)

// Score draws the shot. A shot that is longer, or fuller, than a sheet can
// show goes on over more pages, each with the row heads repeated.
func Score(shot *plan.Shot, opt sheet.Options) []*draw.Page {
	sc := bands.NewChart(shot, opt.Size())
	compose(sc)
	cells := timed(sc)
	if len(cells) < 2 { // one sheet is an overview of itself
		return linked(sc.Draw("score", describe(sc), drawAround, drawLegend))
	}
	sc.Ahead = overview.Pages(shot, sc.Paper)
	for i := range cells {
		cells[i].Number += sc.Ahead
		cells[i].ID = sheet.PageID(shot, "score", cells[i].Number)
	}
	var pages []*draw.Page
	for i := range sc.Ahead {
		pages = append(pages, overview.Page(sc, cells, i, sc.Ahead+len(sc.Sheets)))
	}
	return linked(append(pages, sc.Draw("score", describe(sc), drawAround, drawLegend)...))
}

// linked takes away the links to discs for which a full lane had no room.
func linked(pages []*draw.Page) []*draw.Page {
	draw.Unlink(pages...)
	return pages
}

// Findings draws of the score the sheets that tell findings in words.
func Findings(shot *plan.Shot, opt sheet.Options) []*draw.Page {
	var told []*draw.Page
	for _, p := range Score(shot, opt) {
		if slices.ContainsFunc(p.Root.Items, func(it draw.Item) bool {
			g, ok := it.(*draw.Group)
			return ok && g.Name == "findings" && len(g.Items) > 0
		}) {
			told = append(told, p)
		}
	}
	draw.Unlink(told...)
	return told
}

// timed returns the sheets that show time of their own, by their numbers among them.
func timed(sc *bands.Chart) (cells []overview.Cell) {
	for i, sh := range sc.Sheets {
		from, to, ok := sh.Shows()
		if n := len(cells); ok && (n == 0 || from >= cells[n-1].To) {
			cells = append(cells, overview.Cell{Number: i + 1, From: from, To: to})
		}
	}
	return cells
}

// handSystems is how many windows a sheet of the hand alone shows.
const handSystems = 4

// compose lays everything on sheets.
func compose(sc *bands.Chart) {
	apart := sc.Tight() // the hand is on sheets of its own
	for _, w := range sc.Windows {
		all := bandsOf(w)
		if apart {
			all = all[:len(all)-1]
		}
		sc.Lay(w, all)
	}
	if apart && sc.Shot.Optics.Ring != nil {
		sc.Begin(handSystems)
		for _, w := range sc.Windows {
			sc.Lay(w, []bands.Section{lines.HandAlone(w)})
		}
	}
	sc.Lay(nil, findings(sc))
	sc.Lay(nil, pullTable(sc))
}

// drawAround draws what stands round the bands of a score.
func drawAround(sh *bands.Sheet, root *draw.Group, number int) {
	back := ""
	if sh.Ahead > 0 {
		back = sheet.PageID(sh.Shot, "score", 1)
	}
	sh.DrawHead(root.Group("head"), paperOf(sh), number, back)
	for _, lf := range sh.Leaves {
		if lf.Window == nil {
			continue
		}
		lf.DrawMoves(root.Group("moves"))
		drawJoints(lf, root)
		lf.Plumbs = root.Group("plumb-lines")
		lf.DrawRuler(root.Group("ruler"))
	}
	if sh.OnScreen() {
		return // they come after a legend of any height
	}
	sh.DrawCaution(root.Group("caution"))
}

// paperOf returns the name of the paper that a sheet belongs to, by what stands first on it.
func paperOf(sh *bands.Sheet) string {
	for _, of := range [][2]string{{"distance", "score"}, {"sharp", "score"}, {"hand", "hand"}, {"findings", "findings"}} {
		if _, _, ok := sh.Leaves[0].Reach(of[0]); ok {
			return of[1]
		}
	}
	return "score"
}

// bandsOf returns the rows of a window from top to bottom.
func bandsOf(w *bands.Window) []bands.Section {
	all := append(notesBand(w), lines.Band(w)...)
	all = append(all, w.DistanceBand())
	all = append(all, sharpBand(w)...)
	all = append(all, cameraBand(w)...)
	return append(all, hand.Section(w))
}

// describe says in a sentence what the score shows.
func describe(sc *bands.Chart) string {
	s := sc.Shot
	text := fmt.Sprintf("Shot %s, %s long, against time: %s, %s, %s and %s of the focus",
		sheet.ShotName(s), sheet.Figures.Time(float64(s.Duration)), units.Count(len(s.Lines), "spoken line"),
		units.Count(len(s.Cues), "cue"), units.Count(len(s.Subjects), "subject"), units.Count(len(s.Pulls), "move"))
	if s.Optics.Rig != nil && (s.Staging == nil || len(s.Turns) > 0) {
		text += ", " + units.Count(len(s.Turns), "camera turn")
	}
	if len(s.Flags) == 0 {
		text += ", with no findings"
		if silent := moments.NotJudged(s); silent != "" {
			text += "; " + silent
		}
		return text + "."
	}
	worst := slices.MaxFunc(s.Flags, func(a, b plan.Flag) int {
		return bands.Rank(a.Severity) - bands.Rank(b.Severity)
	})
	return fmt.Sprintf("%s, with %s, the worst (%s): %s", text,
		units.Count(len(s.Flags), "finding"), worst.Severity, worst.Text)
}
