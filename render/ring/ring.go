// The ring sheet and its two parts: what is missing is said, and the rest is drawn.

package ring

import (
	"fmt"
	"strings"

	"pullscore/interp/moments"
	"pullscore/interp/plan"
	"pullscore/interp/units"
	"pullscore/render/draw"
	"pullscore/render/marks"
	"pullscore/render/ring/page"
	"pullscore/render/sheet"
)

// Ring draws the sheet of a shot for ring and hand wheel, 1:1: the tape, the marking
// discs, and the table of the marks.
func Ring(s *plan.Shot, opt sheet.Options) []*draw.Page {
	what := "A tape for the focus ring and discs for the hand wheel"
	return compose(s, opt, "ring", what, true, true)
}

// Strip draws the tape of a shot for the focus ring, with the table.
func Strip(s *plan.Shot, opt sheet.Options) []*draw.Page {
	return compose(s, opt, "strip", "A tape for the focus ring", true, false)
}

// Dial draws the marking discs of a shot for the hand wheel, with the table: one for a
// wheel that turns clockwise to infinity and one for the other way, since a plan does not
// say how the gear is built.
func Dial(s *plan.Shot, opt sheet.Options) []*draw.Page {
	return compose(s, opt, "marking disc", "Discs for the hand wheel", false, true)
}

// compose draws the parts that are asked for.
func compose(s *plan.Shot, opt sheet.Options, name, what string, tape, discs bool) []*draw.Page {
	list := marks.Of(s)
	desc := fmt.Sprintf("%s, drawn 1:1 for shot %s, lens %s, with %s.", what, sheet.ShotName(s), s.Lens, units.Count(len(list), "mark"))
	b := page.New(s, opt, name, desc)
	if s.Optics.Ring == nil {
		sayNoRing(b, tape, discs)
		return b.Pages()
	}
	sayByLaw(b)
	named := lettered{list: list, used: map[int]bool{}}
	drawn := false
	if tape {
		drawn = putTape(b, &named)
	}
	var round []*disc
	if discs {
		round = newDiscs(b, &named)
		drawn = drawn || len(round) > 0
	}
	t := newTable(s, &named)
	end := putDiscs(b, round, t)
	t.Put(b, end)
	sayRest(b, list, drawn)
	return b.Pages()
}

// lettered is the marks of a shot from near to far, and which of them stand as a letter on
// what is cut out. The same mark has the same letter on all of it.
type lettered struct {
	list []marks.Mark
	used map[int]bool
}

// letter returns the letter of a mark: letters go down the table, which begins with the
// farthest.
func (l *lettered) letter(i int) string { return letter(len(l.list) - 1 - i) }

// letter returns the letter with an index: a to z, then aa and so on.
func letter(i int) string {
	name := string(rune('a' + i%26))
	if i >= 26 {
		return letter(i/26-1) + name
	}
	return name
}

// Why a lens has no angles.
const (
	ringCannot = "Its ring cannot be pulled by angle: one that drives by wire has no stops and counts how fast it is turned, " +
		"so no mark on it repeats; one without a ring has none to mark. Pull by the distances below, or with a motor that holds marks of its own."
	ringNotKnown = "Nothing says how far its ring turns, so no mark has a place on it and nothing is drawn here to be cut out. " +
		"A strip of paper and ten minutes tell: pullscore help throw. Until then pull by the distances below."
)

// sayNoRing says why a lens without a ring to pull by angle has no marks, and draws the
// table of distances.
func sayNoRing(b *page.Book, tape, discs bool) {
	what := "No tape and no disc can be made"
	switch {
	case !discs:
		what = "No tape can be made"
	case !tape:
		what = "No disc can be made"
	}
	b.Say(what+" for lens "+b.Shot.Lens+".", sheet.FontTitle, draw.Black)
	why := ringCannot
	if b.Shot.RingUnknown() {
		why = ringNotKnown
	}
	b.Say(why, sheet.FontBody, draw.Black)
	if text := moments.Provenance(b.Shot); text != "" {
		b.Say(text+".", sheet.FontStrong, draw.Black)
	}
	b.Y += 3
	distanceTable(b.Shot).Put(b, b.Y)
}

// sayNoDiameter says what the tape needs.
func sayNoDiameter(b *page.Book) {
	b.Heading("Tape for the ring", []page.Note{
		page.Strong("It needs the ring's diameter, and the kit does not say it."),
		page.Plain(fmt.Sprintf("Lay a strip of paper round the ring where the tape will lie, measure its length, and write that into the lens: ring %s, girth 346 mm. "+
			"Until then the angles below hold, whatever the diameter.", units.Style{}.AngleTo(b.Shot.Optics.Ring.Throw(), 1))),
	}, 0)
	b.Y += 2
}

// sayNoWheel says what a disc needs.
func sayNoWheel(b *page.Book) {
	b.Heading("Discs for the wheel", []page.Note{
		page.Strong("This shot has no hand wheel, so there is no disc."),
		page.Plain("The ring is turned by hand. With a follow focus, write its gear and its wheel into the shot: gear 1.5, wheel 80 mm."),
	}, 0)
	b.Y += 2
}

func saySmallWheel(b *page.Book) {
	b.Heading("Discs for the wheel", []page.Note{
		page.Strong(fmt.Sprintf("A wheel of %s mm is too small for a disc.", sheet.Figures.Number(float64(b.Shot.WheelMM), 1))),
	}, 0)
	b.Y += 2
}

// byLaw is what stands across the head of a paper whose marks nobody has measured.
const byLaw = "BY LAW, NOT MEASURED"

// sayByLaw draws across the head of the page, in a frame, that the marks are computed.
func sayByLaw(b *page.Book) {
	if b.Shot.Optics.Marked {
		return
	}
	const height = 6.0
	g := b.Root().Group("by-law")
	g.Add(draw.Rect{Box: draw.Box{X: sheet.Margin, Y: b.Y, W: b.Width(), H: height}, Stroke: draw.Solid(draw.Black, draw.WindowWidth)},
		draw.NewText(b.Paper.W/2, b.Y+height/2+sheet.FontTitle.Middle(), byLaw, sheet.FontTitle, draw.Black).Aligned(draw.Middle))
	b.Y += height + 2.5
}

// glassOn names the close-up lens and the tube of a shot, "" if it has none.
func glassOn(s *plan.Shot) string {
	var on []string
	if p := s.Optics.Glass.Diopter; p > 0 {
		on = append(on, "diopter "+sheet.Figures.Number(p, 2))
	}
	if t := s.Optics.Glass.Tube; t > 0 {
		on = append(on, "a tube of "+sheet.Figures.Number(t*1000, 1)+" mm")
	}
	return strings.Join(on, " and ")
}
