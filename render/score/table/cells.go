// Cells of the tables below the bands.

package table

import (
	"pullscore/render/draw"
	"pullscore/render/sheet"
)

const (
	CellGap   = 3.0 // between columns at least
	CellLines = 2   // that a text may take
	CellPitch = 3.1
)

const (
	SentencePitch = 3.4
	ColumnGap     = 8.0
	FootAir       = 3.2 // above what stands below the bands
)

// WrapText breaks a text into at most so many lines, the last of them
// shortened where there are more, with the whole text in Full.
func WrapText(text string, width float64, most int) []draw.Text {
	return WrapIn(sheet.FontNote, text, width, most)
}

// WrapIn is like WrapText, in another type.
func WrapIn(f draw.Font, text string, width float64, most int) []draw.Text {
	return setWrapped(f, f.Wrap(text, width+1e-6), text, width, most)
}

// SetWrapped returns at most so many of a text's lines.
func SetWrapped(wrapped []string, text string, width float64, most int) []draw.Text {
	return setWrapped(sheet.FontNote, wrapped, text, width, most)
}

func setWrapped(f draw.Font, wrapped []string, text string, width float64, most int) []draw.Text {
	var lines []draw.Text
	for k, line := range wrapped[:min(len(wrapped), most)] {
		t := draw.NewText(0, 0, line, f, draw.Black)
		if k == most-1 && len(wrapped) > most {
			t = draw.NewText(0, 0, f.Shorten(line+" "+wrapped[k+1], width), f, draw.Black)
			t.Full = text
		}
		lines = append(lines, t)
	}
	return lines
}
