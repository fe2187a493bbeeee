// Texts that overlap, are too small, or leave the page.

package drawtest

import (
	"fmt"

	"pullscore/render/draw"
)

// LeastSize is the smallest type that may be printed, in points.
const LeastSize = 7

// slack is by how much boxes may touch, in millimetres: a tenth of a hairline.
const slack = 0.02

// Faults returns what is wrong with a page in any viewer, a sentence each: texts
// that overlap or are too small to be read, and whatever leaves the page. Texts
// count as wide as their room.
func Faults(p *draw.Page) []string { return FaultsAs(p, draw.Text.Wide) }

// FaultsAs returns what Faults finds if texts come out as set returns them, as in other
// fonts.
func FaultsAs(p *draw.Page, set func(draw.Text) draw.Text) []string {
	var faults []string
	say := func(format string, args ...any) { faults = append(faults, fmt.Sprintf(format, args...)) }
	page := draw.Box{W: p.W, H: p.H}
	var texts []draw.Text
	for it := range p.Root.All() {
		for _, b := range boxes(it, set) {
			if !page.Holds(b) {
				say("%T at %.1f leaves the page", it, b)
			}
		}
		text, ok := it.(draw.Text)
		if !ok {
			continue
		}
		if text.Font.Size < LeastSize {
			say("%q is set in %v points", text.String, text.Font.Size)
		}
		for _, other := range texts {
			if draw.Clash(set(text), set(other), slack) {
				say("%q at %.1f and %q at %.1f overlap", other.String, other.Box(), text.String, text.Box())
			}
		}
		texts = append(texts, text)
	}
	return faults
}

// boxes returns the boxes that hold an item; none for a group.
func boxes(it draw.Item, set func(draw.Text) draw.Text) []draw.Box {
	switch it := it.(type) {
	case draw.Text:
		return []draw.Box{set(it).Box()}
	case draw.Rect:
		return []draw.Box{it.Box}
	case draw.Disc:
		return []draw.Box{{X: it.Centre.X - it.Radius, Y: it.Centre.Y - it.Radius, W: 2 * it.Radius, H: 2 * it.Radius}}
	case draw.Line:
		return []draw.Box{{X: it.From.X, Y: it.From.Y}, {X: it.To.X, Y: it.To.Y}}
	case draw.Path:
		var all []draw.Box
		for _, run := range it.Runs {
			for _, p := range run {
				all = append(all, draw.Box{X: p.X, Y: p.Y})
			}
		}
		return all
	}
	return nil
}
