// The key at the foot of a score: every sign that the shot uses, in one line.

package render

import (
	"slices"

	"pullscore/interp/plan"
	"pullscore/render/draw"
)

// A keyEntry is a sign and what it stands for.
type keyEntry struct {
	text  string
	width float64 // of the sign
	draw  func(g *draw.Group, x, y float64)
}

const (
	keyText  = 1.4 // between a sign and its text
	keyGap   = 6.0 // between entries at most
	keyLeast = 2.5 // where they are nearer, texts are shortened

	// No chance is printed without a word on where it comes from.
	modelNote      = "chance: our own landing model, on published parts"
	modelNoteShort = "chance: our own model"
)

// drawKey draws the key of a score.
func (sh *leaf) drawKey(g *draw.Group) { sh.drawKeyOf(g, sh.key(), sh.hasChance()) }

// drawKeyOf draws a key of these entries, with a word on chances where there
// are any; the entries move together where the page is narrow.
func (sh *leaf) drawKeyOf(g *draw.Group, entries []keyEntry, chances bool) {
	base := sh.paper.H - edge - 1.2
	g.Line(margin, base-4.6, sh.paper.W-margin, base-4.6, solid(draw.Pale, hair))
	gap := sh.keyGaps(entries)
	if chances {
		entries = append(entries, keyEntry{text: modelNote, draw: noSign})
		if gap = sh.keyGaps(entries); gap < keyLeast {
			entries[len(entries)-1].text = modelNoteShort
			gap = sh.keyGaps(entries)
		}
	}
	x := margin
	for _, e := range entries {
		e.draw(g, x, base-fontSmall.Middle())
		text := draw.NewText(x+e.width+keyText, base, e.text, fontSmall, draw.Grey)
		g.Add(text)
		x = text.Box().Right() + gap
	}
}

// keyGaps returns the space between entries that fill the line.
func (sh *leaf) keyGaps(entries []keyEntry) float64 {
	free := sh.paper.W - 2*margin
	for _, e := range entries {
		free -= e.width + keyText + fontSmall.Width(e.text)
	}
	return min(keyGap, free/float64(len(entries)-1))
}

// hasChance tells whether the sheet shows a chance of landing.
func (sh *leaf) hasChance() bool {
	return slices.ContainsFunc(sh.shot.Pulls, func(p *plan.Pull) bool { return p.Chance.Known() })
}

func noSign(*draw.Group, float64, float64) {}

// key returns the entries for the shot.
func (sh *leaf) key() []keyEntry {
	s := sh.shot
	entries := []keyEntry{
		{"move of the focus", 2 * badgeSize, func(g *draw.Group, x, y float64) { badge(g, x+badgeSize, y, 1) }},
		{"focus, sharp zone", 7, keyZone},
		{"subject, as deep as it is", 7, keySubject},
		{"sharp, then softer", 9, keyBar},
	}
	if s.Optics.Ring != nil {
		entries = append(entries, keyEntry{"window to land in", 1.6, func(g *draw.Group, x, y float64) { bracket(g, x+1.3, y-1.3, y+1.3, true, true) }})
	}
	if slices.ContainsFunc(s.Pulls, func(p *plan.Pull) bool { return len(p.Grips) > 0 }) {
		entries = append(entries, keyEntry{"re-grip", 6, keyGrip})
	}
	for _, severity := range []string{"error", "warning", "note"} {
		if slices.ContainsFunc(s.Flags, func(f plan.Flag) bool { return f.Severity == severity }) {
			entries = append(entries, keyEntry{severity, flagWidth(1), func(g *draw.Group, x, y float64) { pennant(g, x, y-flagHeight/2, severity, "1") }})
		}
	}
	return append(entries, keyEntry{"a move hangs on it", 4.5, func(g *draw.Group, x, y float64) { g.Line(x, y, x+4.5, y, plumbStroke) }})
}

func keyZone(g *draw.Group, x, y float64) {
	box := draw.Box{X: x, Y: y - 1.1, W: 7, H: 2.2}
	corners := []draw.Point{{X: x, Y: box.Y}, {X: box.Right(), Y: box.Y}, {X: box.Right(), Y: box.Bottom()}, {X: x, Y: box.Bottom()}}
	g.Add(draw.Rect{Box: box, Fill: draw.BluePale, Stroke: solid(draw.Blue, hair)},
		draw.Path{Runs: draw.Hatch(corners, hatchPitch, hatchLeast), Stroke: solid(draw.Blue, hair)})
	g.Line(x, y, x+7, y, solid(draw.Blue, heavy))
}

func keySubject(g *draw.Group, x, y float64) {
	g.Add(draw.Rect{Box: draw.Box{X: x, Y: y - 0.8, W: 7, H: 1.6}, Fill: draw.Pale})
	g.Line(x, y, x+7, y, solid(draw.Mid, hair))
}

// keyBar is a bar that goes soft.
func keyBar(g *draw.Group, x, y float64) {
	const half = 1.2
	g.Line(x, y, x+9, y, solid(draw.Mid, hair))
	taper := func(from, to, a, b float64) [][]draw.Point {
		return [][]draw.Point{{{X: x + from, Y: y - a}, {X: x + to, Y: y - b}, {X: x + to, Y: y + b}, {X: x + from, Y: y + a}}}
	}
	g.Add(draw.Path{Runs: taper(5.5, 9, half/1.5, 0.1), Closed: true, Fill: draw.Pale},
		draw.Path{Runs: taper(4, 5.5, half, half/1.5), Closed: true, Fill: draw.Mid},
		draw.Path{Runs: taper(0, 4, half, half), Closed: true, Fill: draw.Black})
}

func keyGrip(g *draw.Group, x, y float64) {
	g.Line(x, y, x+2, y, solid(draw.Black, heavy))
	g.Line(x+4, y, x+6, y, solid(draw.Black, heavy))
	gripEnds(g, draw.Point{X: x + 2, Y: y}, draw.Point{X: x + 4, Y: y})
}
