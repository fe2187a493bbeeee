// The strip: a piece of tape for the focus ring, drawn 1:1. Every mark lies
// where diameter x pi x angle / 360 says.

package ring

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"pullscore/interp/moments"
	"pullscore/interp/plan"
	"pullscore/interp/units"
	"pullscore/render/draw"
	"pullscore/render/marks"
	"pullscore/render/sheet"
)

// Strip draws the tape of a shot for the lens's ring: the marks of its pulls
// with their windows, cut into pieces where it is longer than the paper. Where
// the ring cannot be pulled by angle, or its diameter is not known, the page
// says so and tells what can be told.
func Strip(shot *plan.Shot, opt sheet.Options) []*draw.Page {
	list := marks.Of(shot)
	h := sheet.NewHandout(shot, opt, "strip", describeStrip(shot, list))
	sayByLaw(h)
	drawn := false
	switch o := &shot.Optics; {
	case o.Ring == nil:
		sayNoRing(h, "No strip can be made")
		return h.Pages()
	case !(o.Diameter > 0):
		sayNoDiameter(h)
	default:
		st := newStrip(shot, list, h.Width())
		st.sayHow(h)
		sayPlay(h, list, func(m marks.Mark) bool { _, two := st.sides(m); return two })
		for i := range st.pieces {
			st.drawPiece(h, i)
		}
		drawn = true
	}
	sayLaw(h)
	t := markTable(shot, list, func(m marks.Mark) []string {
		return []string{sheet.Figures.AngleTo(m.Deg, 1), alongStrip(shot, m.Deg)}
	}, "ring", "from closest stop")
	t.Put(h, "marks")
	sayWindow(h, list, drawn)
	sayAside(h, list)
	return h.Pages()
}

// ringLength returns the length in millimetres of an arc of so many degrees on
// a ring of a diameter in metres.
func ringLength(diameter, deg float64) float64 { return diameter * 1000 * math.Pi * deg / 360 }

func alongStrip(s *plan.Shot, deg float64) string {
	if !(s.Optics.Diameter > 0) {
		return ""
	}
	return sheet.Figures.Millimetres(ringLength(s.Optics.Diameter, deg) / 1000)
}

func describeStrip(s *plan.Shot, list []marks.Mark) string {
	return fmt.Sprintf("A tape for the focus ring of lens %s, drawn 1:1 for shot %s, with %s.",
		s.Lens, sheet.ShotName(s), units.Count(len(list), "mark"))
}

// Why a lens has no angles.
const (
	ringCannot = "Its ring cannot be pulled by angle: one that drives by wire has no stops and counts how fast it is turned, " +
		"so no mark on it repeats; one without a ring has none to mark. Pull by the distances of the pull list, or with a motor that holds marks of its own."
	ringNotKnown = "Nothing says how far its ring turns, so no mark has a place on it and nothing is drawn here to be cut out. " +
		"A strip of paper and ten minutes tell: pullscore help throw. Until then pull by the distances of the pull list."
)

// sayNoRing tells why a lens without a ring to pull by angle has no marks.
func sayNoRing(h *sheet.Handout, what string) {
	h.Say(what+" for lens "+h.Shot.Lens+".", sheet.FontTitle, draw.Black)
	why := ringCannot
	if h.Shot.RingUnknown() {
		why = ringNotKnown
	}
	h.Say(why, sheet.FontBody, draw.Black)
	t := sheet.Table{Columns: []sheet.Column{{Title: "lands on", Text: true}, {Title: "pull"}, {Title: "tape"}, {Title: "or"}}}
	for _, p := range h.Shot.Pulls {
		first, second := sheet.Style(h.Shot).Both(float64(p.ToM))
		t.Rows = append(t.Rows, []string{marks.MarkName(h.Shot, p.To, p.Target, float64(p.Land)), fmt.Sprint(p.Number), first, second})
	}
	t.Put(h, "marks")
}

func sayNoDiameter(h *sheet.Handout) {
	h.Say("The strip needs the ring's diameter, and the kit does not say it.", sheet.FontTitle, draw.Black)
	h.Say(fmt.Sprintf("Lay a strip of paper round the ring where the tape will lie, measure its length, and write that into the lens: ring %s, girth 346 mm. "+
		"Until then the angles below hold, whatever the diameter.", units.Style{}.AngleTo(h.Shot.Optics.Ring.Throw(), 1)), sheet.FontBody, draw.Black)
}

// byLaw is what stands across the head of a paper whose marks nobody has measured.
const byLaw = "BY LAW, NOT MEASURED"

// sayByLaw draws across the head of the sheet, in a frame, that the marks are computed.
func sayByLaw(h *sheet.Handout) {
	if h.Shot.Optics.Ring == nil || h.Shot.Optics.Marked {
		return
	}
	const height = 6.0
	g, top := h.Take(height+2, "by-law")
	g.Add(draw.Rect{Box: draw.Box{X: sheet.Margin, Y: top, W: h.Width(), H: height}, Stroke: sheet.Solid(draw.Black, sheet.Medium)})
	text := draw.NewText(h.Paper.W/2, top+height/2+sheet.FontTitle.Middle(), byLaw, sheet.FontTitle, draw.Black)
	g.Add(text.Aligned(draw.Middle))
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

// sayLaw tells what the marks rest on, and how well they are known.
func sayLaw(h *sheet.Handout) {
	if with := glassOn(h.Shot); with != "" {
		h.Say("With "+with+" on the lens. These marks hold for nothing else.", sheet.FontBody, draw.Black)
	}
	h.Say(moments.Provenance(h.Shot)+".", sheet.FontStrong, draw.Black)
	if h.Shot.Optics.Marked {
		h.Say("Marks are computed from the lens's own marks, as the kit gives them. Check the first and the last with the tape measure before you trust the rest.", sheet.FontNote, draw.Black)
		return
	}
	h.Say("This lens has no marks in the kit: the positions come from a computed law (closest distance, throw and focal length of a lens that moves as a whole) and may be off by more than a window. "+
		"Check every mark with the tape measure, and write what you find into the kit.", sheet.FontStrong, draw.Black)
}

// sayWindow tells what the bars and the dashed marks of a drawing are, where there are
// any. Of a page that draws none it tells the table alone.
func sayWindow(h *sheet.Handout, list []marks.Mark, drawn bool) {
	const pulls = "S: the focus starts here. Numbers: the pulls that land here."
	if !drawn {
		h.Say(pulls, sheet.FontSmall, draw.Grey)
		return
	}
	if slices.ContainsFunc(list, marks.Mark.Sharp) {
		h.Say("Bar: the settings that keep the subject sharp, drawn true to its width; no end where a stop of the ring is the end. "+pulls, sheet.FontSmall, draw.Grey)
	}
	if slices.ContainsFunc(list, func(m marks.Mark) bool { return m.Sharp() && m.Sigma > 0 }) {
		h.Say("Thin bar under it: where the mark may truly lie, nineteen times in twenty on a smooth ring.", sheet.FontSmall, draw.Grey)
	}
	if slices.ContainsFunc(list, func(m marks.Mark) bool { return m.Rough }) {
		h.Say(marks.RoughSign+" set by eye", sheet.FontSmall, draw.Grey)
	}
}

// markTable lists marks in full, with figures of the drawing's own after the
// distances.
func markTable(s *plan.Shot, list []marks.Mark, own func(marks.Mark) []string, titles ...string) *sheet.Table {
	t := &sheet.Table{Columns: []sheet.Column{{Title: "mark", Text: true}, {Title: "pulls", Text: true}, {Title: "tape"}, {Title: "or"}}}
	for _, title := range titles {
		t.Columns = append(t.Columns, sheet.Column{Title: title})
	}
	t.Columns = append(t.Columns, sheet.Column{Title: "window on the ring"})
	for _, m := range list {
		first, second := "", ""
		if !math.IsNaN(m.Tape) {
			first, second = sheet.Style(s).Both(m.Tape)
		}
		row := append([]string{m.Name, m.Numbers(), first, second}, own(m)...)
		t.Rows = append(t.Rows, append(row, windowText(m)))
	}
	return t
}

// sayAside tells what grey marks are, where there are any.
func sayAside(h *sheet.Handout, list []marks.Mark) {
	if slices.ContainsFunc(list, marks.Mark.Aside) {
		h.Say("Grey: subjects that stand there all through the shot, and that no pull lands on.", sheet.FontSmall, draw.Grey)
	}
}

// windowText writes a window: from where to where on the ring.
func windowText(m marks.Mark) string {
	if !m.Sharp() {
		return ""
	}
	return sheet.Figures.AngleTo(m.Window[0], 1) + " to " + sheet.Figures.AngleTo(m.Window[1], 1)
}
