// The key at the foot of a score: every sign that the shot uses, in one line.

package score

import (
	"slices"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/score/bands"
	"pullscore/render/sheet"
)

// drawKey draws the key of a score.
func drawKey(sh *bands.Leaf, g *draw.Group) { sh.DrawKeyOf(g, key(sh), sh.HasChance()) }

// key returns the entries for the shot.
func key(sh *bands.Leaf) []sheet.KeyEntry {
	s := sh.Shot
	subject := "subject, as deep as it is"
	if s.Optics.Rig != nil { // a line with more signs has room for fewer words
		subject = "subject"
	}
	entries := []sheet.KeyEntry{
		sheet.Entry("move of the focus", 2*bands.BadgeSize, func(g *draw.Group, x, y float64) { bands.Badge(g, x+bands.BadgeSize, y, 1) }),
		sheet.Entry("focus, sharp zone", 7, sheet.KeyZone),
		sheet.Entry(subject, 7, bands.KeySubject),
		sheet.Entry("sharp, then softer", 9, keyBar),
	}
	if s.Optics.Ring != nil {
		entries = append(entries, sheet.Entry("window to land in", 1.6, func(g *draw.Group, x, y float64) { bands.Bracket(g, x+1.3, y-1.3, y+1.3, true, true) }))
	}
	if slices.ContainsFunc(s.Pulls, func(p *plan.Pull) bool { return len(p.Grips) > 0 }) {
		entries = append(entries, sheet.Entry("re-grip", 6, bands.KeyGrip))
	}
	for _, severity := range []string{"error", "warning", "note"} {
		if slices.ContainsFunc(s.Flags, func(f plan.Flag) bool { return f.Severity == severity }) {
			entries = append(entries, sheet.Entry(severity, bands.FlagWidth(1), func(g *draw.Group, x, y float64) { bands.Pennant(g, x, y-bands.FlagHeight/2, severity, "1") }))
		}
	}
	entries = append(entries, cameraKey(s)...)
	return append(entries, sheet.Entry("cue of a move", 4.5, func(g *draw.Group, x, y float64) { g.Line(x, y, x+4.5, y, bands.PlumbStroke) }))
}

// keyBar is a bar that goes soft.
func keyBar(g *draw.Group, x, y float64) {
	const half = 1.2
	g.Line(x, y, x+9, y, sheet.Solid(draw.Mid, sheet.Hair))
	taper := func(from, to, a, b float64) [][]draw.Point {
		return [][]draw.Point{{{X: x + from, Y: y - a}, {X: x + to, Y: y - b}, {X: x + to, Y: y + b}, {X: x + from, Y: y + a}}}
	}
	g.Add(draw.Path{Runs: taper(5.5, 9, half/1.5, 0.1), Closed: true, Fill: draw.Pale},
		draw.Path{Runs: taper(4, 5.5, half, half/1.5), Closed: true, Fill: draw.Mid},
		draw.Path{Runs: taper(0, 4, half, half), Closed: true, Fill: draw.Black})
}
