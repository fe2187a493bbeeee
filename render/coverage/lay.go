// Which words stand where.

package coverage

import (
	"pullscore/interp/coverage"
	"pullscore/render/draw"
)

var (
	fontWord   = draw.Font{Size: 11}
	fontSetup  = draw.Font{Size: 7.5}
	fontNumber = draw.Font{Size: 8}
)

// The space between two words: wordGap as measured, and wordLeast in a viewer that sets
// them wider, in millimetres.
const (
	wordGap   = 3.4
	wordLeast = 1.6
)

// A placed is a word with its place on the page.
type placed struct {
	word   *coverage.Word
	text   string
	number int // in the line, from 1
	x1, x2 float64
}

// rows lays the words of a line in rows, each no wider than the page has room.
func rows(l *coverage.Line, from, to float64) (list [][]placed) {
	x := from
	var row []placed
	for i := range l.Words {
		text := draw.Clean(l.Words[i].Text)
		if fontWord.Room(text) > to-from {
			text = fontWord.Shorten(text, to-from)
		}
		wide := fontWord.Width(text)
		if x+draw.Slack*wide > to && len(row) > 0 {
			list, row, x = append(list, row), nil, from
		}
		row = append(row, placed{word: &l.Words[i], text: text, number: i + 1, x1: x, x2: x + wide})
		x += max(wide+wordGap, draw.Slack*wide+wordLeast)
	}
	if len(row) > 0 {
		list = append(list, row)
	}
	return list
}
