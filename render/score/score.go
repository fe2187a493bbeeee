// The score: one shot against time, read like music for the hand. Its bands
// share one ruler: lines, distance, sharpness, hand; findings and the table of
// pulls stand below.

package score

import (
	"fmt"
	"slices"

	"pullscore/interp/plan"
	"pullscore/interp/units"
	"pullscore/render/draw"
	"pullscore/render/score/bands"
	"pullscore/render/sheet"
)

// Score draws the shot. A shot that is longer, or fuller, than a sheet can
// show goes on over more pages, each with the row heads repeated.
func Score(shot *plan.Shot, opt sheet.Options) []*draw.Page {
	sc := bands.NewChart(shot, opt.Size())
	compose(sc)
	return sc.Draw("score", describe(sc), drawAround, drawLegend)
}

// compose lays everything on sheets.
func compose(sc *bands.Chart) {
	for _, w := range sc.Windows {
		sc.Lay(w, bandsOf(w))
	}
	sc.Lay(nil, findings(sc))
	sc.Lay(nil, pullTable(sc))
}

// drawAround draws what stands round the bands of a score.
func drawAround(sh *bands.Sheet, root *draw.Group, number int) {
	sh.DrawHead(root.Group("head"), "score", number, len(sh.Sheets))
	for _, lf := range sh.Leaves {
		if lf.Window == nil {
			continue
		}
		lf.DrawMoves(root.Group("moves"))
		drawJoints(lf, root)
		lf.Plumbs = root.Group("plumb-lines")
		lf.DrawRuler(root.Group("ruler"))
	}
	sh.DrawCaution(root.Group("caution"))
}

// bandsOf returns the rows of a window from top to bottom.
func bandsOf(w *bands.Window) []bands.Section {
	all := append(w.LinesBand(), w.DistanceBand())
	all = append(all, sharpBand(w)...)
	all = append(all, cameraBand(w)...)
	return append(all, w.HandBand())
}

// describe says in a sentence what the score shows.
func describe(sc *bands.Chart) string {
	s := sc.Shot
	text := fmt.Sprintf("Shot %s, %s long, against time: %s, %s, %s and %s of the focus",
		sheet.ShotName(s), sheet.Figures.Time(float64(s.Duration)), units.Count(len(s.Lines), "spoken line"),
		units.Count(len(s.Cues), "cue"), units.Count(len(s.Subjects), "subject"), units.Count(len(s.Pulls), "move"))
	if s.Optics.Rig != nil {
		text += ", " + units.Count(len(s.Turns), "camera turn")
	}
	if len(s.Flags) == 0 {
		text += ", with no findings"
		if silent := plan.NotJudged(s); silent != "" {
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
