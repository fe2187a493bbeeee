package marks

import (
	"pullscore/render/draw"
	"pullscore/render/sheet"
)

// writeMark writes the numbers of a mark and words after them in that room.
func Write(g *draw.Group, m Mark, words string, x, base, room float64) {
	if n := m.Numbers(); n != "" {
		text := draw.NewText(x, base, n, sheet.FontNumber, draw.Black).Shortened(min(sheet.NumberMost, room))
		g.Add(text)
		x, room = x+text.Width+1, room-text.Width-1
	}
	if full := sheet.FontNote.Width(draw.Clean(words)); room+1e-9 >= min(full, sheet.FontNote.Width("…")) {
		g.Add(draw.NewText(x, base, words, sheet.FontNote, m.Ink()).Shortened(room + 1e-9))
	}
}
