// What the sheet says in words beside its drawings.

package ring

import (
	"fmt"
	"slices"

	"pullscore/interp/moments"
	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/marks"
	"pullscore/render/ring/page"
	"pullscore/render/sheet"
)

// tapeNotes says how the tape is put on.
func (st *strip) notes() []page.Note {
	o := &st.shot.Optics
	list := []page.Note{{Text: fmt.Sprintf("%s mm across, 1° is %s mm. %s. The upper edge goes to the index. The text reads upright from behind the camera. %s",
		sheet.Figures.Number(o.Diameter*1000, 1), sheet.Figures.Number(ringLength(o.Diameter, 1), 3), layOn(st.shot, len(st.stopsShown()) > 0), st.direction())}}
	if o.TurnsTo != "left" && o.TurnsTo != "right" {
		list = append(list, page.Strong("The kit does not say which way this ring turns. If its top turns right towards infinity, write turns right into the lens: the tape is then drawn the other way round."))
	}
	round := ringLength(o.Diameter, 360)
	switch {
	case st.length > round:
		list = append(list, page.Strong(fmt.Sprintf("This ring turns more than once (%s mm round): the tape lies over itself; better mark the hand wheel.", sheet.Figures.Number(round, 0))))
	case st.end-st.begin > round:
		list = append(list, page.Plain(fmt.Sprintf("The ring is %s mm round: trim the ends so that the tape does not lie over itself.", sheet.Figures.Number(round, 0))))
	}
	if n := st.unnamed(); n > 0 {
		list = append(list, page.Strong(unnamedText(n, "tape")))
	}
	return list
}

// direction says on which side infinity lies, and for which ring.
func (st *strip) direction() string {
	switch st.shot.Optics.TurnsTo {
	case "left":
		return "The right end is towards ∞: the top of this ring turns left to it, seen from behind the camera."
	case "right":
		return "The left end is towards ∞: the top of this ring turns right to it, seen from behind the camera."
	}
	return "The right end is towards ∞, for a ring whose top turns left to it, seen from behind the camera."
}

// stopsShown returns the stops of the ring that lie on the tape.
func (st *strip) stopsShown() (list []float64) {
	for i := range st.pieces {
		list = append(list, st.stopsOn(&st.pieces[i])...)
	}
	return list
}

// layOn says what the tape is laid by: the lens's own marks, and the stops of the ring where
// it has any that hold and that lie on the tape.
func layOn(s *plan.Shot, stops bool) string {
	switch {
	case slips(s) && s.Optics.Marked:
		return "Lay the triangles on the lens's own marks: nothing holds this ring at its ends"
	case slips(s):
		return "Lay the triangles on the lens's own marks of its closest distance and of infinity: nothing holds this ring at its ends"
	case s.Optics.Marked && stops:
		return "Lay the triangles on the lens's own marks, and what is hatched on the stop of the ring"
	case s.Optics.Marked:
		return "Lay the triangles on the lens's own marks"
	}
	return "Lay what is hatched on the stops of the ring"
}

// slips reports whether nothing holds the ring of a lens at its ends.
func slips(s *plan.Shot) bool {
	return s.Ring != nil && (s.Ring.Ends == "slip" || s.Ring.Ends == "linear")
}

// unnamedText says how many marks have neither name nor letter.
func unnamedText(n int, on string) string {
	if n == 1 {
		return "1 mark stands too close to others to be named on the " + on + ": see the table."
	}
	return fmt.Sprintf("%d marks stand too close to others to be named on the %s: see the table.", n, on)
}

// discNotes says how a disc is put on.
func discNotes(discs []*disc) []page.Note {
	d := discs[0]
	size := fmt.Sprintf("%s mm.", sheet.Figures.Number(float64(d.shot.WheelMM), 1))
	if d.scaled() {
		size = fmt.Sprintf("The wheel of %s mm is larger than the sheet: this disc is %s mm across, and its angles hold; tape it on the middle of the wheel.",
			sheet.Figures.Number(float64(d.shot.WheelMM), 1), sheet.Figures.Number(2*d.outer, 1))
	}
	closest := "closest stop"
	if slips(d.shot) {
		closest = "closest mark"
	}
	text := fmt.Sprintf("%s Turn the wheel from near to infinity, see which way it goes as you face it, and take the disc for it. Set the ring to its %s and tape the disc on, "+
		"its top under a fixed pointer: it turns with the wheel, and what comes to the pointer reads upright.", size, closest)
	if d.shot.Gear.Known() && d.shot.Gear != 1 {
		text += fmt.Sprintf(" Angles at the hand are those of the ring times %s.", sheet.Figures.Number(float64(d.shot.Gear), 2))
	}
	if d.turns > 1 {
		text += fmt.Sprintf(" The wheel turns %s times over the ring: the line runs inwards, and each turn has its number.", sheet.Figures.Number(d.turns, 2))
	}
	if len(d.thumbs()) > 0 {
		text += " Dots at the rim: there the thumb takes hold for the pulls named."
	}
	list := []page.Note{{Text: text}}
	n := 0
	for _, d := range discs {
		n = max(n, d.unnamed)
	}
	if n > 0 {
		list = append(list, page.Strong(unnamedText(n, "disc")))
	}
	return list
}

// restNotes returns what stands below the table: where the marks come from, and what else
// one has to know of them.
func restNotes(s *plan.Shot, list []marks.Mark) []page.Note {
	var notes []page.Note
	if text := moments.Provenance(s); text != "" {
		notes = append(notes, page.Strong(text+"."))
	}
	if s.Optics.Marked {
		notes = append(notes, page.Plain("Between the lens's own marks the ring is computed: check the first and the last mark by tape before you trust the rest."))
	} else {
		notes = append(notes, page.Plain("The positions come from closest distance, throw and focal length of a lens that moves as a whole, and may be off by more than a window. "+
			"Check every mark by tape, and write what you find into the kit."))
	}
	if with := glassOn(s); with != "" {
		notes = append(notes, page.Strong("With "+with+" on the lens. These marks hold for nothing else."))
	}
	if text := playText(s, list); text != "" {
		notes = append(notes, page.Plain(text))
	}
	if slices.ContainsFunc(list, func(m marks.Mark) bool { return m.Rough }) {
		notes = append(notes, page.Plain(marks.RoughSign+" set by eye"))
	}
	if slices.ContainsFunc(list, marks.Mark.Aside) {
		notes = append(notes, page.Plain("Grey: somebody stands there all through the shot, and no pull lands there."))
	}
	return notes
}

// sayRest writes the notes below the table.
func sayRest(b *page.Book, list []marks.Mark, drawn bool) {
	if !drawn { // nothing is drawn that can be by eye or grey
		list = nil
	}
	for _, n := range restNotes(b.Shot, list) {
		b.Say(n.Text, n.Font(), draw.Black)
	}
}
