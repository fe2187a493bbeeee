// The words beside the table: the steps, the form to type in, blanks and cautions.

package lens

import (
	"pullscore/render/draw"
	"pullscore/render/sheet"
)

// steps are how a lens is mapped.
var steps = []string{
	"Camera on sticks, stop wide open, monitor magnified. Tape from the sensor mark on the body.",
	"Cut out the tape, glue the strips, wrap it round the focus ring, 0 near the closest stop. Mark where it meets itself: that is the way round.",
	"Turn to the closest stop and read; turn to the far stop and read.",
	"For each distance: star there, turn from the near side until it is crispest, read; turn from the far side, read.",
	"Infinity: a lamp at night or a roof's edge, farther than the sheet says.",
	"Type it into the kit, and pullscore lens KIT.pull says how good it is.",
}

// The caution about infinity; the usual one, common practice.
const sunCaution = "Never aim at the sun, and never look at it through a lens."

// Sentences about readings that do not look as expected.
const (
	fallingNote = "Numbers that fall towards infinity are as good: write them as you read them. Ring turns more than once: add the way round for each whole turn."
	stopsNote   = "At the two stops of the ring there is one reading each. Throw = 360 x (far stop - closest stop) / way round."
)

const (
	blankPitch = 6.6 // from one line to write on to the next
	formPitch  = 5.6 // likewise in the form
	formWide   = 74.0
	blankLong  = 13.0
)

// writeRecord writes the right column of the first page.
func (l Lens) writeRecord(c *column) {
	c.heading("Ten minutes, six steps")
	c.steps(steps, sheet.FontBody)
	c.y += 1
	c.say(fallingNote, 4, sheet.FontNote, draw.Black)
	c.say(stopsNote, 4, sheet.FontNote, draw.Black)
	c.y += gapBelow
	notes := column{g: c.g, x: c.x + formWide, y: c.y, width: c.width - formWide}
	l.writeForm(c)
	notes.heading("Note down")
	for _, line := range [][]any{
		{"way round", 22.0, "mm"},
		{"throw", 22.0, "deg"},
		{"stop used", 22.0},
		{"measured by", 22.0},
	} {
		notes.line(blankPitch, line...)
	}
	c.y = max(c.y, notes.y) + gapBelow
	c.say(sheet.LaserCaution+" "+sunCaution, 0, sheet.FontSmall, draw.Black)
}

// writeForm writes the statements that the kit needs, with blanks for the readings.
func (l Lens) writeForm(c *column) {
	c.heading("Type in, below the lens in the kit")
	c.line(formPitch, "ring girth", blankLong, "mm")
	c.line(formPitch, "marks measured")
	c.line(formPitch, "mark closest at", blankLong, "mm")
	c.line(formPitch, "mark "+l.typed().Tape(l.example())+" at", blankLong, "mm and", blankLong, "mm")
	c.g.Add(draw.NewText(c.x, c.y+3.4, "... one line for each distance", sheet.FontNote, draw.Grey))
	c.y += formPitch
	c.line(formPitch, "mark inf at", blankLong, "mm and", blankLong, "mm")
}

// example returns the distance that stands for all in the form: the middle one, in
// metres.
func (l Lens) example() float64 { return l.Distances[(len(l.Distances)-1)/2] }

// line writes words and, for each number, a blank as long as that to write on.
func (c *column) line(high float64, parts ...any) {
	const gap = 1.4
	x, base := c.x, c.y+high-2
	for _, p := range parts {
		switch p := p.(type) {
		case string:
			text := draw.NewText(x, base, p, sheet.FontBody, draw.Black)
			c.g.Add(text)
			x = text.Room().Right() + gap
		case float64:
			c.g.Line(x, base+0.6, x+p, base+0.6, draw.Solid(draw.Black, draw.GuideWidth))
			x += p + gap
		}
	}
	c.y += high
}

func (c *column) heading(text string) {
	c.g.Add(draw.NewText(c.x, c.y+3, text, sheet.FontHeading, draw.Black))
	c.y += 5
}

// writeTarget writes the words beside the target.
func (l Lens) writeTarget(c *column) {
	c.heading("The target")
	c.steps([]string{
		"Glue the sheet onto card. Cut along the long dashes, also between the strips and the star.",
		"Fold along the lines marked fold: the upper strip back, the lower strip forward, both to 45 degrees. Their lines at 100 then lie 100 mm behind the star and 100 mm before it.",
		"Stand the star square to the lens, its middle on the axis of the lens.",
		"Lay the tape from the sensor mark to the face of the star.",
		"Turn until the grey spot in the middle of the star is smallest. The strips tell the side: they are sharpest at 0 when the star is in focus.",
	}, sheet.FontBody)
	c.y += gapBelow
	l.drawFolds(c)
	c.y += gapBelow
	c.heading("Distances to tape")
	s := l.figures()
	text := ""
	for i, d := range l.Distances[1 : len(l.Distances)-1] {
		if i > 0 {
			text += ", "
		}
		text += s.Tape(d)
	}
	c.say(text+". The closest stop and infinity need no target.", 0, sheet.FontBody, draw.Black)
	c.y += gapBelow
	c.say(sheet.LaserCaution, 0, sheet.FontSmall, draw.Black)
	c.say(sunCaution, 0, sheet.FontSmall, draw.Black)
}

// drawFolds draws the folded card as seen from above.
func (l Lens) drawFolds(c *column) {
	const half, arm = 17.0, 24.0
	g := c.g.Group("from-above")
	x, y := c.x+12, c.y+arm+3
	g.Add(draw.NewText(c.x, c.y+3, "from above", sheet.FontSmall, draw.Grey))
	g.Line(x-6, y, x+2*half, y, draw.Solid(draw.Black, draw.FocusWidth))
	for _, side := range []float64{-1, 1} {
		g.Line(x, y, x+arm, y+side*arm, draw.Solid(draw.Black, draw.StopWidth))
	}
	name := func(dx, dy float64, text string) {
		g.Add(draw.NewText(x+dx, y+dy+sheet.FontNote.Middle(), text, sheet.FontNote, draw.Black))
	}
	name(2*half+2, 0, "star")
	name(arm+2, -arm+1, "far strip")
	name(arm+2, arm-1, "near strip")
	name(-9, arm-1, "↑ camera")
	c.y = y + arm + 4
}
