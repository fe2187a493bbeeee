// The strip: a piece of tape for the focus ring, drawn 1:1. Every mark lies
// where diameter x pi x angle / 360 says.

package render

import (
	"fmt"
	"math"
	"slices"

	"pullscore/interp/plan"
	"pullscore/render/draw"
)

// Strip draws the tape of a shot for the lens's ring: the marks of its pulls
// with their windows, cut into pieces where it is longer than the paper. Where
// the ring cannot be pulled by angle, or its diameter is not known, the page
// says so and tells what can be told.
func Strip(shot *plan.Shot, opt Options) []*draw.Page {
	marks := ringMarks(shot)
	h := newHandout(shot, opt, "strip", describeStrip(shot, marks))
	switch o := &shot.Optics; {
	case o.Ring == nil:
		sayNoRing(h, "No strip can be made")
		return h.pages()
	case !(o.Diameter > 0):
		sayNoDiameter(h)
	default:
		st := newStrip(shot, marks, h.width())
		st.sayHow(h)
		for i := range st.pieces {
			st.drawPiece(h, i)
		}
	}
	sayLaw(h)
	t := markTable(shot, marks, func(m ringMark) []string {
		return []string{fixed(m.deg, 1) + "°", alongStrip(shot, m.deg)}
	}, "ring", "from closest stop")
	t.put(h, "marks")
	sayWindow(h, marks)
	sayAside(h, marks)
	return h.pages()
}

// ringLength returns the length in millimetres of an arc of so many degrees on
// a ring of a diameter in metres.
func ringLength(diameter, deg float64) float64 { return diameter * 1000 * math.Pi * deg / 360 }

func alongStrip(s *plan.Shot, deg float64) string {
	if !(s.Optics.Diameter > 0) {
		return ""
	}
	return fixed(ringLength(s.Optics.Diameter, deg), 1) + " mm"
}

func describeStrip(s *plan.Shot, marks []ringMark) string {
	return fmt.Sprintf("A tape for the focus ring of lens %s, drawn 1:1 for shot %s, with %s.",
		s.Lens, shotName(s), plural(len(marks), "mark"))
}

// sayNoRing tells why a lens without a ring to pull by angle has no marks.
func sayNoRing(h *handout, what string) {
	h.say(what+" for lens "+h.shot.Lens+".", fontTitle, draw.Black)
	h.say("Its ring cannot be pulled by angle: one that drives by wire has no stops and counts how fast it is turned, "+
		"so no mark on it repeats; one without a ring has none to mark. Pull by the distances of the pull list, or with a motor that holds marks of its own.", fontBody, draw.Black)
	t := table{columns: []tableColumn{{title: "lands on", text: true}, {title: "pull"}, {title: "tape"}, {title: "or"}}}
	for _, p := range h.shot.Pulls {
		first, second := lengths(h.shot, float64(p.ToM))
		t.rows = append(t.rows, []string{markName(h.shot, p.To, p.Target, float64(p.Land)), fmt.Sprint(p.Number), first, second})
	}
	t.put(h, "marks")
}

func sayNoDiameter(h *handout) {
	h.say("The strip needs the ring's diameter, and the kit does not say it.", fontTitle, draw.Black)
	h.say(fmt.Sprintf("Measure the ring where the tape will lie (its girth divided by 3.1416 is the diameter) and write it into the lens: ring %s deg, diameter 110 mm. "+
		"Until then the angles below hold, whatever the diameter.", plan.Decimal(h.shot.Optics.Ring.Throw(), 1)), fontBody, draw.Black)
}

// sayLaw tells what the marks rest on.
func sayLaw(h *handout) {
	if h.shot.Optics.Marked {
		h.say("Marks are computed from the lens's own marks, as the kit gives them. Check the first and the last with the tape measure before you trust the rest.", fontNote, draw.Black)
		return
	}
	h.say("This lens has no marks in the kit: the positions come from a computed law (closest distance, throw and focal length of a lens that moves as a whole) and may be off by more than a window. "+
		"Check every mark with the tape measure, and write what you find into the kit.", fontStrong, draw.Black)
}

func sayWindow(h *handout, marks []ringMark) {
	for _, m := range marks {
		if m.sharp() {
			h.say("Bar: the settings that keep the subject sharp, drawn true to its width; no end where a stop of the ring is the end. S: the focus starts here. Numbers: the pulls that land here.", fontSmall, draw.Grey)
			return
		}
	}
}

// markTable lists marks in full, with figures of the drawing's own after the
// distances.
func markTable(s *plan.Shot, marks []ringMark, own func(ringMark) []string, titles ...string) *table {
	t := &table{columns: []tableColumn{{title: "mark", text: true}, {title: "pulls", text: true}, {title: "tape"}, {title: "or"}}}
	for _, title := range titles {
		t.columns = append(t.columns, tableColumn{title: title})
	}
	t.columns = append(t.columns, tableColumn{title: "window on the ring"})
	for _, m := range marks {
		first, second := "", ""
		if !math.IsNaN(m.tape) {
			first, second = lengths(s, m.tape)
		}
		row := append([]string{m.name, m.numbers(), first, second}, own(m)...)
		t.rows = append(t.rows, append(row, windowText(m)))
	}
	return t
}

// sayAside tells what grey marks are, where there are any.
func sayAside(h *handout, marks []ringMark) {
	if slices.ContainsFunc(marks, ringMark.aside) {
		h.say("Grey: subjects that stand there all through the shot, and that no pull lands on.", fontSmall, draw.Grey)
	}
}

// windowText writes a window: from where to where on the ring.
func windowText(m ringMark) string {
	if !m.sharp() {
		return ""
	}
	return fixed(m.window[0], 1) + "° to " + fixed(m.window[1], 1) + "°"
}
