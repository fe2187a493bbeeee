// The legend at the foot of a page: the signs that are on the page, and nothing else.

package sheet

import (
	"pullscore/render/draw"
	"pullscore/render/signs"
)

// The foot of a page: how far its parts are from the lower edge, in millimetres.
const (
	FootRule    = 18.8 // the line above it
	legendBase  = 15.1 // the baseline of the first row
	legendPitch = 4.6
	cautionBase = 6.4

	// FootAfterLegend is how far the edge of a page lies below the last row of a legend
	// whose cautions follow at once.
	FootAfterLegend = cautionBase + legendPitch
)

// An entry is a sign of the legend, with its place.
type entry struct {
	sign signs.Sign
	text string
	x    float64
	row  int
}

// A style of legends: the words in full or short, and the space between entries.
type legendStyle struct {
	short bool
	gap   float64
}

// DrawLegend draws the legend of a page at its foot, in one or two rows, and notes in
// words at the right end of the last row. It reads the page: call it when everything else
// is drawn. It shortens words where there is little room, and drops no sign. It returns the
// baseline of the last row, in millimetres.
func DrawLegend(root *draw.Group, paper Paper, notes ...string) float64 {
	found := signs.On(root)
	g := root.Group(signs.Legend)
	g.Line(Margin, paper.H-FootRule, paper.W-Margin, paper.H-FootRule, draw.Solid(draw.Guide, draw.GuideWidth))
	note := Joined(notes)
	room := 0.0
	if note != "" {
		room = FontNote.Room(note) + 4
	}
	entries := layLegend(found, paper.W-2*Margin, room)
	last := 0
	for _, e := range entries {
		base := paper.H - legendBase + legendPitch*float64(e.row)
		e.sign.Draw(g, e.x, base-FontNote.Middle())
		g.Add(draw.NewText(e.x+e.sign.Width+KeyText, base, e.text, FontNote, draw.Grey))
		last = e.row
	}
	if note != "" {
		g.Add(draw.NewText(Margin+paper.W-2*Margin, paper.H-legendBase+legendPitch*float64(last), note, FontNote, draw.Grey).Aligned(draw.End))
	}
	return paper.H - legendBase + legendPitch*float64(last)
}

// Joined returns notes as one text, with dots between them.
func Joined(notes []string) string {
	text := ""
	for _, n := range notes {
		switch {
		case n == "":
		case text == "":
			text = n
		default:
			text += " · " + n
		}
	}
	return text
}

// layLegend places the entries in rows of that width, so that a note of the given width
// stands at the end of the last row. It takes the widest style that needs two rows at most.
func layLegend(found []signs.Sign, width, note float64) []entry {
	var entries []entry
	for _, style := range []legendStyle{{false, 6}, {false, 4}, {true, 4}, {true, 2}} {
		var end float64
		entries, end = flow(found, width, style)
		last := len(entries) - 1
		if last < 0 {
			break
		}
		if end+note > width { // the last entry goes down, so that the note has room
			entries[last].x, entries[last].row = Margin, entries[last].row+1
		}
		if entries[last].row < 2 {
			break
		}
	}
	return entries
}

// flow places the entries row by row, and returns where the last one ends, from the margin
// on.
func flow(found []signs.Sign, width float64, style legendStyle) (entries []entry, end float64) {
	row := 0
	for _, s := range found {
		text := s.Words
		if style.short {
			text = s.Short
		}
		wide := s.Width + KeyText + FontNote.Room(text)
		if end > 0 && end+style.gap+wide > width {
			row, end = row+1, 0
		}
		if end > 0 {
			end += style.gap
		}
		entries = append(entries, entry{s, text, Margin + end, row})
		end += wide
	}
	return entries, end
}
