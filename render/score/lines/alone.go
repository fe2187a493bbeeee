// The band of the hand on sheets of its own, with the words that its moves hang on.

package lines

import (
	"slices"

	"pullscore/render/draw"
	"pullscore/render/score/bands"
	"pullscore/render/score/hand"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

// wordRow is the height of a row of words over a band of the hand that stands alone.
const wordRow = 4.6

// HandAlone returns the band for sheets of its own: with the numbers of the moves, and the
// words and cues that they hang on.
func HandAlone(w *bands.Window) bands.Section {
	alone := hand.Section(w)
	return bands.Section{Name: "hand", Least: alone.Least + wordRow, Most: alone.Most + wordRow, OverTime: true,
		Draw: func(sh *bands.Leaf, g *draw.Group, top, height float64) {
			var hung []draw.Box // words that are there
			for _, r := range Rows(w) {
				for _, run := range r.Runs {
					if run.Hangs {
						hung = writeHung(sh, g, hung, r.Said[run.Said], run, top, top+height-bands.BandGap)
					}
				}
			}
			sh.DrawDiscsAlone(g.Group("moves"), top+wordRow)
			alone.Draw(sh, g, top+wordRow, height-wordRow)
		}}
}

// writeHung writes a word that a move hangs on over its plumb line, unless another is there,
// and returns those that are.
func writeHung(sh *bands.Leaf, g *draw.Group, hung []draw.Box, u Utterance, run Run, top, bottom float64) []draw.Box {
	t := run.At(top + 3.4)
	at := t.At.X
	if u.Cue {
		at = sh.Window.X(u.Start)
		signs.DrawCue(g, at, t.At.Y-sheet.FontStrong.Middle(), "")
	}
	sh.DropPlumb(at, t.At.Y+Underline, bottom)
	if box := t.Room(); !slices.ContainsFunc(hung, box.Overlaps) {
		g.Group(signs.Word).Add(t)
		hung = append(hung, box)
	}
	return hung
}
