// What no set-up holds, the counts, and the set-ups.

package coverage

import (
	"fmt"
	"strings"

	"pullscore/interp/coverage"
	"pullscore/interp/units"
	"pullscore/render/draw"
	"pullscore/render/sheet"
)

const (
	textPitch = 4.2
	setupCell = 56.0
)

// below writes what stands under the lines.
func (f *flow) below(sc *coverage.Scene) {
	f.say("Missing", missing(sc), draw.Black)
	if sc.Staged == nil || len(sc.Staged.Cuts) > 0 {
		f.cut(sc.Cut)
	}
	var counts []string
	for _, o := range sc.Speakers {
		counts = append(counts, fmt.Sprintf("%s held on %d of %d own words", o.Who, o.Held, o.Words))
	}
	f.say("", sheet.Joined(counts), draw.Grey)
	f.Y += 2
	if sc.Staged != nil {
		f.stagedSetups(sc)
		return
	}
	f.setups(sc)
}

// missing says which words no set-up holds.
func missing(sc *coverage.Scene) string {
	if list := flagged(sc); len(list) > 0 {
		return strings.Join(list, " ")
	}
	if len(sc.Missing) == 0 {
		return "Nothing: every word has a set-up that holds its speaker."
	}
	var list []string
	for _, g := range sc.Missing {
		list = append(list, fmt.Sprintf("No set-up holds %s on “%s” (%s).", g.Who, g.Text, words(g)))
	}
	return strings.Join(list, " ")
}

// cut writes what the cut shows.
func (f *flow) cut(c *coverage.Cut) {
	if c == nil {
		return
	}
	list := []string{fmt.Sprintf("It holds %d of the %s that it shows with their speaker.", c.Held, units.Count(c.Words, "word"))}
	for _, g := range c.NotHeld {
		list = append(list, fmt.Sprintf("%s does not hold %s on “%s” (%s).", g.Shot, g.Who, g.Text, words(g)))
	}
	f.say("The cut", strings.Join(list, " "), draw.Black)
}

// words says which words of which line a gap is.
func words(g coverage.Gap) string {
	if g.First == g.Last {
		return fmt.Sprintf("line %d, word %d", g.Line, g.First)
	}
	return fmt.Sprintf("line %d, words %d to %d", g.Line, g.First, g.Last)
}

// say writes a text with its heading at the left.
func (f *flow) say(heading, text string, ink draw.Ink) {
	if text == "" {
		return
	}
	for i, line := range sheet.FontBody.Wrap(text, f.right()-wordsFrom) {
		g, y := f.Take(textPitch, "words")
		if i == 0 && heading != "" {
			g.Add(draw.NewText(sheet.Margin, y+3, heading, sheet.FontHeading, draw.Black))
		}
		g.Add(draw.NewText(wordsFrom, y+3, line, sheet.FontBody, ink))
	}
}

// setups writes what each set-up is taken with.
func (f *flow) setups(sc *coverage.Scene) {
	across := int((f.right() - wordsFrom) / setupCell)
	for i := range sc.Setups {
		s := &sc.Setups[i]
		if i%across == 0 {
			g, y := f.Take(textPitch, "set-ups")
			if i == 0 {
				g.Add(draw.NewText(sheet.Margin, y+3, "Set-ups", sheet.FontHeading, draw.Black))
			}
		}
		g := f.Root().Group("set-ups")
		x, y := wordsFrom+setupCell*float64(i%across), f.Y-textPitch+3
		id := draw.NewText(x, y, s.Shot, sheet.FontStrong, draw.Black).Shortened((setupCell - 4) / 2)
		at := id.Room().Right() + 1.6
		with := draw.NewText(at, y, fmt.Sprintf("lens %s, %s", s.Lens, s.Stop), sheet.FontBody, draw.Grey)
		g.Add(id, with.Shortened(x+setupCell-4-at))
	}
}
